using Cornerwright.Garage.Parts;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Findings;
using Kinds = Cornerwright.Workshop.Relations.RelationCatalogue;

namespace Cornerwright.Workshop.Relations;

/// <summary>The numbers of one spring beside each other.</summary>
/// <remarks>Source: docs/theory/relations.md, "Springs".</remarks>
internal static class SpringRelations
{
    public static void Look(RelationBook book, Spring spring)
    {
        var s = new Sheet(spring);
        if (spring.Role == SpringRole.Helper)
        {
            book.Add(Kinds.HelperClosing, s.Path, s.Rate.Si * s.Travel, Bands.Asked(300, 800),
                () => $"{s.Name} closes at {Say.N(s.Rate.Si * s.Travel)} by its rate and travel; helpers close at 300 to 800 N.",
                s.Rate, s.Free, s.Solid);
        }
        else if (spring.Role == SpringRole.Tender)
        {
            book.Add(Kinds.TenderClosing, s.Path, s.Rate.Si * s.Travel / s.Crossover.Si, new(0.25, 0.72, 1.4, 4),
                () => $"{s.Name} closes at {Say.N(s.Rate.Si * s.Travel)} by its rate and travel, not near the {s.Crossover.Typed} planned.",
                s.Rate, s.Free, s.Solid, s.Crossover);
        }

        // Helpers and many tenders are of flat wire, and no formula for round wire holds.
        if (spring.Role == SpringRole.Main || spring.WireDiameter is not null)
        {
            Wire(book, s);
        }

        Lengths(book, s, spring.Role);
        Curve(book, spring, s);
    }

    private static void Wire(RelationBook book, Sheet s)
    {
        double drawn = (s.Outer.Si - s.Inner.Si) / 2;
        book.Add(Kinds.SpringWire, s.Path, s.Wire.Si / drawn, new(0.5, 0.87, 1.15, 2),
            () => $"{s.Name} has {s.Wire.Typed} of wire, and {Say.Mm(drawn)} between its inner and outer diameter.",
            s.Wire, s.Inner, s.Outer);
        double d = s.Wire.Given ? s.Wire.Si : drawn;
        double mean = s.Inner.Given && s.Outer.Given ? (s.Inner.Si + s.Outer.Si) / 2 : s.Inner.Given ? s.Inner.Si + d : s.Outer.Si - d;
        Num[] shape = [.. new[] { s.Inner, s.Outer, s.Wire }.Where(n => n.Given)];
        if (!(d > 0) || !(mean > d))
        {
            return;
        }

        book.Add(Kinds.SpringIndex, s.Path, mean / d, new(2.5, 4, 14, 25),
            () => FormattableString.Invariant($"{s.Name} is {mean / d:0.#} wires wide; a coil spring is 4 to 14."), shape);
        double byLength = (s.Solid.Si / d) - Dead(s.Ends);
        double coils = s.Coils.Given ? s.Coils.Si : byLength;
        if (s.Coils.Given)
        {
            double made = SolidLengthRule.Textbook(s.Coils.Si + SolidLengthRule.DeadCoils(s.Ends), d, s.Ends);
            book.Add(Kinds.SpringSolid, s.Path, s.Solid.Si / made, new(0.6, 0.85, 1.12, 1.6),
                () => FormattableString.Invariant($"{s.Name} is {s.Solid.Typed} solid; {s.Coils.Typed} active coils of ")
                    + $"{Say.Mm(d)} wire make about {Say.Mm(made, 0)}.", [.. shape, s.Solid, s.Coils]);
        }

        if (!s.Rate.Given)
        {
            return;
        }

        double formula = coils > 0.3 ? new WireSpring(d, mean, coils, SpringSteel.ShearModulusOilTempered).Rate() : double.NaN;
        book.Add(Kinds.SpringRate, s.Path, s.Rate.Si / formula,
            s.Coils.Given ? new(0.4, 0.8, 1.25, 2.5) : new(0.3, 0.7, 1.45, 3.3),
            () => $"{s.Name} has a rate of {s.Rate.Typed}; its wire, diameters and {(s.Coils.Given ? "coils" : "solid height")} make about "
                + FormattableString.Invariant($"{formula / 1000:0.#} N/mm."), [.. shape, s.Coils.Given ? s.Coils : s.Solid, s.Rate]);
        double stress = new WireSpring(d, mean, 1, SpringSteel.ShearModulusOilTempered).ShearStress(Math.Max(0, s.Rate.Si * s.Travel));
        book.Add(Kinds.SpringStress, s.Path, stress / s.Strength.Si, new(0.1, 0.25, 0.75, 1.2),
            () => $"Solid, the wire of {s.Name} bears {Say.Percent(stress / s.Strength.Si)} of its strength in shear; makers stay near "
                + $"56 %.",
            [.. shape, s.Rate, s.Free, s.Solid, s.Strength]);
    }

