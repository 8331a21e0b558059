using System.Globalization;
using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Garage.Scans;

/// <summary>Points and triangles while a file is read. Memory follows what was read, never what a header says.</summary>
internal sealed class ScanGathering(ScanFormat format)
{
    private Rows<float> _offsets;
    private Rows<int> _corners;
    private Vec3 _origin;

    public int PointCount => _offsets.Count / 3;

    public List<string> Notes { get; } = [];

    public string Variant { get; set; } = "";

    /// <summary>Makes room at once for counts that the bytes of the file were found to allow.</summary>
    public void Expect(long points, long triangles)
    {
        _offsets.Expect(3 * Math.Min(points, ScanLimits.MostPoints));
        _corners.Expect(3 * Math.Min(triangles, ScanLimits.MostTriangles));
    }

    /// <summary>A point in the file's unit.</summary>
    public void Point(double x, double y, double z)
    {
        if (!(Math.Abs(x) <= ScanLimits.MostCoordinate && Math.Abs(y) <= ScanLimits.MostCoordinate
            && Math.Abs(z) <= ScanLimits.MostCoordinate))
        {
            string given = string.Create(CultureInfo.InvariantCulture, $"{x} {y} {z}");
            bool number = double.IsFinite(x) && double.IsFinite(y) && double.IsFinite(z);
            throw ScanFault.At(
                "point " + Count(PointCount + 1L), given,
                FormattableString.Invariant($"finite numbers of at most {ScanLimits.MostCoordinate:0}"),
                number ? "Move the scan near its zero and export it again."
                    : "The scan has holes written as points: let the scanning program clean it and export it again.");
        }

        if (PointCount == ScanLimits.MostPoints)
        {
            throw ScanFault.At("points", "more than " + Count(ScanLimits.MostPoints), $"at most {Count(ScanLimits.MostPoints)} points",
                "Crop the scan to the wheel arch, or export it coarser.");
        }

        if (PointCount == 0)
        {
            _origin = new Vec3(x, y, z);
        }

        _offsets.Add((float)(x - _origin.X));
        _offsets.Add((float)(y - _origin.Y));
        _offsets.Add((float)(z - _origin.Z));
    }

    /// <summary>A point of a node, in the file's unit.</summary>
    public void Point(in GlbPlace place, double x, double y, double z)
    {
        Vec3 p = place.Apply(new Vec3(x, y, z));
        Point(p.X, p.Y, p.Z);
    }

    public void Triangle(int a, int b, int c)
    {
        if (_corners.Count == 3 * ScanLimits.MostTriangles)
        {
            throw ScanFault.At("faces", "more than " + Count(ScanLimits.MostTriangles),
                $"at most {Count(ScanLimits.MostTriangles)} triangles", "Crop the scan to the wheel arch, or export it coarser.");
        }

        _corners.Add(a);
        _corners.Add(b);
        _corners.Add(c);
    }

    /// <summary>Same place, to the bit, as an earlier point: for files that write each triangle's corners anew.</summary>
    public bool SameAs(int index, float x, float y, float z) =>
        _offsets[3 * index] == x && _offsets[(3 * index) + 1] == y && _offsets[(3 * index) + 2] == z;

    /// <summary>The last point as it is stored, less the origin.</summary>
    public (float X, float Y, float Z) Last => Stored(PointCount - 1);

    /// <summary>A point as it is stored, less the origin.</summary>
    public (float X, float Y, float Z) Stored(int index) => (_offsets[3 * index], _offsets[(3 * index) + 1], _offsets[(3 * index) + 2]);

    /// <summary>Takes the last point back.</summary>
    public void Drop() => _offsets.Shorten(3);

    /// <summary>The whole, once everything hangs together.</summary>
    public RawScan Finish()
    {
        if (PointCount == 0)
        {
            throw ScanFault.At("points", "none", "at least one triangle, or four points", "The file is empty: export the scan again.");
        }

        bool hadTriangles = _corners.Count > 0;
        int flat = DropFlat();
        if (hadTriangles && _corners.Count == 0)
        {
            throw ScanFault.At("faces", $"{Count(flat)} triangles, all without area", "at least one triangle with an area",
                "The file is damaged or was exported too coarse: export it again.");
        }

        if (flat > 0)
        {
            Notes.Add($"{Count(flat)} triangles without area were left out.");
        }

        NoteLoose();
        var scan = new RawScan(format, Variant, _origin, _offsets.ToArray(), _corners.ToArray(), Notes);
        var size = scan.Greatest - scan.Least;
        if (!hadTriangles && (PointCount < 4 || !(size.Length > 0)))
        {
            throw ScanFault.At("points", $"{Count(PointCount)} points, {(size.Length > 0 ? "too few" : "all in one place")}",
                "at least one triangle, or four points apart", "The file holds no scan: export it again.");
        }

        return scan;
    }

    internal static string Count(long number) => number.ToString("#,0", CultureInfo.InvariantCulture).Replace(',', ' ');

    // Takes out triangles that name a point twice or have no area, and refuses points that do not exist.
    private int DropFlat()
    {
        int kept = 0, flat = 0, points = PointCount;
        for (int i = 0; i < _corners.Count; i += 3)
        {
            int a = _corners[i], b = _corners[i + 1], c = _corners[i + 2];
            if ((uint)a >= (uint)points || (uint)b >= (uint)points || (uint)c >= (uint)points)
            {
                throw ScanFault.At($"face {Count((i / 3) + 1L)}", FormattableString.Invariant($"{a} {b} {c}"),
                    FormattableString.Invariant($"points 0 to {points - 1}"), "It names a point that is not there: export the file again.");
            }

            if (a == b || b == c || a == c || !(DoubleArea(a, b, c) > 0))
            {
                flat++;
                continue;
            }

            (_corners[kept], _corners[kept + 1], _corners[kept + 2]) = (a, b, c);
            kept += 3;
        }

        _corners.Shorten(_corners.Count - kept);
        return flat;
    }

    private void NoteLoose()
    {
        if (_corners.Count == 0)
        {
            return;
        }

        var used = new bool[PointCount];
        for (int i = 0; i < _corners.Count; i++)
        {
            used[_corners[i]] = true;
        }

        int loose = used.Count(u => !u);
        if (loose > 0)
        {
            Notes.Add($"{Count(loose)} points belong to no triangle and do not count.");
        }
    }

    private double DoubleArea(int a, int b, int c)
    {
        Vec3 p = Offset(a);
        return (Offset(b) - p).Cross(Offset(c) - p).Length;
    }

    private Vec3 Offset(int i) => new(_offsets[3 * i], _offsets[(3 * i) + 1], _offsets[(3 * i) + 2]);

    /// <summary>A list that grows by doubling and gives its array away.</summary>
    private struct Rows<T>
    {
        private const int First = 192;
        private T[]? _items;

        public int Count { get; private set; }

        public readonly ref T this[int index] => ref _items![index];

        public void Add(T item)
        {
            _items ??= new T[First];
            if (Count == _items.Length)
            {
                Array.Resize(ref _items, (int)Math.Min(2L * Count, Array.MaxLength));
            }

            _items[Count++] = item;
        }

        public void Expect(long more)
        {
            long wanted = Count + more;
            if (more > First && (_items is null || wanted > _items.Length))
            {
                Array.Resize(ref _items, (int)Math.Min(wanted, Array.MaxLength));
            }
        }

        public void Shorten(int by) => Count -= by;

        public T[] ToArray()
        {
            var all = _items ?? [];
            Array.Resize(ref all, Count);
            return all;
        }
    }
}
