using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Pictures;

namespace Cornerwright.Workshop.Tests.Judging;

/// <summary>Numbers in pictures that cannot be drawn, and words that nobody can read.</summary>
internal static class PictureFlaws
{
    public static bool Readable(string? words) =>
        !string.IsNullOrWhiteSpace(words) && !words.Contains("NaN", StringComparison.Ordinal)
            && !words.Contains('∞', StringComparison.Ordinal) && !words.Contains("Infinity", StringComparison.Ordinal);

    public static bool Shown(Measure measure) => double.IsFinite(measure.Si) && double.IsFinite(measure.Shown) && Readable(measure.Text);

    public static IEnumerable<string> Of(CornerPicture picture)
    {
        foreach (var mark in picture.Marks)
        {
            if (!(double.IsFinite(mark.Travel) && mark.Doubt >= 0 && double.IsFinite(mark.Doubt) && Readable(mark.Words)))
            {
                yield return $"{picture.Corner} mark {mark}";
            }
        }

        foreach (var state in picture.Stack)
        {
            bool pieces = state.Pieces.All(p => p.Length >= 0 && p.Length <= p.FreeLength + 1e-12 && p.Length >= p.SolidLength - 1e-12
                && p.Outer > 0 && double.IsFinite(p.Outer));
            if (!pieces || !(state.Gap >= 0) || !(state.Force >= 0) || !double.IsFinite(state.Space) || !double.IsFinite(state.Travel)
                || (state.RodShowing is { } rod && !double.IsFinite(rod)))
            {
                yield return $"{picture.Corner} stack {state}";
            }
        }

        foreach (var point in picture.Wheel?.Outlines.SelectMany(o => o.Points) ?? [])
        {
            if (!double.IsFinite(point.Axial) || !double.IsFinite(point.Radius))
            {
                yield return $"{picture.Corner} outline {point}";
            }
        }

        foreach (var gap in picture.Wheel?.Gaps ?? [])
        {
            if (!new[] { gap.Travel, gap.Steer, gap.Clock, gap.Gap, gap.OnObstacle.Axial, gap.OnObstacle.Radius, gap.OnWheel.Axial,
                gap.OnWheel.Radius }.All(double.IsFinite))
            {
                yield return $"{picture.Corner} gap {gap}";
            }
        }
    }
}
