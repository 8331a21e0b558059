using Cornerwright.Cli.Commands;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;

namespace Cornerwright.Cli.Json;

/// <summary>What an import did, for scripts.</summary>
internal static class ImportJson
{
    public static string Write(PartKind kind, IReadOnlyList<string> header, IReadOnlyList<ColumnChoice> columns, int count, bool written) =>
        JsonPage.Write("import", writer =>
        {
            writer.WriteString("kind", kind.Name);
            writer.WriteNumber("parts", count);
            writer.WriteBoolean("written", written);
            writer.Objects("columns", header.Zip(columns), pair =>
            {
                writer.WriteString("column", pair.First);
                writer.Text("field", pair.Second.Field?.Name);
                writer.Text("piece", pair.Second.Field is null ? null : pair.Second.Piece.ToString().ToLowerInvariant());
                writer.Text("unitOfBareNumbers", pair.Second.DefaultUnit?.Symbol);
            });
        });
}
