namespace Cornerwright.Web.Tests.Benches;

/// <summary>All orders in which what several do, each in its own order, can happen.</summary>
internal static class Orders
{
    public static IEnumerable<IReadOnlyList<T>> Of<T>(params IReadOnlyList<T>[] each)
    {
        if (each.All(steps => steps.Count == 0))
        {
            yield return [];
            yield break;
        }

        for (int i = 0; i < each.Length; i++)
        {
            if (each[i].Count == 0)
            {
                continue;
            }

            int who = i;
            foreach (var rest in Of([.. each.Select((steps, j) => j == who ? steps.Skip(1).ToList() : steps)]))
            {
                yield return [each[i][0], .. rest];
            }
        }
    }
}
