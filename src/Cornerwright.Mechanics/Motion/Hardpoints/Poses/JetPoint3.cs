using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Poses;

/// <summary>A point or direction in space that moves with one parameter, with its exact first and second derivative.</summary>
/// <remarks>Source: Griewank and Walther, Evaluating Derivatives, 2nd ed. (2008), ch. 13.</remarks>
internal readonly record struct JetPoint3(Jet X, Jet Y, Jet Z)
{
    public Vec3 V => new(X.V, Y.V, Z.V);

    public Vec3 D => new(X.D, Y.D, Z.D);

    public static JetPoint3 Fixed(in Vec3 p) => new(new(p.X, 0, 0), new(p.Y, 0, 0), new(p.Z, 0, 0));

    public static JetPoint3 operator +(JetPoint3 a, JetPoint3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static JetPoint3 operator -(JetPoint3 a, JetPoint3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static JetPoint3 operator *(JetPoint3 a, Jet k) => new(a.X * k, a.Y * k, a.Z * k);

    public static JetPoint3 operator *(JetPoint3 a, double k) => new(a.X * k, a.Y * k, a.Z * k);

    public Jet Dot(in JetPoint3 b) => (X * b.X) + (Y * b.Y) + (Z * b.Z);

    public Jet Dot(in Vec3 fixedDirection) => (X * fixedDirection.X) + (Y * fixedDirection.Y) + (Z * fixedDirection.Z);

    public Jet LengthSquared() => (X * X) + (Y * Y) + (Z * Z);

    public JetPoint3 Cross(in JetPoint3 b) =>
        new((Y * b.Z) - (Z * b.Y), (Z * b.X) - (X * b.Z), (X * b.Y) - (Y * b.X));

    public Jet Length() => Dot(this).Sqrt();

    /// <summary>Turned about an axis through the origin, whose direction may move itself.</summary>
    /// <param name="axis">Length 1.</param>
    /// <param name="turn">Sine and cosine of the angle, right-handed.</param>
    public JetPoint3 TurnedAbout(in JetPoint3 axis, in JetTurn turn)
    {
        Jet along = axis.Dot(this) * ((turn.Cos * -1) + 1);
        return (this * turn.Cos) + (axis.Cross(this) * turn.Sin) + (axis * along);
    }
}

/// <summary>Angles of numbers that carry their derivatives.</summary>
internal static class JetAngle
{
    /// <summary>Sine and cosine of an angle, rad.</summary>
    public static JetTurn Turn(in Jet angle)
    {
        var (s, c) = Math.SinCos(angle.V);
        double square = angle.D * angle.D;
        return new(
            Cos: new(c, -s * angle.D, (-s * angle.DD) - (c * square)),
            Sin: new(s, c * angle.D, (c * angle.DD) - (s * square)));
    }

    /// <summary>The angle of the point (x, y), rad, in (-π, π].</summary>
    public static Jet Of(in Jet y, in Jet x)
    {
        double r2 = (x.V * x.V) + (y.V * y.V);
        double turn = (x.V * y.D) - (y.V * x.D);
        double r2Rate = 2 * ((x.V * x.D) + (y.V * y.D));
        double turnRate = (x.V * y.DD) - (y.V * x.DD);
        return new(Math.Atan2(y.V, x.V), turn / r2, (turnRate / r2) - (turn * r2Rate / (r2 * r2)));
    }

    /// <summary>The angle whose sine is given, rad.</summary>
    public static Jet OfSine(in Jet sine) => Of(sine, ((sine * sine * -1) + 1).Sqrt());
}
