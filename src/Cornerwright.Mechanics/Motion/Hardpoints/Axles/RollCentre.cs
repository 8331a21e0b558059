using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Axles;

/// <summary>Roll centre of a pair of wheels from how both contacts move in roll, in the plane Y-Z.</summary>
/// <remarks>Source: docs/theory/rigid-axles.md §5.</remarks>
internal static class RollCentre
{
    /// <summary>Where the normals of two paths meet; X of the answer is 0. Positions in m, rates by any common parameter.</summary>
    public static Vec3 WhereNormalsMeet(in Vec3 left, in Vec3 leftRate, in Vec3 right, in Vec3 rightRate)
    {
        // (P - left)·leftRate = 0 and (P - right)·rightRate = 0.
        double a = (left.Y * leftRate.Y) + (left.Z * leftRate.Z), b = (right.Y * rightRate.Y) + (right.Z * rightRate.Z);
        double det = (leftRate.Y * rightRate.Z) - (leftRate.Z * rightRate.Y);
        return new(0, ((a * rightRate.Z) - (b * leftRate.Z)) / det, ((leftRate.Y * b) - (rightRate.Y * a)) / det);
    }
}
