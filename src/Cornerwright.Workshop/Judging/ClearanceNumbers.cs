using Cornerwright.Garage.Cars;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Springs;

namespace Cornerwright.Workshop.Judging;

/// <summary>The state in which one thing comes nearest to the wheel.</summary>
/// <param name="Share">Of the way from full droop to full bump, 0 to 1; keeps its meaning when the ends of travel move.</param>
internal readonly record struct WorstPose(double Share, double Steer, Clearing Clearing);

/// <summary>Least gaps between one corner's wheel and everything near it, for one row of inputs.</summary>
internal sealed class ClearanceNumbers
{
    /// <summary>Points on each arc of the tyre's section; four keep the outline within 0.05 mm of its smooth curve.</summary>
    private const int ArcPoints = 4;

    private const int SweepSamples = 13;
    private const double SweepAccuracy = 5e-5;

    /// <summary>Swept when nothing known ends the travel, m: about the travel of a road car, either way.</summary>
    private const double UsualTravel = 0.06;

    /// <summary>How far beyond full bump the first touch is looked for, m.</summary>
    private const double BeyondBump = 0.04;

    private readonly CornerPlan _plan;
    private readonly ClearancePlan _clearance;
    private readonly WorstPose[] _worst;
    private readonly double[] _toBody = new double[WheelSolid.BufferLength(ArcPoints)];
    private readonly double[] _toKnuckle = new double[WheelSolid.BufferLength(ArcPoints)];
    private readonly double _growth, _shift;
    private (int Item, double Travel, double Slope) _touch = (-1, double.PositiveInfinity, 0);

    public ClearanceNumbers(CornerPlan plan)
    {
        (_plan, _clearance) = (plan, plan.Clearance);
        _worst = new WorstPose[_clearance.Items.Count];
        (_growth, _shift) = (Checks.Say.Limit(plan.Limits.TyreGrowth), Checks.Say.Limit(plan.Limits.TyreShift));
    }

    /// <summary>By item: where it is nearest. Gap not finite where it cannot be computed.</summary>
    public ReadOnlySpan<WorstPose> Worst => _worst;

    /// <summary>Travel at which the tyre or rim first touches something of the body, straight ahead; infinite where it does not.</summary>
    public double TyreTouch { get; private set; } = double.PositiveInfinity;

    /// <summary>Ends of the travel swept, m.</summary>
    public (double Droop, double Bump) Range(CornerNumbers n)
    {
        double droop = double.IsFinite(n.Droop) ? n.Droop : -UsualTravel, bump = double.IsFinite(n.FullBump) ? n.FullBump : UsualTravel;
        droop = Math.Max(droop, _plan.LowestTravel);
        return (droop, Math.Clamp(bump, droop, _plan.HighestTravel));
    }

    /// <summary>Finds the least gap of every item, over travel and steer.</summary>
    public void Search(CornerNumbers n)
    {
        if (!Write(n, out var toBody, out var toKnuckle))
        {
            return;
        }

        var range = Range(n);
        for (int i = 0; i < _worst.Length; i++)
        {
            _worst[i] = Unknown;
            var item = _clearance.Items[i];
            if (item.Missing.Count > 0)
            {
                continue;
            }

            if (item.AttachedTo == AttachedTo.Knuckle)
            {
                _worst[i] = new WorstPose(0, 0, OfKnuckle(n, item, toKnuckle, range.Droop));
                continue;
            }

            SearchSteer(n, i, toBody, 0, range);
            foreach (var gap in item.Gaps)
            {
                double steer = gap.Steer == InputTable.None ? 0 : n.X[gap.Steer];
                if (steer != 0)
                {
                    SearchSteer(n, i, toBody, steer, range);
                }
            }

            if (_clearance.Lock > 0)
            {
                SearchSteer(n, i, toBody, _clearance.Lock, range);
                SearchSteer(n, i, toBody, -_clearance.Lock, range);
            }
        }

        SearchTouch(n, toBody, range);
    }

    /// <summary>Where the first touch was found by another set of numbers for the same corner: <see cref="Follow"/> starts there.</summary>
    public void TakeTouchFrom(ClearanceNumbers searched) => _touch = searched._touch;

    /// <summary>The gaps of a moved row of inputs in the states found by <see cref="Search"/>, without searching again: the least gap changes, to first order, as the gap in its worst state does.</summary>
    public void Follow(CornerNumbers n, Span<double> gaps, ReadOnlySpan<WorstPose> from, out double touch)
    {
        touch = double.PositiveInfinity;
        if (!Write(n, out var toBody, out var toKnuckle))
        {
            gaps.Fill(double.NaN);
            return;
        }

        var range = Range(n);
        for (int i = 0; i < gaps.Length; i++)
        {
            var item = _clearance.Items[i];
            double travel = range.Droop + (from[i].Share * (range.Bump - range.Droop));
            gaps[i] = item.Missing.Count > 0 ? double.NaN
                : item.AttachedTo == AttachedTo.Knuckle ? OfKnuckle(n, item, toKnuckle, range.Droop).Gap
                : OfBody(n, item, toBody, travel, from[i].Steer).Gap;
        }

        if (_touch.Item >= 0)
        {
            double gap = OfBody(n, _clearance.Items[_touch.Item], toBody, _touch.Travel, 0).Gap;
            touch = _touch.Travel - (gap / _touch.Slope);
        }
    }

