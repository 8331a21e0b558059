using Cornerwright.Garage.Cars;

namespace Cornerwright.Workshop.Judging;

/// <summary>Where, going up from ride straight ahead, the wheel first touches something of the body.</summary>
/// <param name="Item">Which thing; -1 for none.</param>
/// <param name="Travel">m; infinite for none.</param>
/// <param name="Slope">Gap per travel there.</param>
/// <param name="Along">The place on the thing.</param>
internal readonly record struct FirstTouch(int Item, double Travel, double Slope, double Along)
{
    /// <summary>How far beyond full bump the first touch is looked for, m.</summary>
    private const double BeyondBump = 0.04;

    /// <summary>
    /// Most change of a gap per wheel travel: a wheel that rises, leans 0.1 deg/mm and moves sideways 0.1 mm/mm carries its
    /// crown at 1.16 of its travel; no road car's suspension does more.
    /// </summary>
    internal const double SteepestGap = 1.2;

    public static FirstTouch None => new(-1, double.PositiveInfinity, 0, 0);

    public static FirstTouch Find(in ClearanceNumbers.StraightGap gaps, ClearancePlan clearance, CornerNumbers n, (double Droop, double Bump) range, double highest)
    {
        var first = None;
        double start = Math.Clamp(n.Ride.Length > 0 && double.IsFinite(n.Ride[0]) ? n.Ride[0] : 0, range.Droop, range.Bump), end = Math.Min(range.Bump + BeyondBump, highest);
        for (int i = 0; i < clearance.Items.Count; i++)
        {
            var item = clearance.Items[i];
            if (item.AttachedTo == AttachedTo.Body && item.Missing.Count == 0 && From(gaps, i, start, Math.Min(end, first.Travel)) is { Item: >= 0 } touch)
            {
                first = touch;
            }
        }

        return first;
    }

    // Upward by as much as the gap cannot close: no touch is stepped over, and near one the steps shrink by themselves.
    private static FirstTouch From(in ClearanceNumbers.StraightGap gaps, int item, double start, double end)
    {
        const int MostSteps = 60;
        const double Accuracy = 1e-6, Step = 1e-4, FarAway = 0.005;
        double x = start;
        for (int k = 0; k < MostSteps && x <= end; k++)
        {
            double far = gaps.AtLeast(item, x);
            if (far > FarAway)
            {
                x += far / SteepestGap;
                continue;
            }

            var at = gaps.At(item, x);
            if (!(at.Gap > 0) && k == 0)
            {
                return None;
            }

            if (at.Gap < Accuracy)
            {
                double slope = (gaps.At(item, x + Step).Gap - gaps.At(item, x - Step).Gap) / (2 * Step);
                return Math.Abs(slope) > 1e-6 ? new FirstTouch(item, x, slope, at.Along) : None;
            }

            x += at.Gap / SteepestGap;
        }

        return None;
    }
}
