using Cornerwright.Garage.Fields;

namespace Cornerwright.Garage.Allowing;

/// <summary>What is allowed where nobody said otherwise, and where each number comes from.</summary>
/// <remarks>
/// For a car of about 1.45 t with rubber bushes and tyres of 315 mm radius; side force of its outer front wheel 2.8 kN at 0.5 g, 8.5 kN at
/// 1.2 g (statics). Sources and sums: docs/theory/allowances.md.
/// </remarks>
public static class AllowanceDefaults
{
    private sealed record Row(string Road, string Track, string Rough, string Source);

    private static readonly Dictionary<string, Row> Rows = new(StringComparer.Ordinal)
    {
        [nameof(Allowances.TyreGrowth)] = new("1.5 mm", "3.5 mm", "1 mm",
            "example tyre set of the Magic Formula 6.1 model, 205/60 R15: 1.7 mm at 160 km/h, 2.7 mm at 200 km/h; heat from memory"),
        [nameof(Allowances.TyreTopOut)] = new("3 mm", "8 mm", "3 mm",
            "camber give of four front axles, median 0.17 deg/kN (Kawata and others, Trans. JSME 89, 2023, Table 2, as quoted elsewhere), "
            + "and an example tyre's rigid-ring numbers: 1.0 mm/kN; the wheel centre's part from memory"),
        [nameof(Allowances.TyreIn)] = new("7 mm", "20 mm", "7 mm",
            "an example tyre's rigid-ring numbers, 1.9 mm/kN, and 0.5 mm/kN at the wheel centre from memory"),
        [nameof(Allowances.TyreOnWheel)] = new("5 mm", "16 mm", "5 mm", "an example tyre's rigid-ring numbers, 1.9 mm/kN"),
        [nameof(Allowances.WheelBack)] = new("6 mm", "6 mm", "10 mm",
            "2 to 3 mm/kN with rubber bushes, half of that with hard ones: from memory"),
        [nameof(Allowances.BumpBeyond)] = new("3 mm", "3 mm", "6 mm", "rubber top mount, 1.5 mm/kN: from memory, rough"),
        [nameof(Allowances.Settling)] = new("2 mm", "2 mm", "2 mm", "common practice, no source"),
        [nameof(Allowances.RideFriction)] = new("4 mm", "4 mm", "4 mm",
            "half the friction band of a strut car, 1 to 10 mm: from memory"),
        [nameof(Allowances.RunoutRadial)] = new("1 mm", "1 mm", "1 mm",
            "workshop limits of several makes for tyre on wheel, full indicator"),
        [nameof(Allowances.RunoutSideways)] =
            new("1.3 mm", "1.3 mm", "1.3 mm", "workshop limits of several makes for tyre on wheel, full indicator"),
        [nameof(Allowances.SpringRate)] = new("5 %", "5 %", "5 %",
            "road suspension springs, 3 to 7 %: from memory; catalogue springs 10 %"),
        [nameof(Allowances.SpringLength)] = new("2.4 mm", "2.4 mm", "2.4 mm",
            "EN 15800 grade 2 for a coil of 109 N/mm; softer ones vary more"),
    };

    private static readonly Dictionary<CarUse, Allowances> All = new[] { CarUse.Road, CarUse.Track, CarUse.Rough }.ToDictionary(
        use => use,
        use => Allowances.AllLines(field => Amount(Of(field), use)));

    /// <summary>Every line for a car driven so; <see cref="CarUse.Usual"/> counts as the road.</summary>
    public static Allowances For(CarUse use) => All[use == CarUse.Usual ? CarUse.Road : use];

    /// <summary>Where a line's default comes from.</summary>
    public static string SourceOf(FieldShape line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return Of(line).Source;
    }

    private static string Amount(Row row, CarUse use) => use switch
    {
        CarUse.Track => row.Track,
        CarUse.Rough => row.Rough,
        _ => row.Road,
    };

    private static Row Of(FieldShape line) => Rows[line.PropertyName];
}
