using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Workshop.Fitted;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Linkages;

/// <summary>A corner's hardpoint table as a linkage, or every reason why it is none.</summary>
public static class LinkageOf
{
    /// <summary>A spring that stands this far beside its link no longer moves as a point of it does, m.</summary>
    private const double MostBesideLink = 0.06;

    /// <param name="car">With the table at the corner, or at the other wheel of the axle when it is mirrored.</param>
    /// <param name="place">Which corner.</param>
    /// <param name="build">Whose wheel, spacer and plate count; null for the build on which the car was measured.</param>
    public static Checked<CornerHardpoints> Corner(Car car, CornerPlace place, Build? build = null)
    {
        ArgumentNullException.ThrowIfNull(car);
        string path = $"{place.Words()} corner / hardpoints";
        if (TableOf(car, place) is not { } table)
        {
            return Checked<CornerHardpoints>.Wrong(new Problem(
                path, "no table", "a table of points here, or at the other wheel to be mirrored",
                "Write the points down, or go by tape or cycled readings."));
        }

        if (HardpointNeeds.IsAxle(table.Kind))
        {
            return Checked<CornerHardpoints>.Wrong(new Problem(
                $"{path} / Kind", table.Kind == LinkageKind.RigidAxle ? "rigid axle" : "twist beam", "a linkage of one wheel",
                "The verdict and the sweep take this axle with both wheels rising alike; it is not moved here."));
        }

        var problems = HardpointConsistency.Carriers(table, path).ToList();
        problems.AddRange(HardpointNeeds.Missing(table).Select(m => new Problem(
            $"{path} / {m}", "not given", "three coordinates", "Measure this point, or choose another kind of linkage.")));
        if (problems.Count > 0)
        {
            return Checked<CornerHardpoints>.Wrong(problems);
        }

        var assumed = new List<string>();
        var shape = LinkageShape.Of(table, car.At(place.Axle()).Steered, bar: true);
        bool mirrored = car.At(place).Hardpoints!.Mirrored;
        Vec3 At(FieldShape field) => PointOf(table, field, mirrored);
        Vec3 hub = At(HardpointNeeds.Points.First(f => f.PropertyName == nameof(HardpointTable.HubFace)));
        if (!(hub.Y * (place.IsLeft() ? 1 : -1) > 0.1))
        {
            problems.Add(new Problem(
                $"{path} / centre of the hub's face / Y, left", FormattableString.Invariant($"{hub.Y * 1000:0.#} mm"),
                place.IsLeft() ? "above 100 mm" : "below -100 mm",
                "Left is positive: the sign of Y may be wrong, or the points are those of the other wheel."));
        }

        if (!(hub.Z > 0.1))
        {
            problems.Add(new Problem(
                $"{path} / centre of the hub's face / Z, up", FormattableString.Invariant($"{hub.Z * 1000:0.#} mm"), "above 100 mm",
                "Z is counted from the ground upward."));
        }

        Vec3[] at = [.. shape.Joints.Select(At)];
        problems.AddRange(BesideLink(table, shape, at, path));
        if (problems.Count > 0)
        {
            return Checked<CornerHardpoints>.Wrong(problems);
        }

        var (outboard, radius) = Wheel(car, place, build, hub.Z, assumed);
        var linkage = shape.With(at, PlateDirection(table, at, shape, mirrored, hub),
            Numbers(car.At(place), table, shape, at, hub, outboard, radius, assumed));
        if (Trouble(linkage, outboard, path) is { } trouble)
        {
            return Checked<CornerHardpoints>.Wrong(trouble);
        }

        double plate = HardpointNeeds.IsStrut(table.Kind) ? Slide(build, place) - Slide(car.Build(car.MeasuredBuild), place) : 0;
        return Checked<CornerHardpoints>.From(new(
            place, table, linkage, outboard, build is null ? 0 : plate,
            [.. shape.Joints.Select(f => new LinkageJoint(f, Deviation(table, f)))], assumed));
    }

    /// <summary>The table that speaks for a corner; null when there is none.</summary>
    internal static HardpointTable? TableOf(Car car, CornerPlace place) => car.At(place).Hardpoints switch
    {
        { Mirrored: true } => car.At(place.OtherSide()).Hardpoints is { Mirrored: false } other ? other : null,
        { } own => own,
        null => null,
    };

