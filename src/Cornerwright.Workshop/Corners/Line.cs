using Cornerwright.Mechanics.Geometry;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <summary>A place on a line of points.</summary>
internal static class Line
{
    /// <param name="along">Number of the segment, and the share of it.</param>
    public static Vec3 At(ReadOnlySpan<Vec3> points, double along)
    {
        int segment = Math.Clamp((int)along, 0, points.Length - 1);
        double share = along - segment;
        return segment + 1 >= points.Length || share <= 0 ? points[segment]
            : points[segment] + ((points[segment + 1] - points[segment]) * share);
    }
}
