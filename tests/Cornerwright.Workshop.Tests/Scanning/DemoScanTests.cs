using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Scans;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Scanning;
using Xunit.Abstractions;

namespace Cornerwright.Workshop.Tests.Scanning;

/// <summary>The demo scan that lies in demo/: as the program makes it, and in agreement with the demo car's tape.</summary>
public class DemoScanTests(ITestOutputHelper output)
{
    private static readonly Car Wagtail = DemoCar.Read();
    private static readonly Lazy<DemoScanMaker> Made = new(() => new DemoScanMaker());

    private static string PathOfFile
    {
        get
        {
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            while (!File.Exists(Path.Combine(folder!.FullName, "Cornerwright.slnx")))
            {
                folder = folder.Parent;
            }

            return Path.Combine(folder.FullName, "demo", DemoScanMaker.FileName);
        }
    }

    private static RawScan Raw()
    {
        using var file = File.OpenRead(PathOfFile);
        return ScanFile.Read(file, file.Name).Value;
    }

    [Fact]
    public void The_file_in_the_tree_is_what_the_program_makes()
    {
        if (Environment.GetEnvironmentVariable("CORNERWRIGHT_WRITE_DEMO_SCAN") == "1")
        {
            File.WriteAllBytes(PathOfFile, Made.Value.Ply());
        }

        var (kept, made) = (Raw(), ScanFile.Read(new MemoryStream(Made.Value.Ply()), "a.ply").Value);
        output.WriteLine($"{kept.PointCount} points, {kept.TriangleCount} triangles, "
            + $"{new FileInfo(PathOfFile).Length} bytes, {kept.Greatest - kept.Least}");
        Assert.InRange(new FileInfo(PathOfFile).Length, 500_000, 2_000_000);
        Assert.Equal(made.Corners.ToArray(), kept.Corners.ToArray());

        // Sines differ between systems in the last digit, and a rounding may fall the other way.
        for (int i = 0; i < kept.PointCount; i++)
        {
            Assert.True((kept.Point(i) - made.Point(i)).Length < 0.03);
        }

        Assert.Empty(kept.Notes);
        var guess = ScanUnits.Candidates(kept)[0];
        Assert.Equal((ScanUnit.Millimetre, true), (guess.Unit, guess.Likely));
    }

    [Fact]
    public void Six_picks_round_the_rim_align_it_within_the_doubt_that_is_stated()
    {
        var (aligned, wheel, _) = Align();
        foreach (string remark in aligned.Remarks)
        {
            output.WriteLine(remark);
        }

        foreach (double hour in Hours)
        {
            Vec3 pick = DemoScanMaker.LipPick(hour);
            output.WriteLine(FormattableString.Invariant($"rim edge at {hour}: {pick.X:0.0} {pick.Y:0.0} {pick.Z:0.0}"));
        }

        output.WriteLine($"stated {2e3 * aligned.Deviation:0.00} mm, 19 in 20");
        var truth = DemoScanMaker.Truth;
        double worst = 0;
        for (int hour = 0; hour < 12; hour++)
        {
            // How far the aligned scan is off at the tread, along the spindle and away from it: the true wheel's points as aligned.
            Vec3 at = Clock.PointAt(wheel.Tyre.AxialCentre, wheel.Tyre.CrownRadius, hour);
            Assert.True(wheel.PoseAt(0, 0, out var pose));
            var frame = SpindleFrame.Of(pose);
            Vec3 found = frame.ToSpindle(aligned.Transform.Apply(truth.Inverse().Apply(frame.ToBody(at))));
            double da = found.X - at.X, dr = Math.Sqrt((found.Y * found.Y) + (found.Z * found.Z)) - wheel.Tyre.CrownRadius;
            worst = Math.Max(worst, Math.Sqrt((da * da) + (dr * dr)));
        }

        output.WriteLine($"off by {1e3 * worst:0.00} mm at most");
        Assert.InRange(worst, 0, 2 * aligned.Deviation);
        Assert.InRange(aligned.Deviation, 0, 0.001);
        Assert.InRange(aligned.Roughness, 0.8 * DemoScanMaker.Roughness, 2.5 * DemoScanMaker.Roughness);
    }

    [Fact]
    public void The_aligned_scan_agrees_with_the_tape_at_every_gap_that_was_read()
    {
        var (aligned, wheel, raw) = Align();
        var placed = ScanPlacing.Place(Wagtail, Record(aligned, raw), raw).Value;
        foreach (string note in placed.Notes)
        {
            output.WriteLine(note);
        }

        var mesh = placed.Mesh!;
        foreach (var known in wheel.KnownPlaces())
        {
            double least = double.PositiveInfinity;
            for (int i = 0; i < mesh.PointCount; i++)
            {
                least = Math.Min(least, (mesh.Point(i) - known.Place).Length);
            }

            // The nearest scanned point is up to a triangle's edge away along the surface.
            output.WriteLine($"{known.Name}: nearest scanned point {1e3 * least:0.0} mm");
            Assert.InRange(least, 0, 0.009);
        }
    }

