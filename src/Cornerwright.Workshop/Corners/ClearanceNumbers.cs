using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Axles;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Allowing;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <summary>Least gaps between one corner's wheel and everything near it, for one row of inputs.</summary>
internal sealed partial class ClearanceNumbers
{
    /// <summary>
    /// Points on each arc of the tyre's section; twelve keep the outline within 0.07 mm of its smooth curve (docs/theory/clearance.md §2).
    /// </summary>
    private const int ArcPoints = 12;

    private readonly CornerPlan _plan;
    private readonly ClearancePlan _clearance;
    private readonly ThingPlaces _places;
    private readonly WorstPose[] _worst;
    private readonly RivalPoses[] _rivals;
    private readonly WorstPose[] _onWheel;        // of knuckle things: at rest, or with the tyre leaning, whichever is the lesser
    private readonly LoadState[][] _states;   // of body things: at rest first, then under each load
    private readonly Vec3[][] _points;            // body things in B, knuckle things in S
    private readonly CylinderObstacle[] _cylinders;
    private readonly StandingLink[] _links;
    private readonly double[] _solid = new double[2 * WheelSolid.BufferLength(ArcPoints)];
    private readonly double[] _moved = new double[2 * WheelSolid.BufferLength(ArcPoints)];
    private readonly Vec3[] _movedPoints;
    private readonly double _growth, _shift;
    private readonly SwayCorner? _sways;
    private readonly WheelLean _lean;
    private bool _sound;   // of the row searched

    public ClearanceNumbers(CornerPlan plan)
    {
        (_plan, _clearance) = (plan, plan.Clearance);
        _places = new ThingPlaces(plan);
        int most = _clearance.Items.Count == 0 ? 0 : _clearance.Items.Max(i => i.Points);
        _movedPoints = new Vec3[most];
        _worst = new WorstPose[_clearance.Items.Count];
        _rivals = new RivalPoses[_worst.Length];
        _onWheel = new WorstPose[_worst.Length];
        _states = [.. _worst.Select(_ => Array.Empty<LoadState>())];
        _tyreAlone = [.. _worst.Select(_ => double.PositiveInfinity)];
        _points = [.. _clearance.Items.Select(i => new Vec3[i.Points])];
        _cylinders = new CylinderObstacle[_clearance.Items.Count];
        _links = new StandingLink[_clearance.Items.Count];
        (_growth, _shift) = (plan.Allowed.Growth, plan.Allowed.Lean);
        (_sways, _lean) = LoadsOf(plan);
    }

    /// <summary>By item: where it is nearest. Gap not finite where it cannot be computed.</summary>
    public ReadOnlySpan<WorstPose> Worst => _worst;

    /// <summary>Where wheel and things are.</summary>
    public ThingPlaces Places => _places;

    /// <summary>The first touch above ride, over all steer.</summary>
    public FirstTouch Touch { get; private set; } = FirstTouch.None;

    internal static Clearing Unknown => new(double.NaN, WheelPart.Tyre, default, default, 0, false);

    /// <summary>Ends of the travel swept, m.</summary>
    public (double Droop, double Bump) Range(CornerReader n) => _places.Range(n);

    /// <summary>Finds the least gap of every item, over travel and steer, and the first touch.</summary>
    public void Search(SolvedCorner corner)
    {
        Array.Fill(_worst, new WorstPose(0, 0, Unknown, default));
        Array.Fill(_states, []);
        Array.Fill(_tyreAlone, double.PositiveInfinity);
        Touch = FirstTouch.None;
        var reads = corner.Reads;
        CornerReader outline = new(corner, reads?.Outline), poses = new(corner, reads?.Poses);
        _sound = _clearance.Missing.Count == 0 && IsSound(outline) && IsSoundNow(outline);
        var range = Range(poses);
        if (_sound)
        {
            WheelSolid toBody = Solid(outline, _solid, forBody: true), toKnuckle = Solid(outline, _solid, forBody: false);
            (_plan.HasMotion ? poses.Motion as SolvedAxleMotion : null)?.Sample(range, poses.SweptOther());
            var grid = _plan.HasMotion && _clearance.OnBody ? new PoseGrid(_places, poses, _clearance, range) : null;
            double[] room = [];
            for (int i = 0; i < _worst.Length; i++)
            {
                SearchOne(i, new(corner, reads?.Place[i]), poses, toBody, toKnuckle, grid, ref room);
            }

            Touch = FirstTouch.Find(new GapOnTheWay(this, poses, toBody), _clearance, poses, range, _plan.HighestTravel);
        }

        if (reads is not null)
        {
            NoteGaps(reads);
        }
    }

