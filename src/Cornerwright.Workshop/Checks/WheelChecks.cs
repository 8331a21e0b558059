using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Designations;
using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Fitted;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using static Cornerwright.Workshop.Findings.Say;

namespace Cornerwright.Workshop.Checks;

/// <summary>Does the wheel go on the hub, the tyre on the rim, and do both bear the car.</summary>
internal static class WheelChecks
{
    /// <summary>
    /// Two bolt circles are the same within this, m: half of the 0.3 mm
    /// between circles that are known not to mix. Common practice, no source.
    /// </summary>
    private const double CirclePlay = 0.00015;

    /// <summary>A bore this much larger than the hub still centres the wheel, m. Common practice, no source.</summary>
    private const double CentringPlay = 0.0002;

    public static IEnumerable<CornerCheck> For(CornerPlan plan)
    {
        var (wheel, rim, size) = (plan.Parts.Wheel, plan.Parts.Rim, plan.Parts.TyreSize);
        if (wheel is null || rim is null)
        {
            yield break;
        }

        yield return BoltCircle(plan, rim);
        yield return Bore(plan);
        yield return Engagement(plan);
        foreach (var check in Calliper(plan))
        {
            yield return check;
        }

        yield return WheelLoad(plan);

        if (size is null || plan.Parts.Tyre is not { } tyre)
        {
            yield break;
        }

        yield return Diameter(rim, size);
        yield return RimWidth(rim, size, tyre);
        yield return TyreLoadCheck(plan, size);
        yield return Speed(plan, size);
        if (plan.PartsNow?.TyreSize is not null && plan.PartsNow.Rim is not null)
        {
            yield return Circumference(plan);
            yield return Scrub(plan);
        }
    }

    private static CornerCheck BoltCircle(CornerPlan plan, RimDesignation rim)
    {
        var hub = plan.Axle.Hub;
        bool countsDiffer = hub.Bolts is { } bolts && rim.BoltCount is { } holes && bolts != holes;
        return new CornerCheck
        {
            Kind = CheckCatalogue.BoltCircle,
            Missing = [.. MissingReading.If(hub.BoltCircle is null, HubPath(plan, "boltCircle"), "bolt circle of the hub"),
                .. MissingReading.If(rim.BoltCircleMm is null, RimPath(plan), "bolt circle in the rim designation")],
            Value = _ => countsDiffer ? 1 : (rim.BoltCircleMm!.Value / 1000) - hub.BoltCircle!.Si,
            Low = -CirclePlay,
            High = CirclePlay,
            Sentence = (_, value) => countsDiffer ? $"The wheel has {rim.BoltCount} holes, the hub {hub.Bolts} bolts: it does not go on."
                : Math.Abs(value) <= CirclePlay
                ? FormattableString.Invariant($"Wheel and hub share the {rim.BoltCircleMm:0.#} mm bolt circle.")
                : $"The wheel's bolt circle is {Mm(Math.Abs(value))} {(value > 0 ? "larger" : "smaller")} than the "
                + $"hub's: it does not go on.",
        };
    }

    private static CornerCheck Bore(CornerPlan plan)
    {
        var (wheel, hub) = (plan.Parts.Wheel!, plan.Axle.Hub);
        double? stamped = plan.Parts.Rim?.CentreBoreMm is { } mm ? mm / 1000 : null;
        var bore = wheel.CentreBore is null && stamped is { } value
            ? plan.Inputs.Define($"parts/wheels/{wheel.Id}/stampedBore", "stamped centre bore", value)
            : plan.Inputs.Add($"parts/wheels/{wheel.Id}/centreBore", "centre bore of the wheel", wheel.CentreBore);
        var centring = plan.Inputs.Add(plan.Place.Axle().Words() + "/hub/centring", "centring diameter of the hub", hub.Centring);
        return new CornerCheck
        {
            Kind = CheckCatalogue.CentreBore,
            Missing = [.. plan.Inputs.Lacking(bore, centring)],
            Value = n => n.X[bore] - n.X[centring],
            Low = 0,
            Sentence = (_, value) => value < 0 ? $"The hub is {Mm(-value, 2)} larger than the wheel's bore: it does not go on."
                : value <= CentringPlay ? "The hub centres the wheel."
                : $"The bore is {Mm(value, 2)} larger than the hub: a centring ring is needed.",
        };
    }

