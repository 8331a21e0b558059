using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <summary>A way up: the wheel rises with its steer held and, on an axle that carries both, with the other wheel held.</summary>
/// <param name="Steer">rad, left positive.</param>
/// <param name="Other">Travel of the other wheel, m; null where it rises alike, or plays no part.</param>
internal readonly record struct WayUp(double Steer, double? Other)
{
    public static WayUp Straight => new(0, null);

    public PosePlace At(double travel) => new(travel, Steer, Other ?? travel);
}

/// <summary>
/// Where, going up from ride, the wheel first touches something of the body: straight ahead, at both locks, or at any steer between where
/// that thing comes nearer.
/// </summary>
/// <param name="Item">Which thing; -1 for none.</param>
/// <param name="Travel">m; infinite for none.</param>
/// <param name="Slope">Gap per travel there.</param>
/// <param name="Along">The place on the thing.</param>
/// <param name="Way">How the wheel stood.</param>
internal readonly record struct FirstTouch(int Item, double Travel, double Slope, double Along, WayUp Way)
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

    public static FirstTouch None => new(-1, double.PositiveInfinity, 0, 0, WayUp.Straight);

    public static FirstTouch Find(in ClearanceNumbers.GapOnTheWay gaps, ClearancePlan clearance, CornerReader n,
        (double Droop, double Bump) range, double highest)
    {
        var first = None;
        double ride = Math.Clamp(n.Ride.Length > 0 && double.IsFinite(n.Ride[0]) ? n.Ride[0] : 0, range.Droop, range.Bump),
            end = Math.Min(range.Bump + BeyondBump, highest);
        foreach (int i in NearestFirst(gaps, clearance))
        {
            // What clears the wheel at every pose is not touched before full bump.
            var worst = gaps.Worst(i);
            double least = worst.Clearing.Gap;
            if (first.Item < 0 && least < first.Graze.Gap)
            {
                first = first with { Graze = (i, range.Droop + (worst.Share * (range.Bump - range.Droop)), least) };
            }

            if (least > SteepestGap * BeyondBump)
            {
                continue;
            }

            var next = new Search(gaps, i, (least > 0 ? range.Bump : ride, end), range, clearance).Earliest(first.Travel);
            bool nearer = next.Item >= 0 || (first.Item < 0 && next.Graze.Gap < first.Graze.Gap);
            first = nearer ? next : first;
        }

        return first.Item < 0 ? first : first with { Graze = Deepest(gaps, first, end) };
    }

    // A touch found early spares the search for later ones.
    private static List<int> NearestFirst(in ClearanceNumbers.GapOnTheWay gaps, ClearancePlan clearance)
    {
        var near = new List<(double Gap, int Item)>();
        for (int i = 0; i < clearance.Items.Count; i++)
        {
            double gap = gaps.Worst(i).Clearing.Gap;
            if (clearance.Items[i] is { AttachedTo: AttachedTo.Body, Missing.Count: 0 } && double.IsFinite(gap))
            {
                near.Add((gap, i));
            }
        }

        near.Sort();
        return near.ConvertAll(n => n.Item);
    }

    // How far the wheel runs into what it touches says how sure the touch is.
    private static (int Item, double Travel, double Gap) Deepest(in ClearanceNumbers.GapOnTheWay gaps, in FirstTouch touch, double end)
    {
        const int Samples = 4;
        var least = (touch.Item, touch.Travel, Gap: 0.0);
        for (int k = 1; k <= Samples; k++)
        {
            double travel = touch.Travel + ((end - touch.Travel) * k / Samples), gap = gaps.At(touch.Item, touch.Way.At(travel)).Gap;
            least = gap < least.Gap ? (touch.Item, travel, gap) : least;
        }

        return least;
    }

    /// <summary>The search for one thing.</summary>
    /// <param name="gaps">To ask.</param>
    /// <param name="item">Which.</param>
    /// <param name="between">Where to begin and where to end, m; where bump at lock is limited, the limit ends the way.</param>
    /// <param name="range">Full droop and full bump, m.</param>
    /// <param name="clearance">Locks and limits.</param>
    private readonly ref struct Search(ClearanceNumbers.GapOnTheWay gaps, int item, (double Start, double End) between,
        (double Droop, double Bump) range, ClearancePlan clearance)
    {
        private const int MostSteps = 200, Rounds = 16;
        private const double Accuracy = 1e-6, NearBy = 0.004, Over = 1.3, MostReach = 0.006;
        private const double Step = 1e-4, FarAway = 0.005, Deep = 1e-5, Aside = 2 * Math.PI / 180;

        private readonly ClearanceNumbers.GapOnTheWay _gaps = gaps;

        /// <summary>
        /// The first touch at no more than a travel: straight ahead, at both locks and where the thing comes nearest of all; then, as long
        /// as some other steer touches already where that one touches, there.
        /// </summary>
        public FirstTouch Earliest(double most)
        {
            var worst = _gaps.Worst(item);
            double? other = _gaps.OtherAt(worst);
            var first = None;
            double limit = Math.Min(between.End, most);
            ReadOnlySpan<WayUp> ways =
                [WayUp.Straight, new(worst.Steer, other), new(clearance.LockLeft, null), new(-clearance.LockRight, null)];
            for (int i = 0; i < ways.Length; i++)
            {
                WayUp way = ways[i];
                if (ways[..i].Contains(way))
                {
                    continue;
                }

                var next = From(way, Math.Min(limit, first.Travel));
                first = next.Item >= 0 || (first.Item < 0 && next.Graze.Gap < first.Graze.Gap) ? next : first;
            }

            double aside = Aside;
            bool everywhere = true;
            for (int round = 0; round < Rounds && clearance.LockLeft + clearance.LockRight > 0; round++)
            {
                double at = Math.Min(limit, first.Travel);
                var (steer, gap) = everywhere ? Deepest(at, first.Way.Other) : Beside(first.Way, at, aside);
                bool nearer = false;
                if (gap < -Deep && From(new(steer, first.Way.Other), at) is { Item: >= 0 } found)
                {
                    nearer = found.Travel < first.Travel - Accuracy;
                    first = nearer ? found : first;
                }

                aside = nearer || everywhere ? aside : aside / 2;
                everywhere &= nearer;
            }

            return first;
        }

        // Over all steer, at steps between which a shoulder moves by little.
        private (double Steer, double Gap) Deepest(double travel, double? other)
        {
            var deepest = (Steer: 0.0, Gap: double.PositiveInfinity);
            int parts = (int)Math.Ceiling((clearance.LockLeft + clearance.LockRight) / Aside);
            for (int k = 0; k <= parts; k++)
            {
                double steer = -clearance.LockRight + ((clearance.LockLeft + clearance.LockRight) * k / parts);
                var place = new WayUp(steer, other).At(travel);
                bool counts = Limit(steer) >= travel && _gaps.AtLeast(item, place) < Math.Min(0, deepest.Gap);
                double gap = counts ? _gaps.At(item, place).Gap : double.PositiveInfinity;
                deepest = gap < deepest.Gap ? (steer, gap) : deepest;
            }

            return deepest;
        }

        private (double Steer, double Gap) Beside(WayUp way, double travel, double aside)
        {
            double left = Math.Min(way.Steer + aside, clearance.LockLeft), right = Math.Max(way.Steer - aside, -clearance.LockRight);
            double toLeft = Overlap(way with { Steer = left }, travel), toRight = Overlap(way with { Steer = right }, travel);
            return toLeft < toRight ? (left, toLeft) : (right, toRight);
        }

        // Infinite where there is none.
        private double Overlap(WayUp way, double travel) =>
            Limit(way.Steer) >= travel && _gaps.AtLeast(item, way.At(travel)) < 0 ? Gap(way, travel) : double.PositiveInfinity;

        // Where bump at lock is limited, the stop ends the way there, m.
        private double Limit(double steer) =>
            clearance.BumpAt(steer, range) is var limit && limit < range.Bump ? limit : double.PositiveInfinity;

        private double Gap(WayUp way, double travel) => _gaps.At(item, way.At(travel)).Gap;

        // Upward by as much as the gap cannot close: no touch is stepped over. Near one a step beyond it brackets it.
        private FirstTouch From(WayUp way, double most)
        {
            double end = Math.Min(Limit(way.Steer), most);
            double x = between.Start, slope = 0;
            var least = None.Graze;
            var last = (Travel: double.NaN, Gap: double.NaN);
            for (int k = 0; x <= end; k++)
            {
                double far = k < MostSteps ? _gaps.AtLeast(item, way.At(x)) : 0;
                if (far > FarAway)
                {
                    x += far / SteepestGap;
                    continue;
                }

                var at = _gaps.At(item, way.At(x));
                if (!(at.Gap > 0) && k == 0)
                {
                    return None;
                }

                // Out of steps it is taken as touched here: what is not known to be clear does not count as clear.
                if (at.Gap < Accuracy || k >= MostSteps)
                {
                    return Touched(way, x, at.Along);
                }

                least = at.Gap < least.Gap ? (item, x, at.Gap) : least;
                slope = (at.Gap - last.Gap) / (x - last.Travel);
                last = (x, at.Gap);
                double reach = -Over * at.Gap / slope;
                if (at.Gap < NearBy && reach > 0 && reach < MostReach && x + reach <= end && Gap(way, x + reach) is < 0 and var inside)
                {
                    double touch = Between(way, last, (x + reach, inside));
                    return Touched(way, touch, _gaps.At(item, way.At(touch)).Along);
                }

                x += at.Gap / SteepestGap;
            }

            return None with { Graze = least };
        }

        private FirstTouch Touched(WayUp way, double x, double along)
        {
            double slope = (Gap(way, x + Step) - Gap(way, x - Step)) / (2 * Step);
            return Math.Abs(slope) > 1e-6 ? new FirstTouch(item, x, slope, along, way) : None;
        }

        // False position; an end that stays twice counts half (the Illinois rule).
        private double Between(WayUp way, (double Travel, double Gap) clear, (double Travel, double Gap) inside)
        {
            double x = clear.Travel;
            int side = 0;
            for (int k = 0; k < MostSteps && inside.Travel - clear.Travel > Accuracy; k++)
            {
                x = clear.Travel + ((inside.Travel - clear.Travel) * clear.Gap / (clear.Gap - inside.Gap));
                double gap = Gap(way, x);
                if (Math.Abs(gap) < Accuracy)
                {
                    break;
                }

                if (gap > 0)
                {
                    (clear, inside.Gap, side) = ((x, gap), side > 0 ? 0.5 * inside.Gap : inside.Gap, 1);
                }
                else
                {
                    (inside, clear.Gap, side) = ((x, gap), side < 0 ? 0.5 * clear.Gap : clear.Gap, -1);
                }
            }

            return x;
        }
    }
}
