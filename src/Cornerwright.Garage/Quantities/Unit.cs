namespace Cornerwright.Garage.Quantities;

/// <summary>A unit people type: how it is written, what it measures, and its exact factor to SI.</summary>
/// <remarks>
/// The factor is kept as a fraction (25.4 mm = 254/10000 m), so that decimal readings convert without a stray last digit.
/// There is one instance of each unit (<see cref="Units"/>): comparing references compares units.
/// </remarks>
public sealed class Unit
{
    private readonly double _times;
    private readonly double _over;

    internal Unit(Dimension dimension, string symbol, double times, double over, params string[] spellings)
    {
        (Dimension, Symbol, _times, _over) = (dimension, symbol, times, over);
        Spellings = spellings;
    }

    public Dimension Dimension { get; }

    /// <summary>As we print it, e.g. "kgf/mm"; empty for a plain number.</summary>
    public string Symbol { get; }

    /// <summary>SI units in one of this unit.</summary>
    public double SiPerUnit => _times / _over;

    /// <summary>Every accepted way to type it, in small letters, products with "·".</summary>
    public IReadOnlyList<string> Spellings { get; }

    public double ToSi(double number) => number * _times / _over;

    public double FromSi(double si) => si * _over / _times;

    public override string ToString() => Symbol;
}
