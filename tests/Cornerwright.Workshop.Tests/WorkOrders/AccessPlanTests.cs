using Cornerwright.Garage.Access;
using Cornerwright.Garage.Access.Starting;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Workshop.WorkOrders;

namespace Cornerwright.Workshop.Tests.WorkOrders;

public sealed class AccessPlanTests
{
    private const int Seed = 51125;

    [Fact]
    public void Nothing_is_undone_that_need_not_be_against_every_other_choice()
    {
        var random = new Random(Seed);
        int reached = 0;
        for (int round = 0; round < 400; round++)
        {
            var map = new AccessMap(RandomGraph.Make(random, random.Next(2, 6), acyclic: true));
            var nodes = map.Components.SelectMany(AccessMap.NodesOf).ToList();
            if (nodes.Count > 7)
            {
                continue;
            }

            var target = new Undoing(nodes[random.Next(nodes.Count)], random.Next(2) == 0 ? Undone.Off : Undone.Loose);
            var plan = AccessPlan.Reach(map, [target]).Value;
            reached++;

            // Brute force: of every way to leave each component alone, slacken it, take it off, or one after the other,
            // the least that can be carried out. Slackening counts one, taking off two.
            int ours = plan.Undo.Sum(u => u.State == Undone.Off ? 2 : 1);
            Assert.True(ours == Least(map, nodes, target),
                $"seed {Seed}, round {round}, {target}: {ours}, least {Least(map, nodes, target)}");
        }

        Assert.True(reached > 150, $"{reached}");
    }

    private static int Least(AccessMap map, List<AccessNode> nodes, Undoing target)
    {
        int best = int.MaxValue, all = 1 << (2 * nodes.Count);
        for (int code = 0; code < all; code++)
        {
            var items = new List<Undoing>();
            for (int i = 0; i < nodes.Count; i++)
            {
                int state = (code >> (2 * i)) & 3;
                items.AddRange((state & 1) != 0 ? [new Undoing(nodes[i], Undone.Loose)] : []);
                items.AddRange((state & 2) != 0 ? [new Undoing(nodes[i], Undone.Off)] : []);
            }

            int cost = items.Sum(u => u.State == Undone.Off ? 2 : 1);
            if (cost < best && Done(items, target) && CanBeDone(map, items))
            {
                best = cost;
            }
        }

        return best;
    }

    private static bool Done(IReadOnlyCollection<Undoing> done, Undoing wanted) =>
        done.Contains(wanted) || done.Contains(wanted with { State = Undone.Off });

    /// <summary>Takes whatever can be taken next, until nothing can; slackening what is off already cannot be.</summary>
    private static bool CanBeDone(AccessMap map, List<Undoing> items)
    {
        var left = items.ToList();
        var done = new HashSet<Undoing>();
        bool moved = true;
        while (moved && left.Count > 0)
        {
            moved = false;
            foreach (var item in left.OrderBy(x => x.State == Undone.Loose ? 0 : 1).ToList())
            {
                if (map.Before(item).All(b => Done(done, b.First)))
                {
                    done.Add(item);
                    left.Remove(item);
                    moved = true;
                }
            }
        }

        return left.Count == 0;
    }

    [Fact]
    public void Whatever_is_undone_has_all_it_needs_undone_before_it()
    {
        var random = new Random(Seed + 1);
        for (int round = 0; round < 2000; round++)
        {
            var map = new AccessMap(RandomGraph.Make(random, random.Next(2, 14), acyclic: true));
            var nodes = map.Components.SelectMany(AccessMap.NodesOf).ToList();
            var targets = nodes.Where(_ => random.Next(3) == 0)
                .Select(n => new Undoing(n, random.Next(2) == 0 ? Undone.Off : Undone.Loose)).ToList();
            var plan = AccessPlan.Reach(map, targets).Value;
            var done = new HashSet<Undoing>();
            foreach (var item in plan.Undo)
            {
                foreach (var (first, _) in map.Before(item))
                {
                    Assert.True(done.Contains(first) || done.Contains(first with { State = Undone.Off }),
                        $"seed {Seed + 1}, round {round}: {item} before {first}");
                }

                Assert.True(done.Add(item));
            }

            Assert.All(targets, t => Assert.True(done.Contains(t) || done.Contains(t with { State = Undone.Off })));
        }
    }

    [Fact]
    public void A_circle_is_found_and_named()
    {
        var random = new Random(Seed + 2);
        int circles = 0;
        for (int round = 0; round < 1000; round++)
        {
            var graph = RandomGraph.Make(random, 6, acyclic: false);
            var found = AccessPlan.Cycles(graph);
            bool expected = HasCircle(new AccessMap(graph));
            Assert.True(found.Count > 0 == expected, $"seed {Seed + 2}, round {round}");
            if (expected)
            {
                circles++;
                string[] names = found[0].Given.Replace(" (slack)", "", StringComparison.Ordinal).Split(" → ");
                Assert.Equal(names[0], names[^1]);
                Assert.True(names.Length >= 2);
                Assert.All(names, n => Assert.StartsWith("Component c", n, StringComparison.Ordinal));
            }
        }

        Assert.InRange(circles, 100, 999);
    }

    /// <summary>Another way: repeatedly take away what waits for nothing that is left.</summary>
    private static bool HasCircle(AccessMap map)
    {
        var left = map.Components.SelectMany(AccessMap.NodesOf)
            .SelectMany(n => new[] { new Undoing(n, Undone.Off), new Undoing(n, Undone.Loose) }).ToHashSet();
        int before;
        do
        {
            before = left.Count;
            left.RemoveWhere(x => map.Before(x).All(b => !left.Contains(b.First)));
        }
        while (left.Count < before);
        return left.Count > 0;
    }

    [Fact]
    public void The_starting_graphs_have_no_circles()
    {
        foreach (var kind in Enum.GetValues<StartingKind>())
        {
            foreach (var axle in new[] { AxlePlace.Front, AxlePlace.Rear })
            {
                Assert.Empty(AccessPlan.Cycles(StartingGraph.WithAxle(new AccessGraph(), kind, axle, driven: true)));
            }
        }

        Assert.Empty(AccessPlan.Cycles(DemoCar.Read().Access));
    }

    [Fact]
    public void A_lock_ring_slackened_early_and_taken_off_later_is_two_steps()
    {
        // Slack before the cover comes off, off after it: the nut has two places in the order.
        var graph = new AccessGraph
        {
            Components =
            [
                new Component { Id = "cover", Name = "Cover", Place = ComponentPlace.FrontMiddle,
                    BeforeOff = [new Prerequisite { Component = "nut", State = Undone.Loose }] },
                new Component { Id = "nut", Name = "Nut", Place = ComponentPlace.FrontMiddle,
                    BeforeOff = [new Prerequisite { Component = "cover" }] },
            ],
        };
        var plan = AccessPlan.Reach(new AccessMap(graph), [new Undoing(new AccessNode("nut", null), Undone.Off)]).Value;
        Assert.Equal(["nut Loose", "cover Off", "nut Off"], plan.Undo.Select(u => $"{u.Node.Component} {u.State}"));
    }
}
