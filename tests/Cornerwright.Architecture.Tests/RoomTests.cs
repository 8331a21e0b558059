using System.Reflection;
using System.Xml.Linq;

namespace Cornerwright.Architecture.Tests;

/// <summary>The rooms stand in one line, and each uses only those before it.</summary>
public class RoomTests
{
    private static readonly string[] Line =
        ["Cornerwright.Mechanics", "Cornerwright.Garage", "Cornerwright.Workshop", "Cornerwright.Storage", "Cornerwright.Web",
            "Cornerwright.Cli"];

    /// <summary>The command line's assembly is named as it is typed.</summary>
    private static Assembly Load(string room) => Assembly.Load(room == "Cornerwright.Cli" ? "cornerwright" : room);

    public static TheoryData<string> Rooms => [.. Line];

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_room_is_compiled_against_earlier_rooms_only(string room)
    {
        var used = Load(room).GetReferencedAssemblies().Select(a => a.Name!).Where(IsOurs);
        Assert.Empty(used.Except(Before(room), StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_room_asks_for_earlier_rooms_only(string room)
    {
        // The compiler drops references that no line uses; the project file shows the intent.
        var project = XDocument.Load(Path.Combine(Repository.Root, "src", room, room + ".csproj"));
        var asked = project.Descendants("ProjectReference")
            .Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value.Replace('\\', '/')));
        Assert.Empty(asked.Except(Before(room), StringComparer.Ordinal));
    }

    [Fact]
    public void Mechanics_stands_on_the_base_library_alone()
    {
        var foreign = Load("Cornerwright.Mechanics").GetReferencedAssemblies().Select(a => a.Name!)
            .Where(n => !n.StartsWith("System.", StringComparison.Ordinal));
        Assert.Empty(foreign);
        var project = XDocument.Load(Path.Combine(Repository.Root, "src", "Cornerwright.Mechanics", "Cornerwright.Mechanics.csproj"));
        Assert.DoesNotContain(project.Descendants(), e =>
            e.Name.LocalName is "PackageReference" or "ProjectReference" or "FrameworkReference");
    }

    [Theory]
    [InlineData("Cornerwright.Garage")]
    [InlineData("Cornerwright.Workshop")]
    public void Nouns_and_verbs_know_no_database_and_no_page(string room)
    {
        string[] edges = ["Microsoft.EntityFrameworkCore", "Microsoft.Data", "Microsoft.AspNetCore", "MudBlazor", "Spectre"];
        var used = Load(room).GetReferencedAssemblies().Select(a => a.Name!);
        Assert.DoesNotContain(used, n => edges.Any(e => n.StartsWith(e, StringComparison.Ordinal)));
    }

    [Fact]
    public void Every_project_of_the_tree_is_in_the_solution_and_so_in_the_one_test_command()
    {
        var solution = XDocument.Load(Path.Combine(Repository.Root, "Cornerwright.slnx"));
        var listed = solution.Descendants("Project").Select(p => p.Attribute("Path")!.Value.Replace('\\', '/'))
            .Order(StringComparer.Ordinal);
        Assert.Equal(Repository.Projects().Select(Repository.Relative).Order(StringComparer.Ordinal), listed);
    }

    [Fact]
    public void Every_room_has_its_test_project()
    {
        var tests = Repository.Projects().Select(p => Path.GetFileNameWithoutExtension(p)!).ToHashSet(StringComparer.Ordinal);
        Assert.All(Line, room => Assert.Contains(room + ".Tests", tests));
    }

    private static bool IsOurs(string name) =>
        name.StartsWith("Cornerwright", StringComparison.OrdinalIgnoreCase);

    private static IEnumerable<string> Before(string room) => Line.TakeWhile(r => r != room);
}
