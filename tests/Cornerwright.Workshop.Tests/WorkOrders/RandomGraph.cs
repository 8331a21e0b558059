using Cornerwright.Garage.Access;

namespace Cornerwright.Workshop.Tests.WorkOrders;

/// <summary>Small invented access graphs: some components at each front wheel, some in the middle.</summary>
internal static class RandomGraph
{
    /// <param name="acyclic">Blockers only among components that stand earlier in the list.</param>
    public static AccessGraph Make(Random random, int count, bool acyclic)
    {
        var ids = Enumerable.Range(0, count).Select(i => $"c{i}").ToList();
        var components = new List<Component>();
        for (int i = 0; i < count; i++)
        {
            // Taking off needs the access that slackening needs, and perhaps more.
            var loose = Some(random, ids, i, acyclic);
            components.Add(new Component
            {
                Id = ids[i], Name = "Component " + ids[i],
                Place = random.Next(3) == 0 ? ComponentPlace.FrontMiddle : ComponentPlace.FrontSides,
                BeforeOff = [.. loose, .. Some(random, ids, i, acyclic)],
                BeforeLoose = loose,

                // What stands on it must be off before it: it may only carry earlier ones to stay free of circles.
                Supports = random.Next(3) == 0 && i > 0 ? [new Carried { Component = ids[random.Next(acyclic ? i : count)] }] : [],
                Fasteners = [new Fastener { Id = "f", Name = "Bolt of " + ids[i] }],
            });
        }

        return new AccessGraph { Components = components };
    }

    private static IReadOnlyList<Prerequisite> Some(Random random, List<string> ids, int self, bool acyclic)
    {
        int most = acyclic ? self : ids.Count;
        return most == 0 ? [] : [.. Enumerable.Range(0, random.Next(3)).Select(_ => new Prerequisite
        {
            Component = ids[random.Next(most)],
            State = random.Next(2) == 0 ? Undone.Off : Undone.Loose,
        })];
    }
}
