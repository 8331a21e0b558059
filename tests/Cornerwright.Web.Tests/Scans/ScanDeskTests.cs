using System.Buffers.Binary;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Web.Scans;
using Cornerwright.Workshop.Scanning;

namespace Cornerwright.Web.Tests.Scans;

public class ScanDeskTests
{
    /// <summary>On the rim's edge of the demo scan, mm: DemoScanTests prints them.</summary>
    public static readonly string[] RimPicks = ["407.1 1333.0 -194.6", "497.6 1175.9 -69.4", "481.9 1008.9 -86.9", "301.2 930.8 -328.3",
        "242.0 1065.4 -410.9", "279.3 1277.7 -365.4"];

    private static readonly Car Wagtail = DemoCar.Read();
    private static readonly Lazy<RawScan> Raw = new(() =>
    {
        using var file = DemoCar.Scan();
        return ScanFile.Read(file, DemoCar.ScanName).Value;
    });

    [Fact]
    public void A_new_scan_is_guessed_aligned_and_accepted_and_the_car_reads_back()
    {
        var desk = New();
        Assert.Equal((ScanUnit.Millimetre, false), (desk.Scan.Unit, desk.UnitConfirmed));
        Assert.Null(desk.Placed);
        Pick(desk);
        desk.Align(Wagtail);
        Assert.Equal("", desk.WhyNot);
        Assert.NotNull(desk.Proposed);
        Assert.InRange(desk.Proposed.Deviation, 0.0001, 0.001);
        Assert.NotNull(desk.Placed);
        Assert.InRange(desk.Placed.TriangleCount, 10_000, 40_000);   // the wheel and the ground are gone

        var scan = desk.Accepted();
        var back = CarFile.Read(CarFile.Write(Wagtail with { Scans = [scan] }));
        Assert.True(back.Ok, string.Join("\n", back.Problems));
        Assert.Equal(scan, back.Value.Scans[0]);
        var again = ScanDesk.Of(Wagtail, back.Value.Scans[0], Raw.Value);
        Assert.Equal(desk.Placed.TriangleCount, again.Placed!.TriangleCount);
    }

    [Fact]
    public void Another_unit_moves_the_picks_and_undoes_the_alignment()
    {
        var desk = New();
        Pick(desk);
        desk.Align(Wagtail);
        var before = desk.Picks[0].At;
        desk.Change(Wagtail, s => s with { Unit = ScanUnit.Inch });
        Assert.Null(desk.Proposed);
        Assert.False(desk.Aligned);
        Assert.Equal(before.X * 25.4, desk.Picks[0].At.X, 9);
        desk.Align(Wagtail);
        Assert.Contains("unit", desk.WhyNot, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wheel_that_is_not_known_is_named()
    {
        var desk = New();
        Pick(desk);
        desk.Align(Wagtail with { MeasuredBuild = "" });
        Assert.Null(desk.Proposed);
        Assert.NotEmpty(desk.Problems);
    }

    [Fact]
    public void Places_are_those_of_the_gap_readings()
    {
        var desk = New();
        desk.AlignsBy(AlignBy.Places);
        Assert.Contains("arch lip at 12 o'clock", desk.KnownPlaces(Wagtail).Select(p => p.Name));
        desk.Pick(new Vec3(0, 0, 0));
        desk.Name(0, "arch lip at 12 o'clock");
        desk.Align(Wagtail);
        Assert.Contains("three", desk.WhyNot, StringComparison.Ordinal);
    }

    [Fact]
    public void A_drawing_holds_its_points_and_corners_in_metres()
    {
        var (bytes, bound) = ScanDrawing.Of(Raw.Value, ScanUnit.Millimetre);
        Assert.Equal(0, bound);
        int points = BinaryPrimitives.ReadInt32LittleEndian(bytes), corners = BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(4));
        Assert.Equal((Raw.Value.PointCount, Raw.Value.Corners.Length), (points, corners));
        Assert.Equal(8 + (12 * points) + (4 * corners), bytes.Length);
        Assert.Equal(Raw.Value.Offsets[3] * 0.001f, BinaryPrimitives.ReadSingleLittleEndian(bytes.AsSpan(8 + 12)));
    }

    [Fact]
    public void Sizes_are_said_in_the_unit_that_people_would_use()
    {
        Assert.Equal("1.30 × 0.94 × 1.30 m", ScanUnits.SizeWords(new Vec3(1.2953, 0.9366, 1.3001)));
        Assert.Equal("1.3 × 0.94 × 1.3 km", ScanUnits.SizeWords(new Vec3(1295.3, 936.6, 1300.1)));
        Assert.Equal("1.3 × 0.94 × 1.3 mm", ScanUnits.SizeWords(new Vec3(0.0012953, 0.0009366, 0.0013001)));
    }

    private static ScanDesk New() => ScanDesk.New("scan-1", new string('a', 64), DemoCar.ScanName, Raw.Value, CornerPlace.FrontLeft);

    private static void Pick(ScanDesk desk)
    {
        foreach (string pick in RimPicks)
        {
            double[] xyz = [.. pick.Split(' ').Select(w => double.Parse(w, System.Globalization.CultureInfo.InvariantCulture))];
            desk.Pick(new Vec3(xyz[0], xyz[1], xyz[2]) / 1000);
        }
    }
}
