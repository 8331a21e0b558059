using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;

namespace Cornerwright.Workshop.Linkages;

/// <summary>A joint of a corner's linkage and where it stands in the table.</summary>
/// <param name="Field">Of <see cref="HardpointTable"/>.</param>
/// <param name="Deviation">Standard deviation of its three coordinates, m.</param>
public sealed record LinkageJoint(FieldShape Field, Vec3 Deviation);

/// <summary>One corner's hardpoints made ready for the mathematics.</summary>
/// <param name="Place">Which corner.</param>
/// <param name="Table">Its own, or the other wheel's where it is mirrored.</param>
/// <param name="Linkage">At the reference state, with the wheel of the build that was asked for; on its own side of the car.</param>
/// <param name="HubFaceOutboard">Of the wheel centre, m: what
/// <see cref="KnuckleLinkage"/> wants so that travel is that of the hub's face.</param>
/// <param name="Plate">How far the build's plate stands from where it stood
/// when the car was measured, m along the plate's direction.</param>
/// <param name="Joints">In the order of the linkage's joints.</param>
/// <param name="Assumptions">What was taken for granted, in words.</param>
public sealed record CornerHardpoints(
    CornerPlace Place, HardpointTable Table, CornerLinkage Linkage, double HubFaceOutboard, double Plate,
    IReadOnlyList<LinkageJoint> Joints,
    IReadOnlyList<string> Assumptions)
{
    /// <summary>Ready for followers; may be shared by threads. Travel is that of the hub's face.</summary>
    public KnuckleLinkage Ready() => new(Linkage, HubFaceOutboard);

    /// <summary>Standard deviations of the joints' coordinates, m, in their order.</summary>
    public IReadOnlyList<Vec3> Deviations => [.. Joints.Select(j => j.Deviation)];
}
