namespace Cornerwright.Mechanics.Geometry;

/// <summary>Three doubles: a position (m) or a direction, in the frame its name says (docs/frames.md).</summary>
/// <remarks>The default value is the zero vector. Source: plain vector algebra.</remarks>
public readonly record struct Vec3(double X, double Y, double Z)
{
    public static Vec3 UnitX => new(1, 0, 0);
    public static Vec3 UnitY => new(0, 1, 0);
    public static Vec3 UnitZ => new(0, 0, 1);

    public double LengthSquared => (X * X) + (Y * Y) + (Z * Z);
    public double Length => Math.Sqrt(LengthSquared);

    public static Vec3 operator +(Vec3 a, Vec3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);
    public static Vec3 operator -(Vec3 a, Vec3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);
    public static Vec3 operator -(Vec3 a) => new(-a.X, -a.Y, -a.Z);
    public static Vec3 operator *(Vec3 a, double k) => new(a.X * k, a.Y * k, a.Z * k);
    public static Vec3 operator *(double k, Vec3 a) => a * k;
    public static Vec3 operator /(Vec3 a, double k) => new(a.X / k, a.Y / k, a.Z / k);

    public double Dot(in Vec3 b) => (X * b.X) + (Y * b.Y) + (Z * b.Z);

    public Vec3 Cross(in Vec3 b) =>
        new((Y * b.Z) - (Z * b.Y), (Z * b.X) - (X * b.Z), (X * b.Y) - (Y * b.X));

    /// <summary>The same on the other side of the car. Source: reflection in the plane Y = 0.</summary>
    public Vec3 Mirrored() => new(X, -Y, Z);

    /// <summary>The same direction with length 1. Source: plain vector algebra.</summary>
    /// <exception cref="InvalidOperationException">The vector is zero or not finite: our own bug, never the user's data.</exception>
    public Vec3 Unit()
    {
        double length = Length;
        if (!(length > 0) || !double.IsFinite(length))
        {
            throw new InvalidOperationException("A zero or non-finite vector has no direction.");
        }

        return this / length;
    }

    /// <summary>Rotation by <paramref name="angle"/> (rad, right-handed) about a unit <paramref name="axis"/> through the origin.</summary>
    /// <remarks>Source: O. Rodrigues (1840); e.g. Craig, Introduction to Robotics, 3rd ed., eq. 2.80.</remarks>
    public Vec3 RotatedAbout(in Vec3 axis, double angle)
    {
        var (sin, cos) = Math.SinCos(angle);
        return (this * cos) + (axis.Cross(this) * sin) + (axis * (axis.Dot(this) * (1 - cos)));
    }
}
