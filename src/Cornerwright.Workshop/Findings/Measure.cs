using System.Globalization;
using Cornerwright.Garage.Quantities;

namespace Cornerwright.Workshop.Findings;

/// <summary>A computed number with the unit in which people read it.</summary>
/// <param name="Si">SI unit of the unit's dimension; always finite.</param>
/// <param name="Decimals">Shown after the point.</param>
public readonly record struct Measure(double Si, Unit Unit, int Decimals)
{
    /// <summary>The number in <see cref="Unit"/>.</summary>
    public double Shown => Unit.FromSi(Si);

    /// <summary>"4.1 mm", "2.25 turns".</summary>
    public string Text => (Number + " " + Unit.Symbol).TrimEnd();

    /// <summary>The number alone; a zero never carries a minus sign.</summary>
    public string Number
    {
        get
        {
            double rounded = Math.Round(Shown, Decimals, MidpointRounding.AwayFromZero);
            return (rounded == 0 ? 0 : rounded).ToString("F" + Decimals, CultureInfo.InvariantCulture);
        }
    }

    public Measure With(double si) => this with { Si = si };

    public override string ToString() => Text;
}
