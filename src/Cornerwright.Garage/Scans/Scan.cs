using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Scans;

/// <summary>
/// A scan of what stands round a wheel. The car file holds what it is and how it lies; the points stay in the scan's own file,
/// found by its content.
/// </summary>
public sealed record Scan
{
    [Field("Id", Needed = true)]
    public string Id { get; init; } = "";

    [Field("Name", Needed = true, How = "Arch and liner, with the wheel on, and the like.")]
    public string Name { get; init; } = "";

    [Field("Corner")]
    public CornerPlace Corner { get; init; }

    [Field("Moves with")]
    public AttachedTo AttachedTo { get; init; }

    [Field("File", How = "As it was called when it came in; for people only.")]
    public string FileName { get; init; } = "";

    [Field("Content hash", Needed = true, How = "SHA-256 of the file, 64 hexadecimal digits. The file is kept and found under it.")]
    public string ContentHash { get; init; } = "";

    [Field("Kind of file")]
    public ScanFormat Format { get; init; }

    [Field("Unit of the file")]
    public ScanUnit Unit { get; init; }

    [Field("Taken with", How = "Phone, laser, turntable; for people only.")]
    public string TakenWith { get; init; } = "";

    [Field("Taken on", How = "Such as 2026-05-31.")]
    public string TakenOn { get; init; } = "";

    [Field("Wheel travel when scanned", Dimension.Length, "mm", -300, 300, How = "0 if the car stood at its reference height.")]
    public Reading? Travel { get; init; }

    [Field("Steered when scanned", Dimension.Angle, "deg", -60, 60, How = "To the left is positive; 0 straight ahead.")]
    public Reading? Steer { get; init; }

    [Field("Alignment")]
    public ScanAlignment? Alignment { get; init; }

    [Field("Roughness", Dimension.Length, "mm", 0, 50,
        How = "How far its points lie off the true surface, 19 in 20 within. Fitting the wheel shows it.")]
    public Reading? Roughness { get; init; }

    [Field("Crop")]
    public ScanCrop? Crop { get; init; }

    [Field("Wheel taken out within", Dimension.Length, "mm", 0, 60, How = "Points within this of the wheel that was on the car are its "
        + "own, and are left out. Left out: the scan was made without a wheel.")]
    public Reading? WheelTakenOut { get; init; }

    [Field("Thinned to", Dimension.Length, "mm", 0, 50,
        How = "Edge of the cells in which points are drawn together. Its error counts in full.")]
    public Reading? Thinning { get; init; }

    [Field("Also for the other side, mirrored", How = "Left and right of a car are never quite alike: a doubt is added.")]
    public bool MirroredToo { get; init; }
}

/// <summary>
/// How a scan lies: a point p of the file, in metres, stands at turn·p + shift from the corner's hub face (its centre, at the
/// reference state), on the body's axes: X forward, Y left, Z up.
/// </summary>
public sealed record ScanAlignment
{
    [Field("Turn, W", How = "The turn as a quaternion; only its direction counts.")]
    public double TurnW { get; init; } = 1;

    [Field("Turn, X")]
    public double TurnX { get; init; }

    [Field("Turn, Y")]
    public double TurnY { get; init; }

    [Field("Turn, Z")]
    public double TurnZ { get; init; }

    [Field("Shift forward, mm")]
    public double ForwardMm { get; init; }

    [Field("Shift left, mm")]
    public double LeftMm { get; init; }

    [Field("Shift up, mm")]
    public double UpMm { get; init; }

    [
        Field("Doubt at the wheel", Dimension.Length, "mm", 0, 200, How =
            "How far the aligned scan may be off anywhere round the wheel, 19 in 20 within. It is added to the doubt of every clearance.")]
    public Reading? Doubt { get; init; }

    [Field("Aligned by", How = "For people only.")]
    public string By { get; init; } = "";
}

/// <summary>What of a scan counts, measured from the corner's hub face on the body's axes; the rest is left out.</summary>
public sealed record ScanCrop
{
    [Field("Within, of the hub", Dimension.Length, "mm", 100, 3000)]
    public Reading? Radius { get; init; }

    [Field("Not further back than", Dimension.Length, "mm", -3000, 3000, How = "Behind the hub is negative.")]
    public Reading? BackLow { get; init; }

    [Field("Not further forward than", Dimension.Length, "mm", -3000, 3000)]
    public Reading? ForwardHigh { get; init; }

    [Field("Not further right than", Dimension.Length, "mm", -3000, 3000, How = "To the car's right of the hub is negative.")]
    public Reading? RightLow { get; init; }

    [Field("Not further left than", Dimension.Length, "mm", -3000, 3000)]
    public Reading? LeftHigh { get; init; }

    [Field("Not lower than", Dimension.Length, "mm", -3000, 3000, How = "Below the hub is negative. It takes the floor away.")]
    public Reading? FloorLow { get; init; }

    [Field("Not higher than", Dimension.Length, "mm", -3000, 3000)]
    public Reading? RoofHigh { get; init; }
}
