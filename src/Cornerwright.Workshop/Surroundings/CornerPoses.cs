using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Surroundings;

/// <summary>
/// The poses of one corner's wheel as the judge has them: travel in m, steer in rad, hub face from its place at the reference state.
/// </summary>
/// <param name="numbers">Of the corner.</param>
/// <param name="under">The wheel under a load; null at rest.</param>
internal sealed class CornerPoses(CornerReader numbers, ThingPlaces? under = null) : IPoseField
{
    private readonly ThingPlaces _places = under ?? numbers.Corner.Clearance.Places;

    /// <inheritdoc/>
    public bool TryPose(in PosePlace place, out WheelPose pose) =>
        _places.Pose(numbers, numbers.Motion, place, out pose);

    /// <summary>
    /// All travel that the parts allow, all steer from lock to lock, all travel of the axle's other wheel where one axle carries both.
    /// Where the build limits bump at lock, that limit runs in straight lines from full bump straight ahead.
    /// </summary>
    public static PoseBox Box(CornerReader numbers)
    {
        var plan = numbers.Plan.Clearance;
        var (droop, bump) = numbers.Swept();
        double atLock = Math.Clamp(plan.BumpAtLock, droop, bump), right = -plan.LockRight, left = plan.LockLeft;
        var limit = new List<BumpAtSteer>();
        if (atLock < bump)
        {
            if (right < 0)
            {
                limit.Add(new(right, atLock));
            }

            limit.Add(new(0, bump));
            if (left > 0)
            {
                limit.Add(new(left, atLock));
            }
        }

        var others = numbers.SweptOther();
        return new(new(droop, right, others.Droop), new(bump, left, others.Bump), limit.Count > 1 ? limit : null);
    }
}