    /// <summary>The gap of one item at a travel and steer, for pictures.</summary>
    public Clearing At(CornerNumbers n, int item, double travel, double steer) =>
        Write(n, out var toBody, out var toKnuckle) && _clearance.Items[item].Missing.Count == 0
            ? _clearance.Items[item].AttachedTo == AttachedTo.Knuckle ? OfKnuckle(n, _clearance.Items[item], toKnuckle, travel) : OfBody(n, _clearance.Items[item], toBody, travel, steer)
            : Unknown.Clearing;

    /// <summary>The strut's pieces in the spindle frame at a travel; empty where the strut is unknown.</summary>
    public IReadOnlyList<(StrutPiece Piece, CylinderObstacle Cylinder)> Strut(CornerNumbers n, double travel) =>
        [.. _clearance.Items.Where(i => i.Piece is not null && i.Missing.Count == 0 && _clearance.Missing.Count == 0).Select(i => (i.Piece!.Value, Cylinder(n, i.Piece!.Value, travel)))];

    private static WorstPose Unknown => new(0, 0, new Clearing(double.NaN, WheelPart.Tyre, default, default, 0, false));

    private bool Write(CornerNumbers n, out WheelSolid toBody, out WheelSolid toKnuckle)
    {
        toBody = default;
        toKnuckle = default;
        if (_clearance.Missing.Count > 0)
        {
            Array.Fill(_worst, Unknown);
            return false;
        }

        var (wheel, rim) = (_plan.Wheel!, _plan.Wheel!.Rim(n.X));
        TyreSection body = wheel.Tyre(n.X, _growth, _shift), knuckle = wheel.Tyre(n.X, _growth, 0);
        if (!body.IsSound || !knuckle.IsSound || !rim.IsSound || !_plan.WheelNow!.Tyre(n.X, 0, 0).IsSound)
        {
            Array.Fill(_worst, Unknown);
            return false;
        }

        toBody = WheelSolid.Write(body, rim, ArcPoints, _toBody);
        toKnuckle = WheelSolid.Write(knuckle, rim, ArcPoints, _toKnuckle);
        return true;
    }

    private void SearchSteer(CornerNumbers n, int i, in WheelSolid wheel, double steer, (double Droop, double Bump) range)
    {
        double bump = steer == 0 ? range.Bump : Math.Clamp(_clearance.BumpAtLock, range.Droop, range.Bump);
        var gap = new BodyGap(this, n, _clearance.Items[i], wheel, steer);
        var least = TravelSweep.Least(ref gap, range.Droop, bump, SweepSamples, SweepAccuracy);
        if (!double.IsFinite(_worst[i].Clearing.Gap) || least.Gap < _worst[i].Clearing.Gap)
        {
            double length = range.Bump - range.Droop;
            double share = length > 0 ? (least.Travel - range.Droop) / length : 0;
            _worst[i] = new WorstPose(share, steer, OfBody(n, _clearance.Items[i], wheel, least.Travel, steer));
        }
    }

    // From ride (or the reference height) upward, past full bump: the first travel at which anything straight ahead is touched.
    private void SearchTouch(CornerNumbers n, in WheelSolid wheel, (double Droop, double Bump) range)
    {
        const int Steps = 12;
        _touch = (-1, double.PositiveInfinity, 0);
        double start = n.Ride.Length > 0 && double.IsFinite(n.Ride[0]) ? Math.Clamp(n.Ride[0], range.Droop, range.Bump) : Math.Clamp(0, range.Droop, range.Bump);
        double end = Math.Min(range.Bump + BeyondBump, _plan.HighestTravel);
        for (int i = 0; i < _clearance.Items.Count; i++)
        {
            var item = _clearance.Items[i];
            if (item.AttachedTo != AttachedTo.Body || item.Missing.Count > 0 || !(OfBody(n, item, wheel, start, 0).Gap > 0))
            {
                continue;
            }

            double low = start;
            for (int k = 1; k <= Steps; k++)
            {
                double high = start + ((end - start) * k / Steps);
                if (OfBody(n, item, wheel, high, 0).Gap > 0)
                {
                    low = high;
                    continue;
                }

                for (int b = 0; b < 30 && high - low > 1e-6; b++)
                {
                    double middle = 0.5 * (low + high);
                    (low, high) = OfBody(n, item, wheel, middle, 0).Gap > 0 ? (middle, high) : (low, middle);
                }

                if (high < _touch.Travel)
                {
                    const double Step = 1e-4;
                    double slope = (OfBody(n, item, wheel, high + Step, 0).Gap - OfBody(n, item, wheel, high - Step, 0).Gap) / (2 * Step);
                    _touch = Math.Abs(slope) > 1e-6 ? (i, high, slope) : _touch;
                }

                break;
            }
        }

        TyreTouch = _touch.Travel;
    }

