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

    private const int Steps = 8;

    public static FirstTouch None => new(-1, double.PositiveInfinity, 0, 0);

    public static FirstTouch Find(in ClearanceNumbers.StraightGap gaps, ClearancePlan clearance, CornerNumbers n, (double Droop, double Bump) range, double highest)
    {
        var first = None;
        double start = Math.Clamp(n.Ride.Length > 0 && double.IsFinite(n.Ride[0]) ? n.Ride[0] : 0, range.Droop, range.Bump), end = Math.Min(range.Bump + BeyondBump, highest);
        for (int i = 0; i < clearance.Items.Count && end > start; i++)
        {
            var item = clearance.Items[i];
            double low = start, gapLow = item.AttachedTo == AttachedTo.Body && item.Missing.Count == 0 ? gaps.At(i, start).Gap : double.NaN;
            for (int k = 1; k <= Steps && gapLow > 0 && low < first.Travel; k++)
            {
                double high = start + ((end - start) * k / Steps), gapHigh = gaps.At(i, high).Gap;
                if (!(gapHigh <= 0))
                {
                    (low, gapLow) = (high, gapHigh);
                    continue;
                }

                var touch = Between(gaps, i, low, gapLow, high, gapHigh);
                first = touch.Travel < first.Travel ? touch : first;
                break;
            }
        }

        return first;
    }

    // The secant inside its bracket (Illinois rule): a handful of steps, because the gap is nearly straight here.
    private static FirstTouch Between(in ClearanceNumbers.StraightGap gaps, int item, double low, double gapLow, double high, double gapHigh)
    {
        const int MostSteps = 40;
        const double Accuracy = 1e-7, Step = 1e-4;
        double x = high;
        for (int k = 0; k < MostSteps && high - low > Accuracy; k++)
        {
            x = low + ((high - low) * gapLow / (gapLow - gapHigh));
            double gap = gaps.At(item, x).Gap;
            if (Math.Abs(gap) < Accuracy)
            {
                break;
            }

            (low, gapLow, high, gapHigh) = gap > 0 ? (x, gap, high, gapHigh / 2) : (low, gapLow / 2, x, gap);
        }

        var at = gaps.At(item, x);
        double slope = (gaps.At(item, x + Step).Gap - gaps.At(item, x - Step).Gap) / (2 * Step);
        return Math.Abs(slope) > 1e-6 ? new FirstTouch(item, x, slope, at.Along) : None;
    }
}
