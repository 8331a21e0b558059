using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Loads;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Checks;

/// <summary>Values without a limit: figures worth knowing, and the marks of the travel column. They go through the same doubt as checks.</summary>
internal static class SilentValues
{
    public const string FigurePrefix = "figure-";
    public const string MarkPrefix = "mark-";

    public static IEnumerable<CornerCheck> For(CornerPlan plan)
    {
        int wanted = CornerPlan.Wanted;
        var ride = plan.MissingForRide(wanted);
        int main = MainSlot(plan);
        yield return Figure("wheel-rate", "Wheel rate at ride", Units.NewtonPerMillimetre, 1, ride, n => WheelRate(n, n.Ride[wanted]));
        yield return Figure("ride-frequency", "Ride frequency", Units.Hertz, 2, ride, n => Frequency(plan, n, wanted));
        if (main >= 0)
        {
            yield return Figure("static-deflection", "Main spring squeezed at ride", Units.Millimetre, 1, ride, n => n.Stack[main].DeflectionAt(Math.Max(0, n.SpringForce(n.Ride[wanted]))));
        }

        yield return Figure("spring-force", "Spring force at ride", Units.Newton, 0, ride, n => n.SpringForce(n.Ride[wanted]));
        yield return Figure("preload", "Spring force at full droop", Units.Newton, 0, [.. plan.MissingForSpring(), .. plan.MissingForDamper()], n => n.SpringForce(n.Droop));
        yield return Figure("motion-ratio", "Motion ratio at ride (spring per wheel)", Units.One, 3, ride, n => n.SpringStation(n.Ride[wanted]).MotionRatio);
        yield return Figure("camber-ride", "Camber at ride", Units.Degree, 2, ride, n => n.Motion.WheelAt(n.Ride[wanted], out var wheel).IsUsable() ? wheel.Camber : double.NaN);
        yield return Figure("height-change", "Body higher than as measured", Units.Millimetre, 1, ride, n => -n.Ride[wanted]);
        yield return Figure("rod-showing", "Rod showing at ride", Units.Millimetre, 1, [.. ride, .. plan.MissingForDamper()], n => n.RodShowing(n.Ride[wanted]));

        yield return Mark("droop", plan.MissingForDamper(), n => n.Droop);
        yield return Mark("seats", [.. plan.MissingForSpring()], n => n.TravelAtSpace(SpringStack.FreeLength(n.Stack)));
        yield return Mark("touch", plan.MissingForStop(), n => n.Touch);
        yield return Mark("spent", plan.MissingForStop(), n => n.Spent);
        yield return Mark("bind", plan.MissingForSpring(), n => n.Bind);
        yield return Mark("shut", plan.MissingForDamper(), n => n.Shut);
        yield return Mark("metal", [], n => n.Metal);
        yield return Mark("tyre", plan.Clearance.Missing, n => n.TyreTouch) with { Scope = CheckScope.WheelInCar };
        for (int i = 0; i < plan.Loads.Count; i++)
        {
            int load = i;
            yield return Mark("ride-" + plan.Loads[i].Case.Id, plan.MissingForRide(i), n => n.Ride[load]);
        }

        for (int i = 0; i < plan.Station.Stack.Count; i++)
        {
            int slot = i;
            if (plan.Station.Stack[i].Spring is { Role: not Garage.Parts.SpringRole.Main } helper)
            {
                yield return Mark("helper-" + helper.Id, plan.MissingForSpring(), n => SpringChecks.HelperShutTravel(n, slot));
            }
        }
    }

    public static int MainSlot(CornerPlan plan)
    {
        for (int i = 0; i < plan.Station.Stack.Count; i++)
        {
            if (plan.Station.Stack[i].Spring is { Role: Garage.Parts.SpringRole.Main })
            {
                return i;
            }
        }

        return -1;
    }

    private static double WheelRate(CornerReader n, double travel)
    {
        var station = n.SpringStation(travel);
        var stack = n.StackAt(travel);
        return stack.State == StackState.Seated && SpringStack.TangentRateAt(n.Stack, stack.Force) is { } rate
            ? RideRates.WheelRate(rate, station.MotionRatio, stack.Force, station.MotionRatioSlope) : double.NaN;
    }

    private static double Frequency(CornerPlan plan, CornerReader n, int load)
    {
        double rate = WheelRate(n, n.Ride[load]), sprung = n.X[plan.Loads[load].Load] - n.X[plan.Station.Unsprung];
        if (plan.Build.At(plan.Place).Pressure is { } pressure && plan.Parts.TyreSize is { } tyre)
        {
            double stiffness = tyre.VerticalStiffness(pressure.Si);
            rate = rate > 0 && stiffness > 0 ? RideRates.Series(rate, stiffness) : double.NaN;
        }

        return rate > 0 && sprung > 0 ? RideRates.BodyFrequency(rate, sprung) : double.NaN;
    }

    private static CornerCheck Figure(string name, string title, Unit unit, int decimals, IReadOnlyList<MissingReading> missing, Func<CornerReader, double> value) => new()
    {
        Id = FigurePrefix + name,
        Title = title,
        Unit = unit,
        Decimals = decimals,
        Missing = missing,
        Value = value,
        Sentence = (_, _) => "",
        Silent = true,
    };

    private static CornerCheck Mark(string name, IReadOnlyList<MissingReading> missing, Func<CornerReader, double> value) =>
        Figure("", "", Units.Millimetre, 1, missing, value) with { Id = MarkPrefix + name };
}
