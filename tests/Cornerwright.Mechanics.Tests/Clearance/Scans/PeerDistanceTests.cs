using System.Globalization;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;
using Xunit.Abstractions;

namespace Cornerwright.Mechanics.Tests.Clearance.Scans;

/// <summary>
/// Against an independent, general-purpose library: FCL 0.7.0 computed the distances in data/fcl-arch.csv between the
/// invented arch of 200,000 triangles and the same wheel as a mesh of 256 facets round (bench/peers, bench/README.md:
/// how they were made). That mesh lies inside the true wheel by up to R(1 - cos(π/256)), so its distance may be
/// larger by as much, and never smaller.
/// </summary>
public class PeerDistanceTests(ITestOutputHelper output)
{
    private const int Facets = 256;

    [Fact]
    public void An_independent_library_agrees_within_the_facets_of_its_wheel()
    {
        WheelShape shape = WheelShape.Of(
            TyreSection.WithEstimates(-0.040, 0.2285, 0.203, 0.634, 0.233), RimSection.WithEstimates(-0.040, 0.2032, 0.2285), 6);
        double facet = 0.317 * (1 - Math.Cos(Math.PI / Facets));
        BoundTree tree = BoundTree.Of(InventedArch.Mesh(200_000));
        double[][] rows = [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Clearance", "Scans", "data", "fcl-arch.csv"))
            .Where(l => l.Length > 0 && (char.IsDigit(l[0]) || l[0] == '-'))
            .Select(l => l.Split(',').Select(x => double.Parse(x, CultureInfo.InvariantCulture)).ToArray())];
        Assert.Equal(63, rows.Length);
        double least = double.PositiveInfinity, most = double.NegativeInfinity;
        foreach (double[] row in rows)
        {
            Clearing ours = ScanClearing.Of(tree, shape, new(new Vec3(row[0], row[1], row[2]), new Vec3(row[3], row[4], row[5])));
            (least, most) = (Math.Min(least, row[6] - ours.Gap), Math.Max(most, row[6] - ours.Gap));
            Assert.InRange(row[6] - ours.Gap, -ScanClearing.StatedError, facet + ScanClearing.StatedError);
        }

        output.WriteLine($"FCL minus ours {least * 1e6:F2} to {most * 1e6:F2} µm; facets 0 to {facet * 1e6:F2} µm");
        Assert.True(most > 0.25 * facet, "the poses show facets of every depth");
    }
}
