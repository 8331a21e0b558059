using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Cures;

/// <summary>Something a person can change at one corner: a setting to turn, or a part to buy in another size.</summary>
/// <param name="Quantum">Smallest sensible step, SI of the inputs moved.</param>
/// <param name="Least">Most negative change, SI.</param>
/// <param name="Most">Most positive change, SI.</param>
/// <param name="Moves">Inputs that change together, each by the amount times its factor.</param>
/// <param name="Order">The change as an order.</param>
/// <param name="Setting">Path of the setting below the build, e.g. "frontLeft/perchHeight"; empty for a part to buy.</param>
/// <param name="NewValue">The setting's new text for the moved input's value; null for a part to buy.</param>
internal sealed record Lever(
    double Quantum,
    double Least,
    double Most,
    IReadOnlyList<(Handle Input, double Factor)> Moves,
    Func<double, string> Order,
    string Setting = "",
    Func<double, string>? NewValue = null)
{
    private const double Wide = 0.040;

    /// <summary>All levers of a corner. Ranges beyond the parts' own limits are common practice, no source.</summary>
    public static IEnumerable<Lever> Of(CornerPlan plan)
    {
        var x = plan.Inputs;
        var station = plan.Station;
        if (station.Perch.IsGiven)
        {
            yield return Perch(plan, x[station.Perch].Value);
        }

        if (plan.Parts.Damper is { BodyLow: { } low, BodyHigh: { } high } && station.Body.IsGiven && station.Perch.IsGiven)
        {
            double body = x[station.Body].Value;
            yield return new Lever(0.001, low.Si - body, high.Si - body, [(station.Body, 1), (station.Perch, 1)],
                a => $"Screw the whole body {Say.Mm(Math.Abs(a), 0)} {(a > 0 ? "out of" : "into")} its clamp: height "
                    + $"changes, preload does not.");
        }

        if (plan.Parts.BumpStop is not null)
        {
            double packer = x[station.Packer].Value;
            yield return new Lever(0.001, -packer, 0.030, [(station.Packer, 1)],
                a => $"{(a > 0 ? "Put" : "Take")} {Say.Mm(Math.Abs(a), 0)} of packer {(a > 0 ? "on" : "off")} the rod.",
                plan.Path + "/packer", value => Write(value, Units.Millimetre));
            if (station.StopLength.IsGiven && station.StopSpent.IsGiven)
            {
                yield return new Lever(0.001, -0.6 * x[station.StopSpent].Value, 0.040, [(station.StopLength, 1), (station.StopSpent, 1)],
                    a => a > 0 ? $"Fit a bump stop {Say.Mm(a, 0)} longer." : $"Fit a bump stop {Say.Mm(-a, 0)} shorter.");
            }
        }

        foreach (var lever in Springs(plan))
        {
            yield return lever;
        }

        foreach (var lever in Wheels(plan))
        {
            yield return lever;
        }

        if (plan.Parts.TopMount is { SlideIn: not null, SlideOut: not null } plate)
        {
            double slide = x[plan.Motion.Slide].Value;
            yield return new Lever(0.001, -plate.SlideOut!.Si - slide, plate.SlideIn!.Si - slide, [(plan.Motion.Slide, 1)],
                a => $"Slide the top plate {Say.Mm(Math.Abs(a), 0)} {(a > 0 ? "inward" : "outward")}.",
                plan.Path + "/slide", value => Write(value, Units.Millimetre));
        }
    }

    private static Lever Perch(CornerPlan plan, double height)
    {
        double pitch = plan.Station.Pitch ?? 0;
        bool threaded = pitch > 0;
        var damper = plan.Parts.Damper;
        double least = damper?.ThreadLow is { } low ? low.Si - height : threaded ? -Wide
            : -0.010, most = damper?.ThreadHigh is { } high ? high.Si - height : threaded ? Wide : 0.020;
        return new Lever(threaded ? pitch / 4 : 0.001, least, most, [(plan.Station.Perch, 1)],
            a => threaded
                ? $"Turn the collar {(a > 0 ? "up" : "down")} {new Measure(Math.Abs(a) / pitch, Units.Turn, 2).Text} "
                + $"({Say.Mm(Math.Abs(a))})."
                : $"Put the spring's seat {Say.Mm(Math.Abs(a), 0)} {(a > 0 ? "higher" : "lower")}, with packing under it or a lower seat.",
            plan.Path + "/perchHeight", value => Write(value, Units.Millimetre));
    }

    private static IEnumerable<Lever> Springs(CornerPlan plan)
    {
        var x = plan.Inputs;
        foreach (var slot in plan.Station.Stack.Where(s => s.Complete && s.Spring is not null))
        {
            var spring = slot.Spring!;
            string name = spring.Role == SpringRole.Main ? "main spring" : spring.Role == SpringRole.Helper ? "helper" : "tender";
            yield return new Lever(0.005, -0.080, 0.100, [(slot.Free, 1)], a =>
                $"Fit a {name} {Say.Mm(Math.Abs(a), 0)} {(a > 0 ? "longer" : "shorter")} when free.");
            yield return new Lever(0.001, -0.7 * x[slot.Solid].Value, 0, [(slot.Solid, 1)], a =>
                $"Fit a {name} {Say.Mm(Math.Abs(a), 0)} shorter when solid.");
            if (slot.Rate.IsGiven)
            {
                double rate = x[slot.Rate].Value;
                yield return new Lever(0.05 * rate, -0.5 * rate, rate, [(slot.Rate, 1)],
                    a => $"Fit a {name} of {new Measure(rate + a, Units.NewtonPerMillimetre, 0).Text} in place of "
                        + $"{new Measure(rate, Units.NewtonPerMillimetre, 0).Text}.");
            }
        }
    }

    private static IEnumerable<Lever> Wheels(CornerPlan plan)
    {
        if (plan.Wheel is not { } wheel)
        {
            yield break;
        }

        var x = plan.Inputs;
        double spacer = x[wheel.Spacer].Value;
        yield return new Lever(0.001, -spacer, 0.030, [(wheel.Spacer, 1)],
            a => spacer + a < 0.0005 ? "Take the spacer out."
                : $"{(spacer > 0 ? "Make the spacer" : "Fit a spacer of")} {Say.Mm(spacer + a, 0)}.");
        double offset = x[wheel.Offset].Value;
        yield return new Lever(0.001, -0.030, 0.030, [(wheel.Offset, 1)],
            a => FormattableString.Invariant($"Choose the wheel with ET{(offset + a) * 1000:0} in place of ET{offset * 1000:0}."));
        yield return new Lever(0.005, -0.050, 0, [(wheel.SectionWidth, 1)], a => $"Choose a tyre {Say.Mm(-a, 0)} narrower.");
        if (plan.Corner.Strut is not null)
        {
            const double Quarter = Math.PI / 720;
            yield return new Lever(Quarter, -0.05, 0.05, [(plan.Motion.ClampCamber, 1)],
                a => $"Set {new Measure(Math.Abs(a), Units.Degree, 2).Text} {(a > 0 ? "more positive" : "more negative")} camber at the "
                    + $"strut's clamp.",
                plan.Path + "/clampCamber", value => Write(value, Units.Degree));
        }
    }

    private static string Write(double si, Unit unit) => Quantity.Of(Math.Round(unit.FromSi(si), 3), unit).Typed;
}
