using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Tests.Doubt;

namespace Cornerwright.Workshop.Tests.Judging;

/// <summary>The corner stands where its forces balance, and its forces are the slope of its energy.</summary>
public sealed class EquilibriumTests
{
    private const double Gravity = 9.80665;
    private const int Seed = 99;

    [Fact]
    public void At_ride_the_contact_load_is_the_corner_load()
    {
        int solved = 0;
        foreach (var numbers in RandomRows(rows: 40))
        {
            for (int load = 0; load < numbers.Plan.Loads.Count; load++)
            {
                double ride = numbers.N.Ride[load];
                if (double.IsNaN(ride))
                {
                    continue;
                }

                // The travel is found to 1e-8 m, at rates up to that of metal on metal.
                double expected = numbers.N.X[numbers.Plan.Loads[load].Load] * Gravity, got = numbers.N.ContactLoad(ride, out double slope);
                Assert.True(Math.Abs(got - expected) <= 1e-6 * expected + (2e-8 * Math.Abs(slope)),
                    $"{numbers.Plan.Build.Id} {numbers.Plan.Place}: {got} N for {expected} N");
                solved++;
            }
        }

        Assert.True(solved > 1000, $"{solved} solved");
    }

    // Virtual work: what the contact load lifts beyond the unsprung weight is the change of the energy in spring, stop and
    // gas. The energy is summed here element by element, by a rule of its own.
    [Fact]
    public void Contact_load_is_the_slope_of_the_stored_energy()
    {
        const double h = 2e-5;
        int compared = 0;
        foreach (var (plan, n) in RandomRows(rows: 10))
        {
            for (double travel = -0.06; travel <= 0.06; travel += 0.004)
            {
                if (n.StackAt(travel - h) is not { State: not StackState.Bound }
                    || n.StackAt(travel + h) is not { State: not StackState.Bound } || !(travel + h < n.Spent))
                {
                    continue;
                }

                double below = Energy(plan, n, travel - h), above = Energy(plan, n, travel + h), at = Energy(plan, n, travel);
                double slope = (above - below) / (2 * h), bend = (above - (2 * at) + below) / h;
                double got = n.ContactLoad(travel, out _) - (n.X[plan.Station.Unsprung] * Gravity);
                Assert.True(Math.Abs(got - slope) <= 1e-5 * Math.Abs(got) + 0.02 + Math.Abs(bend),
                    $"{plan.Build.Id} {plan.Place} at {travel}: {got} N by forces, {slope} N by energy");
                compared++;
            }
        }

        Assert.True(compared > 2000, $"{compared} compared");
    }

    private static double Energy(CornerPlan plan, CornerReader n, double travel)
    {
        double force = n.StackAt(travel).Force, energy = 0;
        foreach (var element in n.Stack)
        {
            energy += element.Kind switch
            {
                StackElementKind.Linear =>
                    0.5 * element.Rate * Squared(Math.Min(force / element.Rate, element.FreeLength - element.SolidLength)),
                StackElementKind.Progressive =>
                    Area(element.Curve!, Math.Min(element.Curve!.DeflectionAt(force), element.FreeLength - element.SolidLength)),
                _ => 0,
            };
        }

        if (plan.HasDamper)
        {
            double rod = n.RodShowing(travel);
            energy -= n.X.Or(plan.Station.RodForce, 0) * rod;
            if (plan.Station.StopCurve is { } curve && plan.Station.StopLength.IsGiven)
            {
                energy += Area(curve, Math.Max(0, n.X[plan.Station.StopLength] + n.X[plan.Station.Packer] - rod));
            }
        }

        return energy;
    }

    private static double Squared(double x) => x * x;

    // Under the curve's straight lines, trapezium by trapezium; the last line goes on.
    private static double Area(SpringCurve curve, double to)
    {
        double area = 0;
        for (int i = 0; i + 1 < curve.Forces.Length; i++)
        {
            double from = curve.Deflections[i], end = i + 2 == curve.Forces.Length ? to : Math.Min(to, curve.Deflections[i + 1]);
            if (end > from)
            {
                double rate = (curve.Forces[i + 1] - curve.Forces[i]) / (curve.Deflections[i + 1] - curve.Deflections[i]);
                area += (curve.Forces[i] + (rate * (end - from) / 2)) * (end - from);
            }
        }

        return area;
    }

    private static IEnumerable<(CornerPlan Plan, CornerReader N)> RandomRows(int rows)
    {
        var car = DemoCar.Read() with { Allowances = Allowances.None };
        var random = new Random(Seed);
        foreach (var build in car.Builds)
        {
            foreach (var place in Places.Corners)
            {
                var plan = CornerPlan.Compile(car, build, place, CarLearning.InUse(car));
                for (int i = 0; i < rows; i++)
                {
                    var numbers = new SolvedCorner(plan);
                    RandomCorner.Fill(plan.Inputs.Inputs, random, numbers.Values);
                    numbers.Solve();
                    yield return (plan, numbers.Read);
                }
            }
        }
    }
}