    /// <summary>
    /// The chassis leg at full lock and the lip at 12 o'clock: the scan's own gap to the wheel on the car, beside the tape's.
    /// </summary>
    [Theory]
    [InlineData(35, 0.031, 0.002)]
    [InlineData(0, double.NaN, double.NaN)]
    public void Gaps_to_the_present_wheel_come_out_as_read(double steerDeg, double expected, double tolerance)
    {
        var (aligned, wheel, raw) = Align();
        var placed = ScanPlacing.Place(Wagtail, Record(aligned, raw), raw).Value;
        Assert.True(wheel.PoseAt(0, steerDeg * Math.PI / 180, out var pose));
        var frame = SpindleFrame.Of(pose);
        var mesh = placed.Mesh!;
        double least = double.PositiveInfinity, tape = double.PositiveInfinity;
        for (int i = 0; i < mesh.PointCount; i++)
        {
            least = Math.Min(least, wheel.Solid.SignedDistance(frame.ToSpindle(mesh.Point(i))));
        }

        // What the tape knows: the lines through its own places.
        foreach (var group in wheel.KnownPlaces().GroupBy(k => k.Name.Split(" at ")[0]))
        {
            Vec3[] line = [.. group.Select(k => frame.ToSpindle(k.Place))];
            tape = Math.Min(tape, PolylineClearing.Of(wheel.Solid, line).Gap);
        }

        double doubt = 2 * Math.Sqrt((placed.Deviation * placed.Deviation) + (0.001 * 0.001));
        output.WriteLine($"scan {1e3 * least:0.0} mm, tape {1e3 * tape:0.0} mm, doubt {1e3 * doubt:0.0} mm");
        Assert.InRange(least - tape, -doubt - placed.Bound - 0.001, doubt + 0.001);
        if (double.IsFinite(expected))
        {
            Assert.Equal(expected, least, tolerance + doubt);
        }
    }

    [Fact]
    public void Mirrored_it_stands_at_the_other_side()
    {
        var (aligned, _, raw) = Align();
        var scan = Record(aligned, raw) with { MirroredToo = true };
        var shelf = ScanShelf.Of(Wagtail with { Scans = [scan] }, hash =>
            hash == scan.ContentHash ? Garage.Problems.Checked<RawScan>.From(raw) : throw new InvalidOperationException());
        Assert.Empty(shelf.Problems);
        var (left, right) = (shelf.At(CornerPlace.FrontLeft).Single(), shelf.At(CornerPlace.FrontRight).Single());
        Assert.Equal(left.PointCount, right.PointCount);
        for (int i = 0; i < left.PointCount; i += 997)
        {
            Vec3 a = left.Mesh!.Point(i), b = right.Mesh!.Point(i);
            Assert.Equal(new Vec3(a.X, -a.Y, a.Z), b);
        }

        Assert.True(right.Deviation > left.Deviation);
    }

    [Fact]
    public void Thinned_it_is_smaller_and_says_by_how_much_it_moved()
    {
        var (aligned, _, raw) = Align();
        var whole = ScanPlacing.Place(Wagtail, Record(aligned, raw), raw).Value;
        var thin = ScanPlacing.Place(Wagtail, Record(aligned, raw) with { Thinning = Length("12 mm") }, raw).Value;
        output.WriteLine($"{whole.TriangleCount} -> {thin.TriangleCount} triangles, bound {1e3 * thin.Bound:0.0} mm");
        Assert.True(thin.PointCount < whole.PointCount);
        Assert.InRange(thin.Bound, 0.001, 0.012 * Math.Sqrt(3));
    }

    [Fact]
    public void Picked_places_align_it_too_and_a_wrong_one_is_named()
    {
        var (_, wheel, _) = Align();
        var places = wheel.KnownPlaces();
        Vec3[] picked = [.. places.Select(p => DemoScanMaker.InFile(p.Place) / 1000)];
        picked[1] += new Vec3(0.04, 0, 0);
        var aligning = ScanAligning.ByPairs(wheel, picked, places, default);
        Assert.NotNull(aligning.Aligned);
        Assert.Single(aligning.Aligned.Remarks, r => r.Contains("left out", StringComparison.Ordinal));
        Assert.True(
            (aligning.Aligned.Transform.Apply(DemoScanMaker.InFile(new Vec3(0, 0, 0.3)) / 1000) - new Vec3(0, 0, 0.3)).Length < 0.003);

        picked = [.. places.Select(p => DemoScanMaker.InFile(new Vec3(p.Place.X, -p.Place.Y, p.Place.Z)) / 1000)];
        Assert.Contains("left and right", ScanAligning.ByPairs(wheel, picked, places, default).WhyNot, StringComparison.Ordinal);
    }

