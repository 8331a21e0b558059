using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Doubt;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Judging.Checks;

namespace Cornerwright.Workshop.Ranking;

/// <summary>A wheel with tyre and spacer, and what can be said of it without springs.</summary>
/// <param name="Stiffness">Of the tyre, N/m, by side; NaN where no pressure or size is known: then it is left out of the ride frequency.</param>
/// <param name="Unknown">Wheel checks that lack a reading.</param>
/// <param name="Bound">The least single chance of the checks that the wheels decide alone: no build on these wheels is surer.</param>
/// <param name="Broken">The checks that wheel, tyre and spacer break by themselves.</param>
internal sealed record WheelSet(WheelChoice Choice, decimal Cost, (double Left, double Right) Stiffness, int Unknown, double Bound, IReadOnlyList<BrokenCheck> Broken)
{
    /// <summary>Compiles a wheel set on the starting build and asks every check that the wheels decide alone.</summary>
    public static WheelSet Of(SearchSpace space, int index)
    {
        var choice = space.WheelSetOf(index);
        var build = space.WithWheels(choice);
        var broken = new List<BrokenCheck>();
        int unknown = 0;
        double bound = 1;
        CornerPlan left = CornerPlan.Compile(space.Car, build, space.Axle.Left()), right = CornerPlan.Compile(space.Car, build, space.Axle.Right());
        foreach (var plan in new[] { left, right })
        {
            var checks = WheelChecks.For(plan).ToList();
            var numbers = new CornerNumbers(plan);
            foreach (var check in checks)
            {
                double value = check.CanSpeak ? check.Value(numbers) : double.NaN, margin = Math.Min(value - check.Low, check.High - value);
                unknown += double.IsFinite(value) ? 0 : 1;
                if (double.IsFinite(value) && margin < 0)
                {
                    broken.Add(new(check.Id, check.Title, plan.Place.Words(), plan.Place, new Measure(-margin, check.Unit, check.Decimals)));
                }
                else if (double.IsFinite(value))
                {
                    bound = Math.Min(bound, ChanceOf(check, value, numbers) + MoveError);
                }
            }
        }

        double limit = Say.Limit(space.Limits.TrackChange), track = limit - Math.Abs(WholeCarChecks.TrackChange(left, right));
        if (track < 0)
        {
            broken.Add(new("track-change", "Track", $"{space.Axle.Words()} axle", null, new Measure(-track, Units.Millimetre, 1)));
        }

        return new WheelSet(choice, space.CostOf(choice), (StiffnessAt(left), StiffnessAt(right)), unknown, bound, broken);
    }

    /// <summary>The judge may move an input one way only where this moves it both ways: their chances may differ by less than this.</summary>
    private const double MoveError = 5e-4;

    private static double ChanceOf(CornerCheck check, double value, CornerNumbers numbers)
    {
        var inputs = numbers.Plan.Inputs.Inputs;
        double[] contributions = new double[inputs.Count];
        bool[] uniform = new bool[inputs.Count];
        for (int i = 0; i < inputs.Count; i++)
        {
            double home = numbers.X[i], sigma = inputs[i].Sigma;
            uniform[i] = inputs[i].Spread == ToleranceKind.HalfRange;
            if (sigma > 0)
            {
                numbers.X[i] = home + sigma;
                double up = check.Value(numbers);
                numbers.X[i] = home - sigma;
                contributions[i] = (up - check.Value(numbers)) / 2;
                numbers.X[i] = home;
            }
        }

        return LinearDoubt.Of(contributions, uniform).Within(value, check.Low, check.High);
    }

    private static double StiffnessAt(CornerPlan plan) =>
        plan.Build.At(plan.Place).Pressure is { } pressure && plan.Parts.TyreSize is { } tyre ? tyre.VerticalStiffness(pressure.Si) : double.NaN;
}