    private static CornerCheck Engagement(CornerPlan plan)
    {
        var hub = plan.Axle.Hub;
        var engaged = plan.Inputs.Add(plan.Place.Axle().Words() + "/hub/engagedNow", "thread engaged now", hub.EngagedNow);
        double seat = plan.Parts.Wheel!.SeatThickness?.Si ?? 0, seatNow = plan.PartsNow?.Wheel?.SeatThickness?.Si ?? 0;
        bool seatsKnown = plan.Parts.Wheel.Id == plan.PartsNow?.Wheel?.Id
            || (plan.Parts.Wheel.SeatThickness is not null && plan.PartsNow?.Wheel?.SeatThickness is not null);
        double spacer = Carried(plan.Parts), spacerNow = Carried(plan.PartsNow);
        double lost = (seatsKnown ? seat - seatNow : 0) + spacer - spacerNow;
        double thread = hub.Thread?.Si ?? 1;
        return new CornerCheck
        {
            Kind = CheckCatalogue.BoltEngagement,
            Missing = [.. plan.Inputs.Lacking(engaged),
                .. MissingReading.If(hub.Thread is null, HubPath(plan, "thread"), "thread diameter of the wheel bolts")],
            Value = n => (n.X[engaged] - lost) / thread,
            Low = Limit(plan.Limits.ThreadEngagement),
            Sentence = (n, value) =>
            {
                string taken = lost > 0 ? $"; spacer and wheel take {Mm(lost)} of what there was" : "";
                string longer = value < Limit(plan.Limits.ThreadEngagement)
                    ? $" Longer {(hub.Studs ? "studs" : "bolts")} are needed, of the maker's grade." : "";
                string times = new Measure(value, Units.One, 2).Text;
                return $"{Mm(n.X[engaged] - lost)} of thread engaged, {times} times its diameter{taken}.{longer}";
            },
            Assumptions = seatsKnown ? [] : ["bolt seats of both wheels taken as equally thick: not measured"],
        };

        static double Carried(CornerParts? parts) => parts?.Spacer is { Bolted: false } s ? s.Thickness?.Si ?? 0 : 0;
    }

    private static IEnumerable<CornerCheck> Calliper(CornerPlan plan)
    {
        var (wheel, corner) = (plan.Parts.Wheel!, plan.Corner);
        var radius = plan.Inputs.Add(plan.Path + "/calliperRadius", "caliper radius", corner.CalliperRadius);
        var barrel = plan.Inputs.Add($"parts/wheels/{wheel.Id}/barrelRadius", "barrel radius of the wheel", wheel.BarrelRadius);
        yield return new CornerCheck
        {
            Kind = CheckCatalogue.CalliperBarrel,
            Missing = [.. plan.Inputs.Lacking(radius, barrel)],
            Value = n => n.X[barrel] - n.X[radius],
            Low = Limit(plan.Limits.CalliperToWheel),
            Sentence = (_, value) => value >= 0 ? $"{Mm(value)} between caliper and barrel."
                : $"The caliper is {Mm(-value)} larger than the barrel: the wheel does not go on.",
        };
        var proud = plan.Inputs.Add(plan.Path + "/calliperProud", "caliper beyond the hub face", corner.CalliperProud);
        var room = plan.Inputs.Add($"parts/wheels/{wheel.Id}/spokeRoom", "spoke room of the wheel", wheel.SpokeRoom);
        var spacer = plan.Wheel;
        yield return new CornerCheck
        {
            Kind = CheckCatalogue.CalliperSpokes,
            Missing = [.. plan.Inputs.Lacking(proud, room), .. MissingReading.If(spacer is null, RimPath(plan), "wheel offset and tyre")],
            Value = n => n.X[room] + n.X[spacer!.Spacer] - n.X[proud],
            Low = Limit(plan.Limits.CalliperToWheel),
            Sentence = (_, value) => value >= 0 ? $"{Mm(value)} between caliper and spokes."
                : $"The spokes run {Mm(-value)} into the caliper.",
        };
    }

