using Cornerwright.Mechanics.Springs;

namespace Cornerwright.Mechanics.Tests.Springs;

public sealed class SpringNestTests
{
    [Fact]
    public void Deflection_agrees_with_bisection_on_random_nests()
    {
        const int seed = 4711;
        var chance = new Random(seed);
        for (int t = 0; t < 2000; t++)
        {
            var nest = Enumerable.Range(0, chance.Next(1, 6))
                .Select(i => new NestedSpring(1000 + (200_000 * chance.NextDouble()), i == 0 ? 0 : 0.1 * chance.NextDouble()))
                .OrderBy(_ => chance.Next())
                .ToArray();
            double force = 20_000 * chance.NextDouble(), low = 0, high = 100;
            for (int k = 0; k < 200; k++)
            {
                double middle = (low + high) / 2, sum = nest.Sum(s => s.Rate * Math.Max(0, middle - s.Gap));
                (low, high) = sum < force ? (middle, high) : (low, middle);
            }

            double found = SpringNest.DeflectionAt(nest, force)!.Value;
            Assert.True(Math.Abs(found - high) <= 1e-12 + (1e-10 * high), $"seed {seed}, nest {t}: {found} m against {high} m");
            Assert.Equal(force, SpringNest.ForceAt(nest, found), 1e-8);
        }
    }

    [Fact]
    public void A_nest_without_springs_has_no_deflection() => Assert.Null(SpringNest.DeflectionAt([], 10));

    [Fact]
    public void A_force_that_is_no_number_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SpringNest.DeflectionAt([new(1000, 0)], double.NaN));
}
