using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Linkage;

/// <summary>What the wheel steers about.</summary>
public enum SteeringAxisKind
{
    /// <summary>Nothing: it is not steered.</summary>
    None = 0,

    /// <summary>Two ball joints.</summary>
    TwoBalls,

    /// <summary>A ball joint and the strut's top.</summary>
    BallToTop,

    /// <summary>Where the two planes through the strut's top and each of two lower links meet.</summary>
    TopAndTwoLinks,

    /// <summary>The instant screw axis with the tie rod freed and the spring's length held.</summary>
    Screw,
}

/// <summary>How the steering axis is found, read from which rods share a joint.</summary>
/// <remarks>Source: docs/theory/hardpoints.md §6.</remarks>
internal sealed record SteeringJoints(SteeringAxisKind Kind, Vec3 Lower, Vec3 Upper, Vec3 Top, Vec3 FirstBody, Vec3 SecondBody)
{
    public static SteeringJoints Of(KnuckleLinkage linkage)
    {
        var ties = linkage.Corner.Ties;
        LinkageTie.Strut? strut = ties.OfType<LinkageTie.Strut>().FirstOrDefault();
        Vec3 top = strut is null ? default : linkage.Joint(strut.Top);
        List<LinkageTie.Rod> rods = [.. ties.OfType<LinkageTie.Rod>().Where(rod => !rod.Steers)];
        List<Vec3> balls = [];
        for (int i = 0; i < rods.Count; i++)
        {
            for (int k = i + 1; k < rods.Count; k++)
            {
                Vec3 ball = linkage.OnKnuckle(rods[i].Knuckle);
                if (ball == linkage.OnKnuckle(rods[k].Knuckle) && !balls.Contains(ball))
                {
                    balls.Add(ball);
                }
            }
        }

        bool steers = ties.OfType<LinkageTie.Rod>().Any(rod => rod.Steers);
        return (strut is not null, balls.Count, rods.Count, steers) switch
        {
            (true, 1, _, _) => new(SteeringAxisKind.BallToTop, balls[0], default, top, default, default),
            (true, 0, 2, _) => new(
                SteeringAxisKind.TopAndTwoLinks, linkage.OnKnuckle(rods[0].Knuckle), linkage.OnKnuckle(rods[1].Knuckle), top,
                linkage.Joint(rods[0].Body), linkage.Joint(rods[1].Body)),
            (false, 2, _, _) when balls[0].Z > balls[1].Z => new(SteeringAxisKind.TwoBalls, balls[1], balls[0], default, default, default),
            (false, 2, _, _) => new(SteeringAxisKind.TwoBalls, balls[0], balls[1], default, default, default),
            (false, _, _, true) => new(SteeringAxisKind.Screw, default, default, default, default, default),
            _ => new(SteeringAxisKind.None, default, default, default, default, default),
        };
    }

    /// <summary>A point of the axis and its direction (any length); false when there is none of this kind.</summary>
    public bool Line(in KnucklePose pose, in Vec3 topShift, out Vec3 point, out Vec3 direction)
    {
        Vec3 top = Top + topShift;
        switch (Kind)
        {
            case SteeringAxisKind.TwoBalls:
                point = pose.Point(Lower);
                direction = pose.Point(Upper) - point;
                return true;
            case SteeringAxisKind.BallToTop:
                point = pose.Point(Lower);
                direction = top - point;
                return true;
            case SteeringAxisKind.TopAndTwoLinks:
                point = top;
                Vec3 first = (FirstBody - top).Cross(pose.Point(Lower) - top), second = (SecondBody - top).Cross(pose.Point(Upper) - top);
                direction = first.Cross(second);
                return true;
            default:
                (point, direction) = (default, default);
                return false;
        }
    }
}
