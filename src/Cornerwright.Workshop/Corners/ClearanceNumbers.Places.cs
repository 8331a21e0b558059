using Cornerwright.Mechanics.Geometry;
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
}