    private static CornerCheck WheelLoad(CornerPlan plan)
    {
        int heaviest = plan.Heaviest;
        double rating = plan.Parts.Wheel!.LoadRating?.Si ?? double.NaN;
        return new CornerCheck
        {
            Kind = CheckCatalogue.WheelLoad,
            Missing = [.. MissingReading.If(plan.Parts.Wheel.LoadRating is null, $"parts/wheels/{plan.Parts.Wheel.Id}/loadRating",
                "load rating of the wheel"),
                .. MissingReading.If(heaviest < 0, "loadCases", "corner loads")],
            Value = n => (rating / n.X[plan.Loads[heaviest].Load]) - 1,
            Low = Limit(plan.Limits.LoadReserve),
            Sentence = (n, value) => $"The wheel is rated for {Kg(rating)} and carries "
                + $"{Kg(n.X[plan.Loads[heaviest].Load])} in load case {plan.Loads[heaviest].Case.Name}.",
        };
    }

    private static CornerCheck Diameter(RimDesignation rim, TyreDesignation size) => new()
    {
        Kind = CheckCatalogue.RimDiameter,
        Value = _ => (size.RimCode - rim.DiameterCode) * RimCodes.WidthCodeMetres,
        Low = -1e-6,
        High = 1e-6,
        Sentence = (_, value) => Math.Abs(value) < 1e-6 ? FormattableString.Invariant($"Tyre and rim are both {rim.DiameterCode:0.#} inch.")
            : FormattableString.Invariant($"A {size.RimCode:0.#} inch tyre does not go on a {rim.DiameterCode:0.#} inch rim."),
    };

    private static CornerCheck RimWidth(RimDesignation rim, TyreDesignation size, Garage.Parts.Tyre tyre)
    {
        var (least, greatest) = size.PermittedRimCodes;
        bool given = tyre.RimMin is not null && tyre.RimMax is not null;
        double low = tyre.RimMin?.Si ?? RimCodes.Width(least), high = tyre.RimMax?.Si ?? RimCodes.Width(greatest);
        const double Rounding = 1e-6;
        return new CornerCheck
        {
            Kind = CheckCatalogue.RimWidth,
            Value = _ => RimCodes.Width(rim.WidthCode),
            Low = low - Rounding,
            High = high + Rounding,
            Sentence = (_, value) => value < low - Rounding
                ? FormattableString.Invariant(
                    $"The rim is {rim.WidthCode:0.##} in wide; {size.Write()} wants at least {low / 0.0254:0.##} in.")
                : value > high + Rounding
                ? FormattableString.Invariant(
                    $"The rim is {rim.WidthCode:0.##} in wide; {size.Write()} goes on at most {high / 0.0254:0.##} in.")
                : FormattableString.Invariant($"{size.Write()} goes on rims of {low / 0.0254:0.##} to {high / 0.0254:0.##} in; ")
                    + FormattableString.Invariant($"this one has {rim.WidthCode:0.##} in."),
            Assumptions = given ? []
                : ["rim widths allowed for the tyre: from its size by common practice; the tyre maker's sheet decides"],
        };
    }

    private static CornerCheck TyreLoadCheck(CornerPlan plan, TyreDesignation size)
    {
        int heaviest = plan.Heaviest;
        double? pressure = plan.Build.At(plan.Place).Pressure?.Si;
        double greatest = size.GreatestLoad ?? 0;
        bool lowered = pressure is { } p && size.ReferencePressure is { } reference && p < reference;
        double capacity = lowered ? TyreLoad.AtPressure(greatest, pressure!.Value, size.ReferencePressure!.Value) : greatest;
        double kilograms = capacity / Units.StandardGravity;
        return new CornerCheck
        {
            Kind = CheckCatalogue.TyreLoad,
            Missing = [.. MissingReading.If(size.GreatestLoad is null, TyrePath(plan), "load index in the tyre's designation"),
                .. MissingReading.If(heaviest < 0, "loadCases", "corner loads")],
            Value = n => (kilograms / n.X[plan.Loads[heaviest].Load]) - 1,
            Low = Limit(plan.Limits.LoadReserve),
            Sentence = (n, _) =>
                $"The tyre bears {Kg(kilograms)}{(lowered ? $" at {new Measure(pressure!.Value, Units.Bar, 1).Text}" : "")} and carries "
                + $"{Kg(n.X[plan.Loads[heaviest].Load])} in load case {plan.Loads[heaviest].Case.Name}.",
            Assumptions = lowered || pressure is not null ? [] : ["tyre pressure not given: taken as high enough for the full load index"],
        };
    }

