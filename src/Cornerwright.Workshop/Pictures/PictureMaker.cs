using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Parts;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Pictures;

/// <summary>Works out what the pictures of a corner are drawn from. No drawing here: that is the pages' part.</summary>
internal static class PictureMaker
{
    private const int ArcPoints = 12;

    /// <summary>A coil whose outer diameter nobody gave is drawn this much outside its bore, m.</summary>
    private const double WallEstimate = 0.013;

    public static CornerPicture Of(CornerResult corner) =>
        new(corner.Plan.Place, Marks(corner), Stack(corner), Wheel(corner));

    private static IReadOnlyList<TravelMark> Marks(CornerResult corner)
    {
        var marks = new List<TravelMark>();
        foreach (var (mark, index) in corner.Marks)
        {
            if (mark.CanSpeak && double.IsFinite(corner.Value(index)))
            {
                marks.Add(new TravelMark(mark.Event, corner.Value(index), 2 * corner.Doubtful(index).Doubt.StandardDeviation, mark.Words));
            }
        }

        return [.. marks.OrderBy(m => m.Travel).ThenBy(m => m.Event)];
    }

    private static IReadOnlyList<StackState> Stack(CornerResult corner)
    {
        var (plan, n) = (corner.Plan, corner.Numbers.Read);
        if (!plan.HasSpring)
        {
            return [];
        }

        double ride = n.Ride.Length > 0 ? n.Ride[CornerPlan.Wanted] : double.NaN;
        return [.. new[] { ("full droop", n.Droop), ("ride", ride), ("full bump", n.FullBump) }.Where(s => double.IsFinite(s.Item2))
            .Select(s => State(plan, n, s.Item1, s.Item2)).OfType<StackState>()];
    }

    /// <summary>Coils this near to solid are drawn touching, m: the travel of coil bind is itself found to 1e-8 m.</summary>
    private const double CoilsTouch = 1e-6;

    private static StackState? State(CornerPlan plan, CornerReader n, string name, double travel)
    {
        double space = n.SpringSpace(travel);
        var force = n.StackAt(travel);
        if (!double.IsFinite(space) || !double.IsFinite(force.Force))
        {
            return null;
        }

        double rod = plan.HasDamper ? n.RodShowing(travel) : double.NaN;
        var pieces = new List<StackPiece>();
        for (int i = 0; i < plan.Station.Stack.Count; i++)
        {
            var (slot, element) = (plan.Station.Stack[i], n.Stack[i]);
            double length = element.LengthAt(force.Force);
            pieces.Add(new StackPiece(
                slot.Part.Name, length, Outer(slot), slot.Spring is not null,
                slot.Spring is not null && length <= element.SolidLength + CoilsTouch,
                element.FreeLength + slot.Settles, element.SolidLength));
        }

        return new StackState(name, travel, space, force.Gap, force.Force, double.IsFinite(rod) ? rod : null, pieces);
    }

    private static double Outer(StackSlot slot) => slot.Spring is { } spring
        ? spring.OuterDiameter?.Si ?? ((spring.InnerDiameter?.Si ?? 0.060) + (2 * (spring.WireDiameter?.Si ?? WallEstimate)))
        : Math.Max(slot.Sheet!.LowerRegister?.Si ?? 0.060, slot.Sheet.UpperRegister?.Si ?? 0.060) + (2 * WallEstimate);

