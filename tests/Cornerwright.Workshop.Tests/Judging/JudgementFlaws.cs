using Cornerwright.Workshop.Findings;

namespace Cornerwright.Workshop.Tests.Judging;

/// <summary>Numbers in findings and figures that nobody can be shown, and words that nobody can read.</summary>
internal static class JudgementFlaws
{
    public static IEnumerable<string> Of(Finding f)
    {
        foreach (string? words in new[] { f.Sentence, f.Title, f.Where, f.Worst?.Words ?? "-" }.Concat(f.Cures.Select(c => c.Sentence))
            .Concat(f.Missing.Select(m => m.Label)).Concat(f.Assumptions).Concat(f.Deciding.Select(d => d.Label)))
        {
            if (!PictureFlaws.Readable(words))
            {
                yield return $"{f.Key} says \"{words}\"";
            }
        }

        foreach (var cure in f.Cures)
        {
            if (!PictureFlaws.Readable(cure.Side + ".") || !PictureFlaws.Shown(cure.Gain) || !PictureFlaws.Shown(cure.MarginAfter))
            {
                yield return $"{f.Key} cure {cure}";
            }
        }

        if (f.Worst is { } w && !new[] { w.Travel, w.Steer, w.Clock }.All(x => x is null || double.IsFinite(x.Value)))
        {
            yield return $"{f.Key} worst state {w}";
        }

        if (f.Verdict == Verdict.Unknown)
        {
            if (f.Missing.Count == 0 || f.Value is not null || f.Probability is not null)
            {
                yield return $"{f.Key} is unknown and names nothing missing, or states a number";
            }

            yield break;
        }

        if (f.Value is not { } value || f.Margin is not { } margin || f.Doubt is not { } doubt || f.Probability is not { } p)
        {
            yield return $"{f.Key} is known but lacks a number";
            yield break;
        }

        foreach (var measure in new[] { value, margin, doubt, f.Low ?? value, f.High ?? value })
        {
            if (!PictureFlaws.Shown(measure))
            {
                yield return $"{f.Key}: {measure.Si} in {f}";
            }
        }

        double expected = Math.Min(value.Si - (f.Low?.Si ?? double.NegativeInfinity), (f.High?.Si ?? double.PositiveInfinity) - value.Si);
        if (!(p is >= 0 and <= 1) || !(Math.Abs(expected - margin.Si) <= 1e-12 * Math.Max(1, Math.Abs(expected)))
            || (f.Verdict == Verdict.Fails) != (margin.Si < 0))
        {
            yield return $"{f.Key}: verdict {f.Verdict}, probability {p}, margin {margin.Si}, expected {expected}";
        }
    }

    public static IEnumerable<string> Of(Figure f)
    {
        if (!PictureFlaws.Shown(f.Value) || (f.Doubt is { } doubt && !PictureFlaws.Shown(doubt)) || !PictureFlaws.Readable(f.Title))
        {
            yield return $"figure {f}";
        }
    }
}
