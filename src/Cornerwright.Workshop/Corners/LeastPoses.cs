using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Workshop.Corners;

/// <summary>
/// Where over all travel, steer and loads one line on the body comes nearest to the wheel, and where hardly less near.
/// </summary>
/// <remarks>
/// The gap is looked at on the whole grid, at rest and under each load; from each of its lows that could hold the least it is followed
/// down over travel, steer and the other wheel's travel together. Under a load the gap is at most as much less than at rest as the load
/// moves the wheel: what lies further off is not looked at. Against the certified search on random corners the least is right to
/// 0.05 mm (docs/theory/clearance.md §9).
/// </remarks>
internal readonly ref struct LeastPoses(
    LoadState[] states, CornerReader n, PoseGrid grid, WheelSolid wheel, NearLine line)
{
    /// <summary>
    /// A low is followed until the travel moves by less than this, m, and the steer by less than <see cref="SteerAccuracy"/>, rad.
    /// </summary>
    private const double TravelAccuracy = 2.5e-5, SteerAccuracy = 6e-5;

    /// <summary>
    /// Lows at one pose under loads of one kind lose the same on the way down to within this, m: the wheel stands elsewhere by less than
    /// a centimetre.
    /// </summary>
    private const double StandsFor = 0.001;

    /// <summary>Moves allowed on the way down; usual are 20 to 60.</summary>
    private const int MostMoves = 400;

    private readonly LoadState[] _states = states;
    private readonly CornerReader _n = n;
    private readonly PoseGrid _grid = grid;
    private readonly WheelSolid _wheel = wheel;
    private readonly NearLine _line = line;

    /// <summary>A pose, the load there and the gap.</summary>
    private readonly record struct Low(PosePlace Place, double Gap, int State);

    /// <summary>How far a step goes each way: travel, steer, the other wheel's travel; 0 along what does not move.</summary>
    private readonly record struct Steps(double Travel, double Steer, double Other)
    {
        public Steps Halved => new(0.5 * Travel, 0.5 * Steer, 0.5 * Other);
    }

    /// <summary>Numbers that <see cref="Find"/> takes for so many states of load.</summary>
    public static int Room(PoseGrid grid, int states) => grid.Count * states;

    /// <param name="room">As many numbers as <see cref="Room"/> says.</param>
    /// <param name="rivals">Poses that a little doubt may make the nearest.</param>
    /// <returns>Gap not finite where the wheel can be nowhere.</returns>
    public WorstPose Find(Span<double> room, out RivalPoses rivals)
    {
        double least = Look(room);
        rivals = default;
        if (!double.IsFinite(least))
        {
            return new WorstPose(0, 0, ClearanceNumbers.Unknown, default);
        }

        var lows = new List<Low>();
        Low best = Follow(Lows(room, least), lows);
        AddEnds(lows, best);
        lows.Sort((a, b) => a.Gap.CompareTo(b.Gap));
        var kept = new List<Low>(1 + RivalPoses.Most) { best };
        foreach (Low low in lows)
        {
            if (low.Gap < best.Gap + RivalPoses.Within && kept.Count <= RivalPoses.Most && !IsSameAsAny(low, kept))
            {
                PosePlace at = low.Place;
                kept.Add(low);
                rivals = rivals.With(new RivalPose(
                    true, Share(at.Travel), at.Steer, Exact(at, low.State).Along, low.Gap, OtherShare(at.Third), low.State));
            }
        }

        PosePlace worst = best.Place;
        return new WorstPose(
            Share(worst.Travel), worst.Steer, Exact(worst, best.State), default, OtherShare(worst.Third), best.State);
    }

    // The gap at every pose of the grid in every state; infinite where the wheel cannot be, and where it is too large to count.
    private double Look(Span<double> room)
    {
        double least = double.PositiveInfinity, most = 0;
        for (int k = 0; k < _states.Length; k++)
        {
            most = Math.Max(most, Most(k));
        }

        for (int k = 0; k < _states.Length; k++)
        {
            var gaps = room.Slice(k * _grid.Count, _grid.Count);
            for (int i = 0; i < _grid.Count; i++)
            {
                // At rest all is kept that a load may bring near enough; under a load only what can be.
                var (s, o, t) = _grid.At(i);
                double bound = least + RivalPoses.Within + (k == 0 ? most : 0);
                bool counts = _grid.Frame(s, o, t, out SpindleFrame rest) && (k == 0 || room[i] - Most(k) < bound);
                gaps[i] = counts && TryBelow(rest, _grid.PlaceOf(s, o, t), k, bound, out Clearing there) ? there.Gap
                    : double.PositiveInfinity;
                least = Math.Min(least, gaps[i]);
            }
        }

        return least;
    }

    // Every low of the grid that may hold the least or a rival of it, the nearest first.
    private List<Low> Lows(ReadOnlySpan<double> room, double least)
    {
        var lows = new List<Low>();
        for (int k = 0; k < _states.Length; k++)
        {
            var gaps = room.Slice(k * _grid.Count, _grid.Count);
            for (int i = 0; i < _grid.Count; i++)
            {
                var (s, o, t) = _grid.At(i);
                if (gaps[i] < least + RivalPoses.Within && IsLow(gaps, s, o, t))
                {
                    lows.Add(new(_grid.PlaceOf(s, o, t), gaps[i], k));
                }
            }
        }

        lows.Sort((a, b) => a.Gap.CompareTo(b.Gap));
        return lows;
    }

    // Followed down, but for those that the nearest one stands for: at its pose, under a load of its kind, with a gap larger by more than
    // a way down from the grid differs from its neighbour's.
    private Low Follow(List<Low> from, List<Low> followed)
    {
        Low best = new(default, double.PositiveInfinity, 0), start = default;
        foreach (Low low in from)
        {
            if (followed.Count > 0 && low.Gap > start.Gap + StandsFor && low.Place == start.Place && low.State != start.State
                && _states[low.State].IsLike(_states[start.State]))
            {
                continue;
            }

            Low down = Down(low);
            followed.Add(down);
            (best, start) = down.Gap < best.Gap ? (down, low) : (best, start);
        }

        return best;
    }

    private bool IsSameAsAny(in Low low, List<Low> kept)
    {
        foreach (Low other in kept)
        {
            if (IsSame(low, other))
            {
                return true;
            }
        }

        return false;
    }

    private bool IsSame(in Low low, in Low best) =>
        Math.Abs(low.Place.Steer - best.Place.Steer) < (0.5 * _grid.WidestSteerStep) + 1e-9
        && Math.Abs(Share(low.Place.Travel) - Share(best.Place.Travel)) < RivalPoses.Apart
        && Math.Abs(OtherShare(low.Place.Third) - OtherShare(best.Place.Third)) < RivalPoses.Apart
        && _states[low.State].IsLike(_states[best.State]);

    private bool IsLow(ReadOnlySpan<double> gaps, int s, int o, int t)
    {
        double here = gaps[_grid.Index(s, o, t)];
        for (int ds = -1; ds <= 1; ds++)
        {
            for (int k = -1; k <= 1; k++)
            {
                for (int dt = -1; dt <= 1; dt++)
                {
                    bool inside = s + ds >= 0 && s + ds < _grid.Steers.Count && o + k >= 0 && o + k < _grid.Others
                        && t + dt >= 0 && t + dt < PoseGrid.Travels;
                    if (inside && gaps[_grid.Index(s + ds, o + k, t + dt)] < here)
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
                    AddEnd(lows, new(travel, steer, other), best.Gap + RivalPoses.Within);
                }
            }
        }
    }

    private void AddEnd(List<Low> lows, PosePlace place, double within)
    {
        if (!Rest(place, out SpindleFrame rest))
        {
            return;
        }

        for (int k = 0; k < _states.Length; k++)
        {
            if (TryBelow(rest, place, k, within, out Clearing there))
            {
                lows.Add(new(place, there.Gap, k));
            }
        }
    }

    // One way after another, and on in the direction that this gave (Hooke and Jeeves, J. ACM 8 (1961) 212): a low is often a narrow
    // valley across travel and steer.
    private Low Down(Low from)
    {
        Low best = from;
        Steps steps = new(0.5 * _grid.TravelStep, 0.5 * _grid.WidestSteerStep, 0.5 * _grid.OtherStep);
        int moves = 0;
        while (moves < MostMoves && (steps.Travel > TravelAccuracy || steps.Steer > SteerAccuracy || steps.Other > TravelAccuracy))
        {
            Low next = Explore(best, steps, ref moves);
            if (next == best)
            {
                steps = steps.Halved;
                continue;
            }

            best = Try(next, Clamped(
                (2 * next.Place.Travel) - best.Place.Travel, (2 * next.Place.Steer) - best.Place.Steer,
                (2 * next.Place.Third) - best.Place.Third), ref moves);
        }

        return best;
    }

    private Low Explore(Low at, in Steps steps, ref int moves)
    {
        foreach (var (dz, ds, other) in (ReadOnlySpan<(double, double, double)>)[(1, 0, 0), (0, 1, 0), (0, 0, 1)])
        {
            PosePlace here = at.Place;
            double travel = dz * steps.Travel, steer = ds * steps.Steer, third = other * steps.Other;
            Low up = Try(at, Clamped(here.Travel + travel, here.Steer + steer, here.Third + third), ref moves);
            at = up != at ? up : Try(at, Clamped(here.Travel - travel, here.Steer - steer, here.Third - third), ref moves);
        }

        return at;
    }

    private Low Try(Low best, in PosePlace place, ref int moves)
    {
        if (place == best.Place)
        {
            return best;
        }

        moves++;
        return Rest(place, out SpindleFrame rest)
            && TryBelow(rest, place, best.State, best.Gap, out Clearing there) ? new(place, there.Gap, best.State) : best;
    }

    private PosePlace Clamped(double travel, double steer, double other)
    {
        double turned = Math.Clamp(steer, _grid.LeastSteer, _grid.MostSteer);
        return new(
            Math.Clamp(travel, _grid.Range.Droop, _grid.BumpAt(turned)), turned,
            Math.Clamp(other, _grid.OtherRange.Droop, _grid.OtherRange.Bump));
    }

    private Clearing Exact(in PosePlace place, int state)
    {
        var clearing = Rest(place, out SpindleFrame rest) ? BodyGaps.Of(rest, new(_n, place), _states[state], _wheel, _line)
            : ClearanceNumbers.Unknown;
        return double.IsNaN(clearing.Gap) ? clearing with { Gap = double.PositiveInfinity } : clearing;
    }

    // By how much less than at rest a gap may be. A link's bar end need not go where its other end goes with the wheel.
    private double Most(int state) => (_line.Moves ? 3 : 1) * _states[state].Most;

    private bool TryBelow(in SpindleFrame rest, in PosePlace place, int state, double bound, out Clearing least) =>
        BodyGaps.TryBelow(rest, new(_n, place), _states[state], _wheel, _line, bound, out least);

    private bool Rest(in PosePlace place, out SpindleFrame frame) => _states[0].Places.Frame(_n, place, out frame);

    private double Share(double travel) => Share(travel, _grid.Range);

    private double OtherShare(double travel) => Share(travel, _grid.OtherRange);

    private static double Share(double travel, (double Droop, double Bump) range) =>
        range.Bump > range.Droop ? (travel - range.Droop) / (range.Bump - range.Droop) : 0;
}
