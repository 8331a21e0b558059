using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Poses;

/// <summary>Where the knuckle is: X_BK of docs/frames.md, with K's axes those of the body at the reference state.</summary>
/// <param name="TurnW">Scalar part of the unit quaternion that turns K into B; 1 at the reference state.</param>
/// <param name="TurnX">Its X part.</param>
/// <param name="TurnY">Its Y part.</param>
/// <param name="TurnZ">Its Z part.</param>
/// <param name="Origin">K's origin in B, m: the point whose height is the travel.</param>
/// <remarks>The default is no pose. Source: docs/theory/hardpoints.md §1.</remarks>
public readonly record struct KnucklePose(double TurnW, double TurnX, double TurnY, double TurnZ, Vec3 Origin)
{
    /// <summary>A direction of the knuckle in the body frame. Source: docs/theory/hardpoints.md §1.</summary>
    public Vec3 Turned(in Vec3 inKnuckle) => new KnuckleTurn(this).Apply(inKnuckle);

    /// <summary>A point of the knuckle, measured from its origin, in the body frame. Source: docs/theory/hardpoints.md §1.</summary>
    public Vec3 Point(in Vec3 inKnuckle) => Origin + Turned(inKnuckle);

    /// <summary>The knuckle at rest at the reference state.</summary>
    internal static KnucklePose At(in Vec3 origin) => new(1, 0, 0, 0, origin);

    /// <summary>
    /// Moved by a small turn (rad, body axes) and to a new origin. The turn is Cayley's, which is the exact one up to third order.
    /// </summary>
    internal KnucklePose MovedBy(double turnX, double turnY, double turnZ, in Vec3 origin)
    {
        double x = 0.5 * turnX, y = 0.5 * turnY, z = 0.5 * turnZ;
        double w1 = TurnW - (x * TurnX) - (y * TurnY) - (z * TurnZ);
        double x1 = TurnX + (x * TurnW) + (y * TurnZ) - (z * TurnY);
        double y1 = TurnY + (y * TurnW) + (z * TurnX) - (x * TurnZ);
        double z1 = TurnZ + (z * TurnW) + (x * TurnY) - (y * TurnX);
        double inverse = 1 / Math.Sqrt((w1 * w1) + (x1 * x1) + (y1 * y1) + (z1 * z1));
        return new(w1 * inverse, x1 * inverse, y1 * inverse, z1 * inverse, origin);
    }
}

/// <summary>The rotation matrix of a pose, for turning several vectors.</summary>
/// <remarks>Source: Craig, Introduction to Robotics, 3rd ed. (2005), §2.8 (Euler parameters).</remarks>
internal readonly struct KnuckleTurn
{
    private readonly double xx, xy, xz, yx, yy, yz, zx, zy, zz;

    public KnuckleTurn(in KnucklePose pose)
    {
        double w = pose.TurnW, x = pose.TurnX, y = pose.TurnY, z = pose.TurnZ;
        double x2 = x + x, y2 = y + y, z2 = z + z;
        double wx = w * x2, wy = w * y2, wz = w * z2;
        double sxx = x * x2, sxy = x * y2, sxz = x * z2, syy = y * y2, syz = y * z2, szz = z * z2;
        (xx, xy, xz) = (1 - syy - szz, sxy - wz, sxz + wy);
        (yx, yy, yz) = (sxy + wz, 1 - sxx - szz, syz - wx);
        (zx, zy, zz) = (sxz - wy, syz + wx, 1 - sxx - syy);
    }

    public Vec3 Apply(in Vec3 p) => new(
        (xx * p.X) + (xy * p.Y) + (xz * p.Z),
        (yx * p.X) + (yy * p.Y) + (yz * p.Z),
        (zx * p.X) + (zy * p.Y) + (zz * p.Z));
}
