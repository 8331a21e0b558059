using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Workshop.Scanning;

namespace Cornerwright.Workshop.Tests.Scanning;

/// <summary>The demo car with its scan aligned by six picks round the rim, as a person would.</summary>
internal static class AlignedDemo
{
    private static readonly double[] Hours = [0.5, 2.5, 4, 7, 8.5, 10.5];

    private static readonly Lazy<(Car Car, ScanShelf Shelf)> Made = new(() =>
    {
        var demo = DemoCar.Read();
        using var file = DemoCar.Scan();
        var raw = ScanFile.Read(file, DemoCar.ScanName).Value;
        var wheel = PresentWheel.Of(demo, CornerPlace.FrontLeft).Value;
        Vec3[] picks = [.. Hours.Select(h => DemoScanMaker.LipPick(h) / 1000)];
        var aligned = ScanAligning.ByWheel(wheel, ScanPlacing.InMetres(raw, ScanUnit.Millimetre), picks, PickedCircle.OuterRimLip,
            Vec3.UnitY, 0, 0).Aligned!;
        var car = demo with
        {
            Scans =
            [
                new Scan
                {
                    Id = "arch",
                    Name = "Arch",
                    Corner = CornerPlace.FrontLeft,
                    ContentHash = new string('a', 64),
                    Format = raw.Format,
                    Unit = ScanUnit.Millimetre,
                    Alignment = aligned.Record(),
                    Roughness = ScanAligned.TwoSigma(aligned.Roughness),
                    WheelTakenOut = Reading.Of("9 mm", Dimension.Length),
                    Crop = new ScanCrop { Radius = Reading.Of("700 mm", Dimension.Length),
                        FloorLow = Reading.Of("-250 mm", Dimension.Length) },
                },
            ],
        };
        return (car, ScanShelf.Of(car, _ => Checked<RawScan>.From(raw)));
    });

    public static (Car Car, ScanShelf Shelf) Make() => Made.Value;
}
