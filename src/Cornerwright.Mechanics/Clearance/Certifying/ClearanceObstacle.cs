using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Clearance.Certifying;

/// <summary>What an obstacle is fixed to.</summary>
public enum ObstacleFrame
{
    /// <summary>The body: coordinates in B.</summary>
    Body = 0,

    /// <summary>The knuckle: coordinates in S (a, 12, 3). It follows the wheel, so its gap is the same in every pose.</summary>
    Knuckle,
}

/// <summary>Anything the wheel can touch, as triangles or points under a tree, with the thickness they carry.</summary>
/// <remarks>
/// Round bodies become prisms that contain them, so that a gap is never stated too large; <see cref="Excess"/> is how
/// much too small it can be.
/// Source: docs/theory/certified-clearance.md §4.
/// </remarks>
public sealed class ClearanceObstacle
{
    /// <summary>m: what a prism may stand out from its cylinder by. Smaller costs sides.</summary>
    public const double PrismExcess = 4e-6;

    /// <summary>m: rounding of given coordinates to single precision, within 4 m of the origin.</summary>
    private const double Rounding = 3e-7;

    private ClearanceObstacle(BoundTree tree, ObstacleFrame frame, double excess) => (Tree, Frame, Excess) = (tree, frame, excess);

    public BoundTree Tree { get; }

    public ObstacleFrame Frame { get; }

    /// <summary>m: the real thing lies inside what stands here, nowhere deeper than this.</summary>
    public double Excess { get; }

    /// <summary>A scan's triangles, exactly. Source: docs/theory/certified-clearance.md §4.</summary>
    public static ClearanceObstacle Of(TriangleMesh mesh, ObstacleFrame frame = ObstacleFrame.Body) => new(BoundTree.Of(mesh), frame, 0);

    /// <summary>A scan's points, exactly. Source: docs/theory/certified-clearance.md §4.</summary>
    public static ClearanceObstacle Of(PointCloud cloud, ObstacleFrame frame = ObstacleFrame.Body) => new(BoundTree.Of(cloud), frame, 0);

    /// <summary>A tree that is there already. Source: docs/theory/certified-clearance.md §4.</summary>
    public static ClearanceObstacle Of(BoundTree tree, ObstacleFrame frame = ObstacleFrame.Body) => new(tree, frame, 0);

    /// <summary>Points, m. Source: docs/theory/certified-clearance.md §4.</summary>
    /// <exception cref="ArgumentException">No point, or one that is not finite or too far: a caller's bug.</exception>
    public static ClearanceObstacle OfPoints(ReadOnlySpan<Vec3> points, ObstacleFrame frame = ObstacleFrame.Body) =>
        new(BoundTree.Of(PointCloud.From(Floats(points))), frame, Rounding);

    /// <summary>
    /// A round bar along corners (m) with a radius (m, at least 0; 0 for a line); its ends count as balls. Source:
    /// docs/theory/certified-clearance.md §4.
    /// </summary>
    /// <exception cref="ArgumentException">
    /// Fewer than two corners, one not finite or too far, or no sound radius: a caller's bug.
    /// </exception>
    public static ClearanceObstacle OfBar(ReadOnlySpan<Vec3> corners, double radius, ObstacleFrame frame = ObstacleFrame.Body)
    {
        Require.NotNegative(radius);
        int pieces = corners.Length - 1;
        if (pieces < 1)
        {
            throw new ArgumentException("A bar has at least two corners.", nameof(corners));
        }

        int[] triangles = [.. Enumerable.Range(0, pieces).SelectMany(i => new[] { i, i + 1, i + 1 })];
        return new(BoundTreeBuild.From(Checked(Floats(corners)), triangles, 3, radius), frame, Rounding);
    }

    /// <summary>
    /// A thick surface: triangles by three indices each among points (m), all within a radius (m, at least 0) of which it fills. Source:
    /// docs/theory/certified-clearance.md §4.
    /// </summary>
    /// <exception cref="ArgumentException">No triangle, a point not finite or too far, or no sound radius: a caller's bug.</exception>
    public static ClearanceObstacle OfPlates(
        ReadOnlySpan<Vec3> points, int[] triangles, double radius, ObstacleFrame frame = ObstacleFrame.Body)
    {
        Require.NotNegative(radius);
        ArgumentNullException.ThrowIfNull(triangles);
        return triangles.Length < 3 ? throw new ArgumentException("A surface has at least one triangle.", nameof(triangles))
            : new(BoundTreeBuild.From(Checked(Floats(points)), triangles, 3, radius), frame, Rounding);
    }

