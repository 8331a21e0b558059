namespace Cornerwright.Mechanics.Springs;

/// <summary>Spring formulas turned round: which wire, index or number of coils gives what is wanted.</summary>
public static class WireChoice
{
    /// <summary>Active coils for a rate: G d⁴ / (8 D³ k).</summary>
    /// <param name="rate">k, N/m.</param>
    /// <param name="wireDiameter">d, m.</param>
    /// <param name="meanDiameter">D, m.</param>
    /// <param name="shearModulus">G, Pa.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above 0.</exception>
    /// <remarks>Source: EN 13906-1:2013, spring rate solved for n.</remarks>
    public static double ActiveCoils(double rate, double wireDiameter, double meanDiameter, double shearModulus)
    {
        Require.Positive(rate);
        return new WireSpring(wireDiameter, meanDiameter, 1, shearModulus).Rate() / rate;
    }

    /// <summary>Index for a rate: cube root of G d / (8 k n).</summary>
    /// <param name="rate">k, N/m.</param>
    /// <param name="wireDiameter">d, m.</param>
    /// <param name="activeCoils">n.</param>
    /// <param name="shearModulus">G, Pa.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above 0.</exception>
    /// <remarks>Source: EN 13906-1:2013, spring rate with D = C d, solved for C.</remarks>
    public static double IndexForRate(double rate, double wireDiameter, double activeCoils, double shearModulus)
    {
        Require.Positive(rate);
        Require.Positive(wireDiameter);
        Require.Positive(activeCoils);
        Require.Positive(shearModulus);
        return Math.Cbrt(shearModulus * wireDiameter / (8 * rate * activeCoils));
    }

    /// <summary>Thinnest wire that keeps the stress, m: √(8 F C k / (π τ)).</summary>
    /// <param name="force">F, N.</param>
    /// <param name="index">C.</param>
    /// <param name="stress">Allowed τ, Pa.</param>
    /// <param name="factor">k, from <see cref="CoilStressFactor"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above 0.</exception>
    /// <remarks>Source: Shigley, 10th ed., eq. 10-7 with D = C d, solved for d.</remarks>
    public static double WireDiameter(double force, double index, double stress, double factor)
    {
        Require.Positive(force);
        Require.Positive(index);
        Require.Positive(stress);
        Require.Positive(factor);
        return Math.Sqrt(8 * force * index * factor / (Math.PI * stress));
    }

    /// <summary>
    /// Index at which a wire carries a force at a stress, with the factor of EN 13906-1 (Bergsträsser):
    /// C = (2α-β)/(4β) + √(((2α-β)/(4β))² - 3α/(4β)), α the stress, β = 8 F/(π d²). Null where no coil can carry it.
    /// </summary>
    /// <param name="force">F, N.</param>
    /// <param name="wireDiameter">d, m.</param>
    /// <param name="stress">τ, Pa.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above 0.</exception>
    /// <remarks>Source: Shigley, 10th ed., eq. 10-23.</remarks>
    public static double? IndexForStress(double force, double wireDiameter, double stress)
    {
        Require.Positive(force);
        Require.Positive(wireDiameter);
        Require.Positive(stress);
        double beta = 8 * force / (Math.PI * wireDiameter * wireDiameter);
        double half = ((2 * stress) - beta) / (4 * beta);
        double radicand = (half * half) - (3 * stress / (4 * beta));
        return radicand >= 0 && half > 0 ? half + Math.Sqrt(radicand) : null;
    }

    /// <summary>Least tensile strength of a drawn wire, Pa: A/dᵐ, with A given for a diameter of 1 m.</summary>
    /// <param name="coefficient">A, Pa·mᵐ: tables give MPa·mmᵐ; multiply by 10⁶·10⁻³ᵐ.</param>
    /// <param name="exponent">m.</param>
    /// <param name="wireDiameter">d, m.</param>
    /// <exception cref="ArgumentOutOfRangeException">Coefficient or diameter not above 0, or exponent not finite.</exception>
    /// <remarks>Source: Shigley, 10th ed., eq. 10-14 and table 10-4.</remarks>
    public static double TensileStrength(double coefficient, double exponent, double wireDiameter)
    {
        Require.Positive(coefficient);
        Require.Finite(exponent);
        Require.Positive(wireDiameter);
        return coefficient / Math.Pow(wireDiameter, exponent);
    }
}