    private void SearchOne(int i, CornerReader place, CornerReader poses, in WheelSolid toBody, in WheelSolid toKnuckle, PoseGrid? grid,
        ref double[] room)
    {
        var item = _clearance.Items[i];
        if (item.Missing.Count > 0 || !_places.Place(place, i, _points[i], out _cylinders[i], out _links[i]))
        {
            return;
        }

        if (item.AttachedTo == AttachedTo.Body)
        {
            SearchStates(i, poses, toBody, grid!, ref room);
        }
        else
        {
            (_worst[i], _onWheel[i]) = OfKnuckle(i, toKnuckle);
        }

        SearchTyreAlone(i, poses, item.AttachedTo == AttachedTo.Body ? toBody : toKnuckle, grid, room);
    }

    // A gap hangs on the wheel's outline and on where the thing stands; one to the body on where the wheel can be, too.
    private void NoteGaps(CornerReads reads)
    {
        for (int i = 0; i < _worst.Length; i++)
        {
            reads.Gap[i].Add(reads.Outline);
            reads.Gap[i].Add(reads.Place[i]);
            if (_clearance.Items[i].AttachedTo == AttachedTo.Body)
            {
                reads.Gap[i].Add(reads.Poses);
                reads.TyreTouch.Add(reads.Gap[i]);
            }
        }
    }

    /// <summary>
    /// The gaps of a moved row of inputs, in the states and at the places found by the search: the least gap
    /// changes, to first order, as the gap there does.
    /// </summary>
    /// <param name="corner">The moved row, solved.</param>
    /// <param name="gaps">In: the gaps found; out: those that the move changes.</param>
    /// <param name="of">The corner that was searched, with notes.</param>
    /// <param name="moved">The inputs that differ.</param>
    /// <param name="wanted">Holds the gaps that are asked for; null for all.</param>
    /// <returns>Travel of the first touch.</returns>
    public double Follow(SolvedCorner corner, Span<double> gaps, SolvedCorner of, ReadSet moved, ReadSet? wanted)
    {
        var (searched, reads, n) = (of.Clearance, of.Reads!, corner.Read);
        double touch = searched.Touch.Travel;
        if (!searched._sound)
        {
            return touch;
        }

        bool outline = reads.Outline.Meets(moved), poses = reads.Poses.Meets(moved);
        if (outline && !(IsSound(n) && IsSoundNow(n)))
        {
            gaps.Fill(double.NaN);
            return touch;
        }

        // Ends of travel that were known and are out of reach now: where the wheel goes is lost, and no usual travel stands in for it.
        bool lost = poses && EndsKnown(of.Read) && !EndsKnown(n);
        var (range, others) = (Range(n), n.SweptOther());
        double[] buffer = outline ? _moved : searched._solid;
        WheelSolid toBody = outline ? Solid(n, buffer, forBody: true) : Written(buffer, forBody: true);
        WheelSolid toKnuckle = outline ? Solid(n, buffer, forBody: false) : Written(buffer, forBody: false);
        for (int i = 0; i < gaps.Length; i++)
        {
            var item = _clearance.Items[i];
            bool placed = reads.Place[i].Meets(moved), body = item.AttachedTo == AttachedTo.Body;
            bool asked = wanted is null || wanted.HasGap(i);
            if (!asked || item.Missing.Count > 0 || !(placed || outline || (body && poses)))
            {
                continue;
            }

            Span<Vec3> points = placed ? _movedPoints.AsSpan(0, item.Points) : searched._points[i];
            var (cylinder, link) = (searched._cylinders[i], searched._links[i]);
            if (placed && !_places.Place(n, i, points, out cylinder, out link))
            {
                gaps[i] = double.NaN;
                continue;
            }

            ref readonly var worst = ref searched._worst[i];
            gaps[i] = body && lost ? double.NaN
                : body
                ? searched.LeastOf(n, toBody, new(points, link, _lean), i, range, others)
                : Math.Min(
                    GapAt(i, toKnuckle, points, cylinder, worst), GapAt(i, toKnuckle, points, cylinder, searched._onWheel[i]));
            touch = body && searched.Touch.Item == i
                ? TouchOf(n, toBody, new(points, link, _lean), searched.Touch, searched._states[i]) : touch;
        }

        return touch;
    }

    private static bool EndsKnown(CornerReader n) => double.IsFinite(n.Droop) && double.IsFinite(n.FullBump);

