using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Poses;

/// <summary>The tyre as a rigid disc about its spindle.</summary>
/// <remarks>Source: docs/theory/rigid-axles.md §4.</remarks>
internal static class TyreDisc
{
    /// <summary>Spindle of length 1, to the street side. Camber and toe in rad; side 1 left, -1 right.</summary>
    public static Vec3 Spindle(double camber, double toe, int side)
    {
        var (sinC, cosC) = Math.SinCos(camber);
        var (sinT, cosT) = Math.SinCos(toe);
        return new(cosC * sinT, side * cosC * cosT, -sinC);
    }

    /// <summary>Lowest point of the disc of the given radius (m) about a spindle of length 1.</summary>
    public static Vec3 Contact(in Vec3 centre, in Vec3 spindle, double radius)
    {
        Vec3 up = Vec3.UnitZ - (spindle.Z * spindle);
        return centre - (radius / up.Length * up);
    }

    /// <inheritdoc cref="Contact(in Vec3, in Vec3, double)"/>
    public static JetPoint3 Contact(in JetPoint3 centre, in JetPoint3 spindle, double radius)
    {
        JetPoint3 up = JetPoint3.Fixed(Vec3.UnitZ) - (spindle * spindle.Z);
        return centre - (up * (up.Length().Inverse() * radius));
    }
}
