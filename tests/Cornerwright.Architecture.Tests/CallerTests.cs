using System.Reflection;
using System.Reflection.Metadata;

namespace Cornerwright.Architecture.Tests;

/// <summary>What only its own tests call is not kept: a public type of these rooms has a user among the sources.</summary>
public sealed class CallerTests
{
    private static readonly string[] All =
    [
        "Cornerwright.Mechanics", "Cornerwright.Garage", "Cornerwright.Workshop", "Cornerwright.Storage", "Cornerwright.Web",
        "Cornerwright.Cli",
    ];

    /// <summary>Those that nothing calls yet, each checked against published numbers or independent rows.</summary>
    private static readonly Dictionary<string, string> Waiting = new(StringComparer.Ordinal)
    {
        ["Cornerwright.Mechanics.Loads.QuarterCar"] = "natural frequencies of body and wheel on the tyre: no page tells them yet",
        ["Cornerwright.Mechanics.Motion.Hardpoints.Steering.SteeringPair"] = "Ackermann of both wheels on one rack: no page tells it yet",
        ["Cornerwright.Mechanics.Motion.Hardpoints.Steering.SteeringTurn"] = "turning circles: no page tells them yet",
        ["Cornerwright.Mechanics.Springs.WireChoice"] = "the textbook examples that hold WireSpring to print go through it",
        ["Cornerwright.Mechanics.Springs.Collar"] = "the same for what turns of a collar do",
        ["Cornerwright.Mechanics.Loads.StrutTop"] = "the second way for a slid top mount, against which the motion is tested",
        ["Cornerwright.Mechanics.Bolts.ThreadEngagement"] = "lengths by hand; the judge takes them reading by reading, each with its doubt",
    };

    [Theory]
    [InlineData("Cornerwright.Mechanics")]
    [InlineData("Cornerwright.Workshop")]
    public void A_public_type_has_a_caller_among_the_sources(string room)
    {
        var without = Without(room);
        var allowed = Waiting.Keys.Where(k => k.StartsWith(room + ".", StringComparison.Ordinal)).ToList();
        Assert.True(without.Order(StringComparer.Ordinal).SequenceEqual(allowed.Order(StringComparer.Ordinal)),
            $"without a caller: {string.Join(", ", without.Except(allowed))}; "
            + $"waiting, yet called: {string.Join(", ", allowed.Except(without))}");
    }

    private static List<string> Without(string room)
    {
        var used = new HashSet<string>(StringComparer.Ordinal);
        foreach (string other in All.Where(r => r != room))
        {
            using var compiled = Open(other);
            var tables = compiled.Tables;
            used.UnionWith(tables.TypeReferences.Select(tables.GetTypeReference)
                .Select(t => tables.GetString(t.Namespace) + "." + tables.GetString(t.Name)));
        }

        using var own = Open(room);
        foreach (var use in TypeUses.Of(own).Where(u => own.Outermost(u.From) != own.Outermost(u.To)))
        {
            used.Add(own.FullName(own.Outermost(use.To)));
        }

        foreach (var use in WrittenOnly.Of(own, room).Where(u => u.Place != own.FileOf(u.To)))
        {
            used.Add(own.FullName(use.To));
        }

        used.UnionWith(Constants(own, room));
        var types = own.Tables.TypeDefinitions.Where(t => IsPublic(own.Tables.GetTypeDefinition(t))).Select(own.FullName).ToList();
        Assert.True(types.Count > 50, $"only {types.Count} public types of {room} are seen");
        Assert.Contains(types, used.Contains);
        return [.. types.Where(t => !used.Contains(t))];
    }

    // A constant is copied to whoever names it, and leaves no trace in another room: looked for as "Owner." in what is written.
    private static IEnumerable<string> Constants(CompiledRoom own, string room)
    {
        var owners = own.Tables.TypeDefinitions.Where(t => own.Tables.GetTypeDefinition(t).GetFields()
            .Any(f => own.Tables.GetFieldDefinition(f).Attributes.HasFlag(FieldAttributes.Literal))).ToList();
        string[] lines = [.. Repository.Sources(".cs", ".razor").Where(f => Repository.Relative(f) is var at
            && at.StartsWith("src/", StringComparison.Ordinal) && !at.StartsWith($"src/{room}/", StringComparison.Ordinal))
            .SelectMany(File.ReadLines).Where(l => !l.TrimStart().StartsWith("//", StringComparison.Ordinal))];
        return owners.Where(t => Array.Exists(lines, l =>
            l.Contains($" {own.Tables.GetString(own.Tables.GetTypeDefinition(t).Name)}.", StringComparison.Ordinal))).Select(own.FullName);
    }

    private static bool IsPublic(TypeDefinition type) => (type.Attributes & TypeAttributes.VisibilityMask) == TypeAttributes.Public;

    private static CompiledRoom Open(string room) => new(Assembly.Load(room == "Cornerwright.Cli" ? "cornerwright" : room).Location);
}
