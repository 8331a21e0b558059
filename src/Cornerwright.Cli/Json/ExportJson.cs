using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;

namespace Cornerwright.Cli.Json;

/// <summary>What an export wrote, for scripts.</summary>
internal static class ExportJson
{
    /// <param name="kind">Of part.</param>
    /// <param name="count">How many.</param>
    /// <param name="file">Where it was written; null where it is only shown.</param>
    /// <param name="list">The list.</param>
    public static string Write(PartKind kind, int count, string? file, PartsCsvText list) => JsonPage.Write("export", writer =>
    {
        writer.WriteString("kind", kind.Name);
        writer.WriteNumber("parts", count);
        writer.Text("file", file);
        writer.Text("list", file is null ? list.Text : null);
        writer.Texts("leftOut", list.LeftOut);
    });
}
