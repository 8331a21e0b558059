using System.Reflection;
using Xunit.Abstractions;

namespace Cornerwright.Architecture.Tests;

/// <summary>
/// The folders inside a room stand in an order, as the rooms do: none uses, by whatever way round, one that uses it. To see the
/// folders of every room and who uses whom:
/// <c>dotnet test tests/Cornerwright.Architecture.Tests --filter FolderTests --logger "console;verbosity=detailed"</c>.
/// </summary>
public sealed class FolderTests(ITestOutputHelper output)
{
    public static TheoryData<string> Rooms =>
    [
        "Cornerwright.Mechanics", "Cornerwright.Garage", "Cornerwright.Workshop", "Cornerwright.Storage", "Cornerwright.Web",
        "Cornerwright.Cli",
    ];

    [Theory]
    [MemberData(nameof(Rooms))]
    public void The_folders_of_a_room_form_no_circle(string room)
    {
        using var compiled = Open(room);
        var graph = FolderGraph.Of(compiled, room);
        output.WriteLine(string.Join('\n', graph.Edges));
        var circles = graph.Circles();
        Assert.True(circles.Count == 0, FolderGraph.Describe(circles));
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_type_stands_in_the_folder_that_its_namespace_names(string room)
    {
        using var compiled = Open(room);
        var astray = new List<string>();
        int seen = 0;
        foreach (var type in compiled.Tables.TypeDefinitions.Where(t => compiled.Tables.GetTypeDefinition(t).GetDeclaringType().IsNil))
        {
            if (compiled.FileOf(type) is { } file && FolderGraph.FolderOf(compiled, type, room) is { } folder)
            {
                seen++;
                string expected = folder == FolderGraph.OwnFiles ? $"src/{room}" : $"src/{room}/{folder}";
                if (Path.GetDirectoryName(file)!.Replace('\\', '/') != expected)
                {
                    astray.Add($"{compiled.FullName(type)} stands in {file}");
                }
            }
        }

        Assert.True(seen > 10, $"only {seen} types of {room} have a file: the symbols are not read");
        Assert.Empty(astray);
    }

    [Fact]
    public void A_circle_is_told_with_a_shortest_way_round()
    {
        var graph = FolderGraph.From(
        [
            Edge("Cars", "Parts"), Edge("Parts", "Readings"), Edge("Readings", "Cars"), Edge("Readings", "Parts"), Edge("Cars", "Units"),
            Edge("Log", "Cars"),
        ]);
        var circle = Assert.Single(graph.Circles());
        Assert.Equal(["Cars>Parts", "Parts>Readings", "Readings>Cars", "Readings>Parts"], circle.Select(e => $"{e.From}>{e.To}"));
        Assert.Equal(["Parts>Readings", "Readings>Parts"],
            FolderGraph.Shortest(circle).Select(e => $"{e.From}>{e.To}").Order(StringComparer.Ordinal));
        Assert.Contains("Parts -> Readings  (1, e.g. Parts/A.cs:1 uses Readings/B.cs)", FolderGraph.Describe(graph.Circles()));
    }

    [Fact]
    public void A_folder_and_its_subfolder_may_not_use_each_other() =>
        Assert.Single(FolderGraph.From([Edge("Motion", "Motion/Hardpoints"), Edge("Motion/Hardpoints", "Motion")]).Circles());

    // The reader bites: uses that stand in a field, a body, a constant and a nameof are seen.
    [Theory]
    [InlineData("Clearance", "Geometry", "Cornerwright.Mechanics")]
    [InlineData("Files", "Problems", "Cornerwright.Garage")]
    public void Uses_that_are_there_are_seen(string from, string to, string room)
    {
        using var compiled = Open(room);
        Assert.Contains(FolderGraph.Of(compiled, room).Edges, e =>
            e.From == from && e.To == to && e.Uses > 0 && e.User.StartsWith($"src/{room}/{from}/", StringComparison.Ordinal));
    }

    private static FolderEdge Edge(string from, string to) => new(from, to, 1, from + "/A.cs:1", to + "/B.cs");

    private static CompiledRoom Open(string room) => new(Assembly.Load(room == "Cornerwright.Cli" ? "cornerwright" : room).Location);
}
