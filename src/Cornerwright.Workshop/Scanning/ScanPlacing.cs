using System.Globalization;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Scans;
using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Workshop.Scanning;

/// <summary>Puts a scan where its record says.</summary>
public static class ScanPlacing
{
    /// <summary>
    /// How far left and right of a body may differ, standard deviation, m. Common practice for pressed bodies, no source.
    /// </summary>
    public const double MirrorDeviation = 0.0015;

    /// <summary>Kept round the hub where the record has no crop, m: more than any wheel reaches.</summary>
    public const double UsualRadius = 1.0;

    /// <summary>The transform of a record: points of the file, in metres, to the corner's hub face on the body's axes.</summary>
    public static RigidTransform TransformOf(ScanAlignment alignment)
    {
        ArgumentNullException.ThrowIfNull(alignment);
        return RigidTransform.From(
            alignment.TurnW, alignment.TurnX, alignment.TurnY, alignment.TurnZ,
            new Vec3(alignment.ForwardMm, alignment.LeftMm, alignment.UpMm) / 1000);
    }

    /// <summary>All points in metres in the file's frame.</summary>
    public static Vec3[] InMetres(RawScan raw, ScanUnit unit)
    {
        ArgumentNullException.ThrowIfNull(raw);
        double scale = unit.Metres();
        var points = new Vec3[raw.PointCount];
        for (int i = 0; i < points.Length; i++)
        {
            points[i] = raw.Point(i) * scale;
        }

        return points;
    }

    /// <summary>Places a scan at its own corner, or mirrored at the one across.</summary>
    /// <param name="car">Its present wheel is taken out of the scan.</param>
    /// <param name="scan">One of the car's.</param>
    /// <param name="raw">What its file holds.</param>
    /// <param name="mirrored">At the corner across the axle.</param>
    public static Checked<PlacedScan> Place(Car car, Scan scan, RawScan raw, bool mirrored = false)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(scan);
        ArgumentNullException.ThrowIfNull(raw);
        string where = "scan " + scan.Name;
        if (scan.Alignment is not { } alignment)
        {
            return Checked<PlacedScan>.Wrong(
                new Problem(where + " / alignment", "", "an alignment", "Align the scan on the page of the car's scans."));
        }

        var notes = new List<string>();
        float[] coordinates = Aligned(raw, scan.Unit.Metres(), TransformOf(alignment));
        if (ScanPlausibility.WrongSize(where, scan, coordinates) is { } size)
        {
            return Checked<PlacedScan>.Wrong(size);
        }

        int[] corners = raw.Corners.ToArray();
        (coordinates, corners) = Cropped(coordinates, corners, scan.Crop, notes);
        var wheel = PresentWheel.Of(car, scan.Corner);
        if (!wheel.Ok && (scan.WheelTakenOut is not null || scan.AttachedTo == AttachedTo.Knuckle))
        {
            return Checked<PlacedScan>.Wrong(wheel.Problems);
        }

        if (wheel.Ok && BesideWheel(scan, wheel.Value, where, ref coordinates, ref corners, notes) is { } misplaced)
        {
            return Checked<PlacedScan>.Wrong(misplaced);
        }

        if (coordinates.Length == 0)
        {
            return Checked<PlacedScan>.Wrong(new Problem(where, "nothing is left of it", "a scan that shows something near the wheel",
                "Widen the crop, or align it again."));
        }

        double bound = 0;
        if (scan.Thinning is { Si: > 0 } cell)
        {
            var thinned = ScanThinning.Thin(coordinates, corners, cell.Si);
            notes.Add(string.Create(CultureInfo.InvariantCulture,
                $"Thinned from {coordinates.Length / 3} to {thinned.Coordinates.Length / 3} points; "
                    + $"nothing moved by more than {1000 * thinned.Bound:0.00} mm, which comes off every gap."));
            (coordinates, corners, bound) = (thinned.Coordinates, thinned.Corners, thinned.Bound);
        }

        if (mirrored)
        {
            // In S, 3 o'clock is rearward on left wheels and forward on right ones.
            bool knuckle = scan.AttachedTo == AttachedTo.Knuckle;
            Each(coordinates, p => knuckle ? new Vec3(p.X, p.Y, -p.Z) : new Vec3(p.X, -p.Y, p.Z));
            notes.Add("Mirrored from the other side; left and right were taken to differ by no more than 3 mm, 19 in 20 (common "
                + "practice, no source).");
        }

