using Cornerwright.Garage.Quantities;

namespace Cornerwright.Garage.Fields;

/// <summary>
/// Says of a property what people call it, how it is measured and what is allowed. The file format, its schema,
/// the validation and the entry forms all read it, so that they cannot disagree.
/// </summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class FieldAttribute : Attribute
{
    /// <summary>A field that is not a quantity.</summary>
    public FieldAttribute(string label) => Label = label;

    /// <summary>A reading: its dimension, and the allowed range in <paramref name="unit"/>.</summary>
    public FieldAttribute(string label, Dimension dimension, string unit, double min, double max) =>
        (Label, Dimension, Unit, Min, Max, IsQuantity) = (label, dimension, unit, min, max, true);

    /// <summary>The trade's word for it.</summary>
    public string Label { get; }

    public bool IsQuantity { get; }
    public Dimension Dimension { get; }

    /// <summary>The unit people read, and in which <see cref="Min"/> and <see cref="Max"/> stand.</summary>
    public string Unit { get; } = "";

    public double Min { get; } = double.NegativeInfinity;
    public double Max { get; } = double.PositiveInfinity;

    /// <summary>Where the tape goes: one sentence for the person who measures.</summary>
    public string How { get; init; } = "";

    /// <summary>A document without it is refused.</summary>
    public bool Needed { get; init; }

    /// <summary>Another part or thing of the same document: the collection its id must be found in.</summary>
    public string RefersTo { get; init; } = "";
}
