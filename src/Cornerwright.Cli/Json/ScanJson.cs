using System.Text.Json;
using Cornerwright.Garage.Scans;

namespace Cornerwright.Cli.Json;

/// <summary>What a scan's file holds, for scripts.</summary>
internal static class ScanJson
{
    public static string Write(RawScan scan, string hash) => JsonPage.Write("scan-info", writer =>
    {
        writer.WriteString("kind", scan.Format.Ending());
        writer.WriteString("variant", scan.Variant);
        writer.WriteString("contentHash", hash);
        writer.WriteNumber("points", scan.PointCount);
        writer.WriteNumber("triangles", scan.TriangleCount);
        writer.Texts("notes", scan.Notes);
        writer.Objects("sizes", ScanUnits.Candidates(scan), candidate =>
        {
            writer.WriteString("unit", JsonNamingPolicy.CamelCase.ConvertName(candidate.Unit.ToString()));
            writer.Number("xMetres", candidate.Size.X);
            writer.Number("yMetres", candidate.Size.Y);
            writer.Number("zMetres", candidate.Size.Z);
            writer.WriteBoolean("likely", candidate.Likely);
        });
    });
}
