using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Loads;
using static Cornerwright.Workshop.Setting.TurnWords;

namespace Cornerwright.Workshop.Setting;

/// <summary>Puts the collars, plates and rods found into a table.</summary>
internal static class TableWriter
{
    /// <summary>A toe nearer than this to what is wanted stays, rad: about a gauge's own doubt.</summary>
    private const double ToeEnough = 0.03 * Math.PI / 180;

    private const int FlatsPerTurn = 6;

    public static TurnTable Write(SettingModel model, CollarChoice choice, double[] plates, double[] clamps)
    {
        CornerSetting[] corners = [.. Places.Corners.Select((place, i) => Corner(model, choice, place, plates[i], clamps[i]))];
        var before = CarBalance.Solve(model.Car, model.Corners, [0, 0, 0, 0]);
        double total = model.Present.Wheels.Sum(w => w.Load);
        return new TurnTable
        {
            Build = model.Present.Build,
            Wish = model.Wish,
            From = model.Present.From,
            LoadsFrom = model.Present.LoadsFrom,
            Corners = corners,
            CrossNow = (model.Present.Wheels[1].Load + model.Present.Wheels[2].Load) / total,
            CrossPredicted = choice.Stance.CrossWeight,
            CrossExact = choice.ExactStance?.CrossWeight,
            CrossRange = Warp.CrossWeightRange([.. before.Load], Warp.LoadPattern(model.Car.Wheels)),
            Steps = Steps(model.Owner, corners, model.BarFront, model.BarRear, model.Wish.LinksOn),
            Shortfalls = [.. Shortfalls(model, choice, corners)],
            Assumptions = [.. model.Assumptions, .. Contradictions(model)],
        };
    }

    private static CornerSetting Corner(SettingModel model, CollarChoice choice, CornerPlace place, double plate, double clamp)
    {
        int i = (int)place;
        var (now, wish, plan) = (model.Present.Wheels[i], model.Wish.At(place), model.Corners[i].Plan);
        var set = CamberKnob.Set(model.Present.Build.At(place), plate, clamp);
        double travel = choice.Stance.Travel[i], height = now.Height - travel;
        var wheel = model.At(place, set, travel);
        var here = model.At(place, model.Present.Build.At(place), 0);
        var (flats, toe) = Toe(model, place, wish.Toe?.Si, wheel?.Toe);
        CollarMove? collar = null;
        if (plan.Station.Pitch > 0)
        {
            double perch = plan.Inputs[plan.Station.Perch].Value, pitch = plan.Station.Pitch!.Value;
            collar = new CollarMove(choice.Steps[i], choice.Exact[i] / 4, pitch, perch, plan.Parts.Damper?.ThreadLow?.Si,
                plan.Parts.Damper?.ThreadHigh?.Si);
            set = collar.Quarters == 0 ? set : set with { PerchHeight = CamberKnob.Setting(collar.After, Units.Millimetre) };
        }

        return new CornerSetting
        {
            Corner = place,
            Present = now with { Camber = now.Camber ?? here?.Camber, Toe = now.Toe ?? here?.Toe },
            Wanted = wish,
            Predicted = new WheelState(height, choice.Stance.Load[i], wheel?.Camber, wheel?.Toe + toe),
            Collar = collar,
            Plate = plate,
            Clamp = clamp,
            Flats = flats,
            ToeChange = toe,
            After = set,
            Correction = model.Corners[i].Correction,
        };
    }

    // One flat turns the wheel by a sixth of the rod's lead over the steering arm.
    private static (int? Flats, double Change) Toe(SettingModel model, CornerPlace place, double? wanted, double? reached)
    {
        var axle = model.Owner.At(place.Axle());
        bool known = axle is { TieRodPitch: not null, SteeringArm: not null };
        if (wanted is not { } target || reached is not { } toe || Math.Abs(target - toe) < ToeEnough)
        {
            return (known ? 0 : null, 0);
        }

        if (!known)
        {
            return (null, target - toe);
        }

        double flat = axle.TieRodPitch!.Si / FlatsPerTurn / axle.SteeringArm!.Si;
        int flats = (int)Math.Round((target - toe) / flat);
        return (flats, flats * flat);
    }

