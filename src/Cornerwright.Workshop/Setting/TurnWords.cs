using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Findings;

namespace Cornerwright.Workshop.Setting;

/// <summary>The words of a turn table.</summary>
public static class TurnWords
{
    /// <summary>"up 1¾ turns", "down ½ turn", "leave it".</summary>
    public static string Collar(int quarters) => quarters == 0 ? "leave it"
        : $"{(quarters > 0 ? "up" : "down")} {Turns(Math.Abs(quarters))}";

    /// <summary>"1¾ turns".</summary>
    public static string Turns(int quarters)
    {
        string whole = quarters / 4 == 0 ? "" : $"{quarters / 4}", part = (quarters % 4) switch { 1 => "¼", 2 => "½", 3 => "¾", _ => "" };
        return whole + part + (quarters > 4 ? " turns" : " turn");
    }

    /// <summary>"1 turn 2 flats toward toe-in".</summary>
    public static string TieRod(int flats)
    {
        if (flats == 0)
        {
            return "leave it";
        }

        int turns = Math.Abs(flats) / 6, rest = Math.Abs(flats) % 6;
        string much = string.Join(" ",
            new[] { turns == 0 ? "" : turns == 1 ? "1 turn" : $"{turns} turns", rest == 0 ? "" : rest == 1 ? "1 flat" : $"{rest} flats" }
                .Where(w => w.Length > 0));
        return $"{much} toward {(flats > 0 ? "toe-in" : "toe-out")}";
    }

    public static string Plate(double metres) => metres == 0 ? "leave it"
        : $"{Mm(Math.Abs(metres), 0)} {(metres > 0 ? "inward" : "outward")}";

    internal static string Mm(double metres, int decimals = 1) => new Measure(metres, Units.Millimetre, decimals).Text;

    internal static string Degrees(double radians) => new Measure(radians, Units.Degree, 2).Text;

    internal static string Share(double share) => new Measure(share, Units.Percent, 1).Text;

    /// <summary>All that is to be done, in order.</summary>
    internal static IReadOnlyList<SettingStep> Steps(Car car, IReadOnlyList<CornerSetting> corners, bool barFront, bool barRear,
        bool linksOn)
    {
        var steps = new List<SettingStep>();
        string bars = string.Join(" and ", new[] { barFront ? "front" : "", barRear ? "rear" : "" }.Where(w => w.Length > 0));
        bool off = bars.Length > 0 && !linksOn;
        var collars = corners.Where(c => c.Collar is { Quarters: not 0 }).OrderByDescending(c => Math.Abs(c.Collar!.Rise)).ToList();
        if (collars.Count > 0)
        {
            steps.Add(new SettingStep("Car on stands on level ground, both wheels of the axle hanging.", null, "Never reach under a car "
                + "that only a jack holds. The spring stays under load: turn only the collar, the top nut stays untouched."));
            if (off)
            {
                steps.Add(
                    new SettingStep($"Take one link of the {bars} anti-roll bar off, so that it cannot load one side against the other."));
            }
        }

        steps.AddRange(collars.Select(c => new SettingStep(
            $"Clean the thread, free the lock ring, turn the collar {Collar(c.Collar!.Quarters)} ({Mm(Math.Abs(c.Collar.Rise))}; "
                + $"the seat then stands {Mm(c.Collar.After)} above the lower reference). Tighten the lock ring.", c.Corner)));
        if (collars.Count > 0)
        {
            steps.Add(
                new SettingStep("Wheels on, car down. Roll it a few metres to and fro and bounce it: bushings wind up and tyres scrub."));
        }

        steps.AddRange(corners.Where(c => c.Plate != 0).Select(c => new SettingStep(
            $"Slide the top plate {Plate(c.Plate)}: camber {Degrees(c.Present.Camber ?? 0)} becomes "
                + $"{Degrees(c.Predicted.Camber ?? 0)} at the new height.", c.Corner)));
        steps.AddRange(corners.Where(c => c.Clamp != 0).Select(c => new SettingStep(
            $"At the strut's clamp, set the wheel {Degrees(Math.Abs(c.Clamp))} toward {(c.Clamp > 0 ? "positive" : "negative")} camber.",
            c.Corner, "Clamp bolts that the maker calls single-use: new ones, at his torque.")));
        steps.AddRange(corners.Where(c => c.ToeChange != 0).Select(c => new SettingStep(
            c.Flats is { } flats ? $"Tie rod {TieRod(flats)} ({Degrees(Math.Abs(c.ToeChange))}). Tighten its lock nut." : $"Set the toe "
                + $"{Degrees(Math.Abs(c.ToeChange))} toward {(c.ToeChange > 0 ? "toe-in" : "toe-out")}, and tighten the lock nut.",
            c.Corner, "Toe comes last: height and camber move it.")));
        if (off && collars.Count > 0)
        {
            steps.Add(new SettingStep($"Put the {bars} bar's link back with the car on its wheels. It must slip in without force: adjust "
                + $"its length until it does.", null, "A link forced in twists the car and undoes the cross weight."));
        }

        if (steps.Count > 0)
        {
            steps.Add(
                new SettingStep("Roll and settle again, read heights, loads, camber and toe, and enter them: the next table is smaller."));
        }

        return steps;
    }
}
