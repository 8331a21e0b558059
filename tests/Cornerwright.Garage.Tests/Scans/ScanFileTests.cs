using System.Text;
using Cornerwright.Garage.Scans;
using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Garage.Tests.Scans;

public class ScanFileTests
{
    [Fact]
    public void The_cube_of_the_PLY_description_has_its_eight_points_and_six_faces()
    {
        var scan = Read(ScanSamples.Text(ScanSamples.TurkCube), "cube.ply");
        Assert.Equal((8, 12), (scan.PointCount, scan.TriangleCount));
        Assert.Equal((new Vec3(0, 0, 0), new Vec3(1, 1, 1)), (scan.Least, scan.Greatest));
        Assert.Equal(6, Area(scan), 12);
        Assert.Equal(1, Volume(scan), 12);   // all faces turned outward or all inward, as the description asks
    }

    [Fact]
    public void The_cube_of_the_OBJ_description_is_read_with_its_backward_numbers()
    {
        var scan = Read(ScanSamples.Text(ScanSamples.WavefrontCube), "cube.obj");
        Assert.Equal((24, 12), (scan.PointCount, scan.TriangleCount));
        Assert.Equal(24, Area(scan), 12);
        Assert.Equal(8, Volume(scan), 12);
    }

    [Fact]
    public void The_triangle_of_the_glTF_tutorial_is_read_from_a_GLB()
    {
        var scan = Read(ScanSamples.KhronosTriangle(), "triangle.glb");
        Assert.Equal((3, 1), (scan.PointCount, scan.TriangleCount));
        Assert.Equal([new(0, 0, 0), new(1, 0, 0), new Vec3(0, 1, 0)], Enumerable.Range(0, 3).Select(scan.Point));
        Assert.Equal([0, 1, 2], scan.Corners.ToArray());
    }

    [Fact]
    public void Nodes_of_a_GLB_are_turned_stretched_and_shifted_within_one_another()
    {
        // Source: glTF 2.0 §3.5.3: T·R·S, rotation as (x, y, z, w), a child within its parent. A quarter turn about Z takes X to Y.
        string half = Math.Sqrt(0.5).ToString("R", System.Globalization.CultureInfo.InvariantCulture);
        string nested = ScanSamples.KhronosDescription.Replace(
            "\"nodes\":[{\"mesh\":0}]",
            "\"nodes\":[{\"children\":[1],\"translation\":[10,20,30]},"
                + $"{{\"mesh\":0,\"rotation\":[0,0,{half},{half}],\"scale\":[2,3,4]}}]",
            StringComparison.Ordinal);
        var scan = Read(ScanSamples.KhronosTriangle(nested), "a.glb");
        Near(new Vec3(10, 22, 30), scan.Point(1));   // X, twice as long, turned to Y
        Near(new Vec3(7, 20, 30), scan.Point(2));    // Y, thrice as long, turned to -X
        string matrix = ScanSamples.KhronosDescription.Replace("{\"mesh\":0}", "{\"mesh\":0,\"matrix\":[0,1,0,0,-1,0,0,0,0,0,1,0,5,6,7,1]}",
            StringComparison.Ordinal);
        Near(new Vec3(5, 7, 7), Read(ScanSamples.KhronosTriangle(matrix), "a.glb").Point(1));
    }

    public static TheoryData<string, byte[]> Tetrahedra => new()
    {
        { "little.ply", ScanSamples.BinaryPly(big: false) },
        { "big.ply", ScanSamples.BinaryPly(big: true) },
        { "binary.stl", ScanSamples.BinaryStl() },
        { "text.stl", ScanSamples.Text(ScanSamples.TextStl()) },
        { "joined.obj", ScanSamples.Text("# c\r\nmtllib a.mtl\r\nv 0 0 0 1 0 0\r\nv 1.5 0 0\r\nv 0 +2.25 0\r\nv "
            + "0 0 -7.5e-1\r\nf 1 3//1 2/5\r\nf 1 2 4\r\nf 2 3 \\\r\n 4/1/1\r\nf 3 1 -1") },
    };

    [Theory]
    [MemberData(nameof(Tetrahedra))]
    public void Every_kind_gives_the_same_body(string name, byte[] file)
    {
        var scan = Read(file, name);
        Assert.Equal((4, 4), (scan.PointCount, scan.TriangleCount));
        Assert.Equal(1.5 * 2.25 * 0.75 / 6, Volume(scan), 9);
        Assert.Equal(new Vec3(0, 0, -0.75), scan.Least);
        Assert.Equal(new Vec3(1.5, 2.25, 0), scan.Greatest);
        Assert.Empty(scan.Notes);
    }

    [Fact]
    public void Points_without_faces_are_a_cloud()
    {
        var scan = Read(ScanSamples.Text("ply\nformat ascii 1.0\nelement vertex 4\nproperty float "
            + "x\nproperty float y\nproperty float z\nend_header\n0 0 0\n1 0 0\n0 1 0\n0 0 1"), "a.ply");
        Assert.True(scan.IsCloud);
        Assert.Equal(4, scan.PointCount);
    }

