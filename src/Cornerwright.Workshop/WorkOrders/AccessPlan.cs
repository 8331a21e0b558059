using Cornerwright.Garage.Access;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Workshop.WorkOrders;

/// <summary>The least that must be undone to reach some components, in an order that works.</summary>
/// <param name="Undo">Each after everything it needs. Fitting goes the other way round.</param>
/// <param name="Why">For each item but the targets: what needed it first, and the graph's reason.</param>
/// <remarks>
/// Every requirement is "and": what is needed is the closure of the targets under it, and nothing that works does with less;
/// what is off counts as slack. The order is topological; among what is free the same wheel is finished first, in the order of the graph.
/// Source: Kahn (1962), Topological sorting of large networks, CACM 5(11).
/// </remarks>
public sealed record AccessPlan(IReadOnlyList<Undoing> Undo, IReadOnlyDictionary<Undoing, (Undoing For, string Why)> Why)
{
    /// <returns>A plan; or the cycle that makes one impossible, named.</returns>
    public static Checked<AccessPlan> Reach(AccessMap map, IEnumerable<Undoing> targets)
    {
        ArgumentNullException.ThrowIfNull(map);
        ArgumentNullException.ThrowIfNull(targets);
        var wanted = targets.Distinct().ToList();
        var early = new HashSet<AccessNode>();
        while (true)
        {
            // Each round but the last takes one more node into the set, so there are no more rounds than nodes.
            var why = new Dictionary<Undoing, (Undoing, string)>();
            var needed = Closure(map, wanted, early, why);
            var before = needed.ToDictionary(x => x, x => Before(map, x, early).Select(b => b.First).Distinct().ToList());
            if (OffBeforeSlack(needed, before) is { } node)
            {
                early.Add(node);
                continue;
            }

            return InOrder(map, needed, before, why);
        }
    }

    private static Checked<AccessPlan> InOrder(
        AccessMap map, HashSet<Undoing> needed, Dictionary<Undoing, List<Undoing>> before, Dictionary<Undoing, (Undoing, string)> why)
    {
        var order = Sort(map, needed, before);
        return order.Count == needed.Count
            ? Checked<AccessPlan>.From(new AccessPlan(order, why))
            : Checked<AccessPlan>.Wrong(Cycle(map, needed, before, order));
    }

    /// <summary>Every circle in which components block each other, named; whether or not some order would meet it.</summary>
    public static IReadOnlyList<Problem> Cycles(AccessGraph graph)
    {
        var map = new AccessMap(graph);
        var all = map.Components.SelectMany(AccessMap.NodesOf)
            .SelectMany(n => new[] { new Undoing(n, Undone.Off), new Undoing(n, Undone.Loose) });

        // Every rule as it stands, without sparing any step.
        var why = new Dictionary<Undoing, (Undoing, string)>();
        var needed = Closure(map, all, [], why);
        return InOrder(map, needed, needed.ToDictionary(x => x, x => map.Before(x).Select(b => b.First).Distinct().ToList()), why).Problems;
    }

    private static HashSet<Undoing> Closure(AccessMap map, IEnumerable<Undoing> targets, HashSet<AccessNode> early,
        Dictionary<Undoing, (Undoing, string)> why)
    {
        var needed = new HashSet<Undoing>();
        var open = new Queue<Undoing>();
        foreach (var target in targets.Select(t => early.Contains(t.Node) ? t with { State = Undone.Off } : t))
        {
            if (needed.Add(target))
            {
                open.Enqueue(target);
            }
        }

        // Each item enters once, so this ends.
        while (open.TryDequeue(out var item))
        {
            foreach (var (first, reason) in Before(map, item, early))
            {
                if (needed.Add(first))
                {
                    why[first] = (item, reason);
                    open.Enqueue(first);
                }
            }
        }

        return needed;
    }

