using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Poses;

/// <summary>How the knuckle moves by one parameter: its turn and its origin's path, both per unit of the parameter.</summary>
/// <param name="Turn">Angular rate in body axes, rad per unit.</param>
/// <param name="Shift">Of the knuckle's origin, m per unit.</param>
/// <remarks>The default stands still. Source: docs/theory/hardpoints.md §4.</remarks>
public readonly record struct KnuckleTwist(Vec3 Turn, Vec3 Shift)
{
    /// <summary>
    /// Velocity of a point of the knuckle. Source: rigid body kinematics, e.g. Craig, Introduction to Robotics, 3rd ed., §5.3.
    /// </summary>
    /// <param name="fromOrigin">From the knuckle's origin to the point, body axes, m.</param>
    public Vec3 Velocity(in Vec3 fromOrigin) => Shift + Turn.Cross(fromOrigin);

    public static KnuckleTwist operator +(KnuckleTwist a, KnuckleTwist b) => new(a.Turn + b.Turn, a.Shift + b.Shift);

    public static KnuckleTwist operator *(KnuckleTwist a, double k) => new(a.Turn * k, a.Shift * k);
}

/// <summary>Exact rates of the knuckle at one pose.</summary>
/// <param name="ByTravel">Per m of travel, rack and plate held.</param>
/// <param name="ByTravelTwice">Second derivative by travel: angular acceleration and the origin's acceleration.</param>
/// <param name="ByRack">Per m of rack along +Y, travel and plate held.</param>
/// <param name="ByPlate">Per m of the plate, travel and rack held.</param>
/// <remarks>Source: docs/theory/hardpoints.md §4.</remarks>
public readonly record struct KnuckleRates(KnuckleTwist ByTravel, KnuckleTwist ByTravelTwice, KnuckleTwist ByRack, KnuckleTwist ByPlate);

/// <summary>A pose that moves: what a point of the knuckle does, with both derivatives by travel (or by another parameter).</summary>
internal readonly struct MovingKnuckle(in KnucklePose pose, in KnuckleTwist first, in KnuckleTwist second)
{
    private readonly KnuckleTurn turn = new(pose);
    private readonly Vec3 origin = pose.Origin;
    private readonly KnuckleTwist first = first;
    private readonly KnuckleTwist second = second;

    public JetPoint3 Point(in Vec3 inKnuckle)
    {
        Vec3 r = turn.Apply(inKnuckle), across = first.Turn.Cross(r);
        return Join(origin + r, first.Shift + across, second.Shift + second.Turn.Cross(r) + first.Turn.Cross(across));
    }

    public JetPoint3 Direction(in Vec3 inKnuckle)
    {
        Vec3 r = turn.Apply(inKnuckle), across = first.Turn.Cross(r);
        return Join(r, across, second.Turn.Cross(r) + first.Turn.Cross(across));
    }

    private static JetPoint3 Join(in Vec3 v, in Vec3 d, in Vec3 dd) => new(new(v.X, d.X, dd.X), new(v.Y, d.Y, dd.Y), new(v.Z, d.Z, dd.Z));
}
