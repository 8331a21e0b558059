using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Cornerwright.Mechanics.Clearance.Scans;

/// <summary>How far eight things reach from their eight centres.</summary>
internal interface IExtent
{
    /// <summary>How far each reaches against a direction (unit). Source: definition of a support function.</summary>
    Vector256<float> Against(Vector256<float> x, Vector256<float> y, Vector256<float> z);

    /// <summary>The furthest any point of each is from its centre, m.</summary>
    Vector256<float> Size { get; }
}

/// <summary>Discs with half thickness: the tree's nodes. Source: docs/theory/scan-clearance.md §2.</summary>
internal readonly struct DiscExtent(
    Vector256<float> nx, Vector256<float> ny, Vector256<float> nz, Vector256<float> radius, Vector256<float> thick)
    : IExtent
{
    /// <summary>Keeps the sine from falling short where its square is a difference of roundings.</summary>
    private const float Rounding = 6e-7f;

    public Vector256<float> Size
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => radius + thick;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<float> Against(Vector256<float> x, Vector256<float> y, Vector256<float> z)
    {
        var along = (x * nx) + (y * ny) + (z * nz);
        var square = Vector256.Max(Vector256<float>.One - (along * along), Vector256<float>.Zero) + Vector256.Create(Rounding);
        return (radius * Vector256.Sqrt(square)) + (thick * Vector256.Abs(along));
    }
}

/// <summary>Triangles by their corners, counted from their centres. Source: definition of a support function.</summary>
internal readonly struct TriangleExtent(
    Vector256<float> ax, Vector256<float> ay, Vector256<float> az,
    Vector256<float> bx, Vector256<float> by, Vector256<float> bz,
    Vector256<float> cx, Vector256<float> cy, Vector256<float> cz) : IExtent
{
    public Vector256<float> Size
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => Vector256.Sqrt(Vector256.Max(
            (ax * ax) + (ay * ay) + (az * az),
            Vector256.Max((bx * bx) + (by * by) + (bz * bz), (cx * cx) + (cy * cy) + (cz * cz))));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<float> Against(Vector256<float> x, Vector256<float> y, Vector256<float> z)
    {
        var a = (x * ax) + (y * ay) + (z * az);
        var b = (x * bx) + (y * by) + (z * bz);
        var c = (x * cx) + (y * cy) + (z * cz);
        return -Vector256.Min(a, Vector256.Min(b, c));
    }
}

/// <summary>Points: no extent.</summary>
internal readonly struct PointExtent : IExtent
{
    public Vector256<float> Size => Vector256<float>.Zero;

    public Vector256<float> Against(Vector256<float> x, Vector256<float> y, Vector256<float> z) => Vector256<float>.Zero;
}
