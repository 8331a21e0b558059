using Cornerwright.Garage.Access;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Chassis;

namespace Cornerwright.Workshop.WorkOrders;

/// <summary>What a change of build asks of the access graph.</summary>
/// <param name="Fit">Everything that is fitted or set anew.</param>
/// <param name="Undo">What of it must be undone first: an old damper that goes for good keeps what goes with it.</param>
/// <param name="Gaps">Changes for which the graph has no component, in words.</param>
internal sealed record OrderTargets(IReadOnlyList<Undoing> Fit, IReadOnlyList<Undoing> Undo, IReadOnlyList<string> Gaps)
{
    public static OrderTargets Of(AccessMap map, IReadOnlyList<BuildChange> changes)
    {
        var items = new List<Undoing>();
        var gaps = new List<string>();
        foreach (var change in changes.Where(c => c.Role != BuildRole.None))
        {
            var nodes = NodesFor(map, change.Role, change.Corner).ToList();
            items.AddRange(nodes.Select(n => new Undoing(n, change.State)));
            if (nodes.Count == 0)
            {
                gaps.Add($"The graph does not say how the {RoleWords(change.Role)} at the "
                    + $"{change.Corner.Axle().Words()} comes off: add a component that is it, or plan that by hand.");
            }
        }

        // Rubber that is bonded to its bushing would stay twisted at another height.
        foreach (var corner in changes.Where(c => c.MovesHeight).Select(c => c.Corner).Distinct())
        {
            items.AddRange(map.Components.Where(c => c.Fasteners.Any(f => f.BondedRubber)).SelectMany(c => NodesAt(map, c, corner))
                .Select(n => new Undoing(n, Undone.Loose)));
        }

        var stays = new HashSet<Undoing>();
        foreach (var corner in changes.Where(c => c.Role == BuildRole.Damper && c.Part).Select(c => c.Corner))
        {
            foreach (var onDamper in map.Components.Where(c => c.OnBench && c.Role is not (BuildRole.None or BuildRole.Damper)))
            {
                var nodes = NodesAt(map, onDamper, corner).ToList();
                if (changes.Any(c => c.Corner == corner && c.Role == onDamper.Role
                    && c.Slot == CornerSlot.Of(onDamper.Role)))
                {
                    // New for old: the old one stays on the old damper.
                    stays.UnionWith(nodes.SelectMany(n => new[] { new Undoing(n, Undone.Off), new Undoing(n, Undone.Loose) }));
                }
                else
                {
                    // The same part moves over to the new damper.
                    items.AddRange(nodes.Select(n => new Undoing(n, Undone.Off)));
                }
            }
        }

        List<Undoing> fit = [.. items.Distinct()];
        return new OrderTargets(fit, [.. fit.Where(i => !stays.Contains(i))], [.. gaps.Distinct()]);
    }

    public static IEnumerable<AccessNode> NodesFor(AccessMap map, BuildRole role, CornerPlace corner) =>
        map.Components.Where(c => c.Role == role).SelectMany(c => NodesAt(map, c, corner));

    private static string RoleWords(BuildRole role) => role == BuildRole.Stack ? "spring" : CornerSlot.Of(role)?.Words ?? "";

    private static IEnumerable<AccessNode> NodesAt(AccessMap map, Component component, CornerPlace corner) => component.Place switch
    {
        ComponentPlace.WholeCar => [],
        _ when AccessMap.AxleOf(component.Place) != corner.Axle() => [],
        ComponentPlace.FrontMiddle or ComponentPlace.RearMiddle => AccessMap.NodesOf(component),
        _ => [new AccessNode(component.Id, corner)],
    };
}
