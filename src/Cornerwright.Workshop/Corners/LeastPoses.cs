using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Workshop.Corners;

/// <summary>Where over all travel and steer one line on the body comes nearest to the wheel, and where hardly less near.</summary>
/// <remarks>
/// The gap is looked at on the whole grid; from each of its lows that could hold the least it is followed down over travel, steer and
/// the other wheel's travel together. Against the certified search on random corners the least is right to 0.05 mm
/// (docs/theory/clearance.md §7).
/// </remarks>
internal readonly ref struct LeastPoses(ThingPlaces places, CornerReader n, PoseGrid grid, WheelSolid wheel, NearLine line)
{
    /// <summary>How much a line's least gap may lie below that of its corners and segment middles, m.</summary>
    private const double RoughError = BodyGaps.RoughError;

    /// <summary>
    /// A low is followed until the travel moves by less than this, m, and the steer by less than <see cref="SteerAccuracy"/>, rad.
    /// </summary>
    private const double TravelAccuracy = 2.5e-5, SteerAccuracy = 6e-5;

    /// <summary>Moves allowed on the way down; usual are 20 to 60.</summary>
    private const int MostMoves = 400;

    private readonly ThingPlaces _places = places;
    private readonly CornerReader _n = n;
    private readonly PoseGrid _grid = grid;
    private readonly WheelSolid _wheel = wheel;
    private readonly NearLine _line = line;

    /// <summary>A pose and the gap there.</summary>
    private readonly record struct Low(PosePlace Place, double Gap);

    /// <summary>How far a step goes each way: travel, steer, the other wheel's travel; 0 along what does not move.</summary>
    private readonly record struct Steps(double Travel, double Steer, double Other)
    {
        public Steps Halved => new(0.5 * Travel, 0.5 * Steer, 0.5 * Other);
    }

    /// <param name="rough">Room for one number a pose of the grid.</param>
    /// <param name="rivals">Poses that a little doubt may make the nearest.</param>
    /// <returns>Gap not finite where the wheel can be nowhere.</returns>
    public WorstPose Find(Span<double> rough, out RivalPoses rivals)
    {
        double least = Look(rough);
        rivals = default;
        if (!double.IsFinite(least))
        {
            return new WorstPose(0, 0, ClearanceNumbers.Unknown, default);
        }

        // Every low of the grid that may hold the least or a rival of it, followed down.
        var lows = new List<Low>();
        double within = least + RoughError + RivalPoses.Within;
        for (int i = 0; i < _grid.Count; i++)
        {
            var (s, o, t) = _grid.At(i);
            if (rough[i] - RoughError < within && IsLow(rough, s, o, t))
            {
                lows.Add(Down(new(_grid.PlaceOf(s, o, t), rough[i])));
            }
        }

        Low best = lows.MinBy(l => l.Gap);
        AddEnds(lows, best);
        foreach (Low low in lows)
        {
            PosePlace at = low.Place;
            bool same = Math.Abs(at.Steer - best.Place.Steer) < 0.5 * _grid.WidestSteerStep + 1e-9
                && Math.Abs(Share(at.Travel) - Share(best.Place.Travel)) < RivalPoses.Apart
                && Math.Abs(OtherShare(at.Third) - OtherShare(best.Place.Third)) < RivalPoses.Apart;
            if (!same && low.Gap < best.Gap + RivalPoses.Within)
            {
                rivals = rivals.With(
                    new RivalPose(true, Share(at.Travel), at.Steer, Exact(at).Along, low.Gap, OtherShare(at.Third)));
            }
        }

        PosePlace worst = best.Place;
        return new WorstPose(Share(worst.Travel), worst.Steer, Exact(worst), default, OtherShare(worst.Third));
    }

    // The rough gap at every pose of the grid; infinite where the wheel cannot be.
    private double Look(Span<double> rough)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i < _grid.Count; i++)
        {
            var (s, o, t) = _grid.At(i);
            double gap = _grid.Frame(s, o, t, out SpindleFrame frame)
                ? BodyGaps.RoughGap(_places, _n, _grid.PlaceOf(s, o, t), frame, _wheel, _line) : double.PositiveInfinity;
            rough[i] = gap;
            least = Math.Min(least, gap);
        }

        return least;
    }

    private bool IsLow(ReadOnlySpan<double> rough, int s, int o, int t)
    {
        double here = rough[_grid.Index(s, o, t)];
        for (int ds = -1; ds <= 1; ds++)
        {
            for (int k = -1; k <= 1; k++)
            {
                for (int dt = -1; dt <= 1; dt++)
                {
                    bool inside = s + ds >= 0 && s + ds < _grid.Steers.Count && o + k >= 0 && o + k < _grid.Others
                        && t + dt >= 0 && t + dt < PoseGrid.Travels;
                    if (inside && rough[_grid.Index(s + ds, o + k, t + dt)] < here)
                    {
                        return false;
                    }
                }
            }
        }

        return double.IsFinite(here);
    }

    // Ends of travel straight ahead, at both locks and where the nearest is, though they be no lows: a little doubt may make them one.
    private void AddEnds(List<Low> lows, Low best)
    {
        var (droop, bump) = _grid.OtherRange;
        ReadOnlySpan<double> others = _grid.Others > 1 ? [droop, bump, best.Place.Third] : [best.Place.Third];
        foreach (double steer in (ReadOnlySpan<double>)[0, best.Place.Steer, _grid.LeastSteer, _grid.MostSteer])
        {
            foreach (double travel in (ReadOnlySpan<double>)[_grid.Range.Droop, _grid.BumpAt(steer)])
            {
                foreach (double other in others)
                {
                    PosePlace place = new(travel, steer, other);
                    if (RoughAt(place) - RoughError < best.Gap + RivalPoses.Within)
                    {
                        lows.Add(new(place, Exact(place).Gap));
                    }
                }
            }
        }
    }

    // Downhill by shrinking steps: by the rough gap first, which costs little, then by the exact one from nearby.
    private Low Down(Low from)
    {
        bool single = _line.Count == 1;
        Low low = Down(
            from, new(0.5 * _grid.TravelStep, 0.5 * _grid.WidestSteerStep, 0.5 * _grid.OtherStep), single ? 1 : 32, exact: false);
        Low near = low with { Gap = Exact(low.Place).Gap };
        return single ? near : Down(near, new(0.004, 0.01, 0.004), 1, exact: true);
    }

    private Low Down(Low from, Steps steps, double coarse, bool exact)
    {
        Low best = from;
        steps = new(steps.Travel, _grid.WidestSteerStep > 0 ? steps.Steer : 0, _grid.Others > 1 ? steps.Other : 0);
        double fine = coarse * TravelAccuracy;
        for (int moves = 0; moves < MostMoves
            && (steps.Travel > fine || steps.Steer > coarse * SteerAccuracy || steps.Other > fine);)
        {
            Low before = best;
            foreach (var (dz, ds, other) in (ReadOnlySpan<(double, double, double)>)
                [(1, 0, 0), (-1, 0, 0), (0, 1, 0), (0, -1, 0), (0, 0, 1), (0, 0, -1)])
            {
                double steer = Math.Clamp(before.Place.Steer + (ds * steps.Steer), _grid.LeastSteer, _grid.MostSteer);
                PosePlace place = new(
                    Math.Clamp(before.Place.Travel + (dz * steps.Travel), _grid.Range.Droop, _grid.BumpAt(steer)), steer,
                    Math.Clamp(before.Place.Third + (other * steps.Other), _grid.OtherRange.Droop, _grid.OtherRange.Bump));
                if (place == before.Place)
                {
                    continue;
                }

                moves++;
                double gap = exact ? Exact(place).Gap : RoughAt(place);
                best = gap < best.Gap ? new(place, gap) : best;
            }

            steps = best == before ? steps.Halved : steps;
        }

        return best;
    }

    private double RoughAt(in PosePlace place) =>
        _places.Pose(_n, _n.Motion, place, out var pose) ? BodyGaps.RoughGap(_places, _n, place, SpindleFrame.Of(pose), _wheel, _line)
            : double.PositiveInfinity;

    private Clearing Exact(in PosePlace place)
    {
        var clearing = BodyGaps.Of(_places, _n, _wheel, _line, place);
        return double.IsNaN(clearing.Gap) ? clearing with { Gap = double.PositiveInfinity } : clearing;
    }

    private double Share(double travel) => Share(travel, _grid.Range);

    private double OtherShare(double travel) => Share(travel, _grid.OtherRange);

    private static double Share(double travel, (double Droop, double Bump) range) =>
        range.Bump > range.Droop ? (travel - range.Droop) / (range.Bump - range.Droop) : 0;
}
