using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Linkage;

/// <summary>Why points make no linkage, or a linkage makes no motion.</summary>
public enum LinkageFault
{
    /// <summary>Two joints that a part connects stand at one place.</summary>
    PointsTogether = 0,

    /// <summary>An arm's ball joint lies on the line through its bushings: nothing says how far the arm has turned.</summary>
    BallOnPivotLine,

    /// <summary>The axis of a rocker or an anti-roll bar has no direction.</summary>
    NoDirection,

    /// <summary>The tyre's radius is not above 0.</summary>
    NoTyre,

    /// <summary>Where the car was measured the ties hold one movement twice and leave another free.</summary>
    LockedOrLoose,

    /// <summary>Plate and clamp are set to where the strut cannot stand.</summary>
    SettingOutOfReach,

    /// <summary>The left wheel centre is not to the left of the right one.</summary>
    WheelsSwapped,

    /// <summary>A twist beam's bushing is not on its wheel's side of the shear centre.</summary>
    BushingInboard,
}

/// <summary>What is wrong with the points of a linkage. An answer about the user's points, never a fault of the program.</summary>
/// <param name="Fault">What it is.</param>
/// <param name="Points">Names of the points it hangs on, as they were given; of two that stand together the later one comes second.</param>
/// <remarks>Source: docs/theory/hardpoints.md §2, §9; docs/theory/rigid-axles.md §1, §6.</remarks>
public sealed record LinkageFlaw(LinkageFault Fault, IReadOnlyList<string> Points)
{
    /// <summary>m; joints nearer than this are one place: a thousandth of what any reading tells apart, and far above rounding.</summary>
    internal const double LeastApart = 1e-9;

    /// <summary>What is so, with the points by name. Source: definition of <see cref="LinkageFault"/>.</summary>
    public string What => Fault switch
    {
        LinkageFault.PointsTogether => $"{Names} stand at one place",
        LinkageFault.BallOnPivotLine => $"{Points[^1]} lies on the line through {string.Join(" and ", Points.SkipLast(1))}",
        LinkageFault.NoDirection => $"the axis at {Names} has no direction",
        LinkageFault.NoTyre => "the tyre has no radius",
        LinkageFault.LockedOrLoose =>
            $"the linkage is locked or loose where the car was measured: {Names} hold one movement twice and leave another free",
        LinkageFault.SettingOutOfReach => $"{Names} cannot stand with plate and clamp set so",
        LinkageFault.WheelsSwapped => "the left wheel centre is not to the left of the right one",
        _ => $"{Names} is not on the wheel's side of the shear centre",
    };

    /// <summary>What to do about it. Source: definition of <see cref="LinkageFault"/>.</summary>
    public string Cure => Fault switch
    {
        LinkageFault.PointsTogether => "One of the two was typed twice: measure both again.",
        LinkageFault.BallOnPivotLine => "Measure the three points again: a ball joint stands well off the line of its arm's bushings.",
        LinkageFault.NoDirection => "Measure a second point of the axis.",
        LinkageFault.NoTyre => "Check the height of the hub and the tyre's size.",
        LinkageFault.LockedOrLoose => "Look for a joint typed twice, or a link in line with another or with the steering axis.",
        LinkageFault.SettingOutOfReach => "Set plate and clamp nearer to how they were measured.",
        LinkageFault.WheelsSwapped => "Left is positive: check the sign of Y at both hubs.",
        _ => "Check the sign of Y at bushing and hub, and that the shear centre is on the middle of the car.",
    };

    /// <summary>Both sentences. Source: <see cref="What"/> and <see cref="Cure"/>.</summary>
    public override string ToString() => $"{char.ToUpperInvariant(What[0])}{What[1..]}. {Cure}";

    private string Names => string.Join(" and ", Points);

    /// <summary>The first thing that keeps points from being a linkage; null when nothing does.</summary>
    internal static LinkageFlaw? Of(CornerLinkage corner)
    {
        if (!(corner.TyreRadius > 0))
        {
            return new(LinkageFault.NoTyre, []);
        }

        foreach (LinkageTie tie in corner.Ties)
        {
            var (a, b) = tie switch
            {
                LinkageTie.Rod rod => (rod.Body, rod.Knuckle),
                LinkageTie.Strut strut => (strut.Top, strut.Low),
                LinkageTie.Hinge hinge => (hinge.First, hinge.Second),
                _ => throw new ArgumentOutOfRangeException(nameof(corner), tie, "A known kind of tie."),
            };
            if (Together(corner, a, b) is { } flaw)
            {
                return flaw;
            }
        }

        return OfStation(corner, corner.Spring) ?? OfStation(corner, corner.Damper)
            ?? (corner.Bar is { } bar ? OfRocker(corner, bar.Pivot, bar.Axis, bar.First, bar.Second, bar.Ball) : null);
    }

    private static LinkageFlaw? OfStation(CornerLinkage corner, LinkageStation? station) => station switch
    {
        LinkageStation.OnArm s => OfArm(corner, s.First, s.Second, s.Ball),
        LinkageStation.OnRocker s => OfRocker(corner, s.Pivot, s.Axis, s.First, s.Second, s.Ball),
        _ => null,
    };

    private static LinkageFlaw? OfRocker(CornerLinkage corner, int pivot, in Vec3 axis, int first, int second, int ball) =>
        !(axis.Length > 0) ? new(LinkageFault.NoDirection, [corner.Joints[pivot].Name])
        : first == LinkageStation.OnRocker.FromKnuckle ? null : OfArm(corner, first, second, ball);

    private static LinkageFlaw? OfArm(CornerLinkage corner, int first, int second, int ball)
    {
        if (Together(corner, first, second) is { } flaw)
        {
            return flaw;
        }

        Vec3 a = corner.Joints[first].At, along = (corner.Joints[second].At - a).Unit(), toBall = corner.Joints[ball].At - a;
        return (toBall - (along * along.Dot(toBall))).Length > LeastApart
            ? null : new(LinkageFault.BallOnPivotLine, [corner.Joints[first].Name, corner.Joints[second].Name, corner.Joints[ball].Name]);
    }

    private static LinkageFlaw? Together(CornerLinkage corner, int a, int b) =>
        (corner.Joints[a].At - corner.Joints[b].At).Length > LeastApart
            ? null : new(LinkageFault.PointsTogether, [corner.Joints[a].Name, corner.Joints[b].Name]);
}