    private static WheelSection? Wheel(CornerResult corner)
    {
        var (plan, n) = (corner.Plan, corner.Numbers.Read);
        if (plan.Clearance.Missing.Count > 0 || !plan.WheelNow!.Tyre(n.X, 0, 0).IsSound || !plan.WheelNow.Rim(n.X).IsSound
            || !plan.Wheel!.Tyre(n.X, 0, 0).IsSound || !plan.Wheel.Rim(n.X).IsSound)
        {
            return null;
        }

        var outlines = new List<SectionOutline>
        {
            Tyre("tyre now", plan.PartsNow!.Tyre!.Name, plan.WheelNow!.Tyre(n.X, 0, 0)),
            Rim("rim now", plan.PartsNow.Wheel!.Name, plan.WheelNow.Rim(n.X)),
            Tyre("tyre", plan.Parts.Tyre!.Name, plan.Wheel!.Tyre(n.X, 0, 0)),
            Rim("rim", plan.Parts.Wheel!.Name, plan.Wheel.Rim(n.X)),
        };
        double ride = n.Ride.Length > 0 && double.IsFinite(n.Ride[0]) ? n.Ride[0] : 0;
        foreach (var (piece, cylinder) in n.Corner.Clearance.Strut(n, ride))
        {
            string kind = piece == StrutPiece.Tube ? "tube" : piece == StrutPiece.Perch ? "perch" : "spring";
            outlines.Add(new SectionOutline(kind, piece == StrutPiece.Helper ? "helper spring" : kind, Sides(cylinder)));
        }

        return new WheelSection(outlines, Gaps(plan, n, ride));
    }

    private static List<SectionGap> Gaps(CornerPlan plan, CornerReader n, double ride)
    {
        var gaps = new List<SectionGap>();
        var (droop, bump) = n.Swept();
        for (int i = 0; i < plan.Clearance.Items.Count; i++)
        {
            var (item, worst) = (plan.Clearance.Items[i], n.Corner.Clearance.Worst[i]);
            if (!double.IsFinite(worst.Clearing.Gap))
            {
                continue;
            }

            double at = droop + (worst.Share * (bump - droop));
            gaps.Add(Gap(item.Name, "worst", item.AttachedTo == AttachedTo.Knuckle ? ride : at, worst.Steer, worst.Clearing, true));
            foreach (var (state, travel) in new[] { ("full droop", droop), ("ride", ride), ("full bump", bump) })
            {
                var clearing = n.Corner.Clearance.At(n, i, travel, 0);
                if (double.IsFinite(clearing.Gap))
                {
                    gaps.Add(Gap(item.Name, state, travel, 0, clearing, false));
                }
            }
        }

        return gaps;
    }

    private static SectionGap Gap(string name, string state, double travel, double steer, in Clearing clearing, bool worst) =>
        new(name, state, travel, steer, clearing.ClockHours, clearing.Gap, InSection(clearing.OnObstacle),
            InSection(clearing.OnWheel), worst);

    private static SectionPoint InSection(in Vec3 p) => new(p.X, Math.Sqrt((p.Y * p.Y) + (p.Z * p.Z)));

    internal static SectionOutline Tyre(string kind, string name, in TyreSection tyre)
    {
        Span<ProfilePoint> corners = stackalloc ProfilePoint[TyreProfile.PointCount(ArcPoints)];
        int count = TyreProfile.Write(tyre, ArcPoints, corners);
        return Outline(kind, name, corners[..count]);
    }

    internal static SectionOutline Rim(string kind, string name, in RimSection rim)
    {
        Span<ProfilePoint> corners = stackalloc ProfilePoint[RimProfile.PointCount];
        int count = RimProfile.Write(rim, corners);
        return Outline(kind, name, corners[..count]);
    }

    private static SectionOutline Outline(string kind, string name, ReadOnlySpan<ProfilePoint> corners)
    {
        var points = new SectionPoint[corners.Length];
        for (int i = 0; i < points.Length; i++)
        {
            points[i] = new SectionPoint(corners[i].A, corners[i].R);
        }

        return new SectionOutline(kind, name, points);
    }

    // The cylinder's outline in the plane of spindle and 12 o'clock.
    private static SectionPoint[] Sides(in CylinderObstacle c)
    {
        var (foot, top) = (c.Foot, c.Foot + (c.Direction * c.Length));
        var across = new Vec3(c.Direction.Y, -c.Direction.X, 0) * c.Radius;
        return [At(foot + across), At(top + across), At(top - across), At(foot - across)];

        static SectionPoint At(Vec3 p) => new(p.X, p.Y);
    }
}