    private static void Lengths(RelationBook book, Sheet s, SpringRole role)
    {
        var slack = role == SpringRole.Main ? new Bands(1.05, 1.3, 5, 9) : new Bands(1.05, 1.7, 4.5, 12);
        book.Add(Kinds.SpringSlack, s.Path, s.Free.Si / s.Solid.Si, slack,
            () => FormattableString.Invariant($"{s.Name} is {s.Free.Si / s.Solid.Si:0.0} times as long free as solid."), s.Free, s.Solid);
        book.Add(Kinds.SpringTravel, s.Path, s.Greatest.Si / s.Travel, new(0.2, 0.6, 1.02, 1.15),
            () => $"{s.Name} may be compressed {s.Greatest.Typed} by its maker; from {s.Free.Typed} to {s.Solid.Typed} solid "
                + $"it has {Say.Mm(s.Travel, 0)}.", s.Greatest, s.Free, s.Solid);
    }

    private static void Curve(RelationBook book, Spring spring, Sheet s)
    {
        double before = 0, from = 0, last = double.NaN;
        for (int i = 0; i < spring.Curve.Count; i++)
        {
            var (x, f) = (Point(s, i, "deflection", spring.Curve[i].Deflection), Point(s, i, "force", spring.Curve[i].Force));
            double slope = (f.Si - before) / (x.Si - from);
            if (double.IsFinite(last))
            {
                double step = slope / last;
                book.Add(Kinds.SpringCurve, $"{s.Path}/curve/{i}", step, new(0.05, 0.4, 3, 20),
                    () => FormattableString.Invariant($"The curve of {s.Name} is {step:0.0} times as steep at {x.Typed} as before it."),
                        x, f);
            }

            (before, from, last) = (f.Si, x.Si, slope);
            if (i == spring.Curve.Count - 1)
            {
                book.Add(Kinds.SpringCurve, s.Path + "/curve", x.Si / s.Travel, new(0.1, 0.4, 1.03, 1.3),
                    () => $"The curve of {s.Name} ends at {x.Typed}; from free to solid it has {Say.Mm(s.Travel, 0)}.", x, s.Free, s.Solid);
            }
        }
    }

    private static Num Point(Sheet s, int i, string field, Garage.Readings.Reading? reading) =>
        Num.Of(FormattableString.Invariant($"{s.Path}/curve/{i}/{field}"), field, reading);

    private static double Dead(CoilEnds ends) => SolidLengthRule.DeadCoils(ends) + (ends == CoilEnds.ClosedAndGround ? 0 : 1);

    /// <summary>A spring's numbers by name.</summary>
    private sealed class Sheet(Spring spring)
    {
        public string Path { get; } = "parts/springs/" + spring.Id;
        public string Name { get; } = $"{Role(spring.Role)} \"{spring.Name}\"";
        public Num Rate { get; } = Of(spring, "rate", "rate", spring.Rate);
        public Num Free { get; } = Of(spring, "freeLength", "free length", spring.FreeLength);
        public Num Solid { get; } = Of(spring, "solidHeight", "solid height", spring.SolidHeight);
        public Num Inner { get; } = Of(spring, "innerDiameter", "inner diameter", spring.InnerDiameter);
        public Num Outer { get; } = Of(spring, "outerDiameter", "outer diameter", spring.OuterDiameter);
        public Num Wire { get; } = Of(spring, "wireDiameter", "wire diameter", spring.WireDiameter);
        public Num Coils { get; } = Of(spring, "activeCoils", "active coils", spring.ActiveCoils);
        public Num Greatest { get; } = Of(spring, "greatestDeflection", "greatest working deflection", spring.GreatestDeflection);
        public Num Strength { get; } = Of(spring, "tensileStrength", "tensile strength", spring.TensileStrength);
        public Num Crossover { get; } = Of(spring, "plannedCrossover", "planned crossover", spring.PlannedCrossover);

        public double Travel => Free.Si - Solid.Si;

        public CoilEnds Ends => spring.Ends switch
        {
            SpringEnds.ClosedAndGround => CoilEnds.ClosedAndGround,
            SpringEnds.Closed => CoilEnds.Closed,
            _ => CoilEnds.Open,
        };

        private static Num Of(Spring spring, string field, string label, Garage.Readings.Reading? reading) =>
            Num.Of($"parts/springs/{spring.Id}/{field}", label, reading);

        private static string Role(SpringRole role) => role switch
        {
            SpringRole.Helper => "helper spring",
            SpringRole.Tender => "tender spring",
            _ => "main spring",
        };
    }
}
