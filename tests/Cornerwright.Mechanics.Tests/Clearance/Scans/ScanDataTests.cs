using Cornerwright.Mechanics.Clearance.Scans;

namespace Cornerwright.Mechanics.Tests.Clearance.Scans;

/// <summary>What makes a mesh or a cloud, and what does not.</summary>
public class ScanDataTests
{
    private static readonly float[] Square = [0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0];

    [Fact]
    public void A_square_of_two_triangles_is_a_mesh()
    {
        TriangleMesh mesh = TriangleMesh.From(Square, [0, 1, 2, 0, 2, 3]);
        Assert.Equal((4, 2, 0), (mesh.PointCount, mesh.TriangleCount, mesh.DegenerateCount));
        Assert.Equal(new(1, 1, 0), mesh.Triangle(1).B);
    }

    [Fact]
    public void Triangles_without_area_are_counted_and_kept()
    {
        TriangleMesh mesh = TriangleMesh.From([.. Square, 0.5f, 0, 0], [0, 1, 2, 0, 1, 4, 3, 3, 2]);
        Assert.Equal((3, 2), (mesh.TriangleCount, mesh.DegenerateCount));
    }

    [Theory]
    [InlineData(new float[0], new[] { 0, 1, 2 }, ScanFaultKind.Empty, 0)]
    [InlineData(new float[] { 0, 0 }, new[] { 0, 0, 0 }, ScanFaultKind.NotThrees, 2)]
    [InlineData(new[] { 0, 0, 0, 1, float.NaN, 0, 0, 1, 0 }, new[] { 0, 1, 2 }, ScanFaultKind.NotFinite, 4)]
    [InlineData(new[] { 0, 0, float.PositiveInfinity, 1, 0, 0, 0, 1, 0 }, new[] { 0, 1, 2 }, ScanFaultKind.NotFinite, 2)]
    [InlineData(new[] { 0, 0, 0, 1, 0, 0, 0, 612f, 0 }, new[] { 0, 1, 2 }, ScanFaultKind.TooFar, 7)]
    [InlineData(new float[] { 0, 0, 0, 1, 0, 0, 0, 1, 0 }, new int[0], ScanFaultKind.Empty, 0)]
    [InlineData(new float[] { 0, 0, 0, 1, 0, 0, 0, 1, 0 }, new[] { 0, 1 }, ScanFaultKind.NotThrees, 2)]
    [InlineData(new float[] { 0, 0, 0, 1, 0, 0, 0, 1, 0 }, new[] { 0, 1, 3 }, ScanFaultKind.NoSuchPoint, 2)]
    [InlineData(new float[] { 0, 0, 0, 1, 0, 0, 0, 1, 0 }, new[] { 0, -1, 2 }, ScanFaultKind.NoSuchPoint, 1)]
    [InlineData(new float[] { 0, 0, 0, 1, 0, 0, 0, 1, 0 }, new[] { 1, 1, 2 }, ScanFaultKind.OnlyDegenerate, 1)]
    public void Numbers_that_make_no_mesh_say_why_and_where(float[] xyz, int[] corners, ScanFaultKind kind, int index)
    {
        Assert.Equal(new ScanFault(kind, index), TriangleMesh.TryFrom(xyz, corners, out TriangleMesh? mesh));
        Assert.Null(mesh);
        Assert.Throws<ArgumentException>(() => TriangleMesh.From(xyz, corners));
    }

    [Fact]
    public void A_cloud_needs_finite_points()
    {
        Assert.Equal(2, PointCloud.From([1, 2, 3, 4, 5, 6]).PointCount);
        Assert.Equal(new ScanFault(ScanFaultKind.NotFinite, 1), PointCloud.TryFrom([1, float.NaN, 3], out PointCloud? cloud));
        Assert.Null(cloud);
        Assert.Throws<ArgumentException>(() => PointCloud.From([]));
    }
}
