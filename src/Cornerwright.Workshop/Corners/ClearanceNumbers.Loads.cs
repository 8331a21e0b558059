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

    /// <summary>Beyond this the loads are not told apart on the way to a first touch, m.</summary>
    private const double FarFromAll = 0.03;

    /// <summary>Where the wheel goes at rest and under each load that counts for an item, after <see cref="Search"/>.</summary>
    public IReadOnlyList<LoadState> StatesOf(int item) => _states[item];

    /// <summary>The load under which an item comes nearest, in words; empty at rest.</summary>
    public string LoadWords(int item) =>
        _states[item] is { Length: > 0 } states ? states[_worst[item].State].Sway?.Words ?? "" : "";

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

    private void SearchStates(int i, CornerReader poses, in WheelSolid toBody, PoseGrid grid, ref double[] room)
    {
        _states[i] = [LoadState.AtRest(_places), .. Loads(poses, _points[i]).Select(s => LoadState.Under(_places, s, _sways!))];
        if (_clearance.Items[i].Link is not null && _lean.In > 0)
        {
            _states[i] = [.. _states[i], LoadState.Leaning(_places, _lean)];
        }

        int needed = LeastPoses.Room(grid, _states[i].Length);
        room = room.Length < needed ? new double[needed] : room;
        _worst[i] = new LeastPoses(_states[i], poses, grid, toBody, LineOf(i)).Find(room, out _rivals[i]);
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

    private Clearing OfBody(CornerReader n, LoadState[] states, in WheelSolid wheel, in NearLine line, in PosePlace place) =>
        _places.Frame(n, place, out SpindleFrame rest) ? BodyGaps.Of(rest, new(n, place), states, wheel, line) : Unknown;

    private double GapAt(CornerReader n, LoadState[] states, in WheelSolid wheel, in NearLine line, double along, in PosePlace place)
    {
        double least = double.PositiveInfinity;
        bool there = _places.Frame(n, place, out SpindleFrame rest);
        foreach (LoadState state in states)
        {
            least = Math.Min(least, there ? BodyGaps.GapAt(rest, new(n, place), state, wheel, line, along) : double.NaN);
        }

        return least;
    }

    // At rest, rim and all; and the tyre alone as it leans on its wheel: the nearer of the two, and the other one.
    private (WorstPose Worst, WorstPose Other) OfKnuckle(int i, in WheelSolid wheel)
    {
        var (points, cylinder) = (_points[i], _cylinders[i]);
        var rest = Worst(OfKnuckle(i, wheel, points, cylinder), cylinder, 0);
        if (!(_lean.In > 0))
        {
            return (rest, rest);
        }

        var leaning = Worst(OfKnuckle(i, wheel, points, cylinder, leaning: true), _lean.Meets(cylinder), 1);
        return leaning.Clearing.Gap < rest.Clearing.Gap ? (leaning, rest) : (rest, leaning);

        WorstPose Worst(in Clearing clearing, in CylinderObstacle met, int state) =>
            new(0, 0, clearing, _clearance.Items[i].Piece is null ? default : TouchPlace.On(met, clearing), State: state);
    }

    private Clearing OfKnuckle(int i, in WheelSolid wheel, ReadOnlySpan<Vec3> points, in CylinderObstacle cylinder, bool leaning)
    {
        if (!leaning)
        {
            return OfKnuckle(i, wheel, points, cylinder);
        }

        Span<Vec3> met = points.Length <= BodyGaps.FewPoints ? stackalloc Vec3[BodyGaps.FewPoints] : new Vec3[points.Length];
        met = met[..points.Length];
        Meet(points, met);
        return OfKnuckle(i, wheel.TyreAlone(), met, _lean.Meets(cylinder));
    }

    private Clearing OfKnuckle(int i, in WheelSolid wheel, ReadOnlySpan<Vec3> points, in CylinderObstacle cylinder) =>
        _clearance.Items[i].Piece is null ? PolylineClearing.Of(wheel, points) : CylinderClearing.Of(wheel, cylinder);

    // Of a moved row, at the place found.
    private double GapAt(int i, in WheelSolid wheel, ReadOnlySpan<Vec3> points, in CylinderObstacle cylinder, in WorstPose worst)
    {
        bool leans = worst.State == 1;
        WheelSolid met = leans ? wheel.TyreAlone() : wheel;
        if (_clearance.Items[i].Piece is null)
        {
            // Each corner of a line was read by itself, and may come to be the nearest.
            return OfKnuckle(i, wheel, points, cylinder, leans).Gap;
        }

        // An overlap is measured square to the cylinder's axis, which a single place cannot tell.
        var there = leans ? _lean.Meets(cylinder) : cylinder;
        return worst.Clearing.Gap < 0
            ? CylinderClearing.Of(met, there).Gap
            : met.SignedDistance(there.Foot + (there.Direction * (worst.Place.Along * there.Length)) + (worst.Place.Off * there.Radius));
    }

    private void Meet(ReadOnlySpan<Vec3> points, Span<Vec3> met)
    {
        for (int k = 0; k < points.Length; k++)
        {
            met[k] = _lean.Meets(points[k]);
        }
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

        public Clearing At(int item, in PosePlace place) => owner.OfBody(n, owner._states[item], _wheel, owner.LineOf(item), place);

        /// <summary>A gap that is at most the true one, cheap where the wheel is far away; infinite where it cannot be.</summary>
        public double AtLeast(int item, in PosePlace place)
        {
            if (!owner._places.Frame(n, place, out SpindleFrame rest))
            {
                return double.PositiveInfinity;
            }

            var line = owner.LineOf(item);
            var at = new GapAsk(n, place);
            var states = owner._states[item];
            double least = BodyGaps.AtLeast(rest, at, states[0], _wheel, line, double.PositiveInfinity), most = 0;
            foreach (LoadState state in states)
            {
                most = Math.Max(most, state.Most);
            }

            if (least > FarFromAll && !line.Moves)
            {
                return least - most;
            }

            foreach (LoadState state in states)
            {
                least = BodyGaps.AtLeast(rest, at, state, _wheel, line, least);
            }

            return least;
        }
    }
}