    // A step by the slope, and one by the secant: the gap flattens where the tyre's shoulder passes.
    private double TouchOf(CornerReader n, in WheelSolid wheel, in NearLine line, in FirstTouch found, LoadState[] states)
    {
        double from = found.Travel, gap = GapAt(n, states, wheel, line, found.Along, found.Way.At(from));
        double touch = from - (gap / found.Slope);
        double left = GapAt(n, states, wheel, line, found.Along, found.Way.At(touch)), slope = (left - gap) / (touch - from);
        return touch - (slope < 0 && Math.Abs(touch - from) > 1e-7 ? left / slope : 0);
    }

    /// <summary>The gap of one item with both wheels rising alike.</summary>
    public Clearing At(CornerReader n, int item, double travel, double steer) => At(n, item, new PosePlace(travel, steer, travel));

    /// <summary>The gap of one item at a pose, for pictures; the numbers must have been searched.</summary>
    public Clearing At(CornerReader n, int item, in PosePlace place)
    {
        if (_clearance.Missing.Count > 0 || !IsSound(n) || !IsSoundNow(n) || _clearance.Items[item].Missing.Count > 0)
        {
            return Unknown;
        }

        if (_clearance.Items[item].AttachedTo == AttachedTo.Body)
        {
            return OfBody(n, _states[item], Written(_solid, forBody: true), LineOf(item), place);
        }

        int count = _clearance.Items[item].Gaps.Count;
        Span<Vec3> points = count <= BodyGaps.FewPoints ? stackalloc Vec3[BodyGaps.FewPoints] : new Vec3[count];
        points = points[..count];
        WheelSolid wheel = Written(_solid, forBody: false);
        if (!_places.Place(n, item, place.Travel, points, out var cylinder, out _))
        {
            return Unknown;
        }

        var rest = OfKnuckle(item, wheel, points, cylinder);
        var leaning = _lean.In > 0 ? OfKnuckle(item, wheel, points, cylinder, leaning: true) : rest;
        return leaning.Gap < rest.Gap ? leaning : rest;
    }

    /// <summary>The strut's pieces in the spindle frame at a travel; empty where the strut is unknown.</summary>
    public IReadOnlyList<(StrutPiece Piece, CylinderObstacle Cylinder)> Strut(CornerReader n, double travel) =>
        [.. _clearance.Items.Where(i => i.Piece is not null && i.Missing.Count == 0 && _clearance.Missing.Count == 0)
            .Select(i => (i.Piece!.Value, _places.Cylinder(n, i.Piece!.Value, travel)))];

    private NearLine LineOf(int item) => new(_points[item], _links[item], _lean);

    private double LeastOf(CornerReader n, in WheelSolid wheel, in NearLine line, int item,
        (double Droop, double Bump) range, (double Droop, double Bump) others)
    {
        var (worst, rivals) = (_worst[item], _rivals[item]);
        if (_states[item].Length == 0)
        {
            return double.NaN;
        }

        double least = At(n, wheel, line, worst.Clearing.Along, worst.State, worst.Share, worst.Steer, worst.Other);
        foreach (RivalPose rival in (ReadOnlySpan<RivalPose>)[rivals.First, rivals.Second, rivals.Third])
        {
            if (rival.Exists)
            {
                least = Math.Min(least, At(n, wheel, line, rival.Along, rival.State, rival.Share, rival.Steer, rival.Other));
            }
        }

        return least;

        double At(CornerReader n, in WheelSolid wheel, in NearLine line, double along, int state, double share, double steer, double other)
        {
            PosePlace place = new(
                range.Droop + (share * (range.Bump - range.Droop)), steer, others.Droop + (other * (others.Bump - others.Droop)));
            return _places.Frame(n, place, out SpindleFrame rest)
                ? BodyGaps.GapAt(rest, new(n, place), _states[item][state], wheel, line, along) : double.NaN;
        }
    }

    private bool IsSound(CornerReader n) =>
        _plan.Wheel!.Tyre(n.X, _growth, _shift).IsSound && _plan.Wheel.Tyre(n.X, _growth, 0).IsSound && _plan.Wheel.Rim(n.X).IsSound;

    private bool IsSoundNow(CornerReader n) => _plan.WheelNow!.Tyre(n.X, 0, 0).IsSound && _plan.WheelNow.Rim(n.X).IsSound;

    private WheelSolid Solid(CornerReader n, double[] buffer, bool forBody) =>
        WheelSolid.Write(_plan.Wheel!.Tyre(n.X, _growth, forBody ? _shift : 0), _plan.Wheel.Rim(n.X), ArcPoints, Half(buffer, forBody));

    private static WheelSolid Written(double[] buffer, bool forBody) => WheelSolid.Written(ArcPoints, Half(buffer, forBody));

    private static Span<double> Half(double[] buffer, bool forBody) =>
        forBody ? buffer.AsSpan(0, buffer.Length / 2) : buffer.AsSpan(buffer.Length / 2);
}