    /// <summary>A ring on the bare hub's face fixes axis and place; its doubt is the picks', and larger than the whole wheel's.</summary>
    [Fact]
    public void A_circle_on_the_hub_face_aligns_it_within_its_larger_doubt()
    {
        var (byWheel, wheel, raw) = Align();
        Assert.True(wheel.PoseAt(0, 0, out var pose));
        var frame = SpindleFrame.Of(pose);
        var random = new Random(6);
        Vec3[] picks = [.. Hours.Select(h => (DemoScanMaker.InFile(frame.ToBody(Clock.PointAt(0, 0.07, h))) / 1000)
            + (new Vec3(random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() - 0.5) * 0.002))];
        // The wheel is off: behind the hub stands the body, before it nothing.
        Vec3[] bare = [.. ScanPlacing.InMetres(raw, ScanUnit.Millimetre)
            .Where(p => wheel.OwnDistance(frame.ToSpindle(DemoScanMaker.Truth.Apply(p))) > 0.009)];
        var aligning = ScanAligning.ByWheel(wheel, bare, picks, PickedCircle.HubFace, Vec3.UnitY, 0, 0);
        Assert.True(aligning.Aligned is not null, aligning.WhyNot);
        Assert.Equal("a circle on the hub face", aligning.Aligned.By);
        Assert.True(aligning.Aligned.Deviation > byWheel.Deviation);
        foreach (double hour in Hours)
        {
            Vec3 at = frame.ToBody(Clock.PointAt(0, wheel.Tyre.CrownRadius, hour)),
                found = aligning.Aligned.Transform.Apply(DemoScanMaker.InFile(at) / 1000);
            Assert.InRange((found - at).Length, 0, 3 * aligning.Aligned.Deviation);
        }

        var turned = ScanAligning.ByWheel(wheel, bare, picks, PickedCircle.HubFace, Vec3.UnitY, 0, 0, otherWay: true);
        Assert.InRange((turned.Aligned!.Transform.Apply(DemoScanMaker.InFile(Vec3.UnitX) / 1000) + Vec3.UnitX).Length, 0, 0.1);
    }

    [Fact]
    public void Wrong_units_and_poor_picks_are_refused_in_words()
    {
        var (_, wheel, raw) = Align();
        Vec3[] metres = ScanPlacing.InMetres(raw, ScanUnit.Inch);
        Vec3[] picks = [.. Hours.Select(h => DemoScanMaker.LipPick(h) * 0.0254)];
        Assert.Contains("unit", ScanAligning.ByWheel(wheel, metres, picks, PickedCircle.OuterRimLip, Vec3.UnitY, 0, 0).WhyNot,
            StringComparison.Ordinal);
        Assert.Contains("at least three", ScanAligning.ByWheel(wheel, metres, picks.AsSpan(0, 2), PickedCircle.OuterRimLip, Vec3.UnitY, 0,
            0).WhyNot, StringComparison.Ordinal);
        Vec3[] good = [.. Hours.Select(h => DemoScanMaker.LipPick(h) / 1000)];
        var (axis, _) = (DemoScanMaker.Truth.Inverse().Turn(Vec3.UnitY), 0);
        Assert.Contains("axis", ScanAligning.ByWheel(wheel, [], good, PickedCircle.OuterRimLip, axis, 0, 0).WhyNot,
            StringComparison.Ordinal);
        Assert.False(ScanPlacing.Place(Wagtail, new Scan { Id = "a", Name = "a" }, raw).Ok);
    }

    private static readonly double[] Hours = [0.5, 2.5, 4, 7, 8.5, 10.5];

    // Picks as a hand makes them: a millimetre or so off.
    private static (ScanAligned Aligned, PresentWheel Wheel, RawScan Raw) Align()
    {
        var raw = Raw();
        var wheel = PresentWheel.Of(Wagtail, CornerPlace.FrontLeft).Value;
        var random = new Random(5);
        Vec3[] picks = [.. Hours.Select(h => (DemoScanMaker.LipPick(h) / 1000)
            + (new Vec3(random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() - 0.5) * 0.003))];
        var aligning =
            ScanAligning.ByWheel(wheel, ScanPlacing.InMetres(raw, ScanUnit.Millimetre), picks, PickedCircle.OuterRimLip, Vec3.UnitY, 0, 0);
        Assert.True(aligning.Aligned is not null, aligning.WhyNot);
        return (aligning.Aligned, wheel, raw);
    }

    private static Scan Record(ScanAligned aligned, RawScan raw) => new()
    {
        Id = "arch",
        Name = "Arch",
        Corner = CornerPlace.FrontLeft,
        ContentHash = new string('a', 64),
        Format = raw.Format,
        Unit = ScanUnit.Millimetre,
        Alignment = aligned.Record(),
        Roughness = ScanAligned.TwoSigma(aligned.Roughness),
        WheelTakenOut = Length("9 mm"),
        Crop = new ScanCrop { Radius = Length("700 mm"), FloorLow = Length("-250 mm") },
    };

    private static Reading Length(string text) => Reading.Of(text, Dimension.Length);
}
