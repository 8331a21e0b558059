namespace Cornerwright.Mechanics.Geometry;

/// <summary>A turn and a shift: p becomes turn·p + shift. The turn is a unit quaternion (W, X, Y, Z).</summary>
/// <param name="W">Scalar part.</param>
/// <param name="X">Its X part.</param>
/// <param name="Y">Its Y part.</param>
/// <param name="Z">Its Z part.</param>
/// <param name="Shift">m, in the frame that comes out.</param>
/// <remarks>
/// The default is no transform; <see cref="Identity"/> is. Source: Craig, Introduction to Robotics, 3rd ed. (2005),
/// §2.8 (Euler parameters).
/// </remarks>
public readonly record struct RigidTransform(double W, double X, double Y, double Z, Vec3 Shift)
{
    public static RigidTransform Identity => new(1, 0, 0, 0, default);

    /// <summary>From a quaternion of any length but 0. Source: definition of a unit quaternion.</summary>
    /// <exception cref="ArgumentException">All four are 0, or one is not finite: a caller's bug.</exception>
    public static RigidTransform From(double w, double x, double y, double z, Vec3 shift)
    {
        double length = Math.Sqrt((w * w) + (x * x) + (y * y) + (z * z));
        return length > 0 && double.IsFinite(length)
            ? new(w / length, x / length, y / length, z / length, shift)
            : throw new ArgumentException("A quaternion has a length.", nameof(w));
    }

    /// <summary>
    /// The turn that takes three axes square to each other to X, Y, Z: what was measured along them comes out along the frame's own.
    /// </summary>
    /// <param name="x">Unit.</param>
    /// <param name="y">Unit, square to x.</param>
    /// <param name="z">x × y.</param>
    /// <remarks>
    /// Source: S. W. Shepperd, "Quaternion from rotation matrix", J. Guidance and Control 1 (1978) 223: the largest part first.
    /// </remarks>
    public static RigidTransform FromAxes(Vec3 x, Vec3 y, Vec3 z)
    {
        // The matrix has x, y, z as rows.
        double trace = x.X + y.Y + z.Z;
        Span<double> squares = [trace, x.X, y.Y, z.Z];
        int largest = 0;
        for (int i = 1; i < 4; i++)
        {
            largest = squares[i] > squares[largest] ? i : largest;
        }

        var (w, a, b, c) = largest switch
        {
            0 => (1 + trace, z.Y - y.Z, x.Z - z.X, y.X - x.Y),
            1 => (z.Y - y.Z, 1 + (2 * x.X) - trace, x.Y + y.X, z.X + x.Z),
            2 => (x.Z - z.X, x.Y + y.X, 1 + (2 * y.Y) - trace, y.Z + z.Y),
            _ => (y.X - x.Y, z.X + x.Z, y.Z + z.Y, 1 + (2 * z.Z) - trace),
        };
        return From(w, a, b, c, default);
    }

    /// <summary>A direction turned. Source: Craig §2.8.</summary>
    public Vec3 Turn(in Vec3 v)
    {
        Vec3 q = new(X, Y, Z);
        Vec3 t = 2 * q.Cross(v);
        return v + (t * W) + q.Cross(t);
    }

    /// <summary>A point carried over, m. Source: definition.</summary>
    public Vec3 Apply(in Vec3 p) => Turn(p) + Shift;

    /// <summary>The way back. Source: definition.</summary>
    public RigidTransform Inverse()
    {
        var back = new RigidTransform(W, -X, -Y, -Z, default);
        return back with { Shift = -back.Turn(Shift) };
    }

    /// <summary>First this, then the other. Source: product of quaternions, Craig §2.8.</summary>
    public RigidTransform Then(in RigidTransform next) => From(
        (next.W * W) - (next.X * X) - (next.Y * Y) - (next.Z * Z),
        (next.W * X) + (next.X * W) + (next.Y * Z) - (next.Z * Y),
        (next.W * Y) + (next.Y * W) + (next.Z * X) - (next.X * Z),
        (next.W * Z) + (next.Z * W) + (next.X * Y) - (next.Y * X),
        next.Apply(Shift));
}
