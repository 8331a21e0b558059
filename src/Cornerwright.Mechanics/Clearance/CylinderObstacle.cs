using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Clearance;

/// <summary>A round solid with flat ends: strut tube, spring, or, when short, a perch.</summary>
/// <param name="Foot">Centre of one end, m.</param>
/// <param name="Direction">Unit, from the foot to the other end.</param>
/// <param name="Length">m, at least 0.</param>
/// <param name="Radius">m, at least 0.</param>
/// <remarks>In B or S as the holder says. The default is no obstacle. Source: docs/theory/clearance.md §5.</remarks>
public readonly record struct CylinderObstacle(Vec3 Foot, Vec3 Direction, double Length, double Radius)
{
    public bool IsSound =>
        Length >= 0 && Radius >= 0 && double.IsFinite(Length) && double.IsFinite(Radius) && double.IsFinite(Foot.LengthSquared)
        && Math.Abs(Direction.LengthSquared - 1) < 1e-9;

    /// <summary>A body-fixed cylinder seen from the wheel's S frame. Source: rigid transform.</summary>
    public CylinderObstacle ToSpindle(in SpindleFrame frame) =>
        this with { Foot = frame.ToSpindle(Foot), Direction = frame.DirectionToSpindle(Direction) };
}