    /// <summary>A cylinder or disc with flat ends, m. Source: docs/theory/certified-clearance.md §4.</summary>
    /// <exception cref="ArgumentException">An unsound cylinder: a caller's bug.</exception>
    public static ClearanceObstacle OfCylinder(in CylinderObstacle cylinder, ObstacleFrame frame = ObstacleFrame.Body)
    {
        if (!cylinder.IsSound)
        {
            throw new ArgumentException("A cylinder has a unit direction, finite foot, length and radius.", nameof(cylinder));
        }

        // A regular prism round a circle stands out by radius·(1/cos(π/n) - 1), nearly radius·π²/2n².
        int n = Math.Clamp((int)Math.Ceiling(Math.PI * Math.Sqrt(cylinder.Radius / (2 * PrismExcess))) + 1, 8, 720);
        double outer = cylinder.Radius / Math.Cos(Math.PI / n);
        Vec3 d = cylinder.Direction, u = d.Cross(Math.Abs(d.X) < 0.7 ? Vec3.UnitX : Vec3.UnitY).Unit(), v = d.Cross(u);
        var points = new Vec3[(2 * n) + 2];
        var triangles = new List<int>(12 * n);
        points[2 * n] = cylinder.Foot;
        points[(2 * n) + 1] = cylinder.Foot + (d * cylinder.Length);
        for (int i = 0; i < n; i++)
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * i / n);
            points[i] = cylinder.Foot + (((u * cos) + (v * sin)) * outer);
            points[n + i] = points[i] + (d * cylinder.Length);
            int next = (i + 1) % n;
            triangles.AddRange([i, next, n + i, n + i, next, n + next, i, next, 2 * n, n + i, n + next, (2 * n) + 1]);
        }

        return new(BoundTreeBuild.From(Checked(Floats(points)), [.. triangles], 3, 0), frame, outer - cylinder.Radius + Rounding);
    }

    /// <summary>
    /// A box: middle (m), three directions square to each other, half sizes (m). Source: docs/theory/certified-clearance.md §4.
    /// </summary>
    /// <exception cref="ArgumentException">Directions that are not unit and square, or sizes below 0: a caller's bug.</exception>
    public static ClearanceObstacle OfBox(
        in Vec3 middle, in Vec3 first, in Vec3 second, double halfFirst, double halfSecond, double halfThird,
        ObstacleFrame frame = ObstacleFrame.Body)
    {
        Require.NotNegative(halfFirst);
        Require.NotNegative(halfSecond);
        Require.NotNegative(halfThird);
        if (!(Math.Abs(first.LengthSquared - 1) < 1e-9) || !(Math.Abs(second.LengthSquared - 1) < 1e-9)
            || !(Math.Abs(first.Dot(second)) < 1e-9))
        {
            throw new ArgumentException("A box has unit directions square to each other.", nameof(first));
        }

        Vec3 third = first.Cross(second);
        var points = new Vec3[8];
        for (int i = 0; i < 8; i++)
        {
            points[i] = middle + (first * ((i & 1) == 0 ? -halfFirst : halfFirst))
                + (second * ((i & 2) == 0 ? -halfSecond : halfSecond)) + (third * ((i & 4) == 0 ? -halfThird : halfThird));
        }

        int[] triangles =
        [
            0, 1, 2, 2, 1, 3, 4, 6, 5, 5, 6, 7, 0, 4, 1, 1, 4, 5, 2, 3, 6, 6, 3, 7, 0, 2, 4, 4, 2, 6, 1, 5, 3, 3, 5, 7,
        ];
        return new(BoundTreeBuild.From(Checked(Floats(points)), triangles, 3, 0), frame, Rounding);
    }

    private static float[] Floats(ReadOnlySpan<Vec3> points)
    {
        var xyz = new float[3 * points.Length];
        for (int i = 0; i < points.Length; i++)
        {
            (xyz[3 * i], xyz[(3 * i) + 1], xyz[(3 * i) + 2]) = ((float)points[i].X, (float)points[i].Y, (float)points[i].Z);
        }

        return xyz;
    }

    private static float[] Checked(float[] xyz)
    {
        ScanFault fault = ScanFault.OfCoordinates(xyz);
        return fault.Kind == ScanFaultKind.None
            ? xyz : throw new ArgumentException($"No obstacle: {fault.Kind} at {fault.Index}.", nameof(xyz));
    }
}
