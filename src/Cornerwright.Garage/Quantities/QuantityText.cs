using Cornerwright.Garage.Problems;

namespace Cornerwright.Garage.Quantities;

/// <summary>Reads what people type for a quantity (docs/quantities.md) and writes values for people.</summary>
/// <remarks>
/// Reading never guesses: text with two meanings is refused with both spelled out. It never throws on any text,
/// takes at most 64 characters, and looks at each a bounded number of times.
/// </remarks>
public static partial class QuantityText
{
    /// <summary>Reads a quantity with its unit.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="expected">What the field measures.</param>
    /// <param name="field">Where, in the trade's words, for the message.</param>
    public static Checked<Quantity> Parse(string? text, Dimension expected, string field) =>
        ParseCore(text, expected, field, null);

    /// <summary>Reads a quantity; a bare number is taken in the field's own unit, and the quantity says so.</summary>
    /// <inheritdoc cref="Parse(string?, Dimension, string)"/>
    /// <param name="text">What was typed.</param>
    /// <param name="expected">What the field measures.</param>
    /// <param name="field">Where, in the trade's words, for the message.</param>
    /// <param name="defaultUnit">The unit printed beside the field; of the same dimension.</param>
    public static Checked<Quantity> Parse(string? text, Dimension expected, string field, Unit defaultUnit)
    {
        ArgumentNullException.ThrowIfNull(defaultUnit);
        return defaultUnit.Dimension == expected
            ? ParseCore(text, expected, field, defaultUnit)
            : throw new ArgumentException($"{defaultUnit.Symbol} does not measure {expected}.", nameof(defaultUnit));
    }

    /// <summary>Reads a tolerance: ±0.5 mm, +/-0.5 mm, +-0.5 mm or 0.5 mm; never negative.</summary>
    /// <inheritdoc cref="Parse(string?, Dimension, string)"/>
    /// <param name="text">What was typed.</param>
    /// <param name="expected">What the field measures.</param>
    /// <param name="field">Where, in the trade's words, for the message.</param>
    /// <param name="defaultUnit">The unit of a bare number; none: a unit must be typed.</param>
    public static Checked<Quantity> ParseTolerance(string? text, Dimension expected, string field, Unit? defaultUnit = null)
    {
        ReadOnlySpan<char> body = Characters.TrimTyped(text);
        int mark = ToleranceMark(body);
        if (text is { Length: <= Characters.TextLimit } && mark > 0)
        {
            body = Characters.Trim(body[mark..]);
            if (body.Length > 0 && (body[0] == '+' || body[0] == '±' || Characters.IsMinus(body[0])))
            {
                return Wrong(field, text, expected, "Write the sign once: ±0.5 mm, for example.");
            }
        }
        else
        {
            body = text;
        }

        var reader = new QuantityReader(body, expected, defaultUnit);
        if (!reader.Read())
        {
            return Wrong(field, text, expected, reader.Explanation());
        }

        return reader.Number >= 0
            ? Checked<Quantity>.From(new Quantity(text!, reader.Number, reader.Unit!, reader.UnitAssumed))
            : Checked<Quantity>.Wrong(new Problem(
                field, Characters.Shown(text), "a tolerance of 0 or more, e.g. ±0.5 mm",
                "Type how far the reading may be off either way, without a minus."));
    }

    private static Checked<Quantity> ParseCore(string? text, Dimension expected, string field, Unit? defaultUnit)
    {
        var reader = new QuantityReader(text, expected, defaultUnit);
        return reader.Read()
            ? Checked<Quantity>.From(new Quantity(text!, reader.Number, reader.Unit!, reader.UnitAssumed))
            : Wrong(field, text, expected, reader.Explanation());
    }

    private static Checked<Quantity> Wrong(string field, string? text, Dimension expected, string cure) =>
        Checked<Quantity>.Wrong(new Problem(field, Characters.Shown(text), QuantityReader.Allowed(expected), cure));

    private static int ToleranceMark(ReadOnlySpan<char> body) => body switch
    {
        ['±', ..] => 1,
        ['+', '/', var c, ..] when Characters.IsMinus(c) => 3,
        ['+', var c, ..] when Characters.IsMinus(c) => 2,
        _ => 0,
    };
}
