namespace Cornerwright.Architecture.Tests;

/// <summary>The source tree that these tests were built from.</summary>
internal static class Repository
{
    private static readonly string[] Ours = ["src", "tests", "bench"];

    public static string Root { get; } = Find();

    /// <summary>Source files that people of this project wrote: nothing built, generated or brought in from elsewhere.</summary>
    public static IEnumerable<string> Sources(params string[] endings) =>
        Ours.Select(f => Path.Combine(Root, f)).Where(Directory.Exists)
            .SelectMany(f => Directory.EnumerateFiles(f, "*", SearchOption.AllDirectories))
            .Where(f => endings.Contains(Path.GetExtension(f), StringComparer.Ordinal) && !IsForeign(Relative(f)))
            .Order(StringComparer.Ordinal);

    public static IEnumerable<string> Projects() => Sources(".csproj");

    /// <summary>With forward slashes on every system.</summary>
    public static string Relative(string path) => Path.GetRelativePath(Root, path).Replace('\\', '/');

    private static bool IsForeign(string relative) =>
        relative.Split('/') is var parts
        && (parts.Contains("bin", StringComparer.Ordinal) || parts.Contains("obj", StringComparer.Ordinal)
            || parts.Contains("Migrations", StringComparer.Ordinal) || parts.Contains("vendor", StringComparer.Ordinal)
            || parts.Contains("lib", StringComparer.Ordinal));

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Cornerwright.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("Run the tests from within the repository: Cornerwright.slnx was not found above "
            + AppContext.BaseDirectory);
    }
}