    [Fact]
    public void A_scan_far_from_its_zero_keeps_its_detail()
    {
        // A float has 24 bits: at 100 000 its steps are 0.0078.
        var scan = Read(ScanSamples.Text("v 100000.001 0 0\nv 100000.002 0 0\nv 100000 0.003 0\nf 1 2 3\n"), "a.obj");
        Assert.Equal(0.001, (scan.Point(1) - scan.Point(0)).X, 9);
    }

    [Fact]
    public void A_binary_STL_whose_title_begins_with_solid_is_still_binary()
    {
        byte[] file = ScanSamples.BinaryStl();
        Encoding.ASCII.GetBytes("solid part").CopyTo(file, 0);
        Assert.Equal(4, Read(file, "a.stl").TriangleCount);
    }

    [Fact]
    public void Triangles_without_area_and_loose_points_are_left_out_and_told()
    {
        var scan = Read(ScanSamples.Text("v 0 0 0\nv 1 0 0\nv 0 1 0\nv 2 0 0\nv 9 9 9\nf 1 2 3\nf 1 1 2\nf 1 2 4\n"), "a.obj");
        Assert.Equal(1, scan.TriangleCount);
        Assert.Equal(new Vec3(1, 1, 0), scan.Greatest);
        Assert.Equal(["2 triangles without area were left out.", "2 points belong to no triangle and do not count."], scan.Notes);
    }

    [Theory]
    [InlineData("a.obj", "", "size", "0 bytes")]
    [InlineData("a.obj", "v 0 0\n", "line 1", "too few")]
    [InlineData("a.obj", "v 0 0 0\nv 1 0 nan\n", "point 2", "NaN")]
    [InlineData("a.obj", "v 0 0 1e30\n", "point 1", "1E+30")]
    [InlineData("a.obj", "v 0 0 0\nv 1 x 0\n", "line 2", "x")]
    [InlineData("a.obj", "v 0 0 0\nf 1 2 3\n", "face 1", "0 1 2")]
    [InlineData("a.obj", "v 0 0 0\nf 1 -2 1\n", "line 2", "-2")]
    [InlineData("a.obj", "v 0 0 0\nv 1 0 0\nv 2 0 0\nf 1 2 3\n", "faces", "without area")]
    [InlineData("a.obj", "v 0 0 0\nv 0 0 0\nv 0 0 0\nv 0 0 0\n", "points", "all in one place")]
    [InlineData("a.obj", "hello\n", "line 1", "hello")]
    [InlineData("a.xyz", "v 0 0 0\n", "kind", "a.xyz")]
    [InlineData("a.stl", "solid a\nendsolid a\n", "points", "none")]
    [InlineData("a.stl", "solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 0 0\n", "facets", "ends here")]
    [InlineData("a.stl", "solid a\nfacet normal 0 0 1\nouter ring\n", "facet 1", "ring")]
    [InlineData("a.ply",
        "ply\nformat ascii 1.0\nelement vertex 4000000000\nproperty float x\nproperty float y\nproperty float z\nend_header\n0 0 0\n",
        "header / element vertex", "4000000000")]
    [InlineData("a.ply", "ply\nformat ascii 1.0\nelement vertex 1\nproperty float x\nproperty float y\nend_header\n0 0\n",
        "header / element vertex", "x, y")]
    [InlineData("a.ply", "ply\nformat ascii 1.0\nelement vertex 3\nproperty float x\nproperty float y\nproperty float z\nelement face "
        + "1\nproperty list uchar int vertex_indices\nend_header\n0 0 0\n1 0 0\n0 1 0\n200 0 1 2\n", "face 1", "200 entries")]
    [InlineData("a.ply", "ply\nelement vertex 0\nend_header\n", "header line 3", "end_header")]
    [InlineData("a.ply", "ply\nformat ascii 1.0\nproperty float x\n", "header line 3", "property")]
    [InlineData("a.ply", "ply\nformat ascii 1.0\nelement vertex 1\n", "header line 4", "ends here")]
    [InlineData("a.glb", "glTFxxxx", "header", "ends here")]
    public void What_is_wrong_is_said_with_its_place(string name, string text, string where, string given)
    {
        var read = ScanFile.Read(new MemoryStream(ScanSamples.Text(text)), name);
        Assert.False(read.Ok);
        var problem = Assert.Single(read.Problems);
        Assert.Equal("scan file / " + where, problem.Field);
        Assert.Contains(given, problem.Given, StringComparison.Ordinal);
        Assert.True(problem.Allowed.Length > 0 && problem.Cure.Length > 0);
    }