    private Clearing OfKnuckle(CornerNumbers n, ClearanceItem item, in WheelSolid wheel, double travel)
    {
        if (item.Piece is { } piece)
        {
            var cylinder = Cylinder(n, piece, travel);
            return cylinder.IsSound ? CylinderClearing.Of(wheel, cylinder) : Unknown.Clearing;
        }

        Span<Vec3> points = stackalloc Vec3[ClearancePlan.MostGaps];
        var (tyre, rim) = (_plan.WheelNow!.Tyre(n.X, 0, 0), _plan.WheelNow!.Rim(n.X));
        for (int i = 0; i < item.Gaps.Count; i++)
        {
            points[i] = Read(n, item.Gaps[i]).InSpindle(tyre, rim);
        }

        return PolylineClearing.Of(wheel, points[..item.Gaps.Count]);
    }

    private Clearing OfBody(CornerNumbers n, ClearanceItem item, in WheelSolid wheel, double travel, double steer)
    {
        if (!Pose(n, n.Motion, travel, steer, out var pose))
        {
            return Unknown.Clearing;
        }

        var (tyre, rim) = (_plan.WheelNow!.Tyre(n.X, 0, 0), _plan.WheelNow!.Rim(n.X));
        var frame = SpindleFrame.Of(pose);
        Span<Vec3> points = stackalloc Vec3[ClearancePlan.MostGaps];
        for (int i = 0; i < item.Gaps.Count; i++)
        {
            var gap = item.Gaps[i];
            double travelThen = gap.Travel == InputTable.None ? 0 : n.X[gap.Travel], steerThen = gap.Steer == InputTable.None ? 0 : n.X[gap.Steer];
            if (!Pose(n, n.MotionNow, travelThen, steerThen, out var then))
            {
                return Unknown.Clearing;
            }

            points[i] = frame.ToSpindle(Read(n, gap).InBody(tyre, rim, then));
        }

        return PolylineClearing.Of(wheel, points[..item.Gaps.Count]);
    }

    private static GapReading Read(CornerNumbers n, in GapSlot gap) => new(gap.From, gap.Direction, gap.Clock, n.X[gap.Gap]);

    private bool Pose(CornerNumbers n, CornerMotion motion, double travel, double steer, out WheelPose pose)
    {
        bool usable = motion.WheelAt(travel, out var wheel).IsUsable();
        pose = WheelPose.StraightAhead(default, _clearance.Side, wheel, travel);
        if (usable && steer != 0)
        {
            // An unknown axis stands upright through the hub face: the wheel then turns on the spot.
            double kingpin = At(n, _clearance.Kingpin), caster = At(n, _clearance.Caster), offset = At(n, _clearance.HubOffset);
            pose = pose.Steered(Mechanics.Clearance.SteeringAxis.AtHubHeight(pose, _clearance.Side, kingpin, caster, offset, 0), steer);
        }

        return usable;
    }

    private static double At(CornerNumbers n, int index) => index == InputTable.None ? 0 : n.X[index];

    private CylinderObstacle Cylinder(CornerNumbers n, StrutPiece piece, double travel)
    {
        var (c, x) = (_clearance, n.X);
        var line = StrutLine.FromGap(
            _plan.WheelNow!.Tyre(x, 0, 0), _plan.WheelNow!.Rim(x), c.StrutFrom, Mechanics.Clearance.GapDirection.Nearest,
            x[c.StrutGap], x[c.TubeNow] / 2, x[c.StrutLean], x[c.StrutReference]).AfterClampCamber(_plan.Motion.ClampChange(x));
        double perch = _plan.Station.Perch == InputTable.None ? 0 : x[_plan.Station.Perch];
        double body = _plan.Station.Body == InputTable.None ? perch : x[_plan.Station.Body];
        double space = _plan.HasSpring ? n.SpringSpace(travel) : 0;
        double stack = _plan.HasSpring && double.IsFinite(space) ? Math.Min(space, SpringStack.FreeLength(n.Stack)) : 0;
        double helper = c.HelperSlot >= 0 && _plan.HasSpring ? n.Stack[c.HelperSlot].LengthAt(Math.Max(0, n.StackAt(travel).Force is var f && double.IsFinite(f) ? f : 0)) : 0;
        var parts = new StrutParts(
            x[c.Tube], 0, Math.Max(body, 0), x[c.PerchDiameter], perch, x[c.PerchDepth], x[c.SpringDiameter], stack,
            c.HelperDiameter == InputTable.None ? 0 : x[c.HelperDiameter], helper, c.HelperBelow);
        return StrutFurniture.Piece(line, parts, piece);
    }

    private readonly ref struct BodyGap(ClearanceNumbers owner, CornerNumbers n, ClearanceItem item, WheelSolid wheel, double steer) : IGapOfTravel
    {
        private readonly WheelSolid _wheel = wheel;

        public double GapAt(double travel) => owner.OfBody(n, item, _wheel, travel, steer).Gap;
    }
}
