using System.Globalization;
using Cornerwright.Garage.Scans;
using Spectre.Console;

namespace Cornerwright.Cli.Text;

/// <summary>What a scan's file holds, for people.</summary>
internal static class ScanText
{
    public static void Write(IAnsiConsole console, string name, RawScan scan, string hash)
    {
        console.Line($"{name}: {scan.Format.Ending().ToUpperInvariant()}, {scan.Variant}");
        console.Line(scan.IsCloud ? $"  {Count(scan.PointCount)} points without a surface"
            : $"  {Count(scan.TriangleCount)} triangles, {Count(scan.PointCount)} points");
        foreach (string note in scan.Notes)
        {
            console.Line("  " + note);
        }

        console.Line($"  SHA-256 {hash}");
        console.Line("How large it is, if its numbers are");
        foreach (var candidate in ScanUnits.Candidates(scan))
        {
            string doubt = candidate.Likely ? "" : "  (hardly a wheel arch)";
            console.Line($"  {candidate.Unit.Words() + ":",-13}{ScanUnits.SizeWords(candidate.Size)}{doubt}");
        }
    }

    private static string Count(int number) => number.ToString("#,0", CultureInfo.InvariantCulture).Replace(',', ' ');
}
