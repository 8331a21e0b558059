using Cornerwright.Garage.Quantities;

namespace Cornerwright.Garage.Readings;

/// <summary>What the amount of a tolerance means.</summary>
public enum ToleranceKind
{
    /// <summary>About 19 readings in 20 lie within the amount: a normal distribution, standard deviation amount/2.</summary>
    TwoSigma,

    /// <summary>No reading lies outside the amount: a uniform distribution, standard deviation amount/√3.</summary>
    HalfRange,
}

/// <summary>How far a reading may be off, either way.</summary>
public sealed record Tolerance(Quantity Amount, ToleranceKind Kind)
{
    /// <summary>SI unit of the reading.</summary>
    /// <remarks>Source: JCGM 100:2008 (GUM), 4.3.4 and 4.3.7.</remarks>
    public double StandardDeviation => Kind == ToleranceKind.TwoSigma ? Amount.Si / 2 : Amount.Si / Math.Sqrt(3);
}
