using System.Reflection;
using System.Reflection.Metadata;
using System.Text.RegularExpressions;

namespace Cornerwright.Architecture.Tests;

/// <summary>A use that stands in the source alone.</summary>
internal readonly record struct WrittenUse(string Folder, string Place, TypeDefinitionHandle To);

/// <summary>
/// What compiling leaves no trace of: constants and members of enums, whose value is copied to whoever names them, and names in
/// nameof and typeof. Looked for in the sources as "Owner.Member", for owners whose name is the only one of its kind in the project
/// and whose namespace the file opens.
/// </summary>
internal static partial class WrittenOnly
{
    public static IEnumerable<WrittenUse> Of(CompiledRoom room, string project)
    {
        var types = room.Tables.TypeDefinitions
            .Where(t => FolderGraph.FolderOf(room, t, project) is not null)
            .GroupBy(t => room.Tables.GetString(room.Tables.GetTypeDefinition(t).Name), StringComparer.Ordinal)
            .Where(g => g.Count() == 1).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        string start = $"src/{project}/";
        foreach (string file in Repository.Sources(".cs", ".razor")
            .Where(f => Repository.Relative(f).StartsWith(start, StringComparison.Ordinal)))
        {
            string place = Repository.Relative(file), folder = Path.GetDirectoryName(place[start.Length..])!.Replace('\\', '/');
            var open = Opened(file, folder, project);
            foreach (string line in File.ReadLines(file).Where(l => !l.TrimStart().StartsWith("//", StringComparison.Ordinal)))
            {
                foreach (Match match in OwnerAndMember().Matches(line))
                {
                    if (types.TryGetValue(match.Groups["owner"].Value, out var owner)
                        && open.Contains(room.Tables.GetString(room.Tables.GetTypeDefinition(owner).Namespace))
                        && (match.Groups["named"].Success || IsLiteral(room, owner, match.Groups["member"].Value)))
                    {
                        yield return new WrittenUse(folder.Length > 0 ? folder : FolderGraph.OwnFiles, place, owner);
                    }
                }
            }
        }
    }

    /// <summary>
    /// Namespaces whose types a file names without more: its own and those around it, and those that it or the imports above it open.
    /// </summary>
    private static HashSet<string> Opened(string file, string folder, string project)
    {
        var opened = new HashSet<string>(StringComparer.Ordinal);
        string space = folder.Length > 0 ? $"{project}.{folder.Replace('/', '.')}" : project;
        for (int end = space.Length; end >= project.Length; end = space.LastIndexOf('.', end - 1))
        {
            opened.Add(space[..end]);
        }

        var sources = new List<string> { file };
        if (file.EndsWith(".razor", StringComparison.Ordinal))
        {
            string root = Path.Combine(Repository.Root, "src", project);
            for (string above = Path.GetDirectoryName(file)!; above.Length >= root.Length; above = Path.GetDirectoryName(above)!)
            {
                sources.Add(Path.Combine(above, "_Imports.razor"));
            }
        }

        opened.UnionWith(sources.Where(File.Exists).SelectMany(File.ReadLines).Select(l => Using().Match(l)).Where(m => m.Success)
            .Select(m => m.Groups[1].Value));
        return opened;
    }

    private static bool IsLiteral(CompiledRoom room, TypeDefinitionHandle owner, string member) =>
        room.Tables.GetTypeDefinition(owner).GetFields().Select(room.Tables.GetFieldDefinition)
            .Any(f => f.Attributes.HasFlag(FieldAttributes.Literal) && room.Tables.StringComparer.Equals(f.Name, member));

    [GeneratedRegex(@"(?<named>nameof\((?=\w+\.)|typeof\()?(?<![\w.])(?<owner>[A-Z]\w*)(?:\.(?<member>[A-Z]\w*))?")]
    private static partial Regex OwnerAndMember();

    [GeneratedRegex(@"^@?using ([\w.]+);?\s*$")]
    private static partial Regex Using();
}
