using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Garage.Scans;

/// <summary>What came out of a scan file, in the file's own unit and frame: points, and triangles where the file has any.</summary>
public sealed class RawScan
{
    private readonly float[] _offsets;
    private readonly int[] _corners;

    internal RawScan(ScanFormat format, string variant, Vec3 origin, float[] offsets, int[] corners, IReadOnlyList<string> notes)
    {
        (Format, Variant, Origin, _offsets, _corners, Notes) = (format, variant, origin, offsets, corners, notes);
        (Least, Greatest) = Bounds();
    }

    public ScanFormat Format { get; }

    /// <summary>"binary, little endian" and the like, for people.</summary>
    public string Variant { get; }

    /// <summary>Taken off every point before it was stored: a scan far from its own zero keeps its detail.</summary>
    public Vec3 Origin { get; }

    /// <summary>x, y, z of every point less <see cref="Origin"/>, in the file's unit.</summary>
    public ReadOnlySpan<float> Offsets => _offsets;

    /// <summary>Three numbers of points a triangle; empty for a cloud of points.</summary>
    public ReadOnlySpan<int> Corners => _corners;

    public int PointCount => _offsets.Length / 3;

    public int TriangleCount => _corners.Length / 3;

    public bool IsCloud => _corners.Length == 0;

    /// <summary>Least x, y, z of the points that count, in the file's unit.</summary>
    public Vec3 Least { get; }

    /// <summary>Greatest x, y, z of the points that count, in the file's unit.</summary>
    public Vec3 Greatest { get; }

    /// <summary>What the reader left out or noticed, as sentences.</summary>
    public IReadOnlyList<string> Notes { get; }

    /// <summary>One point in the file's unit and frame.</summary>
    public Vec3 Point(int index) =>
        new(Origin.X + _offsets[3 * index], Origin.Y + _offsets[(3 * index) + 1], Origin.Z + _offsets[(3 * index) + 2]);

    private (Vec3 Least, Vec3 Greatest) Bounds()
    {
        Span<float> low = [float.MaxValue, float.MaxValue, float.MaxValue], high = [float.MinValue, float.MinValue, float.MinValue];
        int count = IsCloud ? PointCount : _corners.Length;
        for (int i = 0; i < count; i++)
        {
            int point = 3 * (IsCloud ? i : _corners[i]);
            for (int axis = 0; axis < 3; axis++)
            {
                low[axis] = Math.Min(low[axis], _offsets[point + axis]);
                high[axis] = Math.Max(high[axis], _offsets[point + axis]);
            }
        }

        return (Origin + new Vec3(low[0], low[1], low[2]), Origin + new Vec3(high[0], high[1], high[2]));
    }
}
