namespace Cornerwright.Mechanics.Loads;

/// <summary>Two natural frequencies of body and wheel, undamped, rad/s.</summary>
/// <param name="Body">The lower: the body moves most.</param>
/// <param name="Wheel">The higher: the wheel hops.</param>
public readonly record struct QuarterCarFrequencies(double Body, double Wheel);

/// <summary>One corner as two masses: body over spring over wheel over tyre.</summary>
public static class QuarterCar
{
    /// <summary>Natural frequencies, rad/s, without damping.</summary>
    /// <param name="sprungMass">ms, kg, above 0.</param>
    /// <param name="unsprungMass">mu, kg, above 0.</param>
    /// <param name="wheelRate">ks at the wheel, N/m, above 0.</param>
    /// <param name="tyreRate">kt, N/m, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument not above 0.</exception>
    /// <remarks>
    /// Roots of ms mu w⁴ - ((ks + kt) ms + ks mu) w² + ks kt = 0; the lower from the product of the roots, so that it
    /// loses no digits. Source: Barton and Fieldhouse, Automotive Chassis Engineering (Springer, 2018), eq. 3.83.
    /// </remarks>
    public static QuarterCarFrequencies Frequencies(double sprungMass, double unsprungMass, double wheelRate, double tyreRate)
    {
        Require.Positive(sprungMass);
        Require.Positive(unsprungMass);
        Require.Positive(wheelRate);
        Require.Positive(tyreRate);
        double a = sprungMass * unsprungMass;
        double b = ((wheelRate + tyreRate) * sprungMass) + (wheelRate * unsprungMass);
        double c = wheelRate * tyreRate;

        // b² > 4ac for all positive masses and rates: the roots are real and apart.
        double high = (b + Math.Sqrt(Math.Max(0, (b * b) - (4 * a * c)))) / (2 * a);
        return new(Math.Sqrt(c / (a * high)), Math.Sqrt(high));
    }
}