    /// <summary>Where a plate carries the strut's top: to a second point, or level and straight inward. Zero without a strut.</summary>
    internal static Vec3 PlateDirection(Vec3? top, Vec3? second, int side) =>
        top is not { } t ? default : second is { } s && (s - t).Length > 1e-6 ? s - t : new Vec3(0, -side, 0);

    /// <summary>What keeps a linkage from being solved, as something to mend; null when nothing does.</summary>
    internal static Problem? Trouble(CornerLinkage linkage, double outboard, string path)
    {
        foreach (var (a, b) in Pairs(linkage))
        {
            if (!((linkage.Joints[a].At - linkage.Joints[b].At).Length > 1e-3))
            {
                return new Problem(
                    $"{path} / {linkage.Joints[b].Name}", $"the same place as the {linkage.Joints[a].Name}", "at least 1 mm away from it",
                    "One of the two points was typed twice.");
            }
        }

        bool held = KnuckleLinkage.Create(linkage, out var flaw, outboard) is { } made
            && KnuckleFollower.Create(made, out flaw) is not null;
        return held ? null : flaw!.Fault == LinkageFault.LockedOrLoose ? Loose(flaw, path)
            : new Problem(path, flaw.What, "points that make a linkage", flaw.Cure);
    }

    /// <summary>Joints that must not fall together.</summary>
    private static IEnumerable<(int A, int B)> Pairs(CornerLinkage linkage)
    {
        foreach (var tie in linkage.Ties)
        {
            yield return tie switch
            {
                LinkageTie.Rod rod => (rod.Body, rod.Knuckle),
                LinkageTie.Strut strut => (strut.Top, strut.Low),
                LinkageTie.Hinge hinge => (hinge.First, hinge.Second),
                _ => throw new ArgumentOutOfRangeException(nameof(linkage), tie, "A known kind of tie."),
            };
        }

        if (linkage.Bar is { } bar)
        {
            yield return (bar.LinkOnBar, bar.LinkFoot);
            yield return (bar.Pivot, bar.LinkOnBar);
        }

        int axis = linkage.Joints.Index().FirstOrDefault(j => j.Item.Name == LinkageShape.RockerAxis, (-1, null!)).Index;
        foreach (var station in new[] { linkage.Spring, linkage.Damper })
        {
            switch (station)
            {
                case LinkageStation.OnKnuckle s:
                    yield return (s.Body, s.Knuckle);
                    break;
                case LinkageStation.OnArm s:
                    yield return (s.Body, s.Moving);
                    yield return (s.First, s.Second);
                    break;
                case LinkageStation.OnRocker s:
                    yield return (s.Body, s.Moving);
                    yield return (s.RodOnArm, s.RodOnRocker);
                    if (s.First != LinkageStation.OnRocker.FromKnuckle)
                    {
                        yield return (s.First, s.Second);
                    }

                    yield return (s.Pivot, axis);
                    break;
            }
        }
    }

    private static Problem Loose(LinkageFlaw flaw, string path) => new(
        path, string.Join(" and ", flaw.Points), "rods and arms that hold the wheel carrier in all directions but travel",
        "As the points stand the linkage is locked or loose where the car was measured: "
            + "look for a joint typed twice, or a pivot axis that passes through its own ball joint.");

    private static IEnumerable<Problem> BesideLink(HardpointTable table, LinkageShape shape, Vec3[] at, string path)
    {
        if (!HardpointNeeds.OnLinks(table.Kind))
        {
            yield break;
        }

        foreach (var (on, link, foot) in new[] { (table.SpringOn, table.SpringLink, nameof(HardpointTable.SpringMoving)),
            (table.DamperOn, table.DamperLink, nameof(HardpointTable.DamperMoving)) })
        {
            if (on != StationCarrier.LowerArm)
            {
                continue;
            }

            Vec3 Of(string property) => at[shape.Joints.Index().First(j => j.Item.PropertyName == property).Index];
            var (inner, outer) = link == LowerLink.Rear ? (nameof(HardpointTable.LowerRearInner), nameof(HardpointTable.LowerRearOuter))
                : (nameof(HardpointTable.LowerFrontInner), nameof(HardpointTable.LowerFrontOuter));
            Vec3 rod = Of(outer) - Of(inner), p = Of(foot) - Of(inner);
            double beside = rod.Cross(p).Length / rod.Length;
            if (!(beside <= MostBesideLink))
            {
                var field = HardpointNeeds.Points.First(f => f.PropertyName == foot);
                yield return new Problem(
                    $"{path} / {field.Label}", FormattableString.Invariant($"{beside * 1000:0} mm beside the link"),
                    FormattableString.Invariant($"at most {MostBesideLink * 1000:0} mm from the line through the link's two joints"),
                    "Check the point, or choose the other lower link.");
            }
        }
    }

