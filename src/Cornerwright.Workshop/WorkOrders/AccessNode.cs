using Cornerwright.Garage.Access;
using Cornerwright.Garage.Chassis;

namespace Cornerwright.Workshop.WorkOrders;

/// <summary>A component at one wheel, or the one of its axle or car.</summary>
/// <param name="Corner">Null for what is there once.</param>
public readonly record struct AccessNode(string Component, CornerPlace? Corner);

/// <summary>A component to be undone so far.</summary>
public readonly record struct Undoing(AccessNode Node, Undone State);

/// <summary>A car's access graph with every component at every place where it is.</summary>
public sealed class AccessMap
{
    private readonly Dictionary<string, Component> _components = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<string>> _standsOn = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _order = new(StringComparer.Ordinal);

    public AccessMap(AccessGraph graph)
    {
        ArgumentNullException.ThrowIfNull(graph);
        foreach (var component in graph.Components)
        {
            _order.TryAdd(component.Id, _order.Count);
            _components.TryAdd(component.Id, component);
            foreach (string carried in component.Supports.Select(s => s.Component).Where(id => id.Length > 0))
            {
                (_standsOn.TryGetValue(component.Id, out var list) ? list : _standsOn[component.Id] = []).Add(carried);
            }
        }
    }

    public IEnumerable<Component> Components => _components.Values;

    public Component this[string id] => _components[id];

    /// <summary>Place of a component in the graph's own list: what is equal otherwise keeps it.</summary>
    public int OrderOf(string id) => _order[id];

    public static IReadOnlyList<CornerPlace?> CornersOf(ComponentPlace place) => place switch
    {
        ComponentPlace.FrontSides => [CornerPlace.FrontLeft, CornerPlace.FrontRight],
        ComponentPlace.RearSides => [CornerPlace.RearLeft, CornerPlace.RearRight],
        _ => [null],
    };

    /// <summary>Null for what belongs to the whole car.</summary>
    public static AxlePlace? AxleOf(ComponentPlace place) => place switch
    {
        ComponentPlace.FrontSides or ComponentPlace.FrontMiddle => AxlePlace.Front,
        ComponentPlace.RearSides or ComponentPlace.RearMiddle => AxlePlace.Rear,
        _ => null,
    };

    public static IEnumerable<AccessNode> NodesOf(Component component) =>
        CornersOf(component.Place).Select(c => new AccessNode(component.Id, c));

    /// <summary>What must be undone before this can be: its own blockers, and for what comes off also all that stands on it.</summary>
    public IEnumerable<(Undoing First, string Why)> Before(Undoing item)
    {
        var component = _components[item.Node.Component];
        var blockers = item.State == Undone.Off ? component.BeforeOff : component.BeforeLoose;
        foreach (var blocker in blockers.Where(b => _components.ContainsKey(b.Component)))
        {
            foreach (var node in Beside(item.Node, _components[blocker.Component]))
            {
                yield return (new Undoing(node, blocker.State), blocker.Why);
            }
        }

        if (item.State != Undone.Off || !_standsOn.TryGetValue(component.Id, out var carried))
        {
            yield break;
        }

        foreach (string id in carried.Where(_components.ContainsKey))
        {
            foreach (var node in Beside(item.Node, _components[id]))
            {
                yield return (new Undoing(node, Undone.Off), "it stands on it");
            }
        }
    }

    /// <summary>The same wheel's where both are there at each wheel of one axle; else every one of them.</summary>
    private static IEnumerable<AccessNode> Beside(AccessNode from, Component to) =>
        from.Corner is { } corner && CornersOf(to.Place).Contains(corner) ? [new AccessNode(to.Id, corner)] : NodesOf(to);
}
