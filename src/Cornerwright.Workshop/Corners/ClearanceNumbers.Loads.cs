using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Allowing;

namespace Cornerwright.Workshop.Corners;

/// <content>The wheel under load: each thing is looked at with the wheel at rest and under every load that brings it nearer.</content>
internal sealed partial class ClearanceNumbers
{
    /// <summary>Of the tyre's width, how far to either side of its middle a thing counts as standing on both sides.</summary>
    private const double MiddleShare = 0.25;

    /// <summary>Where the wheel goes at rest and under each load that counts for an item, after <see cref="Search"/>.</summary>
    public IReadOnlyList<LoadState> StatesOf(int item) => _states[item];

    /// <summary>The load under which an item comes nearest, in words; empty at rest.</summary>
    public string LoadWords(int item)
    {
        foreach (LoadState state in _states[item])
        {
            if (state.Worst.Clearing.Gap.Equals(_worst[item].Clearing.Gap))
            {
                return state.Sway?.Words ?? "";
            }
        }

        return "";
    }

    /// <summary>The loads for a thing of any height all round the wheel; empty where none is allowed for.</summary>
    public IReadOnlyList<(Sway Sway, ThingPlaces Places)> AllRound() =>
        _sways is null ? [] : [.. Sway.AllRound(_sways).Select(s => (s, _places.Under(s, _sways)))];

    private static (SwayCorner? Sways, WheelLean Lean) LoadsOf(CornerPlan plan)
    {
        var allowed = plan.Allowed;
        if (plan.Wheel is not { } wheel)
        {
            return (null, default);
        }

        var (tyre, locks) = (wheel.Tyre(plan.Inputs.Best(), 0, 0), plan.Clearance);
        double middle = MiddleShare * tyre.SectionWidth;
        return (
            allowed.Sways ? new SwayCorner(allowed, locks.Side, tyre.CrownRadius, middle, locks.LockLeft, locks.LockRight) : null,
            new WheelLean(allowed.OnWheel, tyre.BeadRadius, tyre.CrownRadius));
    }

    private void SearchStates(int i, CornerReader poses, in WheelSolid toBody, PoseGrid grid, double[] rough)
    {
        _states[i] = [new LoadState(_places, null), .. Loads(poses, _points[i]).Select(s => new LoadState(_places.Under(s, _sways!), s))];
        if (_clearance.Items[i].Link is not null && _lean.In > 0)
        {
            _states[i] = [.. _states[i], new LoadState(_places, null) { Leans = true }];
        }

        foreach (LoadState state in _states[i])
        {
            PoseGrid under = state.Sway is null ? grid : grid.Under(state.Places);
            state.Worst = new LeastPoses(state.Places, poses, under, toBody, LineOf(i).In(state)).Find(rough, out var rivals);
            state.Rivals = rivals;
        }

        _worst[i] = _states[i].MinBy(s => s.Worst.Clearing.Gap)!.Worst;
    }

    private IReadOnlyList<Sway> Loads(CornerReader n, ReadOnlySpan<Vec3> points)
    {
        if (_sways is null)
        {
            return [];
        }

        if (!_places.Pose(n, n.Motion, 0, 0, out WheelPose pose))
        {
            return Sway.AllRound(_sways);
        }

        // Outboard of the tyre's middle, over the hub, ahead of it.
        var frame = SpindleFrame.Of(pose);
        double middle = _plan.Wheel!.AxialCentre(n.X);
        Span<Vec3> seen = points.Length <= BodyGaps.FewPoints ? stackalloc Vec3[BodyGaps.FewPoints] : new Vec3[points.Length];
        for (int k = 0; k < points.Length; k++)
        {
            Vec3 off = points[k] - pose.HubFace;
            seen[k] = new(frame.ToSpindle(points[k]).X - middle, off.Z, off.X);
        }

        return Sway.Toward(seen[..points.Length], _sways, Range(n));
    }

    private static Clearing OfBody(CornerReader n, LoadState[] states, in WheelSolid wheel, in NearLine line, in PosePlace place)
    {
        var least = Unknown;
        foreach (LoadState state in states)
        {
            var there = BodyGaps.Of(state.Places, n, wheel, line.In(state), place);
            least = !(there.Gap >= least.Gap) ? there : least;
        }

        return least;
    }

    private static double GapAt(CornerReader n, LoadState[] states, in WheelSolid wheel, in NearLine line, double along, in PosePlace place)
    {
        double least = double.PositiveInfinity;
        foreach (LoadState state in states)
        {
            least = Math.Min(least, state.Body.GapAt(n, wheel, line.In(state), along, place));
        }

        return least;
    }

    // At rest, rim and all; and the tyre alone as it leans on its wheel.
    private Clearing OfKnuckle(int i, in WheelSolid wheel, ReadOnlySpan<Vec3> points, in CylinderObstacle cylinder)
    {
        bool piece = _clearance.Items[i].Piece is not null;
        var rest = piece ? CylinderClearing.Of(wheel, cylinder) : PolylineClearing.Of(wheel, points);
        if (!(_lean.In > 0))
        {
            return rest;
        }

        WheelSolid tyre = wheel.TyreAlone();
        Span<Vec3> met = points.Length <= BodyGaps.FewPoints ? stackalloc Vec3[BodyGaps.FewPoints] : new Vec3[points.Length];
        for (int k = 0; k < points.Length; k++)
        {
            met[k] = _lean.Meets(points[k]);
        }

        var leaning = piece ? CylinderClearing.Of(tyre, _lean.Meets(cylinder)) : PolylineClearing.Of(tyre, met[..points.Length]);
        return leaning.Gap < rest.Gap ? leaning : rest;
    }

    /// <summary>The gap of one body item at a pose, under the load that makes it least: as the first touch is searched.</summary>
    internal readonly ref struct GapOnTheWay(ClearanceNumbers owner, CornerReader n, WheelSolid wheel)
    {
        private readonly WheelSolid _wheel = wheel;

        public WorstPose Worst(int item) => owner._worst[item];

        /// <summary>The other wheel's travel in a worst pose, m; null where it plays no part.</summary>
        public double? OtherAt(in WorstPose worst)
        {
            var (droop, bump) = n.SweptOther();
            return bump > droop ? droop + (worst.Other * (bump - droop)) : null;
        }

        public Clearing At(int item, in PosePlace place) => OfBody(n, owner._states[item], _wheel, owner.LineOf(item), place);

        /// <summary>A gap that is at most the true one, cheap where the wheel is far away.</summary>
        public double AtLeast(int item, in PosePlace place)
        {
            double least = double.PositiveInfinity;
            foreach (LoadState state in owner._states[item])
            {
                least = state.Places.Pose(n, n.Motion, place, out var pose)
                    ? Math.Min(least, BodyGaps.RoughGap(
                        state.Places, n, place, SpindleFrame.Of(pose), _wheel, owner.LineOf(item).In(state))) : least;
            }

            return least - BodyGaps.RoughError;
        }
    }
}
