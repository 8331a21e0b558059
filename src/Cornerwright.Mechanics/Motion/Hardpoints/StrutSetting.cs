using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Motion.Hardpoints;

/// <summary>A strut whose plate was slid and whose knuckle was turned in its clamp since the joints were measured.</summary>
/// <param name="Linkage">To be followed with the plate at <paramref name="Plate"/>.</param>
/// <param name="Plate">m along the linkage's plate direction; 0 when nothing was changed.</param>
/// <remarks>
/// The measured pose closes with the turned strut if its top is thought where the turned axis leads; from there the top is carried to where
/// the plate really holds it. So the change is a slide of an imagined plate, and is followed like one: exactly, and on the branch.
/// Source: docs/theory/hardpoints.md §9.
/// </remarks>
public sealed record StrutSetting(CornerLinkage Linkage, double Plate)
{
    /// <summary>The linkage as it is set; travel 0 stays where the wheel stood when it was measured.</summary>
    /// <param name="corner">As measured.</param>
    /// <param name="slide">How far the strut's top was carried along the plate's direction, m.</param>
    /// <param name="clamp">
    /// How far the wheel was turned against the strut about the lower point on the strut, rad, positive when its top went outward. Without a
    /// strut it is added to the camber.
    /// </param>
    /// <remarks>Source: docs/theory/hardpoints.md §9.</remarks>
    public static StrutSetting Of(CornerLinkage corner, double slide, double clamp)
    {
        Require.Finite(slide);
        Require.Finite(clamp);
        if (corner.Ties.OfType<LinkageTie.Strut>().FirstOrDefault() is not { } strut)
        {
            return new(clamp == 0 ? corner : corner with { Camber = corner.Camber + clamp }, 0);
        }

        // The knuckle's strut axis leans inward by as much as the wheel was turned outward.
        Vec3 top = corner.Joints[strut.Top].At, low = corner.Joints[strut.Low].At;
        Vec3 turned = clamp == 0 ? top : low + (top - low).RotatedAbout(Vec3.UnitX, corner.Side * clamp);
        double plate = corner.PlateDirection.Length;
        Vec3 carried = (plate > 0 ? top + (corner.PlateDirection * (slide / plate)) : top) - turned;
        double length = carried.Length;
        if (!(length > 1e-12))
        {
            return new(corner, 0);
        }

        MeasuredJoint[] joints = [.. corner.Joints];
        joints[strut.Top] = joints[strut.Top] with { At = turned };
        return new(corner with { Joints = joints, PlateDirection = carried }, length);
    }
}