        return Made(scan, mirrored ? scan.Corner.OtherSide() : scan.Corner, coordinates, corners, Deviation(scan, alignment, mirrored),
            bound, notes, where);
    }

    // What the wheel that was on the car says of the scan; then it is taken out, and what moves with the knuckle goes to the wheel's frame.
    private static Problem? BesideWheel(Scan scan, PresentWheel wheel, string where, ref float[] coordinates, ref int[] corners,
        List<string> notes)
    {
        if (!wheel.PoseAt(scan.Travel?.Si ?? 0, scan.Steer?.Si ?? 0, out var pose))
        {
            return new Problem(where + " / wheel travel when scanned", scan.Travel?.Typed ?? "0", "a travel the wheel can reach",
                "Correct the travel at which the scan was made.");
        }

        var frame = SpindleFrame.Of(pose);
        if (ScanPlausibility.Misplaced(where, wheel, frame, coordinates, notes) is { } misplaced)
        {
            return misplaced;
        }

        if (scan.AttachedTo == AttachedTo.Body)
        {
            ScanPlausibility.Compare(wheel, coordinates, notes);
        }

        if (scan.WheelTakenOut is { } taken)
        {
            (coordinates, corners) = WithoutWheel(coordinates, corners, wheel, frame, taken.Si, notes);
        }

        if (scan.AttachedTo == AttachedTo.Knuckle)
        {
            Each(coordinates, p => frame.ToSpindle(p));
        }

        return null;
    }

    private static Checked<PlacedScan> Made(Scan scan, CornerPlace corner, float[] coordinates, int[] corners, double deviation,
        double bound, List<string> notes, string where)
    {
        TriangleMesh? mesh = null;
        PointCloud? cloud = null;
        var fault = corners.Length > 0 ? TriangleMesh.TryFrom(coordinates, corners, out mesh) : PointCloud.TryFrom(coordinates, out cloud);
        return fault.Kind == ScanFaultKind.None
            ? Checked<PlacedScan>.From(new PlacedScan { Scan = scan, Corner = corner, Mesh = mesh, Cloud = cloud, Deviation = deviation,
                Bound = bound, Notes = notes })
            : Checked<PlacedScan>.Wrong(
                new Problem(where, $"{fault.Kind} at {fault.Index}", "a surface near the wheel", "Check unit, alignment and crop."));
    }

    private static double Deviation(Scan scan, ScanAlignment alignment, bool mirrored)
    {
        double a = (alignment.Doubt?.Si ?? 0) / 2, r = (scan.Roughness?.Si ?? 0) / 2, m = mirrored ? MirrorDeviation : 0;
        return Math.Sqrt((a * a) + (r * r) + (m * m));
    }

    private static float[] Aligned(RawScan raw, double scale, in RigidTransform transform)
    {
        float[] coordinates = new float[3 * raw.PointCount];
        for (int i = 0; i < raw.PointCount; i++)
        {
            Vec3 p = transform.Apply(raw.Point(i) * scale);
            (coordinates[3 * i], coordinates[(3 * i) + 1], coordinates[(3 * i) + 2]) = ((float)p.X, (float)p.Y, (float)p.Z);
        }

        return coordinates;
    }

    private static (float[] Coordinates, int[] Corners) Cropped(float[] coordinates, int[] corners, ScanCrop? crop, List<string> notes)
    {
        double radius = crop?.Radius?.Si ?? UsualRadius;
        bool[] gone = new bool[coordinates.Length / 3];
        int count = 0;
        for (int i = 0; i < gone.Length; i++)
        {
            Vec3 p = At(coordinates, i);
            bool inside = p.LengthSquared <= radius * radius
                && p.X >= Low(crop?.BackLow) && p.X <= High(crop?.ForwardHigh) && p.Y >= Low(crop?.RightLow) && p.Y <= High(crop?.LeftHigh)
                && p.Z >= Low(crop?.FloorLow) && p.Z <= High(crop?.RoofHigh);
            gone[i] = !inside;
            count += inside ? 0 : 1;
        }

        if (count > 0)
        {
            notes.Add($"{count} points lie outside of the crop.");
        }

        return count == 0 ? (coordinates, corners) : ScanCut.Without(coordinates, corners, gone, wholly: true);
    }

    private static (float[] Coordinates, int[] Corners) WithoutWheel(float[] coordinates, int[] corners, PresentWheel wheel,
        in SpindleFrame frame, double within, List<string> notes)
    {
        bool[] gone = new bool[coordinates.Length / 3];
        int count = 0;
        for (int i = 0; i < gone.Length; i++)
        {
            gone[i] = wheel.OwnDistance(frame.ToSpindle(At(coordinates, i))) < within;
            count += gone[i] ? 1 : 0;
        }

        notes.Add(string.Create(CultureInfo.InvariantCulture, $"{count} points within {1000 * within:0.#} mm of the wheel that was on the "
            + $"car are its own and were left out; what stood nearer to it than that is not in the scan."));
        return ScanCut.Without(coordinates, corners, gone, wholly: false);
    }

    private static void Each(float[] coordinates, Func<Vec3, Vec3> move)
    {
        for (int i = 0; i < coordinates.Length / 3; i++)
        {
            Vec3 p = move(At(coordinates, i));
            (coordinates[3 * i], coordinates[(3 * i) + 1], coordinates[(3 * i) + 2]) = ((float)p.X, (float)p.Y, (float)p.Z);
        }
    }

    private static Vec3 At(float[] coordinates, int i) => new(coordinates[3 * i], coordinates[(3 * i) + 1], coordinates[(3 * i) + 2]);

    private static double Low(Reading? limit) => limit?.Si ?? double.NegativeInfinity;

    private static double High(Reading? limit) => limit?.Si ?? double.PositiveInfinity;
}
