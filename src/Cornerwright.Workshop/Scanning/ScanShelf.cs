using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Scans;

namespace Cornerwright.Workshop.Scanning;

/// <summary>The placed scans of one car, for whoever judges it: the car file names scans, and this holds their points.</summary>
public sealed class ScanShelf
{
    private ScanShelf(IReadOnlyList<PlacedScan> scans, IReadOnlyList<AbsentScan> absent) => (Scans, Absent) = (scans, absent);

    public static ScanShelf Empty { get; } = new([], []);

    /// <summary>In the car's order; a mirrored one follows its original.</summary>
    public IReadOnlyList<PlacedScan> Scans { get; }

    /// <summary>Scans of the car that are not here.</summary>
    public IReadOnlyList<AbsentScan> Absent { get; }

    /// <summary>Why they are not: not aligned yet, the file is missing or damaged.</summary>
    public IReadOnlyList<Problem> Problems => [.. Absent.Select(a => a.Why)];

    public IEnumerable<PlacedScan> At(CornerPlace corner) => Scans.Where(s => s.Corner == corner);

    /// <summary>Places every scan of the car.</summary>
    /// <param name="car">The car.</param>
    /// <param name="read">What the file of a content hash holds.</param>
    public static ScanShelf Of(Car car, Func<string, Checked<RawScan>> read)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(read);
        var scans = new List<PlacedScan>();
        var absent = new List<AbsentScan>();
        foreach (var scan in car.Scans)
        {
            var raw = read(scan.ContentHash);
            if (!raw.Ok)
            {
                absent.AddRange(raw.Problems.Select(p => new AbsentScan(scan, p with { Field = $"scan {scan.Name} / {p.Field}" })));
                continue;
            }

            foreach (bool mirrored in scan.MirroredToo ? [false, true] : (bool[])[false])
            {
                var placed = ScanPlacing.Place(car, scan, raw.Value, mirrored);
                if (placed.Ok)
                {
                    scans.Add(placed.Value);
                }
                else
                {
                    absent.AddRange(placed.Problems.Select(p => new AbsentScan(scan, p)));
                }
            }
        }

        return car.Scans.Count == 0 ? Empty : new ScanShelf(scans, absent);
    }
}

/// <summary>A scan that a car names and that could not be placed.</summary>
public sealed record AbsentScan(Scan Scan, Problem Why);
