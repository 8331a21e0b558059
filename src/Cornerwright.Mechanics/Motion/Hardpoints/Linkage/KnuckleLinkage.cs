using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Linkage;

/// <summary>A corner's linkage made ready for fast solving: five scalar conditions, spring, damper and steering axis.</summary>
/// <remarks>
/// Worked as a left wheel: a right one is reflected in the plane Y = 0 on the way in, and points are reflected back on the way out. May be
/// shared by threads; each needs its own <see cref="KnuckleFollower"/>. Source: docs/theory/hardpoints.md §2.
/// </remarks>
public sealed class KnuckleLinkage
{
    /// <summary>Conditions a knuckle has to meet besides its travel.</summary>
    public const int Conditions = 5;

    private readonly KnuckleCondition[] conditions;

    /// <param name="corner">Finite joints; ties that take five freedoms in all.</param>
    /// <param name="travelPointOutboard">
    /// Where on the spindle the point lies whose height is the travel, m outboard of the wheel centre: 0 for the wheel centre itself, the
    /// wheel's offset (ET) for the hub face.
    /// </param>
    /// <exception cref="ArgumentException">
    /// The ties do not take five freedoms, a number is not finite, or the points make no linkage: where they come from a user,
    /// <see cref="Create"/> says so instead.
    /// </exception>
    public KnuckleLinkage(CornerLinkage corner, double travelPointOutboard = 0)
    {
        Require.Finite(travelPointOutboard);
        RequireFinite(corner);
        if (LinkageFlaw.Of(corner) is { } flaw)
        {
            throw new ArgumentException(flaw.ToString(), nameof(corner));
        }

        Corner = corner;
        Side = corner.Side;
        Spindle = TyreDisc.Spindle(corner.Camber, corner.Toe, 1);
        WheelCentre = Spindle * -travelPointOutboard;
        Origin = Inward(corner.WheelCentre) - WheelCentre;
        TyreRadius = corner.TyreRadius;
        double plate = corner.PlateDirection.Length;
        Plate = plate > 0 ? Inward(corner.PlateDirection) / plate : default;
        conditions = ConditionsOf(corner);
        Spring = StationPath.For(this, corner.Spring);
        Damper = StationPath.For(this, corner.Damper);
        Bar = corner.Bar is { } b
            ? new StationPath.RockerPath(
                this, new(b.Pivot, b.LinkOnBar, b.Pivot, b.Axis, b.LinkOnBar, b.LinkFoot, b.First, b.Second, b.Ball))
            : null;
        Steering = SteeringJoints.Of(this);
        Contact = TyreDisc.Contact(Inward(corner.WheelCentre), Spindle, TyreRadius);
    }

    /// <summary>The linkage of points that a user measured.</summary>
    /// <param name="corner">Finite joints; ties that take five freedoms in all.</param>
    /// <param name="flaw">Null, or why the points make no linkage.</param>
    /// <param name="travelPointOutboard">As the constructor takes it, m.</param>
    /// <returns>Null where <paramref name="flaw"/> says why.</returns>
    /// <exception cref="ArgumentException">The ties do not take five freedoms, or a number is not finite: our own bug.</exception>
    /// <remarks>Whether the ties hold the knuckle is found by whoever follows it. Source: docs/theory/hardpoints.md §2.</remarks>
    public static KnuckleLinkage? Create(CornerLinkage corner, out LinkageFlaw? flaw, double travelPointOutboard = 0)
    {
        ArgumentNullException.ThrowIfNull(corner);
        RequireFinite(corner);
        flaw = LinkageFlaw.Of(corner);
        return flaw is null ? new(corner, travelPointOutboard) : null;
    }

    /// <summary>What it was made from.</summary>
    public CornerLinkage Corner { get; }

    /// <summary>1 on the left, -1 on the right.</summary>
    public int Side { get; }

    /// <summary>Where the knuckle's origin is at the reference state, m, reflected to the left.</summary>
    public Vec3 Origin { get; }

    /// <summary>Spindle in the knuckle, length 1, outboard, reflected to the left.</summary>
    public Vec3 Spindle { get; }

    /// <summary>Wheel centre from the knuckle's origin, m.</summary>
    internal Vec3 WheelCentre { get; }

    internal double TyreRadius { get; }

    /// <summary>The plate's direction, length 1, or zero.</summary>
    internal Vec3 Plate { get; }

