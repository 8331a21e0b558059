using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Scans;
using Cornerwright.Workshop.Scanning;
using Cornerwright.Workshop.Tests.Scanning;

namespace Cornerwright.Workshop.Tests.Clearances;

/// <summary>The demo car with the demo scan where it truly is, at the front left and mirrored at the front right.</summary>
internal static class DemoShelf
{
    public static Car Car { get; } = DemoCar.Read() is var car ? car with { Scans = [Scan] } : throw new InvalidOperationException();

    public static ScanShelf Shelf { get; } = ScanShelf.Of(Car, _ => Checked<RawScan>.From(Raw()));

    private static Scan Scan => new()
    {
        Id = "arch",
        Name = "arch",
        Corner = CornerPlace.FrontLeft,
        ContentHash = new string('a', 64),
        Unit = ScanUnit.Millimetre,
        Alignment = new ScanAligned(DemoScanMaker.Truth, 0.0005, DemoScanMaker.Roughness, "", []).Record(),
        Roughness = ScanAligned.TwoSigma(DemoScanMaker.Roughness),
        WheelTakenOut = Reading.Of("9 mm", Dimension.Length),
        Crop = new ScanCrop { Radius = Reading.Of("700 mm", Dimension.Length), FloorLow = Reading.Of("-250 mm", Dimension.Length) },
        MirroredToo = true,
    };

    private static RawScan Raw()
    {
        string path = Path.Combine(Demo.Root, "demo", DemoScanMaker.FileName);
        using var file = File.OpenRead(path);
        return ScanFile.Read(file, file.Name).Value;
    }
}
