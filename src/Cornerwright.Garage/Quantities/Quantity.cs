using Cornerwright.Garage.Problems;

namespace Cornerwright.Garage.Quantities;

/// <summary>A value as a person typed it, and the SI number used. The typed text is never lost or rewritten.</summary>
/// <remarks>
/// Made by <see cref="QuantityText"/> from text, or by <see cref="Of"/> from a number (a slider, a demo). Always finite.
/// </remarks>
public sealed record Quantity
{
    internal Quantity(string typed, double number, Unit unit, bool unitAssumed) =>
        (Typed, Number, Unit, UnitAssumed, Si) = (typed, number, unit, unitAssumed, unit.ToSi(number));

    /// <summary>Exactly what was typed, blanks included.</summary>
    public string Typed { get; }

    /// <summary>The number in <see cref="Unit"/>; of 5' 3" it is 5.25 (feet), of 1°30' it is 1.5 (degrees).</summary>
    public double Number { get; }

    /// <summary>The unit typed, the first one of several.</summary>
    public Unit Unit { get; }

    /// <summary>True if no unit was typed and the field's own was taken: to be shown with the value.</summary>
    public bool UnitAssumed { get; }

    /// <summary>The value in SI (m, N, kg, rad, Pa...; see <see cref="Quantities.Dimension"/>).</summary>
    public double Si { get; }

    public Dimension Dimension => Unit.Dimension;

    /// <summary>How it was understood, as plain decimals with the unit; parses back to the same value.</summary>
    public string Understood => QuantityText.Plain(Number, Unit);

    /// <summary>A quantity from a number in a unit; its typed text is the plain way to write it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite: our own bug, never the user's.</exception>
    public static Quantity Of(double number, Unit unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        if (!double.IsFinite(number))
        {
            throw new ArgumentOutOfRangeException(nameof(number), number, "A quantity is a finite number.");
        }

        return new(QuantityText.Plain(number, unit), number, unit, unitAssumed: false);
    }

    /// <summary>Null if the value lies within the limits, otherwise the problem, with the limits in the unit typed.</summary>
    /// <param name="minSi">Least allowed, SI, itself allowed.</param>
    /// <param name="maxSi">Greatest allowed, SI, itself allowed.</param>
    /// <param name="field">Where, in the trade's words.</param>
    /// <param name="cure">What to do; a general sentence if none is given.</param>
    public Problem? RequireWithin(double minSi, double maxSi, string field, string? cure = null)
    {
        if (Si >= minSi && Si <= maxSi)
        {
            return null;
        }

        string low = QuantityText.Short(minSi, Unit);
        string high = QuantityText.Short(maxSi, Unit);
        string way = Si < minSi ? "smaller than allowed" : "larger than allowed";
        string assumed = UnitAssumed ? $" (no unit typed, taken as {Understood})" : "";
        return new Problem(field, Typed, $"{low} to {high}", cure ?? $"It is {way}{assumed}: check the number and its unit.");
    }

    public override string ToString() => UnitAssumed ? Understood : Typed;
}
