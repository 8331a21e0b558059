using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Workshop.Corners;

/// <summary>Where over all travel and steer one line on the body comes nearest to the wheel, and where hardly less near.</summary>
/// <remarks>
/// The gap is looked at on the whole grid; from each of its lows that could hold the least it is followed down over travel and steer
/// together. Against the certified search on random corners the least is right to 0.05 mm (docs/theory/clearance.md §7).
/// </remarks>
internal readonly ref struct LeastPoses(ThingPlaces places, CornerReader n, PoseGrid grid, WheelSolid wheel, ReadOnlySpan<Vec3> points)
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
    private readonly ReadOnlySpan<Vec3> _points = points;

    /// <summary>A pose and the gap there.</summary>
    private readonly record struct Low(double Travel, double Steer, double Gap);

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
        for (int s = 0; s < _grid.Steers.Count; s++)
        {
            for (int t = 0; t < PoseGrid.Travels; t++)
            {
                double gap = rough[At(s, t)];
                if (gap - RoughError < within && IsLow(rough, s, t))
                {
                    lows.Add(Down(new(_grid.TravelAt(s, t), _grid.Steers[s], gap)));
                }
            }
        }

        Low best = lows.MinBy(l => l.Gap);
        AddEnds(lows, best, rough);
        foreach (Low low in lows)
        {
            bool same = Math.Abs(low.Steer - best.Steer) < 0.5 * _grid.WidestSteerStep + 1e-9
                && Math.Abs(Share(low.Travel) - Share(best.Travel)) < RivalPoses.Apart;
            if (!same && low.Gap < best.Gap + RivalPoses.Within)
            {
                rivals = rivals.With(new RivalPose(true, Share(low.Travel), low.Steer, Exact(low.Travel, low.Steer).Along, low.Gap));
            }
        }

        return new WorstPose(Share(best.Travel), best.Steer, Exact(best.Travel, best.Steer), default);
    }

    // The rough gap at every pose of the grid; infinite where the wheel cannot be.
    private double Look(Span<double> rough)
    {
        double least = double.PositiveInfinity;
        for (int s = 0; s < _grid.Steers.Count; s++)
        {
            for (int t = 0; t < PoseGrid.Travels; t++)
            {
                double gap = _grid.Frame(s, t, out SpindleFrame frame) ? BodyGaps.RoughGap(frame, _wheel, _points)
                    : double.PositiveInfinity;
                rough[At(s, t)] = gap;
                least = Math.Min(least, gap);
            }
        }

        return least;
    }

    private bool IsLow(ReadOnlySpan<double> rough, int s, int t)
    {
        double here = rough[At(s, t)];
        for (int ds = -1; ds <= 1; ds++)
        {
            for (int dt = -1; dt <= 1; dt++)
            {
                bool inside = s + ds >= 0 && s + ds < _grid.Steers.Count && t + dt >= 0 && t + dt < PoseGrid.Travels;
                if (inside && rough[At(s + ds, t + dt)] < here)
                {
                    return false;
                }
            }
        }

        return double.IsFinite(here);
    }

    // Ends of travel straight ahead, at both locks and where the nearest is, though they be no lows: a little doubt may make them one.
    private void AddEnds(List<Low> lows, Low best, ReadOnlySpan<double> rough)
    {
        foreach (double steer in (ReadOnlySpan<double>)[0, best.Steer, _grid.LeastSteer, _grid.MostSteer])
        {
            foreach (double travel in (ReadOnlySpan<double>)[_grid.Range.Droop, _grid.BumpAt(steer)])
            {
                if (RoughAt(travel, steer) - RoughError < best.Gap + RivalPoses.Within)
                {
                    lows.Add(new(travel, steer, Exact(travel, steer).Gap));
                }
            }
        }
    }

    // Downhill by shrinking steps: by the rough gap first, which costs little, then by the exact one from nearby.
    private Low Down(Low from)
    {
        bool single = _points.Length == 1;
        Low low = Down(from, 0.5 * _grid.TravelStep, 0.5 * _grid.WidestSteerStep, single ? 1 : 32, exact: false);
        Low near = new(low.Travel, low.Steer, Exact(low.Travel, low.Steer).Gap);
        return single ? near : Down(near, 0.004, 0.01, 1, exact: true);
    }

    private Low Down(Low from, double travelStep, double steerStep, double coarse, bool exact)
    {
        Low best = from;
        steerStep = _grid.WidestSteerStep > 0 ? steerStep : 0;
        for (int moves = 0; moves < MostMoves && (travelStep > coarse * TravelAccuracy || steerStep > coarse * SteerAccuracy);)
        {
            Low before = best;
            foreach (var (dz, ds) in (ReadOnlySpan<(double, double)>)[(1, 0), (-1, 0), (0, 1), (0, -1)])
            {
                double steer = Math.Clamp(before.Steer + (ds * steerStep), _grid.LeastSteer, _grid.MostSteer);
                double travel = Math.Clamp(before.Travel + (dz * travelStep), _grid.Range.Droop, _grid.BumpAt(steer));
                if (steer == before.Steer && travel == before.Travel)
                {
                    continue;
                }

                moves++;
                double gap = exact ? Exact(travel, steer).Gap : RoughAt(travel, steer);
                best = gap < best.Gap ? new(travel, steer, gap) : best;
            }

            if (best == before)
            {
                (travelStep, steerStep) = (0.5 * travelStep, 0.5 * steerStep);
            }
        }

        return best;
    }

    private double RoughAt(double travel, double steer) =>
        _places.Pose(_n, _n.Motion, travel, steer, out var pose) ? BodyGaps.RoughGap(SpindleFrame.Of(pose), _wheel, _points)
            : double.PositiveInfinity;

    private Clearing Exact(double travel, double steer)
    {
        var clearing = BodyGaps.Of(_places, _n, _wheel, _points, travel, steer);
        return double.IsNaN(clearing.Gap) ? clearing with { Gap = double.PositiveInfinity } : clearing;
    }

    private double Share(double travel) =>
        _grid.Range.Bump > _grid.Range.Droop ? (travel - _grid.Range.Droop) / (_grid.Range.Bump - _grid.Range.Droop) : 0;

    private static int At(int steer, int travel) => (steer * PoseGrid.Travels) + travel;
}
