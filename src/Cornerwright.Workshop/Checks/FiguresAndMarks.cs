using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Loads;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Checks;

/// <summary>
/// Values without a limit: figures worth knowing, and the marks of the travel column. They go through the same doubt as checks.
/// </summary>
internal static class FiguresAndMarks
{
    public static IEnumerable<CornerFigure> Figures(CornerPlan plan)
    {
        int wanted = CornerPlan.Wanted;
        var ride = plan.MissingForRide(wanted);
        int main = MainSlot(plan);
        yield return Figure(FigureKind.WheelRate, ride, n => WheelRate(n, n.Ride[wanted]));
        yield return Figure(FigureKind.RideFrequency, ride, n => Frequency(plan, n, wanted));
        if (main >= 0)
        {
            yield return Figure(FigureKind.StaticDeflection, ride, n =>
                n.Stack[main].DeflectionAt(Math.Max(0, n.SpringForce(n.Ride[wanted]))));
        }

        yield return Figure(FigureKind.SpringForce, ride, n => n.SpringForce(n.Ride[wanted]));
        yield return Figure(FigureKind.Preload, [.. plan.MissingForSpring(), .. plan.MissingForDamper()], n => n.SpringForce(n.Droop));
        yield return Figure(FigureKind.MotionRatio, ride, n => n.SpringStation(n.Ride[wanted]).MotionRatio);
        yield return Figure(FigureKind.CamberAtRide, ride, n =>
            n.Motion.WheelAt(n.Ride[wanted], out var wheel).IsUsable() ? wheel.Camber : double.NaN);
        yield return Figure(FigureKind.HeightChange, ride, n => -n.Ride[wanted]);
        yield return Figure(FigureKind.RodShowing, [.. ride, .. plan.MissingForDamper()], n => n.RodShowing(n.Ride[wanted]));
    }

    /// <summary>Everything that happens on the wheel's way from full droop to full bump.</summary>
    public static IEnumerable<CornerMark> Marks(CornerPlan plan)
    {
        yield return Mark(TravelEvent.DroopStop, "full droop", plan.MissingForDamper(), n => n.Droop);
        yield return Mark(TravelEvent.SpringSeats, "spring seats", plan.MissingForSpring(), n =>
            n.TravelAtSpace(SpringStack.FreeLength(n.Stack)));
        yield return Mark(TravelEvent.StopTouched, "bump stop touched", plan.MissingForStop(), n => n.Touch);
        yield return Mark(TravelEvent.StopSpent, "bump stop spent", plan.MissingForStop(), n => n.Spent);
        yield return Mark(TravelEvent.CoilBind, "coils touch", plan.MissingForSpring(), n => n.Bind);
        yield return Mark(TravelEvent.DamperShut, "damper shut", plan.MissingForDamper(), n => n.Shut);
        yield return Mark(TravelEvent.MetalMeets, "metal meets metal", [], n => n.Metal);
        yield return Mark(TravelEvent.TyreTouches, "tyre touches", plan.Clearance.Missing, n => n.TyreTouch);
        for (int i = 0; i < plan.Loads.Count; i++)
        {
            int load = i;
            yield return Mark(TravelEvent.Ride, "ride, " + plan.Loads[i].Case.Name, plan.MissingForRide(i), n => n.Ride[load]);
        }

        for (int i = 0; i < plan.Station.Stack.Count; i++)
        {
            int slot = i;
            if (plan.Station.Stack[i].Spring is { Role: not Garage.Parts.SpringRole.Main } helper)
            {
                yield return Mark(TravelEvent.HelperShuts, helper.Name + " shuts", plan.MissingForSpring(), n =>
                    SpringChecks.HelperShutTravel(n, slot));
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

    private static CornerFigure Figure(FigureKind kind, IReadOnlyList<MissingReading> missing, Func<CornerReader, double> value) =>
        new(kind) { Missing = missing, Value = value };

    private static CornerMark Mark(TravelEvent what, string words, IReadOnlyList<MissingReading> missing,
        Func<CornerReader, double> value) =>
        new(what, words) { Missing = missing, Value = value };
}
