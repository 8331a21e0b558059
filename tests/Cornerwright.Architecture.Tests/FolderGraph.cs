using System.Reflection.Metadata;
using System.Text;

namespace Cornerwright.Architecture.Tests;

/// <summary>How often the types of one folder use those of another, with one place of it.</summary>
internal sealed record FolderEdge(string From, string To, int Uses, string User, string Used)
{
    public override string ToString() => $"{From} -> {To}  ({Uses}, e.g. {User} uses {Used})";
}

/// <summary>
/// The folders of a room and which uses which. A folder and its subfolder are two nodes: where each uses the other, that is a circle
/// like any other.
/// </summary>
internal sealed class FolderGraph
{
    /// <summary>Name of the node of the files that lie in no folder of their project.</summary>
    public const string OwnFiles = "(its own)";

    private FolderGraph(IReadOnlyList<FolderEdge> edges) => Edges = edges;

    /// <summary>By folder, then by the folder used.</summary>
    public IReadOnlyList<FolderEdge> Edges { get; }

    /// <summary>From the compiled room, and from its sources what compiling leaves no trace of.</summary>
    public static FolderGraph Of(CompiledRoom room, string project)
    {
        var found = new Dictionary<(string From, string To), FolderEdge>();
        void Add(string from, string to, string user, string used)
        {
            if (from != to)
            {
                found[(from, to)] = found.TryGetValue((from, to), out var edge) ? edge with { Uses = edge.Uses + 1 }
                    : new FolderEdge(from, to, 1, user, used);
            }
        }

        foreach (var use in TypeUses.Of(room))
        {
            if (FolderOf(room, use.From, project) is { } from && FolderOf(room, use.To, project) is { } to)
            {
                Add(from, to, $"{use.File ?? room.FullName(use.From)}:{use.Line}", room.FileOf(use.To) ?? room.FullName(use.To));
            }
        }

        foreach (var use in WrittenOnly.Of(room, project))
        {
            if (FolderOf(room, use.To, project) is { } to)
            {
                Add(use.Folder, to, use.Place, room.FileOf(use.To) ?? room.FullName(use.To));
            }
        }

        return From(found.Values);
    }

    public static FolderGraph From(IEnumerable<FolderEdge> edges) =>
        new([.. edges.OrderBy(e => e.From, StringComparer.Ordinal).ThenBy(e => e.To, StringComparer.Ordinal)]);

    /// <summary>Folder of a type below its project; null for what lives outside of the project's names.</summary>
    public static string? FolderOf(CompiledRoom room, TypeDefinitionHandle type, string project)
    {
        string space = room.Tables.GetString(room.Tables.GetTypeDefinition(type).Namespace);
        return space == project ? OwnFiles
            : space.StartsWith(project + ".", StringComparison.Ordinal) ? space[(project.Length + 1)..].Replace('.', '/')
            : null;
    }

    /// <summary>The groups of folders in which each reaches each other, each with the edges inside it.</summary>
    public IReadOnlyList<IReadOnlyList<FolderEdge>> Circles()
    {
        var reached = Edges.Select(e => e.From).Distinct().ToDictionary(f => f, Reach, StringComparer.Ordinal);
        return [.. Edges
            .Where(e => reached.TryGetValue(e.To, out var back) && back.Contains(e.From))
            .GroupBy(e => string.Join(' ', reached[e.From].Where(f => reached.TryGetValue(f, out var back) && back.Contains(e.From))
                .Order(StringComparer.Ordinal)))
            .Select(g => (IReadOnlyList<FolderEdge>)[.. g])];
    }

    /// <summary>A way round through the fewest folders of a group.</summary>
    public static IReadOnlyList<FolderEdge> Shortest(IReadOnlyList<FolderEdge> circle) =>
        circle.Select(e => (IReadOnlyList<FolderEdge>)[e, .. Way(circle, e.To, e.From)]).MinBy(way => way.Count)!;

    /// <summary>Each group in words: a shortest way round first, then every edge of it, the thinnest first.</summary>
    public static string Describe(IReadOnlyList<IReadOnlyList<FolderEdge>> circles)
    {
        var text = new StringBuilder();
        foreach (var circle in circles)
        {
            text.Append("Folders in a circle: ").AppendJoin(", ", circle.Select(e => e.From).Distinct()).AppendLine();
            text.AppendLine("  a shortest way round:");
            text.AppendJoin("", Shortest(circle).Select(e => $"    {e}\n"));
            text.AppendLine("  all edges, the thinnest first:");
            text.AppendJoin("", circle.OrderBy(e => e.Uses).Select(e => $"    {e}\n"));
        }

        return text.ToString();
    }

    private HashSet<string> Reach(string from)
    {
        var reached = new HashSet<string>(StringComparer.Ordinal);
        var open = new Stack<string>([from]);
        while (open.TryPop(out string? folder))
        {
            foreach (var edge in Edges.Where(e => e.From == folder && reached.Add(e.To)))
            {
                open.Push(edge.To);
            }
        }

        return reached;
    }

    private static List<FolderEdge> Way(IReadOnlyList<FolderEdge> edges, string from, string to)
    {
        var came = new Dictionary<string, FolderEdge?>(StringComparer.Ordinal) { [from] = null };
        var open = new Queue<string>([from]);
        while (open.TryDequeue(out string? folder) && folder != to)
        {
            foreach (var edge in edges.Where(e => e.From == folder && came.TryAdd(e.To, e)))
            {
                open.Enqueue(edge.To);
            }
        }

        var way = new List<FolderEdge>();
        for (var edge = came[to]; edge is not null; edge = came[edge.From])
        {
            way.Insert(0, edge);
        }

        return way;
    }
}
