namespace Cornerwright.Mechanics.Motion.Hardpoints;

/// <summary>A corner's motion from its hardpoints, at one place of rack and plate.</summary>
/// <remarks>
/// Travel and lateral shift are those of the linkage's travel point (make it the hub face: <see cref="KnuckleLinkage"/>). Keeps the last
/// pose, so one instance belongs to one thread; a linkage may be shared by many. Source: docs/theory/hardpoints.md §8.
/// </remarks>
public sealed class HardpointMotion : CornerMotion
{
    private readonly KnuckleFollower follower;
    private readonly double rack;
    private readonly double plate;

    /// <param name="linkage">Of a left or a right corner.</param>
    /// <param name="rack">m along +Y.</param>
    /// <param name="plate">m along the plate's direction.</param>
    /// <exception cref="ArgumentException">At the reference state the linkage is locked or loose, or a number is not finite.</exception>
    public HardpointMotion(KnuckleLinkage linkage, double rack = 0, double plate = 0)
    {
        Require.Finite(rack);
        Require.Finite(plate);
        follower = new(linkage);
        (this.rack, this.plate) = (rack, plate);
    }

    /// <inheritdoc/>
    public override Reach WheelAt(double travel, out WheelMotionState wheel)
    {
        Reach reach = follower.MoveTo(travel, rack, plate);
        if (reach != Reach.Reached)
        {
            wheel = default;
            return reach;
        }

        KnuckleLinkage linkage = follower.Linkage;
        KnucklePose pose = follower.Pose;
        var disc = new DiscMotion(pose.Turned(linkage.Spindle), linkage.TyreRadius);
        wheel = new(disc.Camber, disc.Toe, pose.Origin.Y - linkage.Origin.Y);
        return Reach.Reached;
    }

    /// <inheritdoc/>
    public override Reach StationAt(double travel, Station station, out StationState state)
    {
        state = default;
        if ((station == Station.Spring ? follower.Linkage.Spring : follower.Linkage.Damper) is not { } path)
        {
            return Reach.NotGiven;
        }

        Reach reach = follower.MoveTo(travel, rack, plate);
        if (reach != Reach.Reached)
        {
            return reach;
        }

        if (!follower.RatesByTravel(out KnuckleTwist first, out KnuckleTwist second)
            || WheelGeometry.StationOf(path, new MovingKnuckle(follower.Pose, first, second), follower.TopShift) is not { } found)
        {
            return Reach.LinkageCannotClose;
        }

        state = found;
        return Reach.Reached;
    }

    /// <summary>Everything the wheel's geometry says at a travel, m.</summary>
    /// <returns>Why; <paramref name="wheel"/> holds numbers only if it is Reached.</returns>
    /// <remarks>Source: docs/theory/hardpoints.md §4 to §7.</remarks>
    public Reach GeometryAt(double travel, out WheelGeometry wheel)
    {
        wheel = default;
        Reach reach = follower.MoveTo(travel, rack, plate);
        return reach != Reach.Reached || WheelGeometry.TryRead(follower, out wheel) ? reach : Reach.LinkageCannotClose;
    }
}