    private static CornerCheck Speed(CornerPlan plan, TyreDesignation size)
    {
        double top = plan.Car.TopSpeed?.Si ?? 0;
        double? symbol = SpeedSymbol.MetresPerSecond(size.Service?.SpeedSymbol);
        return new CornerCheck
        {
            Kind = CheckCatalogue.TyreSpeed,
            Missing = [.. MissingReading.If(plan.Car.TopSpeed is null, "topSpeed", "top speed of the car"),
                .. MissingReading.If(symbol is null, TyrePath(plan), "speed symbol in the tyre's designation")],
            Value = _ => symbol!.Value,
            Low = top,
            Sentence = (_, value) => $"{size.Service!.SpeedSymbol} allows {new Measure(value, Units.KilometrePerHour, 0).Text}; the car "
                + $"reaches {new Measure(top, Units.KilometrePerHour, 0).Text}.",
        };
    }

    private static CornerCheck Circumference(CornerPlan plan)
    {
        double change = (RollingDiameter(plan.Parts) / RollingDiameter(plan.PartsNow!)) - 1, limit = Limit(plan.Limits.CircumferenceChange);
        return new CornerCheck
        {
            Kind = CheckCatalogue.RollingCircumference,
            Value = _ => change,
            Low = -limit,
            High = limit,
            Sentence = (_, value) => Math.Abs(value) < 0.0005 ? "The wheel rolls as far as the present one."
                : $"The wheel rolls {Percent(Math.Abs(value), 1)} {(value > 0 ? "further" : "less far")} a turn than the present one: "
                    + FormattableString.Invariant($"at a true 100 km/h the speedometer shows {100 / (1 + value):0.#}."),
        };
    }

    private static CornerCheck Scrub(CornerPlan plan)
    {
        double limit = Limit(plan.Limits.ScrubChange);
        var (wheel, now, kingpin) = (plan.Wheel, plan.WheelNow, plan.Clearance.Kingpin);
        double radiusChange = (RollingDiameter(plan.Parts) - RollingDiameter(plan.PartsNow!)) / 2;
        return new CornerCheck
        {
            Kind = CheckCatalogue.ScrubChange,
            PartName = plan.Axle.Steered ? "Scrub radius" : "Wheel's centre plane",
            Missing = [.. MissingReading.If(wheel is null || now is null, RimPath(plan), "offset of both wheels")],
            Value = n => Outward(n) - (plan.Axle.Steered && kingpin.IsGiven ? radiusChange * Math.Tan(n.X[kingpin]) : 0),
            Low = -limit,
            High = limit,
            Sentence = (n, value) => plan.Axle.Steered
                ? $"The centre plane moves {Mm(Math.Abs(Outward(n)))} {(Outward(n) >= 0 ? "outward" : "inward")}; the scrub radius "
                + $"changes by {Mm(value)}."
                : $"The centre plane moves {Mm(Math.Abs(value))} {(value >= 0 ? "outward" : "inward")}: bearings and geometry feel it.",
            Assumptions = plan.Axle.Steered && !kingpin.IsGiven
                ? ["kingpin inclination not given: the effect of the tyre's radius on the scrub radius is left out"] : [],
        };

        double Outward(CornerReader n) => wheel!.AxialCentre(n.X) - now!.AxialCentre(n.X);
    }

    /// <summary>Measured diameter where there is one, else the design diameter, m.</summary>
    internal static double RollingDiameter(CornerParts parts) => parts.Tyre?.OuterDiameter?.Si ?? parts.TyreSize!.OuterDiameter;

    private static string HubPath(CornerPlan plan, string field) => $"{plan.Place.Axle().Words()}/hub/{field}";

    private static string RimPath(CornerPlan plan) =>
        plan.Parts.Wheel is { } wheel ? $"parts/wheels/{wheel.Id}/designation" : plan.BuildPath + "/wheel";

    private static string TyrePath(CornerPlan plan) =>
        plan.Parts.Tyre is { } tyre ? $"parts/tyres/{tyre.Id}/designation" : plan.BuildPath + "/tyre";
}