    /// <summary>
    /// What comes off anyway can come off before it is wanted slack, and slackening it is then no step of its own, unless it can only come
    /// off after what wants it slack. Null if there is no such component (any more).
    /// </summary>
    private static AccessNode? OffBeforeSlack(HashSet<Undoing> needed, Dictionary<Undoing, List<Undoing>> before)
    {
        var found = needed.Where(x => x.State == Undone.Loose)
            .Where(x => needed.Contains(x with { State = Undone.Off }) && !Reaches(before, x with { State = Undone.Off }, x)).ToList();

        // From the outside inward: once one is spared, what only it needed is not needed any more.
        foreach (var loose in found)
        {
            if (!found.Any(o => o != loose && (Reaches(before, o, loose) || Reaches(before, o, loose with { State = Undone.Off }))))
            {
                return loose.Node;
            }
        }

        return found.Count > 0 ? found[0].Node : null;
    }

    private static IEnumerable<(Undoing First, string Why)> Before(AccessMap map, Undoing item, HashSet<AccessNode> early) =>
        map.Before(item).Select(b => (early.Contains(b.First.Node) ? b.First with { State = Undone.Off } : b.First, b.Why));

    private static bool Reaches(Dictionary<Undoing, List<Undoing>> before, Undoing from, Undoing to)
    {
        var seen = new HashSet<Undoing> { from };
        var open = new Stack<Undoing>(seen);
        while (open.TryPop(out var item))
        {
            foreach (var next in before[item])
            {
                if (next == to)
                {
                    return true;
                }

                if (seen.Add(next))
                {
                    open.Push(next);
                }
            }
        }

        return false;
    }

    private static List<Undoing> Sort(AccessMap map, HashSet<Undoing> needed, Dictionary<Undoing, List<Undoing>> before)
    {
        var waiting = new HashSet<Undoing>(needed);
        var order = new List<Undoing>(needed.Count);
        while (waiting.Count > 0)
        {
            var last = order.Count > 0 ? order[^1] : default;
            var free = waiting.Where(x => before[x].All(b => !waiting.Contains(b) || b == x)).ToList();
            free.RemoveAll(x => before[x].Contains(x));
            if (free.Count == 0)
            {
                break;
            }

            var next = free.OrderBy(x => Rank(map, x, last, order.Count > 0)).ThenBy(x => map.OrderOf(x.Node.Component))
                .ThenBy(x => x.Node.Corner).ThenBy(x => x.State).First();
            order.Add(next);
            waiting.Remove(next);
        }

        return order;
    }

    /// <summary>First what stands before both wheels, then the wheel in hand, then the rest of its axle, then the rest.</summary>
    private static int Rank(AccessMap map, Undoing item, Undoing last, bool begun)
    {
        var axle = AccessMap.AxleOf(map[item.Node.Component].Place);
        if (!begun)
        {
            return axle is null ? 0 : item.Node.Corner is null ? 1 : 2;
        }

        var lastAxle = AccessMap.AxleOf(map[last.Node.Component].Place);
        return item.Node.Corner is null && (axle is null || axle == lastAxle) ? 0
            : last.Node.Corner is not null && item.Node.Corner == last.Node.Corner ? 1
            : axle == lastAxle ? 2 : 3;
    }

    private static Problem Cycle(AccessMap map, HashSet<Undoing> needed, Dictionary<Undoing, List<Undoing>> before, List<Undoing> done)
    {
        var stuck = needed.Except(done).ToHashSet();
        var path = new List<Undoing>();
        var at = stuck.OrderBy(x => map.OrderOf(x.Node.Component)).ThenBy(x => x.Node.Corner).ThenBy(x => x.State).First();

        // Everything that is stuck waits for something stuck, so walking on must come round.
        while (!path.Contains(at))
        {
            path.Add(at);
            at = before[at].First(stuck.Contains);
        }

        path.RemoveRange(0, path.IndexOf(at));
        path.Add(at);
        string circle = string.Join(" → ", path.Select(x => map[x.Node.Component].Name + (x.State == Undone.Loose ? " (slack)" : "")));
        return new Problem("how it comes apart", circle, "no component that waits for itself",
            "Each of these waits for the next to be undone: take out one of the blockers.");
    }
}
