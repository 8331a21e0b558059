using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Clearance.Scans;

/// <summary>
/// Triangles or points of an obstacle, sorted so that neighbours stand together, under a tree of bounds with eight children a node.
/// </summary>
/// <remarks>
/// Flat arrays, no pointers: node i of level k covers the groups of eight from i·8^k on, its children are nodes 8i to 8i+7 of the level
/// below, and eight brothers stand side by side for eight-wide arithmetic. A node's bound is a disc: centre, unit normal of the best plane,
/// radius and half thickness; it hugs a piece of surface whatever its direction, so that a wheel parallel to the surface sees a thin thing
/// and not a ball. Source: docs/theory/scan-clearance.md §2.
/// </remarks>
public sealed class BoundTree
{
    /// <summary>Most triangles or points; the arrays for more would pass the size of one array.</summary>
    public const int MostPrimitives = 28_000_000;

    internal const int BlockFloats = 64;
    internal const int Lanes = 8;

    internal BoundTree(int count, int vertices, float[] leaves, int[] source, float[][] levels, int[] counts, double inflation)
    {
        (PrimitiveCount, Vertices, Leaves, Source, Levels, Counts, Inflation) =
            (count, vertices, leaves, source, levels, counts, inflation);
    }

    /// <summary>Triangles or points.</summary>
    public int PrimitiveCount { get; }

    /// <summary>m, at least 0: everything is this much thicker than its triangles or points (a bar's radius).</summary>
    public double Inflation { get; }

    /// <summary>3 for triangles, 1 for points.</summary>
    internal int Vertices { get; }

    /// <summary>Groups of eight: x of the first corners of all eight, then y, z, then the next corner; m in B.</summary>
    internal float[] Leaves { get; }

    /// <summary>The number a triangle or point had where it came from, by its place here.</summary>
    internal int[] Source { get; }

    /// <summary>By level, the lowest first: blocks of eight nodes (centre x, y, z, normal x, y, z, radius, half thickness).</summary>
    internal float[][] Levels { get; }

    /// <summary>Nodes of each level.</summary>
    internal int[] Counts { get; }

    internal int GroupFloats => 3 * Vertices * Lanes;

    /// <summary>A tree over a mesh's triangles. About 0.3 µs a triangle. Source: docs/theory/scan-clearance.md §2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">More than <see cref="MostPrimitives"/>: decimate first.</exception>
    public static BoundTree Of(TriangleMesh mesh)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        return BoundTreeBuild.From(mesh.Coordinates, mesh.Corners, 3, 0);
    }

    /// <summary>A tree over a cloud's points. Source: docs/theory/scan-clearance.md §2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">More than <see cref="MostPrimitives"/>: decimate first.</exception>
    public static BoundTree Of(PointCloud cloud)
    {
        ArgumentNullException.ThrowIfNull(cloud);
        return BoundTreeBuild.From(cloud.Coordinates, [], 1, 0);
    }

    /// <summary>The number that a primitive had where it came from. Source: layout of this type.</summary>
    internal int SourceOf(int place) => Source[place];

    /// <summary>A corner of a primitive by its place here, m in B. Source: layout of this type.</summary>
    internal Vec3 Corner(int place, int corner)
    {
        int at = (place / Lanes * GroupFloats) + (corner * 3 * Lanes) + (place % Lanes);
        return new(Leaves[at], Leaves[at + Lanes], Leaves[at + (2 * Lanes)]);
    }
}
