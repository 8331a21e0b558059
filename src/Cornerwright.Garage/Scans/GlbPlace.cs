using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Garage.Scans;

/// <summary>Where a node of a GLB file stands: three columns that turn and stretch, and a shift.</summary>
/// <remarks>Source: glTF 2.0 Specification §3.5.3: a matrix by columns, or translation, rotation (x, y, z, w) and scale, T·R·S.</remarks>
internal readonly record struct GlbPlace(Vec3 X, Vec3 Y, Vec3 Z, Vec3 Shift)
{
    public static GlbPlace Identity => new(Vec3.UnitX, Vec3.UnitY, Vec3.UnitZ, default);

    public static GlbPlace Of(GlbElement node)
    {
        Span<double> m = stackalloc double[16];
        if (node.Numbers("matrix", m))
        {
            return new(new(m[0], m[1], m[2]), new(m[4], m[5], m[6]), new(m[8], m[9], m[10]), new(m[12], m[13], m[14]));
        }

        Span<double> t = stackalloc double[3], s = [1, 1, 1], q = [0, 0, 0, 1];
        node.Numbers("translation", t);
        node.Numbers("scale", s);
        node.Numbers("rotation", q);
        var (x, y, z, w) = (q[0], q[1], q[2], q[3]);
        return new(
            new Vec3(1 - (2 * ((y * y) + (z * z))), 2 * ((x * y) + (w * z)), 2 * ((x * z) - (w * y))) * s[0],
            new Vec3(2 * ((x * y) - (w * z)), 1 - (2 * ((x * x) + (z * z))), 2 * ((y * z) + (w * x))) * s[1],
            new Vec3(2 * ((x * z) + (w * y)), 2 * ((y * z) - (w * x)), 1 - (2 * ((x * x) + (y * y)))) * s[2],
            new(t[0], t[1], t[2]));
    }

    public Vec3 Apply(in Vec3 p) => Turn(p) + Shift;

    /// <summary>This place, and the other one within it.</summary>
    public GlbPlace Then(in GlbPlace inner) => new(Turn(inner.X), Turn(inner.Y), Turn(inner.Z), Apply(inner.Shift));

    private Vec3 Turn(in Vec3 p) => (X * p.X) + (Y * p.Y) + (Z * p.Z);
}
