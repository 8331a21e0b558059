using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Axles;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Linkage;

/// <summary>A joint of a linkage as it was measured.</summary>
/// <param name="Name">For answers that name it.</param>
/// <param name="At">At the reference state, body frame, m.</param>
public sealed record MeasuredJoint(string Name, Vec3 At);

/// <summary>What ties the knuckle to the body; numbers are places in the list of joints.</summary>
public abstract record LinkageTie
{
    private LinkageTie()
    {
    }

    /// <summary>A rod of fixed length. Takes one freedom.</summary>
    /// <param name="Body">Its joint on the body.</param>
    /// <param name="Knuckle">Its joint on the knuckle.</param>
    /// <param name="Steers">True when the rack carries its joint on the body along +Y.</param>
    public sealed record Rod(int Body, int Knuckle, bool Steers = false) : LinkageTie;

    /// <summary>A strut: the top, on the body or its plate, stays on a line fixed in the knuckle. Takes two freedoms.</summary>
    /// <param name="Top">Carried by the plate.</param>
    /// <param name="Low">Point of the line on the knuckle.</param>
    public sealed record Strut(int Top, int Low) : LinkageTie;

    /// <summary>A hinge between body and knuckle through two bushings: a semi-trailing arm. Takes five freedoms.</summary>
    public sealed record Hinge(int First, int Second) : LinkageTie;
}

/// <summary>Where a spring or damper sits; numbers are places in the list of joints.</summary>
public abstract record LinkageStation
{
    private LinkageStation()
    {
    }

    /// <summary>Between the body and the knuckle.</summary>
    public sealed record OnKnuckle(int Body, int Knuckle) : LinkageStation;

    /// <summary>Between the body and a point of an arm that turns about two bushings and carries a ball joint.</summary>
    public sealed record OnArm(int Body, int Moving, int First, int Second, int Ball) : LinkageStation;

    /// <summary>Between the body and a point of a rod, at a share of its length from the body's end.</summary>
    public sealed record OnRod(int Body, int RodBody, int RodKnuckle, double Share) : LinkageStation;

    /// <summary>Along a strut, from its top to a place <paramref name="Along"/> (m) above the low point.</summary>
    public sealed record OnStrut(int Top, int Low, double Along) : LinkageStation;

    /// <summary>Between the body and a rocker that a pushrod from an arm or from the knuckle turns.</summary>
    /// <param name="Pivot">Rocker's pivot on the body.</param>
    /// <param name="Axis">Direction of the pivot, any length.</param>
    /// <param name="RodOnArm">Pushrod's joint on the arm or knuckle.</param>
    /// <param name="First">
    /// The arm's bushings and ball joint; all three <see cref="FromKnuckle"/> where the pushrod works on the knuckle itself.
    /// </param>
    /// <param name="Second">Likewise.</param>
    /// <param name="Ball">Likewise.</param>
    /// <param name="RodOnRocker">Pushrod's joint on the rocker.</param>
    public sealed record OnRocker(
        int Body, int Moving, int Pivot, Vec3 Axis, int RodOnRocker, int RodOnArm, int First, int Second, int Ball) : LinkageStation
    {
        /// <summary>In place of an arm's joints: the pushrod works on the knuckle.</summary>
        public const int FromKnuckle = -1;
    }
}

/// <summary>
/// An anti-roll bar's end at one corner: it turns about the bar's axis, pulled by a link from the knuckle or from an arm.
/// </summary>
/// <param name="Pivot">A point of the bar's axis on the body; a number in the list of joints, like all that follow.</param>
/// <param name="Axis">Direction of the bar's middle part, any length.</param>
/// <param name="LinkOnBar">The link's joint on the bar.</param>
/// <param name="LinkFoot">The link's joint on the arm or knuckle.</param>
/// <param name="First">
/// The arm's bushings and ball joint; all three <see cref="LinkageStation.OnRocker.FromKnuckle"/> for the knuckle.
/// </param>
/// <param name="Second">Likewise.</param>
/// <param name="Ball">Likewise.</param>
public sealed record LinkageBar(
    int Pivot, Vec3 Axis, int LinkOnBar, int LinkFoot, int First = LinkageStation.OnRocker.FromKnuckle,
    int Second = LinkageStation.OnRocker.FromKnuckle, int Ball = LinkageStation.OnRocker.FromKnuckle);

