using Cornerwright.Mechanics.Loads;

namespace Cornerwright.Mechanics.Tests.Loads;

/// <summary>Whole steps, against trying them all.</summary>
public sealed class StepSearchTests
{
    private const int Seed = 4_101;

    [Fact]
    public void No_other_steps_are_better()
    {
        var random = new Random(Seed);
        for (int n = 0; n < 300; n++)
        {
            int knobs = random.Next(1, 4), results = knobs + random.Next(0, 3);
            double[,] rows = new double[results, knobs];
            double[] wanted = [.. Enumerable.Range(0, results).Select(_ => 6 * (random.NextDouble() - 0.5))];
            for (int i = 0; i < results; i++)
            {
                for (int j = 0; j < knobs; j++)
                {
                    rows[i, j] = (2 * random.NextDouble()) - 1;
                }
            }

            int[] least = [.. Enumerable.Range(0, knobs).Select(_ => -random.Next(0, 6))],
                most = [.. Enumerable.Range(0, knobs).Select(_ => random.Next(0, 6))];
            double price = random.Next(2) * random.NextDouble();
            var choice = StepSearch.Find(rows, wanted, least, most, price);
            Assert.True(choice.Proven);
            Assert.Equal(Cost(rows, wanted, choice.Steps, price), choice.Cost, 1e-9);
            double best = All(least, most).Min(k => Cost(rows, wanted, k, price));
            Assert.True(choice.Cost <= best + 1e-9, $"seed {Seed}, case {n}: {choice.Cost} found, {best} exists");
        }
    }

    [Fact]
    public void A_price_leaves_alone_what_gains_too_little()
    {
        // One step of the second knob would gain 0.04 of the squares: not worth 0.1.
        var choice = StepSearch.Find(new[,] { { 1.0, 0 }, { 0, 1.0 } }, [3, 0.52], [-9, -9], [9, 9], 0.1);
        Assert.Equal([3, 0], choice.Steps);
        Assert.Equal([3, 1], StepSearch.Find(new[,] { { 1.0, 0 }, { 0, 1.0 } }, [3, 0.52], [-9, -9], [9, 9], 0).Steps);
    }

    [Fact]
    public void Knobs_that_do_the_same_are_refused() =>
        Assert.Throws<ArgumentException>(() => StepSearch.Find(new[,] { { 1.0, 1.0 }, { 2.0, 2.0 } }, [1, 1], [-1, -1], [1, 1], 0));

    private static double Cost(double[,] rows, double[] wanted, IReadOnlyList<int> k, double price)
    {
        double cost = k.Count(x => x != 0) * price;
        for (int i = 0; i < wanted.Length; i++)
        {
            double miss = -wanted[i];
            for (int j = 0; j < k.Count; j++)
            {
                miss += rows[i, j] * k[j];
            }

            cost += miss * miss;
        }

        return cost;
    }

    private static IEnumerable<int[]> All(int[] least, int[] most, int j = 0)
    {
        if (j == least.Length)
        {
            yield return new int[j];
            yield break;
        }

        foreach (int[] rest in All(least, most, j + 1))
        {
            for (int k = least[j]; k <= most[j]; k++)
            {
                int[] copy = [.. rest];
                copy[j] = k;
                yield return copy;
            }
        }
    }
}
