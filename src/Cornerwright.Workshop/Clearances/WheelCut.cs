using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Pictures;
using Cornerwright.Workshop.Scanning;
using Cornerwright.Workshop.Surroundings;

namespace Cornerwright.Workshop.Clearances;

/// <summary>What the cutting plane meets of one thing, in the half-plane (a, r), m.</summary>
/// <param name="Thing">The thing.</param>
/// <param name="Lines">Where it cuts a surface.</param>
/// <param name="Dots">Where it meets lines and lone points.</param>
public sealed record CutThing(NearThing Thing, IReadOnlyList<SectionPiece> Lines, IReadOnlyList<ProfilePoint> Dots);

/// <summary>
/// The picture of one gap: wheel and surroundings cut by the half-plane through the spindle at the clock position of the nearest place.
/// </summary>
/// <param name="Clock">Hours.</param>
/// <param name="Outlines">As <see cref="CornerClearance.Outlines"/>.</param>
/// <param name="Things">Everything the plane meets near the wheel.</param>
/// <param name="Gap">The gap that is dimensioned.</param>
/// <param name="OnWheel">Its end on the wheel.</param>
/// <param name="OnThing">Its end on the thing.</param>
public sealed record WheelCut(
    double Clock, IReadOnlyList<SectionOutline> Outlines, IReadOnlyList<CutThing> Things, PoseGap Gap, ProfilePoint OnWheel,
    ProfilePoint OnThing)
{
    /// <summary>Points of a cloud this near to the plane are drawn, m.</summary>
    private const double Slice = 0.0015;

    private const int Sides = 48;

    /// <summary>Cuts the corner where a gap of a pose is.</summary>
    /// <param name="corner">With nothing missing.</param>
    /// <param name="travel">m.</param>
    /// <param name="steer">rad.</param>
    /// <param name="gap">One of <see cref="CornerClearance.At"/> at this pose.</param>
    /// <param name="reach">How far from the hub face anything is looked at, m.</param>
    /// <param name="other">Travel of the axle's other wheel, m; null for the same.</param>
    /// <returns>Null where the wheel cannot be.</returns>
    public static WheelCut? Of(CornerClearance corner, double travel, double steer, PoseGap gap, double reach = 0.6, double? other = null)
    {
        ArgumentNullException.ThrowIfNull(corner);
        ArgumentNullException.ThrowIfNull(gap);
        if (!corner.TryPose(travel, steer, out WheelPose pose, other))
        {
            return null;
        }

        double clock = gap.Clock;
        SpindleFrame frame = SpindleFrame.Of(pose);
        var things = new List<CutThing>();
        foreach (var (thing, points) in corner.Lines())
        {
            Vec3[] inSpindle = thing.OnBody ? [.. points.Select(p => frame.ToSpindle(p))] : points;
            things.Add(new(thing, [], Crossings(inSpindle, clock)));
        }

        var strut = corner.Strut(travel);
        var pieces = corner.Things.Where(t => t.Kind == NearKind.Strut).ToList();
        for (int i = 0; i < strut.Count && i < pieces.Count; i++)
        {
            things.Add(new(pieces[i], ScanSection.Of(Prism(strut[i], frame), pose, clock, 2), []));
        }

        if (corner.Link(travel, steer, other) is { } link)
        {
            things.Add(new(corner.Things.First(t => t.Kind == NearKind.Link), ScanSection.Of(Prism(link, frame), pose, clock, 2), []));
        }

        foreach (PlacedScan scan in corner.Scans)
        {
            NearThing thing = corner.Things.First(t => t.Id == "scan-" + scan.Scan.Id);
            things.Add(scan.Mesh is { } mesh
                ? new(thing, ScanSection.Of(thing.OnBody ? mesh : Carried(mesh, frame), pose, clock, reach), [])
                : new(thing, [], Sliced(scan.Cloud!, thing.OnBody ? frame : null, clock, reach)));
        }

        // The dimensioned place itself stands in the plane, whatever the plane meets elsewhere of its thing.
        return new(
            clock, corner.Outlines(), [.. things.Where(t => t.Lines.Count + t.Dots.Count > 0)], gap, InPlane(gap.OnWheel, clock),
            InPlane(gap.OnThing, clock));
    }

    private static ProfilePoint InPlane(in Vec3 p, double clock)
    {
        var (sin, cos) = Math.SinCos(clock * (Math.PI / 6));
        return new(p.X, (p.Y * cos) + (p.Z * sin));
    }

    private static double Beside(in Vec3 p, double clock)
    {
        var (sin, cos) = Math.SinCos(clock * (Math.PI / 6));
        return (p.Z * cos) - (p.Y * sin);
    }

    private static List<ProfilePoint> Crossings(Vec3[] line, double clock)
    {
        var dots = new List<ProfilePoint>();
        for (int i = 0; i + 1 < line.Length; i++)
        {
            double from = Beside(line[i], clock), to = Beside(line[i + 1], clock);
            if (from < 0 != to < 0)
            {
                Keep(dots, InPlane(line[i] + ((line[i + 1] - line[i]) * (from / (from - to))), clock));
            }
        }

        if (line.Length == 1 && Math.Abs(Beside(line[0], clock)) < Slice)
        {
            Keep(dots, InPlane(line[0], clock));
        }

        return dots;
    }

    private static List<ProfilePoint> Sliced(PointCloud cloud, SpindleFrame? frame, double clock, double reach)
    {
        var dots = new List<ProfilePoint>();
        for (int i = 0; i < cloud.PointCount; i++)
        {
            Vec3 p = frame is { } f ? f.ToSpindle(cloud.Point(i)) : cloud.Point(i);
            if (p.LengthSquared < reach * reach && Math.Abs(Beside(p, clock)) < Slice)
            {
                Keep(dots, InPlane(p, clock));
            }
        }

        return dots;
    }

    private static void Keep(List<ProfilePoint> dots, ProfilePoint p)
    {
        if (p.R > 0)
        {
            dots.Add(p);
        }
    }

    private static TriangleMesh Carried(TriangleMesh mesh, in SpindleFrame frame)
    {
        float[] xyz = new float[3 * mesh.PointCount];
        for (int i = 0; i < mesh.PointCount; i++)
        {
            Write(xyz, i, frame.ToBody(mesh.Point(i)));
        }

        return TriangleMesh.From(xyz, mesh.Corners.ToArray());
    }

    /// <summary>A cylinder of S as a prism in B.</summary>
    private static TriangleMesh Prism(in CylinderObstacle cylinder, in SpindleFrame frame)
    {
        Vec3 d = cylinder.Direction, u = d.Cross(Math.Abs(d.X) < 0.7 ? Vec3.UnitX : Vec3.UnitY).Unit(), v = d.Cross(u);
        float[] xyz = new float[(6 * Sides) + 6];
        var corners = new List<int>(12 * Sides);
        Write(xyz, 2 * Sides, frame.ToBody(cylinder.Foot));
        Write(xyz, (2 * Sides) + 1, frame.ToBody(cylinder.Foot + (d * cylinder.Length)));
        for (int i = 0; i < Sides; i++)
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * i / Sides);
            Vec3 p = cylinder.Foot + (((u * cos) + (v * sin)) * cylinder.Radius);
            Write(xyz, i, frame.ToBody(p));
            Write(xyz, Sides + i, frame.ToBody(p + (d * cylinder.Length)));
            int next = (i + 1) % Sides;
            corners.AddRange(
                [i, next, Sides + i, Sides + i, next, Sides + next, i, next, 2 * Sides, Sides + i, Sides + next, (2 * Sides) + 1]);
        }

        return TriangleMesh.TryFrom(xyz, [.. corners], out TriangleMesh? mesh).Kind == ScanFaultKind.None ? mesh!
            : TriangleMesh.From([0, 0, 0, 1e-3f, 0, 0, 0, 1e-3f, 0], [0, 1, 2]);
    }

    private static void Write(float[] xyz, int i, in Vec3 p) =>
        (xyz[3 * i], xyz[(3 * i) + 1], xyz[(3 * i) + 2]) = ((float)p.X, (float)p.Y, (float)p.Z);
}
