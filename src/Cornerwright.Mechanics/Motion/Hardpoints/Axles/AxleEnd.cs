using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Axles;

/// <summary>One end of a rigid axle in the axle's own coordinates.</summary>
/// <remarks>Source: docs/theory/rigid-axles.md §4.</remarks>
internal sealed class AxleEnd
{
    private readonly int side;             // 1 left, -1 right
    private readonly AxleSide given;
    private readonly Vec3 centre;
    private readonly Vec3 spindle;
    private readonly Vec3? spring;
    private readonly Vec3? damper;
    private readonly double contactY;      // at the reference state, body frame

    private AxleEnd(int side, AxleSide given, Vec3 centre, Vec3 spindle, Vec3? spring, Vec3? damper, double contactY) =>
        (this.side, this.given, this.centre, this.spindle, this.spring, this.damper, this.contactY) =
        (side, given, centre, spindle, spring, damper, contactY);

    /// <param name="side">1 for the left end, -1 for the right.</param>
    /// <param name="given">At the reference state, body frame.</param>
    /// <param name="onAxle">Takes a point of the body frame at the reference state to the axle's coordinates.</param>
    /// <param name="turned">Takes a direction likewise.</param>
    public static AxleEnd For(AxleSide given, int side, Func<Vec3, Vec3> onAxle, Func<Vec3, Vec3> turned)
    {
        Vec3 spindle = TyreDisc.Spindle(given.Camber, given.Toe, side);
        double contact = TyreDisc.Contact(given.WheelCentre, spindle, given.TyreRadius).Y;
        return new(
            side, given, onAxle(given.WheelCentre), turned(spindle), given.Spring is { } s ? onAxle(s.OnMoving) : null,
            given.Damper is { } d ? onAxle(d.OnMoving) : null, contact);
    }

    /// <summary>
    /// The wheel with its rates; the frames are one pose, moving in heave, in roll (left wheel up) and with this wheel alone.
    /// </summary>
    public AxleWheelState At(in PoseFrame inHeave, in PoseFrame inRoll, in PoseFrame alone)
    {
        JetPoint3 wheel = inHeave.Point(centre);
        Vec3 axis = inHeave.Turned(spindle).V;
        Vec3 contact = TyreDisc.Contact(wheel.V, axis, given.TyreRadius);
        JetPoint3 locked = LockedContact(inHeave, contact);
        return new(
            wheel.V, axis, Math.Asin(-axis.Z), Math.Atan2(axis.X, side * axis.Y), contact, contact.Y - contactY,
            wheel.X.D / wheel.Z.D, locked.X.D / locked.Z.D,
            Station(given.Spring, spring, inHeave, inRoll, alone), Station(given.Damper, damper, inHeave, inRoll, alone));
    }

    /// <summary>Wheel centre and spindle at a pose.</summary>
    public (Vec3 Centre, Vec3 Spindle) Place(in PoseFrame frame) => (frame.Point(centre).V, frame.Turned(spindle).V);

    /// <summary>The lowest point of the tyre's disc, which wanders on the tyre.</summary>
    public JetPoint3 Contact(in PoseFrame frame) => TyreDisc.Contact(frame.Point(centre), frame.Turned(spindle), given.TyreRadius);

    /// <summary>The axle's point that is the contact now, moving as part of the axle.</summary>
    public static JetPoint3 LockedContact(in PoseFrame frame, in Vec3 now)
    {
        Vec3 arm = now - frame.Origin.V;
        return frame.Point(new Vec3(
            frame.Turned(Vec3.UnitX).V.Dot(arm), frame.Turned(Vec3.UnitY).V.Dot(arm), frame.Turned(Vec3.UnitZ).V.Dot(arm)));
    }

    private AxleStationState? Station(StationPoints? points, Vec3? moving, in PoseFrame inHeave, in PoseFrame inRoll, in PoseFrame alone)
    {
        if (points is not { } ends || moving is not { } end)
        {
            return null;
        }

        JetPoint3 top = JetPoint3.Fixed(ends.OnBody);
        Jet heave = (inHeave.Point(end) - top).Length(), roll = (inRoll.Point(end) - top).Length(), one = (alone.Point(end) - top).Length();

        // The parameter in roll is the left wheel's travel; the right wheel's is its opposite.
        return new(heave.V, new(-heave.D, -side * roll.D, -one.D), new(-heave.DD, -roll.DD, -one.DD));
    }
}