    /// <summary>Contact at the reference state, m.</summary>
    internal Vec3 Contact { get; }

    internal StationPath? Spring { get; }

    internal StationPath? Damper { get; }

    internal StationPath.RockerPath? Bar { get; }

    internal SteeringJoints Steering { get; }

    internal ReadOnlySpan<KnuckleCondition> All => conditions;

    /// <summary>What a tie is called, after the joints it connects.</summary>
    internal string NameOf(int tie) => Corner.Ties[tie] switch
    {
        LinkageTie.Rod rod => $"{Corner.Joints[rod.Body].Name} - {Corner.Joints[rod.Knuckle].Name}",
        LinkageTie.Strut strut => $"{Corner.Joints[strut.Top].Name} - {Corner.Joints[strut.Low].Name}",
        LinkageTie.Hinge hinge => $"{Corner.Joints[hinge.First].Name} - {Corner.Joints[hinge.Second].Name}",
        _ => "",
    };

    /// <summary>Reflected to the left when this is a right wheel; and back again.</summary>
    internal Vec3 Inward(in Vec3 p) => Side > 0 ? p : new(p.X, -p.Y, p.Z);

    internal Vec3 Joint(int joint) => Inward(Corner.Joints[joint].At);

    internal Vec3 OnKnuckle(int joint) => Joint(joint) - Origin;

    private static void RequireFinite(CornerLinkage corner)
    {
        Require.Finite(corner.WheelCentre.LengthSquared + corner.Camber + corner.Toe + corner.PlateDirection.LengthSquared);
        Require.Finite(corner.TyreRadius);
        foreach (MeasuredJoint joint in corner.Joints)
        {
            Require.Finite(joint.At.LengthSquared, joint.Name);
        }
    }

    private KnuckleCondition[] ConditionsOf(CornerLinkage corner)
    {
        var list = new KnuckleCondition[Conditions];
        int count = 0, tie = 0;
        void Add(in KnuckleCondition condition)
        {
            if (count < Conditions)
            {
                list[count] = condition;
            }

            count++;
        }

        foreach (LinkageTie link in corner.Ties)
        {
            switch (link)
            {
                case LinkageTie.Rod rod:
                    double length = (Joint(rod.Knuckle) - Joint(rod.Body)).Length;
                    Add(new(ConditionKind.Rod, OnKnuckle(rod.Knuckle), Joint(rod.Body), length, rod.Steers ? Side : 0, false, tie));
                    break;
                case LinkageTie.Strut strut:
                    AddLine(Add, Joint(strut.Top), Joint(strut.Top) - Joint(strut.Low), true, tie);
                    break;
                case LinkageTie.Hinge hinge:
                    Vec3 first = OnKnuckle(hinge.First);
                    foreach (Vec3 axis in (ReadOnlySpan<Vec3>)[Vec3.UnitX, Vec3.UnitY, Vec3.UnitZ])
                    {
                        Add(new(ConditionKind.Plane, first, axis, axis.Dot(Joint(hinge.First)), 0, false, tie));
                    }

                    AddLine(Add, Joint(hinge.Second), Joint(hinge.Second) - Joint(hinge.First), false, tie);
                    break;
            }

            tie++;
        }

        return count == Conditions
            ? list
            : throw new ArgumentException(
                $"The ties take {count} freedoms; a knuckle that travels keeps one of six, so five are wanted.", nameof(corner));
    }

    private void AddLine(AddCondition add, in Vec3 point, in Vec3 along, bool slides, int tie)
    {
        var (first, second) = Across(along.Unit());
        add(new(ConditionKind.AcrossLine, first, point, first.Dot(point - Origin), 0, slides, tie));
        add(new(ConditionKind.AcrossLine, second, point, second.Dot(point - Origin), 0, slides, tie));
    }

    /// <summary>Two directions of length 1 across a direction of length 1 and across each other.</summary>
    private static (Vec3 First, Vec3 Second) Across(in Vec3 along)
    {
        double x = Math.Abs(along.X), y = Math.Abs(along.Y), z = Math.Abs(along.Z);
        Vec3 away = x <= y && x <= z ? Vec3.UnitX : y <= z ? Vec3.UnitY : Vec3.UnitZ;
        Vec3 first = away.Cross(along).Unit();
        return (first, along.Cross(first));
    }

    private delegate void AddCondition(in KnuckleCondition condition);
}
