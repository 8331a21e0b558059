using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Findings;

namespace Cornerwright.Workshop.Scanning;

/// <summary>Says of every scan that the car names and nobody can use that its clearance is unknown.</summary>
internal static class AbsentScans
{
    public static IEnumerable<Finding> For(ScanShelf? shelf) =>
        (shelf?.Absent ?? []).GroupBy(a => a.Scan.Id, StringComparer.Ordinal).Select(Unknown);

    private static Finding Unknown(IGrouping<string, AbsentScan> of)
    {
        var scan = of.First().Scan;
        return new Finding
        {
            Check = "scan-" + scan.Id,
            Title = "Clear of scan: " + scan.Name,
            Where = scan.Corner.Words(),
            Corner = scan.Corner,
            Axle = scan.Corner.Axle(),
            Verdict = Verdict.Unknown,
            Sentence = $"The scan {scan.Name} cannot be used, so nothing is said of what it shows.",
            Missing =
                [.. of.Select(a => new MissingReading("scans/" + scan.Id, $"{a.Why.Field}: {a.Why.Allowed}. {a.Why.Cure}")).Distinct()],
        };
    }
}
