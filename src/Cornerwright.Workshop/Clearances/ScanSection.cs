using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Workshop.Clearances;

/// <summary>A piece of a scan's outline in a section through the spindle, in S (a, r), m.</summary>
public readonly record struct SectionPiece(ProfilePoint From, ProfilePoint To);

/// <summary>A scan cut by the half-plane through the spindle at a clock position: the picture of the worst place.</summary>
public static class ScanSection
{
    /// <summary>Every piece of outline within a distance of the hub face.</summary>
    /// <param name="mesh">In B, or any frame the pose is given in.</param>
    /// <param name="pose">The wheel's.</param>
    /// <param name="clock">Hours.</param>
    /// <param name="reach">m.</param>
    public static IReadOnlyList<SectionPiece> Of(TriangleMesh mesh, in WheelPose pose, double clock, double reach = 0.6)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        SpindleFrame frame = SpindleFrame.Of(pose);
        Vec3 outward = pose.ClockDirection(clock), across = pose.Spindle.Cross(outward);
        var pieces = new List<SectionPiece>();
        Span<ProfilePoint> found = stackalloc ProfilePoint[3];
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            var (a, b, c) = mesh.Triangle(t);
            (a, b, c) = (a - frame.Origin, b - frame.Origin, c - frame.Origin);
            if (a.LengthSquared > reach * reach)
            {
                continue;
            }

            int count = 0;
            Cut(a, b, pose.Spindle, outward, across, found, ref count);
            Cut(b, c, pose.Spindle, outward, across, found, ref count);
            Cut(c, a, pose.Spindle, outward, across, found, ref count);
            if (count >= 2 && found[0].R > 0 && found[1].R > 0)
            {
                pieces.Add(new(found[0], found[1]));
            }
        }

        return pieces;
    }

    // A corner on the plane counts as on its far side, so that a chain of triangles is cut once at each edge.
    private static void Cut(in Vec3 p, in Vec3 q, in Vec3 along, in Vec3 outward, in Vec3 across, Span<ProfilePoint> found, ref int count)
    {
        double hp = p.Dot(across), hq = q.Dot(across);
        if (hp < 0 != hq < 0)
        {
            Vec3 x = p + ((q - p) * (hp / (hp - hq)));
            found[count++] = new(x.Dot(along), x.Dot(outward));
        }
    }
}
