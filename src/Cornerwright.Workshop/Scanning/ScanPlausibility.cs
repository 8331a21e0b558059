using System.Globalization;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Workshop.Scanning;

/// <summary>
/// Does a placed scan fit the car: its size, its side, and that nothing of it stands where the tyre stood. A scan in metres that is read as
/// millimetres lies inside the hub, and everything seems clear of it.
/// </summary>
internal static class ScanPlausibility
{
    /// <summary>Across the whole scan, m: less is no arch, more is no car. Common practice, no source.</summary>
    public const double LeastAcross = 0.15, MostAcross = 15;

    /// <summary>Deeper inside the present tyre than this nothing can stand, m: more than its shape is doubted by.</summary>
    public const double DeepInTyre = 0.015;

    /// <summary>Share of the points that may lie there by a scanner's mistakes; more is another place, unit or travel.</summary>
    private const double MostInTyre = 0.02;

    /// <summary>What stands further out than the tyre's side by this, m, is no arch over it.</summary>
    private const double BesideTyre = 0.04;

    private const double MostBeside = 0.5;

    /// <summary>A place fixed by a gap reading and the scan may lie so far apart, m, before it is told.</summary>
    private const double MostApart = 0.020;

    /// <summary>Further from every point than this, m, the place is simply not in the scan.</summary>
    private const double NotInScan = 0.15;

    /// <summary>Of all points, before the crop; from the hub face on the body's axes, m.</summary>
    public static Problem? WrongSize(string where, Scan scan, float[] coordinates)
    {
        Vec3 low = new(double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity), high = low * -1;
        for (int i = 0; i + 2 < coordinates.Length; i += 3)
        {
            low = new(Math.Min(low.X, coordinates[i]), Math.Min(low.Y, coordinates[i + 1]), Math.Min(low.Z, coordinates[i + 2]));
            high = new(Math.Max(high.X, coordinates[i]), Math.Max(high.Y, coordinates[i + 1]), Math.Max(high.Z, coordinates[i + 2]));
        }

        double across = Math.Max(high.X - low.X, Math.Max(high.Y - low.Y, high.Z - low.Z));
        return across is >= LeastAcross and <= MostAcross ? null : new Problem(where + " / unit of the file",
            string.Create(CultureInfo.InvariantCulture, $"{scan.Unit}, which makes it {1000 * across:0.#} mm across"),
            string.Create(CultureInfo.InvariantCulture, $"a scan between {1000 * LeastAcross:0} and {1000 * MostAcross:0} mm across"),
            "Choose the unit that the scanner writes, then align it again.");
    }

    /// <summary>Of what is left by the crop, before the wheel is taken out.</summary>
    /// <param name="where">For the problem.</param>
    /// <param name="wheel">As it was on the car.</param>
    /// <param name="frame">Where it stood when the scan was made.</param>
    /// <param name="coordinates">From the hub face on the body's axes, m.</param>
    /// <param name="notes">Takes what is told and not refused.</param>
    public static Problem? Misplaced(string where, PresentWheel wheel, in SpindleFrame frame, float[] coordinates, List<string> notes)
    {
        int points = coordinates.Length / 3, inTyre = 0, beside = 0;
        double side = wheel.Tyre.AxialCentre + (wheel.Tyre.SectionWidth / 2) + BesideTyre;
        for (int i = 0; i < points; i++)
        {
            Vec3 p = frame.ToSpindle(new(coordinates[3 * i], coordinates[(3 * i) + 1], coordinates[(3 * i) + 2]));
            beside += p.X > side ? 1 : 0;
            inTyre += wheel.DepthInTyre(p) > DeepInTyre ? 1 : 0;
        }

        if (points > 0 && beside > MostBeside * points)
        {
            return new Problem(where + " / corner",
                $"{wheel.Corner.Words()}, where {Percent(beside, points)} of it stand further out than the tyre",
                "a scan of this side of the car", "Choose the corner that was scanned, or align it again: left and right may be mixed up.");
        }

        if (points > 0 && inTyre > MostInTyre * points)
        {
            return new Problem(where + " / alignment", $"{Percent(inTyre, points)} of it lie inside the tyre that was on the car",
                "a scan that leaves the tyre its place", "Check unit, corner, alignment, and travel and steer when it was scanned.");
        }

        if (inTyre > 0)
        {
            notes.Add(string.Create(CultureInfo.InvariantCulture, $"{inTyre} points lie more than {1000 * DeepInTyre:0} mm inside the tyre "
                + $"that was on the car, where nothing can have stood: look at them before you trust the rest."));
        }

        return null;
    }

    /// <summary>Tells which places that gap readings fix lie far from the scan.</summary>
    public static void Compare(PresentWheel wheel, float[] coordinates, List<string> notes)
    {
        foreach (var known in wheel.KnownPlaces())
        {
            double nearest = double.PositiveInfinity;
            for (int i = 0; i + 2 < coordinates.Length; i += 3)
            {
                nearest = Math.Min(nearest, (new Vec3(coordinates[i], coordinates[i + 1], coordinates[i + 2]) - known.Place).LengthSquared);
            }

            double apart = Math.Sqrt(nearest);
            if (apart > MostApart + (2 * known.Deviation) && apart < NotInScan)
            {
                notes.Add(string.Create(CultureInfo.InvariantCulture, $"{known.Name}: the place that the gap reading gives lies "
                    + $"{1000 * apart:0} mm from the scan. One of both is wrong, or the thing is not in the scan."));
            }
        }
    }

    private static string Percent(int part, int of) => string.Create(CultureInfo.InvariantCulture, $"{100.0 * part / of:0} %");
}
