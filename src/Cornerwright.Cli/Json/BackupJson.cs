namespace Cornerwright.Cli.Json;

/// <summary>What was copied where, for scripts.</summary>
internal static class BackupJson
{
    public static string Write(string database, string copy) =>
        JsonPage.Write("backup", writer => { writer.WriteString("database", database); writer.WriteString("copy", copy); });
}