    [Theory]
    [InlineData("\"children\":[0]", "nodes within one another")]                   // a node within itself
    [InlineData("\"matrix\":[1,2]", "16 numbers")]
    [InlineData("\"mesh\":7", "0 to 0")]
    public void A_GLB_that_leads_astray_is_refused(string piece, string allowed)
    {
        string text = ScanSamples.KhronosDescription.Replace("{\"mesh\":0}", "{" + piece + "}", StringComparison.Ordinal);
        Assert.Contains(allowed, Assert.Single(ScanFile.Read(new MemoryStream(ScanSamples.KhronosTriangle(text)), "a.glb").Problems)
            .Allowed, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"count\":3,\"type\":\"VEC3\"", "\"count\":2000000000,\"type\":\"VEC3\"")]
    [InlineData("\"byteOffset\":8,\"byteLength\":36", "\"byteOffset\":8,\"byteLength\":3600")]
    [InlineData("\"byteLength\":44}", "\"byteLength\":44,\"uri\":\"http://example.org/a.bin\"}")]
    [InlineData("\"asset\":{", "\"extensionsRequired\":[\"KHR_draco_mesh_compression\"],\"asset\":{")]
    [InlineData("\"componentType\":5126", "\"componentType\":5122")]
    public void A_GLB_that_claims_what_it_does_not_hold_is_refused(string from, string to)
    {
        string text = ScanSamples.KhronosDescription.Replace(from, to, StringComparison.Ordinal);
        Assert.NotEqual(ScanSamples.KhronosDescription, text);
        Assert.False(ScanFile.Read(new MemoryStream(ScanSamples.KhronosTriangle(text)), "a.glb").Ok);
    }

    [Fact]
    public void Reading_tells_how_far_it_is_and_stops_when_told()
    {
        var text = new StringBuilder();
        for (int i = 0; i < 60_000; i++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"v {i} {i % 7} {i % 11}\n");
        }

        byte[] file = ScanSamples.Text(text.ToString());
        var told = new Told();
        Assert.True(ScanFile.Read(new MemoryStream(file), "a.obj", told).Ok);
        Assert.True(told.Shares.Count > 5);
        Assert.Equal(told.Shares.Order(), told.Shares);
        Assert.InRange(told.Shares[^1], 0.5, 1);

        using var stop = new CancellationTokenSource();
        var stopping = new Told { At = share => { if (share > 0.3) { stop.Cancel(); } } };
        Assert.Throws<OperationCanceledException>(() => ScanFile.Read(new MemoryStream(file), "a.obj", stopping, stop.Token));
        Assert.InRange(stopping.Shares[^1], 0.3, 0.6);
    }

    // The sizes are of the unit's definition: an inch is 25.4 mm exactly (NIST SP 811, App. B.8).
    [Theory]
    [InlineData(1200, ScanFormat.Stl, ScanUnit.Millimetre, 1.2)]
    [InlineData(1.4, ScanFormat.Ply, ScanUnit.Metre, 1.4)]
    [InlineData(110, ScanFormat.Obj, ScanUnit.Centimetre, 1.1)]
    [InlineData(40, ScanFormat.Stl, ScanUnit.Inch, 1.016)]
    [InlineData(4.5, ScanFormat.Glb, ScanUnit.Metre, 4.5)]
    public void The_unit_is_guessed_from_the_size(double longest, ScanFormat format, ScanUnit expected, double metres)
    {
        var first = ScanUnits.Candidates(new Vec3(longest, longest / 2, longest / 3), format == ScanFormat.Glb)[0];
        Assert.Equal(expected, first.Unit);
        Assert.True(first.Likely);
        Assert.Equal(metres, first.Size.X, 12);
    }

    internal static RawScan Read(byte[] file, string name)
    {
        var read = ScanFile.Read(new MemoryStream(file), name);
        Assert.True(read.Ok, string.Join("\n", read.Problems));
        return read.Value;
    }

    private static double Area(RawScan scan) => Triangles(scan).Sum(t => 0.5 * (t.B - t.A).Cross(t.C - t.A).Length);

    private static double Volume(RawScan scan) => Math.Abs(Triangles(scan).Sum(t => t.A.Dot(t.B.Cross(t.C)) / 6));

    private static List<(Vec3 A, Vec3 B, Vec3 C)> Triangles(RawScan scan)
    {
        var all = new List<(Vec3, Vec3, Vec3)>();
        for (int i = 0; i < scan.Corners.Length; i += 3)
        {
            all.Add((scan.Point(scan.Corners[i]), scan.Point(scan.Corners[i + 1]), scan.Point(scan.Corners[i + 2])));
        }

        return all;
    }

    private static void Near(Vec3 expected, Vec3 found) => Assert.True((expected - found).Length < 1e-5, $"{found}, expected {expected}");

    private sealed class Told : IProgress<double>
    {
        public List<double> Shares { get; } = [];

        public Action<double> At { get; init; } = _ => { };

        public void Report(double value)
        {
            Shares.Add(value);
            At(value);
        }
    }
}
