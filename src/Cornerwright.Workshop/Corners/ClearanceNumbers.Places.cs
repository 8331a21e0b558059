using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <content>Where things stand, for pictures.</content>
internal sealed partial class ClearanceNumbers
{
    /// <summary>
    /// The places that gap readings fix of one item, after <see cref="Search"/>: in B
    /// if it belongs to the body, in S if to the knuckle; no places for the strut.
    /// </summary>
    public ReadOnlySpan<Vec3> PointsOf(int item) => _points[item];

    /// <summary>A drop link as a round bar in S with the wheel there; no sound cylinder where it cannot be.</summary>
    public CylinderObstacle LinkAt(CornerReader n, int item, in PosePlace place)
    {
        Span<Vec3> ends = stackalloc Vec3[2];
        var line = LineOf(item);
        return line.Moves && _places.Pose(n, n.Motion, place, out var pose)
            && line.InSpindle(_places, n, place, SpindleFrame.Of(pose), ends)
            ? new(ends[0], (ends[1] - ends[0]).Unit(), (ends[1] - ends[0]).Length, line.Radius) : default;
    }
}
