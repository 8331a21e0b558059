using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Chassis;

/// <summary>The points between which the links of one corner run, in the body frame of docs/frames.md at the reference state.</summary>
/// <remarks>
/// Which of them a corner needs goes by <see cref="Kind"/> and by what carries spring and damper: <see cref="HardpointNeeds"/>.
/// </remarks>
public sealed record HardpointTable
{
    [Field("Kind")]
    public LinkageKind Kind { get; init; }

    [Field("Mirrored from the other wheel",
        How = "Use the other wheel's points with left and right changed over. Points written here then count for nothing.")]
    public bool Mirrored { get; init; }

    [Field("Spring works on")]
    public StationCarrier SpringOn { get; init; }

    [Field("Damper works on")]
    public StationCarrier DamperOn { get; init; }

    [Field("Pushrod works on", How = "Only where a rocker carries spring or damper.")]
    public StationCarrier PushrodOn { get; init; } = StationCarrier.LowerArm;

    [Field("Rack moves", How = "The rod whose inner joint the steering rack carries. Counts only where the axle is steered.")]
    public RackRod RackOn { get; init; }

    [Field("Spring stands on the lower link at the", How = "Only where it works on one of two lower links.")]
    public LowerLink SpringLink { get; init; }

    [Field("Damper stands on the lower link at the", How = "Only where it works on one of two lower links.")]
    public LowerLink DamperLink { get; init; }

    [Field("Spring's lower reference along the strut", Dimension.Length, "mm", -300, 600, How = "From the lower point on the strut up to "
        + "the clamp bolt or perch from which the spring's axis length is measured. Not asked for where that length itself is measured.")]
    public Reading? SpringAlong { get; init; }

    [Field("Damper's lower reference along the strut", Dimension.Length, "mm", -300, 600,
        How = "The same for the damper, where it is not the spring's.")]
    public Reading? DamperAlong { get; init; }

    [Field("Centre of the hub's face", How = "From the centre of the wheel's mounting face, not of the rim.")]
    public BodyPoint? HubFace { get; init; }

    [Field("Lower arm, front pivot", How = "Middle of the front bushing; of the front link's inner joint where two "
        + "links stand for the arm; of the lower link's joint on the body of a rigid axle.")]
    public BodyPoint? LowerFrontInner { get; init; }

    [Field("Lower arm, rear pivot", How = "Middle of the rear bushing; of the rear link's inner joint where two links stand for the arm.")]
    public BodyPoint? LowerRearInner { get; init; }

    [Field("Lower ball joint", How = "Where the arm's one joint meets the wheel carrier: the middle of the ball.")]
    public BodyPoint? LowerBall { get; init; }

    [Field("Lower front link, outer joint", How = "Middle of the ball on the wheel carrier; of a lower link's joint on a rigid axle.")]
    public BodyPoint? LowerFrontOuter { get; init; }

    [Field("Lower rear link, outer joint", How = "Middle of the ball on the wheel carrier.")]
    public BodyPoint? LowerRearOuter { get; init; }

    [Field("Upper arm, front pivot", How =
        "Middle of the bushing; of the front link's inner joint on five links; of the upper link's joint on the body of a rigid axle.")]
    public BodyPoint? UpperFrontInner { get; init; }

    [Field("Upper arm, rear pivot", How = "Middle of the bushing; of the rear link's inner joint on five links.")]
    public BodyPoint? UpperRearInner { get; init; }

    [Field("Upper ball joint", How = "The middle of the ball on the wheel carrier.")]
    public BodyPoint? UpperBall { get; init; }

    [Field("Upper front link, outer joint", How = "Middle of the ball on the wheel carrier; of an upper link's joint on a rigid axle.")]
    public BodyPoint? UpperFrontOuter { get; init; }

    [Field("Upper rear link, outer joint", How = "Middle of the ball on the wheel carrier.")]
    public BodyPoint? UpperRearOuter { get; init; }

    [Field("Tie rod, inner joint", How = "On the rack, steering straight ahead; on the body where the link does not steer.")]
    public BodyPoint? TieInner { get; init; }

    [Field("Tie rod, outer joint", How = "Middle of the ball on the steering arm.")]
    public BodyPoint? TieOuter { get; init; }

    [Field("Strut top", How = "Where the damper rod turns in the top mount, with the plate as it stands now.")]
    public BodyPoint? StrutTop { get; init; }

    [Field("Plate, second point",
        How = "A point that the strut's top passes when the plate slides inward. Left out: it slides level, straight to the car's middle.")]
    public BodyPoint? PlateInner { get; init; }

    [Field("Lower point on the strut", How = "A point on the tube's axis, near the clamp.")]
    public BodyPoint? StrutLow { get; init; }

    [Field("Trailing arm, outer pivot",
        How = "Middle of the outer bushing of a semi-trailing arm; of the one bushing of a twist beam's arm.")]
    public BodyPoint? ArmOuter { get; init; }

    [Field("Trailing arm, inner pivot", How = "Middle of the inner bushing of a semi-trailing arm.")]
    public BodyPoint? ArmInner { get; init; }

    [Field("Lateral rod, joint on the body",
        How = "Of a rigid axle; once for both wheels, at either. Left out where four slanted links do without.")]
    public BodyPoint? LateralBody { get; init; }

    [Field("Lateral rod, joint on the axle", How = "Middle of the bushing.")]
    public BodyPoint? LateralAxle { get; init; }

    [Field("Cross member, shear centre", How = "Of a twist beam, on the car's middle plane: the line about which "
        + "the section twists, beside the section on the side of its closed back.")]
    public BodyPoint? ShearCentre { get; init; }

    [Field("Spring, moving end", How = "Where the spring's axis meets the arm, carrier or rocker it works on.")]
    public BodyPoint? SpringMoving { get; init; }

    [Field("Spring, body end", How = "Where the spring's axis meets the body.")]
    public BodyPoint? SpringBody { get; init; }

    [Field("Damper, moving end", How = "Middle of the eye on the arm, carrier or rocker.")]
    public BodyPoint? DamperMoving { get; init; }

    [Field("Damper, body end", How = "Middle of the eye or of the rod's mount on the body.")]
    public BodyPoint? DamperBody { get; init; }

    [Field("Pushrod, outer joint", How = "On the arm or the wheel carrier.")]
    public BodyPoint? PushrodOuter { get; init; }

    [Field("Pushrod, joint on the rocker", How = "Middle of the joint.")]
    public BodyPoint? PushrodRocker { get; init; }

    [Field("Rocker, pivot", How = "On the axis about which the rocker turns.")]
    public BodyPoint? RockerPivot { get; init; }

    [Field("Rocker, second point on its axis", How = "Anywhere else on that axis; the further away the better.")]
    public BodyPoint? RockerAxis { get; init; }

    [Field("Anti-roll bar's link works on",
        How = "Only where the bar's three points are given. On a strut's tube it moves with the wheel carrier.")]
    public StationCarrier BarOn { get; init; } = StationCarrier.Carrier;

    [Field("Bar's link, joint below", How = "On the arm, the strut's tube or the wheel carrier.")]
    public BodyPoint? BarFoot { get; init; }

    [Field("Bar's link, joint on the bar", How = "Middle of the joint at the bar's end.")]
    public BodyPoint? BarEnd { get; init; }

    [Field("Bar's bushing on the body",
        How = "Middle of the bushing at this side: a point of the line about which the bar turns, which runs straight across the car.")]
    public BodyPoint? BarPivot { get; init; }
}
