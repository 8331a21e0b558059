using Cornerwright.Mechanics.Loads;
using MathNet.Numerics.LinearAlgebra.Double;

namespace Cornerwright.Mechanics.Tests.Loads;

/// <summary>The collars found, against least squares by MathNet on the straightened car and against trying every turn near them.</summary>
public sealed class CollarSearchTests
{
    private const int Seed = 733;
    private const double Band = 0.001, CrossBand = 0.005;

    // Straight cars with four heights and a cross weight that go together: the exact turns are those that MathNet's QR finds
    // from columns made by turning one collar at a time.
    [Fact]
    public void Exact_turns_of_a_thousand_cars_are_the_least_squares_of_the_straightened_car()
    {
        var random = new Random(Seed);
        double worst = 0;
        for (int n = 0; n < 1000; n++)
        {
            var (drawn, targets, knobs) = Draw(random, 0);
            var choice = CollarSearch.Find(drawn.Car, drawn.Corners, targets, knobs);
            Assert.True(choice.Why == BalanceStop.Converged, $"seed {Seed}, car {n}: {choice.Why}");
            var columns = new DenseMatrix(5, 4);
            double[] at = Results(drawn, [0, 0, 0, 0]);
            for (int j = 0; j < 4; j++)
            {
                double[] seats = new double[4];
                seats[j] = 1e-3;
                double[] moved = Results(drawn, seats);
                for (int r = 0; r < 5; r++)
                {
                    columns[r, j] = (moved[r] - at[r]) / (r < 4 ? Band : CrossBand);
                }
            }

            double[] wanted = [
                .. Enumerable.Range(0, 5).Select(
                    r => ((r < 4 ? targets.Travel[r]!.Value : targets.CrossWeight!.Value) - at[r]) / (r < 4 ? Band : CrossBand))];
            var millimetres = columns.QR().Solve(DenseVector.OfArray(wanted));
            for (int j = 0; j < 4; j++)
            {
                worst = Math.Max(worst, Math.Abs(millimetres[j] - (1000 * choice.Exact[j] * knobs[j].Step)));
            }
        }

        // The total's share of the cross weight bends a little, and the slight pull toward still collars takes some micrometres.
        Assert.True(worst < 0.02, $"seed {Seed}: {worst} mm of perch");
    }

    // Nonlinear cars: no turns within two quarters of the answer are better, nor is plain rounding.
    [Fact]
    public void No_turns_near_the_answer_are_better_on_hardening_cars()
    {
        var random = new Random(Seed + 1);
        for (int n = 0; n < 25; n++)
        {
            var (drawn, targets, knobs) = Draw(random, 4e6);
            var choice = CollarSearch.Find(drawn.Car, drawn.Corners, targets, knobs, 0);
            double naive = Cost(drawn, targets, knobs, [.. choice.Exact.Select(x => (int)Math.Round(x))]);
            Assert.True(choice.Cost <= naive + 1e-6, $"seed {Seed + 1}, car {n}: rounding gives {naive}, the search {choice.Cost}");
            for (int code = 0; code < 625; code++)
            {
                int[] k = [.. choice.Steps];
                for (int j = 0, rest = code; j < 4; j++, rest /= 5)
                {
                    k[j] += (rest % 5) - 2;
                }

                double cost = Cost(drawn, targets, knobs, k);
                Assert.True(
                    choice.Cost <= cost + 1e-6,
                    $"seed {Seed + 1}, car {n}: {string.Join(' ', k)} costs {cost}, "
                    + $"found {string.Join(' ', choice.Steps)} at {choice.Cost}");
            }
        }
    }

    // After rounding every load is within what a quarter turn of each collar can do to it, and every height likewise.
    [Fact]
    public void Rounding_costs_no_more_than_a_quarter_turn_can_do()
    {
        var random = new Random(Seed + 2);
        for (int n = 0; n < 200; n++)
        {
            var (drawn, targets, knobs) = Draw(random, 2e6);
            var choice = CollarSearch.Find(drawn.Car, drawn.Corners, targets, knobs, 0);
            Assert.NotNull(choice.ExactStance);
            double[] seats = [.. choice.Steps.Select((k, i) => k * knobs[i].Step)];
            var s = CarBalance.Sensitivity(drawn.Car, drawn.Corners, seats, choice.Stance)!;
            for (int i = 0; i < 4; i++)
            {
                double load = Enumerable.Range(0, 4).Sum(j => Math.Abs(s.Load[i, j]) * knobs[j].Step),
                    travel = Enumerable.Range(0, 4).Sum(j => Math.Abs(s.Travel[i, j]) * knobs[j].Step);
                Assert.True(Math.Abs(choice.Stance.Load[i] - choice.ExactStance!.Load[i]) <= load, $"seed {Seed + 2}, car {n}, wheel {i}");
                Assert.True(
                    Math.Abs(choice.Stance.Travel[i] - choice.ExactStance.Travel[i]) <= travel, $"seed {Seed + 2}, car {n}, wheel {i}");
            }
        }
    }

    [Fact]
    public void A_collar_stays_on_its_thread()
    {
        var random = new Random(Seed + 3);
        var (drawn, targets, knobs) = Draw(random, 0);
        knobs[0] = knobs[0] with { Least = -1, Most = 1 };
        knobs[3] = CollarKnob.Fixed;
        var choice = CollarSearch.Find(drawn.Car, drawn.Corners, targets with { Travel = [-0.02, -0.02, -0.02, -0.02] }, knobs);
        Assert.Equal(BalanceStop.Converged, choice.Why);
        Assert.Equal(1, choice.Steps[0]);
        Assert.Equal(0, choice.Steps[3]);
    }

    [Fact]
    public void Nothing_wanted_moves_nothing()
    {
        var (drawn, targets, knobs) = Draw(new Random(Seed + 4), 0);
        var choice =
            CollarSearch.Find(drawn.Car, drawn.Corners, targets with { Travel = [null, null, null, null], CrossWeight = null }, knobs);
        Assert.Equal([0, 0, 0, 0], choice.Steps);
    }

    // A car that stands still at first, whose targets were made by turning its collars to places of their own.
    private static (InventedCar Drawn, CollarTargets Targets, CollarKnob[] Knobs) Draw(Random random, double cube)
    {
        var drawn = InventedCar.Draw(random, cube);
        CollarKnob[] knobs =
            [.. Enumerable.Range(0, 4).Select(_ => new CollarKnob((0.25 + (0.5 * random.NextDouble())) / 1000, -200, 200))];
        double[] wanted = Results(drawn, drawn.Seats);
        return (drawn, new CollarTargets([wanted[0], wanted[1], wanted[2], wanted[3]], Band, wanted[4], CrossBand), knobs);
    }

    private static double[] Results(InventedCar drawn, double[] seats)
    {
        var stance = CarBalance.Solve(drawn.Car, drawn.Corners, seats);
        Assert.Equal(BalanceStop.Converged, stance.Why);
        return [.. stance.Travel, stance.CrossWeight];
    }

    // As the search counts: squares of misses, and a fiftieth of a band for each millimetre of seat.
    private static double Cost(InventedCar drawn, CollarTargets targets, CollarKnob[] knobs, int[] k)
    {
        double[] seats = [.. k.Select((x, i) => x * knobs[i].Step)], at = Results(drawn, seats);
        double cost = seats.Sum(s => 20 * s * 20 * s) + (Math.Pow((targets.CrossWeight!.Value - at[4]) / CrossBand, 2));
        for (int i = 0; i < 4; i++)
        {
            cost += Math.Pow((targets.Travel[i]!.Value - at[i]) / Band, 2);
        }

        return cost;
    }
}