/// <summary>A knuckle tied to the body with five conditions, every joint of which may be asked how much it matters.</summary>
/// <param name="Joints">All joints, in any order.</param>
/// <param name="Ties">That together take five freedoms; the wheel's travel is the sixth.</param>
/// <param name="WheelCentre">At the reference state, m; travel is that of this point. Y above 0 is a left wheel.</param>
/// <param name="Camber">At the reference state, rad, positive when the top leans outward.</param>
/// <param name="Toe">At the reference state, rad, positive toe-in.</param>
/// <param name="TyreRadius">m, of the rigid disc that finds the contact.</param>
/// <param name="Spring">Null when there is none.</param>
/// <param name="Damper">Null when there is none.</param>
/// <param name="PlateDirection">Where a plate carries the strut's top, any length; zero when there is none.</param>
/// <param name="Bar">Null when there is none.</param>
public sealed record CornerLinkage(
    IReadOnlyList<MeasuredJoint> Joints, IReadOnlyList<LinkageTie> Ties, Vec3 WheelCentre, double Camber, double Toe, double TyreRadius,
    LinkageStation? Spring = null, LinkageStation? Damper = null, Vec3 PlateDirection = default, LinkageBar? Bar = null)
{
    /// <summary>1 on the left, -1 on the right. Source: the sign of the wheel centre's Y.</summary>
    public int Side => WheelCentre.Y >= 0 ? 1 : -1;

    /// <summary>
    /// The same on the other side of the car. A rack carries both tie rods along +Y, so nothing about it changes sign.
    /// Source: reflection in the plane Y = 0.
    /// </summary>
    public CornerLinkage Mirrored() => this with
    {
        Joints = [.. Joints.Select(joint => joint with { At = joint.At.Mirrored() })],
        WheelCentre = WheelCentre.Mirrored(),
        PlateDirection = PlateDirection.Mirrored(),
        Spring = MirroredStation(Spring),
        Damper = MirroredStation(Damper),
        Bar = Bar is { } bar ? bar with { Axis = bar.Axis.Mirrored() } : null,
    };

    /// <summary>The same with other places of the joints, in their order. Source: replacement.</summary>
    public CornerLinkage WithJointsAt(IReadOnlyList<Vec3> places) =>
        this with { Joints = [.. Joints.Select((joint, i) => joint with { At = places[i] })] };

    /// <summary>Length of a station at the reference state, m. Source: distance of its two ends.</summary>
    public double LengthAtRest(LinkageStation station) => station switch
    {
        LinkageStation.OnKnuckle s => Distance(s.Body, s.Knuckle),
        LinkageStation.OnArm s => Distance(s.Body, s.Moving),
        LinkageStation.OnRocker s => Distance(s.Body, s.Moving),
        LinkageStation.OnStrut s => Distance(s.Top, s.Low) - s.Along,
        LinkageStation.OnRod s =>
            (Joints[s.RodBody].At + ((Joints[s.RodKnuckle].At - Joints[s.RodBody].At) * s.Share) - Joints[s.Body].At).Length,
        _ => throw new ArgumentOutOfRangeException(nameof(station), station, "A known kind of station."),
    };

    private double Distance(int a, int b) => (Joints[a].At - Joints[b].At).Length;

    // Only the line of a rocker's axis counts: its turn takes whichever sign closes the pushrod.
    private static LinkageStation? MirroredStation(LinkageStation? station) =>
        station is LinkageStation.OnRocker rocker ? rocker with { Axis = rocker.Axis.Mirrored() } : station;
}
