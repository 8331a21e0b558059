using System.Globalization;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Scans;

namespace Cornerwright.Garage.Files;

/// <summary>What a scan's fields must hold beyond each one's own range.</summary>
internal static class ScanConsistency
{
    private const int HashDigits = 64;

    public static IEnumerable<Problem> Check(Car car)
    {
        foreach (var twice in car.Scans.GroupBy(x => x.Id, StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            yield return new Problem("scans / id", twice.Key, "each id once", "Give one of them another id.");
        }

        foreach (var scan in car.Scans)
        {
            string path = $"scan {scan.Id}";
            if (!IsHash(scan.ContentHash))
            {
                yield return new Problem(path + " / content hash", scan.ContentHash, $"{HashDigits} digits 0 to 9 and a to f",
                    "Import the scan's file again; the hash is made from it.");
            }

            if (scan.TakenOn.Length > 0
                && !DateOnly.TryParseExact(scan.TakenOn, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _))
            {
                yield return new Problem(path + " / taken on", scan.TakenOn, "a date such as 2026-05-31",
                    "Write year, month and day with hyphens, or leave it out.");
            }

            if (scan.Alignment is { } alignment && !(TurnLength(alignment) > 0 && double.IsFinite(TurnLength(alignment))))
            {
                yield return new Problem(path + " / alignment / turn", "0 0 0 0", "four numbers that are not all 0",
                    "Align the scan again.");
            }

            if (scan.Crop is { } crop)
            {
                foreach (var problem in new[] { Order(path, "back and forward", crop.BackLow, crop.ForwardHigh), Order(path,
                    "right and left", crop.RightLow, crop.LeftHigh), Order(path, "lower and higher", crop.FloorLow, crop.RoofHigh) }
                    .OfType<Problem>())
                {
                    yield return problem;
                }
            }
        }
    }

    /// <summary>True for the SHA-256 of a file as it is written here: such a text can name a file and nothing else.</summary>
    internal static bool IsHash(string text) => text.Length == HashDigits && text.All(c => c is >= '0' and <= '9' or >= 'a' and <= 'f');

    private static double TurnLength(ScanAlignment a) =>
        Math.Sqrt((a.TurnW * a.TurnW) + (a.TurnX * a.TurnX) + (a.TurnY * a.TurnY) + (a.TurnZ * a.TurnZ));

    private static Problem? Order(string path, string which, Reading? low, Reading? high) =>
        low is null || high is null || low.Si < high.Si ? null : new Problem($"{path} / crop / {which}", $"{low.Typed} and {high.Typed}",
            "the first smaller than the second", "They may have been exchanged.");
}
