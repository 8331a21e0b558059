using System.Runtime.CompilerServices;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Poses;

/// <summary>Six numbers that place an axle: x, y, z of the midpoint of its wheel centres, then yaw, roll and pitch.</summary>
[InlineArray(6)]
internal struct PoseNumbers<T>
{
    private T first;
}

/// <summary>Names for the places of <see cref="PoseNumbers{T}"/>.</summary>
internal static class PoseNumber
{
    public const int X = 0, Y = 1, Z = 2, Yaw = 3, Roll = 4, Pitch = 5;
}

/// <summary>Where an axle is: turned by yaw about Z, then roll about its own X, then pitch about its own line of wheel centres.</summary>
/// <remarks>
/// With Y along that line, both wheel centres' heights depend on z and roll alone.
/// Source: docs/theory/rigid-axles.md §1.
/// </remarks>
internal readonly struct PoseFrame
{
    private readonly JetPoint3 origin;
    private readonly JetPoint3 forward;    // X after yaw
    private readonly JetPoint3 line;       // Y after yaw and roll: along the wheel centres
    private readonly JetTurn yaw;
    private readonly JetTurn roll;
    private readonly JetTurn pitch;

    public PoseFrame(in PoseNumbers<Jet> q)
    {
        origin = new(q[PoseNumber.X], q[PoseNumber.Y], q[PoseNumber.Z]);
        (yaw, roll, pitch) = (JetAngle.Turn(q[PoseNumber.Yaw]), JetAngle.Turn(q[PoseNumber.Roll]), JetAngle.Turn(q[PoseNumber.Pitch]));
        forward = new(yaw.Cos, yaw.Sin, default);
        line = Turned(Vec3.UnitY);
    }

    public JetPoint3 Origin => origin;

    public JetPoint3 Point(in Vec3 onAxle) => origin + Turned(onAxle);

    /// <summary>As <see cref="Point(in Vec3)"/> for a point whose own place moves with the parameter.</summary>
    public JetPoint3 Point(in JetPoint3 onAxle) => origin + Turned(onAxle);

    /// <summary>A direction fixed to the axle, in the body frame.</summary>
    public JetPoint3 Turned(in Vec3 v)
    {
        // Ry, then Rx, then Rz, written out.
        Jet x = (pitch.Cos * v.X) + (pitch.Sin * v.Z);
        Jet z1 = (pitch.Cos * v.Z) - (pitch.Sin * v.X);
        Jet y = (roll.Cos * v.Y) - (roll.Sin * z1);
        Jet z = (roll.Sin * v.Y) + (roll.Cos * z1);
        return new((yaw.Cos * x) - (yaw.Sin * y), (yaw.Sin * x) + (yaw.Cos * y), z);
    }

    /// <inheritdoc cref="Turned(in Vec3)"/>
    public JetPoint3 Turned(in JetPoint3 v)
    {
        Jet x = (pitch.Cos * v.X) + (pitch.Sin * v.Z);
        Jet z1 = (pitch.Cos * v.Z) - (pitch.Sin * v.X);
        Jet y = (roll.Cos * v.Y) - (roll.Sin * z1);
        Jet z = (roll.Sin * v.Y) + (roll.Cos * z1);
        return new((yaw.Cos * x) - (yaw.Sin * y), (yaw.Sin * x) + (yaw.Cos * y), z);
    }

    /// <summary>How a point of the axle, at <paramref name="arm"/> from the origin, moves with one of the six numbers.</summary>
    public JetPoint3 Along(int number, in JetPoint3 arm) => number switch
    {
        PoseNumber.X => JetPoint3.Fixed(Vec3.UnitX),
        PoseNumber.Y => JetPoint3.Fixed(Vec3.UnitY),
        PoseNumber.Z => JetPoint3.Fixed(Vec3.UnitZ),
        PoseNumber.Yaw => JetPoint3.Fixed(Vec3.UnitZ).Cross(arm),
        PoseNumber.Roll => forward.Cross(arm),
        _ => line.Cross(arm),
    };

    /// <summary>
    /// Per unit of the parameter, rad, in the body frame: half the sum of u × u' over three directions u fixed to the axle.
    /// </summary>
    public Vec3 AngularVelocity()
    {
        JetPoint3 x = Turned(Vec3.UnitX), y = Turned(Vec3.UnitY), z = Turned(Vec3.UnitZ);
        return 0.5 * (x.V.Cross(x.D) + y.V.Cross(y.D) + z.V.Cross(z.D));
    }
}