    private static LinkageNumbers Numbers(
        Corner corner, HardpointTable table, LinkageShape shape, Vec3[] at, Vec3 hub, double outboard, double radius, List<string> assumed)
    {
        if (corner.Camber is null)
        {
            assumed.Add("camber now: not measured, taken as 0");
        }

        if (corner.Toe is null)
        {
            assumed.Add("toe now: not measured, taken as 0");
        }

        // A measured axis length says where the lower reference lies along the strut.
        double? Along(StationCarrier on, double? length)
        {
            if (on != StationCarrier.Strut || length is not { } measured)
            {
                return null;
            }

            int top = Index(shape, nameof(HardpointTable.StrutTop)), low = Index(shape, nameof(HardpointTable.StrutLow));
            return (at[top] - at[low]).Length - measured;
        }

        return new(
            hub, outboard, radius, corner.Camber?.Si ?? 0, corner.Toe?.Si ?? 0, Along(table.SpringOn, corner.SpringAxisLength?.Si),
            Along(table.DamperOn, (corner.DamperAxisLength ?? (table.DamperAlong is null ? corner.SpringAxisLength : null))?.Si));
    }

    // The tyre on the car stands on the ground, so the height of its wheel's centre
    // gives its loaded radius; another tyre adds half of what it is larger.
    private static (double Outboard, double Radius) Wheel(Car car, CornerPlace place, Build? build, double hubHeight, List<string> assumed)
    {
        var now = car.Build(car.MeasuredBuild);
        var parts = (build ?? now) is { } chosen ? CornerParts.Of(car.Parts, chosen.At(place)) : null;
        var partsNow = now is null ? parts : CornerParts.Of(car.Parts, now.At(place));
        double? outboard = Outboard(parts);
        if (outboard is null)
        {
            assumed.Add("offset of the wheel: not known, its middle plane is taken to stand on the hub's face");
        }

        double camber = car.At(place).Camber?.Si ?? 0;
        double radius = (hubHeight + ((Outboard(partsNow) ?? 0) * Math.Sin(camber))) / Math.Cos(camber);
        double? then = Outer(parts), first = Outer(partsNow);
        return (outboard ?? 0, radius + (then is { } a && first is { } b ? 0.5 * (a - b) : 0));
    }

    private static double? Outboard(CornerParts? parts) =>
        parts?.Rim?.OffsetMm is { } offset && (parts.Spacer is null || parts.Spacer.Thickness is not null)
        ? (offset / 1000.0) - (parts.Spacer?.Thickness?.Si ?? 0) : null;

    private static double? Outer(CornerParts? parts) => parts?.Tyre?.OuterDiameter?.Si ?? parts?.TyreSize?.OuterDiameter;

    private static double Slide(Build? build, CornerPlace place) => build?.At(place).Slide?.Si ?? 0;

    private static Vec3 PlateDirection(HardpointTable table, Vec3[] at, LinkageShape shape, bool mirrored, Vec3 hub)
    {
        int top = Index(shape, nameof(HardpointTable.StrutTop));
        Vec3? second = table.PlateInner is { X: not null, Y: not null, Z: not null }
            ? PointOf(table, HardpointNeeds.Points.First(f => f.PropertyName == nameof(HardpointTable.PlateInner)), mirrored) : null;
        return PlateDirection(top < 0 ? null : at[top], second, hub.Y >= 0 ? 1 : -1);
    }

    private static int Index(LinkageShape shape, string property)
    {
        for (int i = 0; i < shape.Joints.Count; i++)
        {
            if (shape.Joints[i].PropertyName == property)
            {
                return i;
            }
        }

        return -1;
    }

    private static Vec3 PointOf(HardpointTable table, FieldShape field, bool mirrored)
    {
        var point = (BodyPoint)field.Get(table)!;
        return new(point.X!.Si, mirrored ? -point.Y!.Si : point.Y!.Si, point.Z!.Si);
    }

    private static Vec3 Deviation(HardpointTable table, FieldShape field)
    {
        var point = (BodyPoint)field.Get(table)!;
        return new(point.X!.StandardDeviation, point.Y!.StandardDeviation, point.Z!.StandardDeviation);
    }
}
