using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <summary>Where, going up from ride straight ahead, the wheel first touches something of the body.</summary>
/// <param name="Item">Which thing; -1 for none.</param>
/// <param name="Travel">m; infinite for none.</param>
/// <param name="Slope">Gap per travel there.</param>
/// <param name="Along">The place on the thing.</param>
internal readonly record struct FirstTouch(int Item, double Travel, double Slope, double Along)
{
    /// <summary>
    /// Of what comes nearest on the whole way searched (the thing touched, if any): which it is, where,
    /// and the least gap there, m. A small gap either side of 0 says that the touch itself is in doubt.
    /// </summary>
    public (int Item, double Travel, double Gap) Graze { get; init; } = (-1, double.PositiveInfinity, double.PositiveInfinity);

    /// <summary>How far beyond full bump the first touch is looked for, m.</summary>
    private const double BeyondBump = 0.04;

    /// <summary>
    /// Most change of a gap per wheel travel: a wheel that rises, leans 0.1 deg/mm and moves sideways 0.1 mm/mm carries its
    /// crown at 1.16 of its travel; no road car's suspension does more.
    /// </summary>
    internal const double SteepestGap = 1.2;

    public static FirstTouch None => new(-1, double.PositiveInfinity, 0, 0);

    public static FirstTouch Find(in ClearanceNumbers.StraightGap gaps, ClearancePlan clearance, CornerReader n,
        (double Droop, double Bump) range, double highest)
    {
        var first = None;
        double start = Math.Clamp(n.Ride.Length > 0 && double.IsFinite(n.Ride[0]) ? n.Ride[0] : 0, range.Droop, range.Bump),
            end = Math.Min(range.Bump + BeyondBump, highest);
        for (int i = 0; i < clearance.Items.Count; i++)
        {
            var item = clearance.Items[i];
            if (item.AttachedTo == AttachedTo.Body && item.Missing.Count == 0)
            {
                var next = From(gaps, i, start, Math.Min(end, first.Travel));
                bool nearer = next.Item >= 0 || (first.Item < 0 && next.Graze.Gap < first.Graze.Gap);
                first = nearer ? next : first;
            }
        }

        return first.Item < 0 ? first : first with { Graze = Deepest(gaps, first, end) };
    }

    // Upward by as much as the gap cannot close: no touch is stepped over, and near one the steps shrink by themselves.
    private static FirstTouch From(in ClearanceNumbers.StraightGap gaps, int item, double start, double end)
    {
        const int MostSteps = 60;
        const double Accuracy = 1e-6, Step = 1e-4, FarAway = 0.005;
        double x = start;
        var least = None.Graze;
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

            least = at.Gap < least.Gap ? (item, x, at.Gap) : least;
            x += at.Gap / SteepestGap;
        }

        return None with { Graze = least };
    }

    // How far the wheel runs into what it touches says how sure the touch is.
    private static (int Item, double Travel, double Gap) Deepest(in ClearanceNumbers.StraightGap gaps, in FirstTouch touch, double end)
    {
        const int Samples = 4;
        var least = (touch.Item, touch.Travel, Gap: 0.0);
        for (int k = 1; k <= Samples; k++)
        {
            double travel = touch.Travel + ((end - touch.Travel) * k / Samples), gap = gaps.At(touch.Item, travel).Gap;
            least = gap < least.Gap ? (touch.Item, travel, gap) : least;
        }

        return least;
    }
}