    private static IEnumerable<string> Shortfalls(SettingModel model, CollarChoice choice, CornerSetting[] corners)
    {
        // What ends a collar's way explains what is missed.
        string[] ends = [.. Places.Corners.Where((_, i) => Ended(model.Knobs[i], choice, i)).Select((p, _) => End(model, choice, p))];
        string why = ends.Length > 0 ? " " + string.Join(" ", ends) : model.Knobs.Any(k => !k.Turns)
            ? $" The {string.Join(", ", Places.Corners.Where((_, i) => !model.Knobs[i].Turns).Select(p => p.Words()))} seat does not turn."
            : model.Wish.CrossWeight is not null && choice.ExactStance is { } exact && CollarSearch.Misses(model.Targets, exact)
            .Any(m => Math.Abs(m) > 1) ? " At that cross weight the tyres squash unevenly and take the heights with them." : "";
        foreach (var c in corners)
        {
            if (c.Wanted.Height is { } height && Math.Abs(c.Predicted.Height - height.Si) > model.HeightBand)
            {
                yield return $"{Words(c.Corner)}: {Mm(height.Si, 0)} is wanted, {Mm(c.Predicted.Height)} comes out.{why}";
            }

            if (c.Wanted.Camber is { } camber && c.Predicted.Camber is { } reached && Math.Abs(camber.Si - reached) > 0.1 * Math.PI / 180)
            {
                bool plate = model.Corners[(int)c.Corner].Plan.Parts.TopMount is { SlideIn: not null };
                string end = plate ? "The plate's slide ends there, or its step is a millimetre."
                    : c.Clamp != 0 ? "The clamp is set in steps of 0.1°." : "Nothing that sets camber is known at this corner.";
                yield return $"{Words(c.Corner)}: camber {Degrees(camber.Si)} is wanted, {Degrees(reached)} comes out. {end}";
            }
        }

        if (model.Wish.CrossWeight?.Si is { } cross && Math.Abs(choice.Stance.CrossWeight - cross) > model.Targets.CrossBand)
        {
            yield return $"Cross weight {Share(cross)} is wanted, {Share(choice.Stance.CrossWeight)} comes out.{why}";
        }

        static string Words(CornerPlace place) => char.ToUpperInvariant(place.Words()[0]) + place.Words()[1..];
    }

    private static bool Ended(CollarKnob knob, CollarChoice choice, int i) =>
        knob.Turns && (choice.Exact[i] > knob.Most + 0.5 || choice.Exact[i] < knob.Least - 0.5);

    private static string End(SettingModel model, CollarChoice choice, CornerPlace place)
    {
        int i = (int)place;
        double beyond = choice.Exact[i] > 0 ? choice.Exact[i] - model.Knobs[i].Most : model.Knobs[i].Least - choice.Exact[i];
        return $"The {place.Words()} collar would have to go {Mm(beyond * model.Knobs[i].Step)} beyond the "
            + $"{(choice.Exact[i] > 0 ? "upper" : "lower")} end of its thread.";
    }

    // Readings that the springs do not explain are worth a word; the table works from the readings.
    private static IEnumerable<string> Contradictions(SettingModel model)
    {
        const double Notable = 0.004;
        foreach (var corner in model.Corners.Where(c => Math.Abs(c.Correction) > Notable))
        {
            yield return $"{corner.Plan.Place.Words()}: height and load read agree with the springs only if their stack is "
                + $"{Mm(Math.Abs(corner.Correction))} {(corner.Correction > 0 ? "longer" : "shorter")} than by its parts; the "
                + $"readings were followed";
        }
    }
}
