using System.Globalization;
using System.Text;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Scans;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Scanning;

namespace Cornerwright.Workshop.Tests.Scanning;

/// <summary>
/// Seen: a scan in metres read as millimetres passed, its arch inside the hub and everything clear; a left scan at a right corner passed
/// without a word. Neither may say anything now but that it cannot be used.
/// </summary>
public class ScanPlausibilityTests
{
    private static readonly Lazy<RawScan> Raw = new(() =>
    {
        using var file = DemoCar.Scan();
        return ScanFile.Read(file, DemoCar.ScanName).Value;
    });

    [Fact]
    public void The_scan_as_it_is_fits()
    {
        var (car, shelf) = AlignedDemo.Make();
        Assert.Empty(shelf.Absent);
        Assert.DoesNotContain(shelf.Scans[0].Notes, n => n.Contains("inside the tyre", StringComparison.Ordinal));
        Assert.DoesNotContain(shelf.Scans[0].Notes, n => n.Contains("gap reading", StringComparison.Ordinal));
        Assert.DoesNotContain(Judged(car, shelf), f => f.Verdict == Verdict.Unknown);
    }

    [Theory]
    [InlineData(ScanUnit.Metre)]
    [InlineData(ScanUnit.Centimetre)]
    [InlineData(ScanUnit.Inch)]
    public void A_scan_in_another_unit_is_not_used(ScanUnit unit)
    {
        // Read in a unit too large, and, the other way round, written in that unit and read as millimetres.
        Refused(s => s with { Unit = unit }, Raw.Value);
        double times = unit switch { ScanUnit.Metre => 1e-3, ScanUnit.Centimetre => 1e-1, _ => 1 / 25.4 };
        Refused(s => s, Scaled(Raw.Value, times));
    }

    [Theory]
    [InlineData(CornerPlace.FrontRight)]
    [InlineData(CornerPlace.RearRight)]
    public void A_left_scan_at_a_right_corner_is_not_used(CornerPlace corner) => Refused(s => s with { Corner = corner }, Raw.Value);

    [Fact]
    public void A_scan_moved_into_the_tyre_is_not_used() =>
        Refused(s => s with { Alignment = s.Alignment! with { UpMm = s.Alignment.UpMm - 90 } }, Raw.Value);

    [Fact]
    public void A_scan_that_stands_off_the_places_that_gaps_were_read_to_says_which()
    {
        var wheel = PresentWheel.Of(DemoCar.Read(), CornerPlace.FrontLeft).Value;
        var known = wheel.KnownPlaces();
        Assert.NotEmpty(known);
        Assert.Empty(Told(0));
        Assert.Equal(known.Count, Told(0.06f).Count);
        Assert.All(Told(0.06f), n => Assert.Contains("the place that the gap reading gives lies 60 mm", n, StringComparison.Ordinal));

        // Far from every point it is simply not in the scan.
        Assert.Empty(Told(2));

        List<string> Told(float off)
        {
            var notes = new List<string>();
            foreach (var place in known)
            {
                var one = new List<string>();
                ScanPlausibility.Compare(wheel, [(float)place.Place.X, (float)place.Place.Y, (float)place.Place.Z + off], one);
                notes.AddRange(one.Where(n => n.StartsWith(place.Name + ":", StringComparison.Ordinal)));
            }

            return notes;
        }
    }

    private static void Refused(Func<Scan, Scan> change, RawScan raw)
    {
        var (car, _) = AlignedDemo.Make();
        car = car with { Scans = [change(car.Scans[0])] };
        var shelf = ScanShelf.Of(car, _ => Checked<RawScan>.From(raw));
        Assert.NotEmpty(shelf.Absent);
        Assert.Empty(shelf.Scans);
        var unknown = Judged(car, shelf).Single(f => f.Check == "scan-arch");
        Assert.Equal(Verdict.Unknown, unknown.Verdict);
    }

    private static IReadOnlyList<Finding> Judged(Car car, ScanShelf shelf) =>
        Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly with { Scans = shelf }).Findings;

    private static RawScan Scaled(RawScan raw, double times)
    {
        var text = new StringBuilder();
        for (int i = 0; i < raw.PointCount; i++)
        {
            var p = raw.Point(i) * times;
            text.Append(CultureInfo.InvariantCulture, $"v {p.X:R} {p.Y:R} {p.Z:R}\n");
        }

        var corners = raw.Corners;
        for (int i = 0; i + 2 < corners.Length; i += 3)
        {
            text.Append(CultureInfo.InvariantCulture, $"f {corners[i] + 1} {corners[i + 1] + 1} {corners[i + 2] + 1}\n");
        }

        return ScanFile.Read(new MemoryStream(Encoding.ASCII.GetBytes(text.ToString())), "a.obj").Value;
    }
}
