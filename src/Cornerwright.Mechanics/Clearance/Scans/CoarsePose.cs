using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Clearance.Scans;

/// <summary>A pose in single precision for bounds, and how far round it the bounds are to hold.</summary>
/// <remarks>
/// Still: only the pose itself. Moving: every pose whose hub face is at h + Σ tᵢhᵢ and whose spindle is s + Σ tᵢsᵢ
/// with all tᵢ in [-1, 1], each within the stated remainder. Source: docs/theory/certified-clearance.md §3.
/// </remarks>
internal readonly struct CoarsePose
{
    public readonly float HubX, HubY, HubZ, SpindleX, SpindleY, SpindleZ;
    public readonly bool Moving;

    /// <summary>Along each of the three ways a cell extends: hub and spindle change over half its extent.</summary>
    public readonly Vec3 Hub0, Hub1, Hub2, Spindle0, Spindle1, Spindle2;

    /// <summary>Most change of hub (m) and spindle (rad) in the cell.</summary>
    public readonly float MostHub, MostSpindle;

    /// <summary>What the straight-line change may miss: m, and m for each metre from the hub.</summary>
    public readonly float Rest, RestPerReach;

    public CoarsePose(in WheelPose pose)
    {
        (HubX, HubY, HubZ) = ((float)pose.HubFace.X, (float)pose.HubFace.Y, (float)pose.HubFace.Z);
        (SpindleX, SpindleY, SpindleZ) = ((float)pose.Spindle.X, (float)pose.Spindle.Y, (float)pose.Spindle.Z);
    }

    /// <param name="hubRest">What the hub's straight-line change may miss, m.</param>
    /// <param name="spindleRest">The same of the spindle, rad.</param>
    public CoarsePose(in WheelPose pose, in PoseChange first, in PoseChange second, in PoseChange third, double hubRest, double spindleRest)
        : this(pose)
    {
        Moving = true;
        (Hub0, Hub1, Hub2) = (first.Hub, second.Hub, third.Hub);
        (Spindle0, Spindle1, Spindle2) = (first.Spindle, second.Spindle, third.Spindle);
        double hub = Hub0.Length + Hub1.Length + Hub2.Length + hubRest;
        double spindle = Spindle0.Length + Spindle1.Length + Spindle2.Length + spindleRest;
        (MostHub, MostSpindle) = (Up(hub), Up(spindle));
        Rest = Up(hubRest + (spindle * hub) + (0.5 * spindle * spindle * hub));
        RestPerReach = Up(spindleRest + (0.5 * spindle * spindle));
    }

    private static float Up(double value) => (float)(value * (1 + 1e-6)) + 1e-9f;
}

/// <summary>A change of hub-face centre (m) and spindle (as a vector) in B.</summary>
/// <remarks>The default is no change. Source: docs/theory/certified-clearance.md §3.</remarks>
public readonly record struct PoseChange(Vec3 Hub, Vec3 Spindle);
