using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Workshop.Relations;

/// <summary>How a wheel on its points begins to rise: velocities of its knuckle for 1 m/s of the hub's face upward.</summary>
/// <param name="Hub">Velocity of the hub's face, m/s a m/s.</param>
/// <param name="Turn">Angular velocity of the knuckle, rad/s a m/s.</param>
/// <param name="At">Where the hub's face stands, m.</param>
/// <remarks>
/// Each rod keeps its length and a strut's top stays on its axis: five linear conditions on the six velocities of a rigid body, the
/// sixth is the rise. Source: docs/theory/relations.md, "How the points begin to move"; Craig, Introduction to Robotics, 3rd ed., §5.
/// </remarks>
internal readonly record struct PointVelocity(Vec3 Hub, Vec3 Turn, Vec3 At)
{
    public Vec3 Of(Vec3 point) => Hub + Turn.Cross(point - At);

    /// <summary>Null for kinds that carry both wheels, for points that are missing and for points that let nothing rise.</summary>
    public static PointVelocity? Solve(HardpointTable t)
    {
        if (Place(t.HubFace) is not { } hub)
        {
            return null;
        }

        Span<double> a = stackalloc double[36];
        int row = 0;
        bool whole = t.Kind switch
        {
            LinkageKind.MacPherson => Rod(a, ref row, hub, t.LowerFrontInner, t.LowerBall) && Rod(a, ref row, hub, t.LowerRearInner,
                t.LowerBall)
                && Rod(a, ref row, hub, t.TieInner, t.TieOuter) && Strut(a, ref row, hub, t.StrutTop, t.StrutLow),
            LinkageKind.MacPhersonTwoLinks => Rod(a, ref row, hub, t.LowerFrontInner, t.LowerFrontOuter)
                && Rod(a, ref row, hub, t.LowerRearInner, t.LowerRearOuter) && Rod(a, ref row, hub, t.TieInner, t.TieOuter)
                && Strut(a, ref row, hub, t.StrutTop, t.StrutLow),
            LinkageKind.DoubleWishbone => Rod(a, ref row, hub, t.LowerFrontInner, t.LowerBall) && Rod(a, ref row, hub, t.LowerRearInner,
                t.LowerBall)
                && Rod(a, ref row, hub, t.UpperFrontInner, t.UpperBall) && Rod(a, ref row, hub, t.UpperRearInner, t.UpperBall)
                && Rod(a, ref row, hub, t.TieInner, t.TieOuter),
            LinkageKind.FiveLink => Rod(a, ref row, hub, t.LowerFrontInner, t.LowerFrontOuter)
                && Rod(a, ref row, hub, t.LowerRearInner, t.LowerRearOuter) && Rod(a, ref row, hub, t.UpperFrontInner, t.UpperFrontOuter)
                && Rod(a, ref row, hub, t.UpperRearInner, t.UpperRearOuter) && Rod(a, ref row, hub, t.TieInner, t.TieOuter),
            LinkageKind.SemiTrailing => Pivot(a, ref row, hub, t.ArmOuter, t.ArmInner),
            _ => false,
        };
        return whole ? Solved(a, row, hub) : null;
    }

    private static PointVelocity? Solved(Span<double> a, int row, Vec3 hub)
    {
        Put(a, row, new Vec3(0, 0, 1), default);
        Span<double> x = stackalloc double[6];
        x[5] = 1;
        Span<int> swaps = stackalloc int[6];
        if (row != 5 || Lu.Factor(a, swaps, out _, 1e-9) == 0)
        {
            return null;
        }

        Lu.Solve(a, swaps, x);
        return new PointVelocity(new Vec3(x[0], x[1], x[2]), new Vec3(x[3], x[4], x[5]), hub);
    }

    public static Vec3? Place(BodyPoint? point) => point is { X: { } x, Y: { } y, Z: { } z } ? new Vec3(x.Si, y.Si, z.Si) : null;

    private static bool Rod(Span<double> a, ref int row, Vec3 hub, BodyPoint? body, BodyPoint? knuckle)
    {
        if (Place(body) is not { } from || Place(knuckle) is not { } to)
        {
            return false;
        }

        return Along(a, ref row, hub, to, to - from);
    }

    private static bool Strut(Span<double> a, ref int row, Vec3 hub, BodyPoint? top, BodyPoint? low)
    {
        if (Place(top) is not { } up || Place(low) is not { } down || !((up - down).Length > 1e-6))
        {
            return false;
        }

        var axis = (up - down).Unit();
        var across = axis.Cross(new Vec3(1, 0, 0)) is { Length: > 0.1 } other ? other.Unit() : axis.Cross(new Vec3(0, 1, 0)).Unit();
        return Along(a, ref row, hub, up, across) && Along(a, ref row, hub, up, axis.Cross(across));
    }

    // An arm that turns about two bushings: one does not move, the other not across the line between them.
    private static bool Pivot(Span<double> a, ref int row, Vec3 hub, BodyPoint? outer, BodyPoint? inner)
    {
        if (Place(outer) is not { } one || Place(inner) is not { } other || !((one - other).Length > 1e-6))
        {
            return false;
        }

        var axis = (one - other).Unit();
        var across = axis.Cross(new Vec3(0, 0, 1)) is { Length: > 0.1 } level ? level.Unit() : axis.Cross(new Vec3(1, 0, 0)).Unit();
        return Along(a, ref row, hub, one, new Vec3(1, 0, 0)) && Along(a, ref row, hub, one, new Vec3(0, 1, 0))
            && Along(a, ref row, hub, one, new Vec3(0, 0, 1)) && Along(a, ref row, hub, other, across)
            && Along(a, ref row, hub, other, axis.Cross(across));
    }

    // Point and direction: the point of the knuckle does not move that way.
    private static bool Along(Span<double> a, ref int row, Vec3 hub, Vec3 point, Vec3 direction)
    {
        if (!(direction.Length > 1e-9))
        {
            return false;
        }

        var way = direction.Unit();
        Put(a, row++, way, (point - hub).Cross(way));
        return true;
    }

    private static void Put(Span<double> a, int row, Vec3 linear, Vec3 turn)
    {
        var line = a.Slice(row * 6, 6);
        (line[0], line[1], line[2], line[3], line[4], line[5]) = (linear.X, linear.Y, linear.Z, turn.X, turn.Y, turn.Z);
    }
}
