using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Cars;

/// <summary>One allowance as a build is judged with it.</summary>
/// <param name="Field">What it is.</param>
/// <param name="Value">How much.</param>
/// <param name="Origin">Who said so.</param>
/// <param name="Source">Of a default: where it comes from; empty for what was typed.</param>
public sealed record AllowanceLine(FieldShape Field, Reading Value, LimitOrigin Origin, string Source)
{
    /// <summary>In files and scripts.</summary>
    public string Id => Field.Name;

    public string Label => Field.Label;

    /// <summary>True for a line that widens doubt and moves no value.</summary>
    public bool IsDoubt => Allowances.IsDoubt(Field);
}

/// <summary>The allowances that a build is judged by: its own, else its car's, else the default for how it is driven.</summary>
public sealed record AllowancesInForce
{
    /// <summary>Road, track or rough.</summary>
    public required CarUse Use { get; init; }

    /// <summary>In the order of <see cref="Allowances.Lines"/>.</summary>
    public required IReadOnlyList<AllowanceLine> Lines { get; init; }

    /// <summary>
    /// What a file of before these allowances said under limits: the tyre leans to each side by this, m. It then stands for all that
    /// moves the tyre sideways. Null where none says so.
    /// </summary>
    public double? LeanBothWays { get; init; }

    /// <summary>A line by the name of its property.</summary>
    public AllowanceLine Line(string property) => Lines.First(l => l.Field.PropertyName == property);

    /// <summary>A line's value, SI, by the name of its property.</summary>
    public double Of(string property) => Line(property).Value.Si;

    public static AllowancesInForce Of(Car car, Build build)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(build);
        var use = UseOf(car, build);
        double? lean = (build.Limits.TyreShift ?? car.Limits.TyreShift)?.Si;
        AllowanceLine[] lines = [.. Allowances.Lines.Select(f => Line(f, car, build, use, lean))];
        return new AllowancesInForce { Use = use, LeanBothWays = lean, Lines = lines };
    }

    /// <summary>How a build is driven: as it says, else as its car says, else on the road.</summary>
    public static CarUse UseOf(Car car, Build build)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(build);
        return build.Allowances.Use != CarUse.Usual ? build.Allowances.Use
            : car.Allowances.Use != CarUse.Usual ? car.Allowances.Use : CarUse.Road;
    }

    private static AllowanceLine Line(FieldShape field, Car car, Build build, CarUse use, double? lean)
    {
        bool growth = field.PropertyName == nameof(Allowances.TyreGrowth);
        if (((Reading?)field.Get(build.Allowances) ?? (growth ? build.Limits.TyreGrowth : null)) is { } own)
        {
            return new(field, own, LimitOrigin.Build, "");
        }

        if (((Reading?)field.Get(car.Allowances) ?? (growth ? car.Limits.TyreGrowth : null)) is { } cars)
        {
            return new(field, cars, LimitOrigin.Car, "");
        }

        // A lean to both sides that an older file says is all that moves the tyre sideways.
        bool sideways = field.PropertyName is nameof(Allowances.TyreTopOut) or nameof(Allowances.TyreIn) or nameof(Allowances.TyreOnWheel);
        return lean is not null && sideways
            ? new(field, (Reading)field.Get(Allowances.None)!, build.Limits.TyreShift is not null ? LimitOrigin.Build : LimitOrigin.Car, "")
            : new(field, (Reading)field.Get(AllowanceDefaults.For(use))!, LimitOrigin.Default, AllowanceDefaults.SourceOf(field));
    }
}
