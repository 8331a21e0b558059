using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Allowing;

/// <summary>
/// What the car does on the road that no tape shows as it stands. Each line left out takes the default for how the car is driven
/// (<see cref="AllowanceDefaults"/>); 0 takes it away. Some move a value, others widen its doubt
/// (<see cref="IsDoubt"/>): nothing counts as both.
/// </summary>
public sealed record Allowances
{
    [Field("Driven on", How = "Road, track or rough road: picks the defaults below. Usual: a build goes by its car, a car by the road.")]
    public CarUse Use { get; init; }

    [Field("Tyre grows at speed by", Dimension.Length, "mm", 0, 40, How = "On its radius, in every clearance.")]
    public Reading? TyreGrowth { get; init; }

    [Field("Top of the tyre leans outboard by", Dimension.Length, "mm", 0, 40,
        How = "Under side force, outer wheel: takes from the gap to the arch lip.")]
    public Reading? TyreTopOut { get; init; }

    [Field("Tyre moves inboard at hub height by", Dimension.Length, "mm", 0, 60,
        How = "Under side force, outer wheel: takes from liner and chassis leg. Below the hub more, above it less, in a straight line.")]
    public Reading? TyreIn { get; init; }

    [Field("Tyre moves inboard on its own wheel by", Dimension.Length, "mm", 0, 60,
        How = "At hub height, under side force: all that counts against strut and knuckle, which move with the wheel.")]
    public Reading? TyreOnWheel { get; init; }

    [Field("Wheel moves rearward by", Dimension.Length, "mm", 0, 60, How = "In braking and over bumps.")]
    public Reading? WheelBack { get; init; }

    [Field("Bump travel beyond the stop", Dimension.Length, "mm", 0, 60,
        How = "Of the wheel, beyond what was read by hand: rubber mounts give. A solid top mount: 0.")]
    public Reading? BumpBeyond { get; init; }

    [Field("New springs settle by", Dimension.Length, "mm", 0, 30, How = "Of their length, in the first weeks.")]
    public Reading? Settling { get; init; }

    [Field("Doubt of the ride height from friction", Dimension.Length, "mm", 0, 40,
        How = "Two sigma: where in its friction band the car stood when it was measured, and will stand.")]
    public Reading? RideFriction { get; init; }

    [Field("Doubt of the tyre's radius from run-out", Dimension.Length, "mm", 0, 10, How = "Two sigma.")]
    public Reading? RunoutRadial { get; init; }

    [Field("Doubt of the tyre's sides from run-out", Dimension.Length, "mm", 0, 10, How = "Two sigma, each side.")]
    public Reading? RunoutSideways { get; init; }

    [Field("Doubt of a spring's rate off its data sheet", Dimension.Ratio, "%", 0, 30,
        How = "Two sigma, where no tolerance was typed: 10 for a catalogue spring, 2 with a test slip.")]
    public Reading? SpringRate { get; init; }

    [Field("Doubt of a spring's length off its data sheet", Dimension.Length, "mm", 0, 20,
        How = "Two sigma, where no tolerance was typed.")]
    public Reading? SpringLength { get; init; }

    /// <summary>Every line 0: for a car that stands still, as it is measured.</summary>
    public static Allowances None { get; } = AllLines(field => field.Unit!.Symbol.Length > 0 ? "0 " + field.Unit.Symbol : "0");

    /// <summary>The lines, in order: every field but how the car is driven.</summary>
    public static IReadOnlyList<FieldShape> Lines { get; } =
        [.. RecordShape.Of<Allowances>().Fields.Where(f => f.Kind == FieldKind.Reading)];

    /// <summary>True for a line that widens doubt and moves no value.</summary>
    public static bool IsDoubt(FieldShape line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return line.PropertyName is nameof(RideFriction) or nameof(RunoutRadial) or nameof(RunoutSideways) or nameof(SpringRate)
            or nameof(SpringLength);
    }

    internal static Allowances AllLines(Func<FieldShape, string> text)
    {
        var all = new Allowances();
        foreach (var field in RecordShape.Of<Allowances>().Fields.Where(f => f.Kind == FieldKind.Reading))
        {
            field.Set(all, Reading.Of(text(field), field.Words.Dimension));
        }

        return all;
    }
}
