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
    public static IEnumerable<CornerCheck> For(CornerPlan plan)
    {
        var (wheel, rim, size) = (plan.Parts.Wheel, plan.Parts.Rim, plan.Parts.TyreSize);
        if (wheel is null || rim is null)
        {
            yield break;
        }

        foreach (var check in HubChecks.For(plan, rim).Concat(BoltChecks.For(plan)).Concat(Calliper(plan)))
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
            if (plan.Corner.WingEdge is not null || plan.Limits.Poke is not null)
            {
                yield return Poke(plan);
            }
        }
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
            Missing = [.. plan.Inputs.Lacking(proud, room),
                .. MissingReading.If(spacer is null, HubChecks.RimPath(plan), "wheel offset and tyre")],
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
        double? pressure = plan.Build.At(plan.Place).Pressure?.Si, top = plan.Car.TopSpeed?.Si;
        var inflation = size.Inflation;
        bool lowered = pressure < inflation.Reference;
        double share = AtSpeed(size, top);
        double capacity = share * TyreLoad.AtPressure(
            size.GreatestLoad ?? 0, pressure ?? inflation.Reference, inflation.Reference, inflation.Exponent);
        double kilograms = capacity / Units.StandardGravity;
        string at = (lowered ? $" at {new Measure(pressure!.Value, Units.Bar, 1).Text}" : "")
            + (share < 1 ? $"{(lowered ? " and" : " at")} {new Measure(top!.Value, Units.KilometrePerHour, 0).Text}" : "");
        return new CornerCheck
        {
            Kind = CheckCatalogue.TyreLoad,
            Missing = [.. MissingReading.If(size.GreatestLoad is null, TyrePath(plan), "load index in the tyre's designation"),
                .. MissingReading.If(heaviest < 0, "loadCases", "corner loads")],
            Value = n => (kilograms / n.X[plan.Loads[heaviest].Load]) - 1,
            Low = Limit(plan.Limits.LoadReserve),
            Sentence = (n, _) => $"The tyre bears {Kg(kilograms)}{at} and carries "
                + $"{Kg(n.X[plan.Loads[heaviest].Load])} in load case {plan.Loads[heaviest].Case.Name}.",
            Assumptions = [.. Assumed()],
        };

        IEnumerable<string> Assumed()
        {
            if (pressure is null)
            {
                yield return "tyre pressure not given: taken as high enough for the full load index";
            }

            if (lowered && inflation.Assumption.Length > 0)
            {
                yield return inflation.Assumption;
            }

            if (top is null && SpeedSymbol.LoadShare(size.Service?.SpeedSymbol, SpeedOf(size) ?? 0) < 1)
            {
                yield return "top speed of the car not given: what the tyre bears less when driven that fast is left out";
            }
        }
    }

    /// <summary>Of the load index's load, what the tyre may bear at the car's top speed, or at its own where the car is faster.</summary>
    private static double AtSpeed(TyreDesignation size, double? top) =>
        SpeedSymbol.LoadShare(size.Service?.SpeedSymbol, Math.Min(top ?? 0, SpeedOf(size) ?? 0)) ?? 1;

    private static double? SpeedOf(TyreDesignation size) => SpeedSymbol.MetresPerSecond(size.Service?.SpeedSymbol);

    private static CornerCheck Speed(CornerPlan plan, TyreDesignation size)
    {
        // 210 km/h through m/s is still 210.
        const double Rounding = 1e-6;
        double top = plan.Car.TopSpeed?.Si ?? 0;
        double? symbol = SpeedOf(size);
        return new CornerCheck
        {
            Kind = CheckCatalogue.TyreSpeed,
            Missing = [.. MissingReading.If(plan.Car.TopSpeed is null, "topSpeed", "top speed of the car"),
                .. MissingReading.If(symbol is null, TyrePath(plan), "speed symbol in the tyre's designation")],
            Value = _ => symbol!.Value,
            Low = Math.Abs(top - (symbol ?? 0)) < Rounding ? symbol!.Value : top,
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
            Missing = [.. MissingReading.If(wheel is null || now is null, HubChecks.RimPath(plan), "offset of both wheels")],
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

    /// <summary>Poke past the wing's edge, or how far inside it the tyre stands: by how much its widest place moves.</summary>
    private static CornerCheck Poke(CornerPlan plan)
    {
        var edge = plan.Inputs.Add(plan.Path + "/wingEdge", "how far the tyre stands inside the wing's edge", plan.Corner.WingEdge);
        var (wheel, now) = (plan.Wheel, plan.WheelNow);
        return new CornerCheck
        {
            Kind = CheckCatalogue.Poke,
            Missing = [.. plan.Inputs.Lacking(edge),
                .. MissingReading.If(wheel is null || now is null, HubChecks.RimPath(plan), "offset and tyre of both wheels")],
            Value = n => n.X[edge] - (wheel!.OuterFace(n.X) - now!.OuterFace(n.X)),
            Low = -(plan.Limits.Poke?.Si ?? 0),
            Sentence = (n, value) => $"The tyre stands {Mm(Math.Abs(value))} {(value >= 0 ? "inside" : "out past")} the wing's edge; "
                + $"now {Mm(Math.Abs(n.X[edge]))} {(n.X[edge] >= 0 ? "inside" : "out past")}.",
            Assumptions = ["wing's edge: the height and camber at which it was read"],
        };
    }

    /// <summary>Measured diameter where there is one, else the design diameter, m.</summary>
    internal static double RollingDiameter(CornerParts parts) => parts.Tyre?.OuterDiameter?.Si ?? parts.TyreSize!.OuterDiameter;

    private static string TyrePath(CornerPlan plan) =>
        plan.Parts.Tyre is { } tyre ? $"parts/tyres/{tyre.Id}/designation" : plan.BuildPath + "/tyre";
}
