namespace Cornerwright.Workshop.Relations;

/// <summary>How well numbers that bear on each other go together.</summary>
public enum Band
{
    Fine,

    /// <summary>Seldom so on a real car: asked, and marked until it is confirmed with a word of why.</summary>
    Surprising,

    /// <summary>Physically impossible, or off by a factor: no build holds on it until it is confirmed.</summary>
    CannotBe,
}

/// <summary>The limits between which a value is fine, and those outside of which it cannot be; all in the value's own unit.</summary>
/// <param name="HardLow">Below it the value cannot be.</param>
/// <param name="Low">Least that is fine.</param>
/// <param name="High">Greatest that is fine.</param>
/// <param name="HardHigh">Above it the value cannot be.</param>
internal readonly record struct Bands(double HardLow, double Low, double High, double HardHigh)
{
    /// <summary>Fine between the two, else surprising, however far off.</summary>
    public static Bands Asked(double low, double high) => new(double.NegativeInfinity, low, high, double.PositiveInfinity);

    /// <summary>Fine up to a size either way, cannot be beyond another.</summary>
    public static Bands Around(double fine, double hard = double.PositiveInfinity) => new(-hard, -fine, fine, hard);

    public Bands Scaled(double factor) => new(HardLow * factor, Low * factor, High * factor, HardHigh * factor);

    /// <summary>A value that is no number cannot be.</summary>
    public Band Of(double value) => !(value >= HardLow && value <= HardHigh) ? Band.CannotBe
        : value >= Low && value <= High ? Band.Fine
        : Band.Surprising;
}
