namespace Cornerwright.Mechanics.Springs;

/// <summary>How the ends of a spring are held against tilting and sliding, with the coefficient ν of EN 13906-1.</summary>
public enum SpringSeating
{
    /// <summary>Flat on two parallel guided seats: ν = 0.5.</summary>
    BothFixed,

    /// <summary>One end flat, the other free to tilt but held in line: ν = 0.7 (0.707 in Shigley).</summary>
    FixedAndHinged,

    /// <summary>Both ends free to tilt, held in line: ν = 1.</summary>
    BothHinged,

    /// <summary>One end flat, the other free: ν = 2.</summary>
    FixedAndFree,
}

/// <summary>Sideways buckling of long slim springs.</summary>
/// <remarks>Source: EN 13906-1:2013, buckling; docs/theory/springs.md §5.</remarks>
public static class SpringBuckling
{
    /// <summary>Seating coefficient ν.</summary>
    /// <remarks>Source: EN 13906-1:2013, seating coefficients; Shigley, 10th ed., table 10-2.</remarks>
    public static double SeatingCoefficient(SpringSeating seating) => seating switch
    {
        SpringSeating.BothFixed => 0.5,
        SpringSeating.FixedAndHinged => 0.7,
        SpringSeating.BothHinged => 1,
        SpringSeating.FixedAndFree => 2,
        _ => throw new ArgumentOutOfRangeException(nameof(seating), seating, "One of the four seatings."),
    };

    /// <summary>
    /// Deflection at which a spring buckles, m; null when it never does. A result beyond the spring's travel means that
    /// it goes solid first.
    /// </summary>
    /// <param name="freeLength">L0, m, above 0.</param>
    /// <param name="meanDiameter">D, m, above 0.</param>
    /// <param name="seatingCoefficient">ν, above 0.</param>
    /// <param name="shearModulus">G, Pa.</param>
    /// <param name="youngModulus">E, Pa, above G.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>
    /// sk = L0 · 0.5/(1-G/E) · [1 - √(1 - (1-G/E)/(0.5+G/E) · (π D/(ν L0))²)]; a negative radicand: never.
    /// Source: EN 13906-1:2013, buckling deflection; the same as Shigley, 10th ed., eq. 10-10.
    /// </remarks>
    public static double? CriticalDeflection(
        double freeLength, double meanDiameter, double seatingCoefficient, double shearModulus, double youngModulus)
    {
        Require.Positive(freeLength);
        Require.Positive(meanDiameter);
        Require.Positive(seatingCoefficient);
        double ratio = ModulusRatio(shearModulus, youngModulus);
        double slimness = Math.PI * meanDiameter / (seatingCoefficient * freeLength);
        double radicand = 1 - ((1 - ratio) / (0.5 + ratio) * slimness * slimness);
        return radicand >= 0 ? freeLength * 0.5 / (1 - ratio) * (1 - Math.Sqrt(radicand)) : null;
    }

    /// <summary>Free length below which a spring never buckles, m: (π D/ν) · √(2(E-G)/(2G+E)). Steel: about 2.63 D/ν.</summary>
    /// <param name="meanDiameter">D, m, above 0.</param>
    /// <param name="seatingCoefficient">ν, above 0.</param>
    /// <param name="shearModulus">G, Pa.</param>
    /// <param name="youngModulus">E, Pa, above G.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>Source: Shigley, 10th ed., eq. 10-12 (absolute stability).</remarks>
    public static double AlwaysStableBelow(double meanDiameter, double seatingCoefficient, double shearModulus, double youngModulus)
    {
        Require.Positive(meanDiameter);
        Require.Positive(seatingCoefficient);
        double ratio = ModulusRatio(shearModulus, youngModulus);
        return Math.PI * meanDiameter / seatingCoefficient * Math.Sqrt(2 * (1 - ratio) / ((2 * ratio) + 1));
    }

    /// <summary>The same limit for steel with the textbook's rounded number, m: 2.63 D/α.</summary>
    /// <param name="meanDiameter">D, m, above 0.</param>
    /// <param name="seatingCoefficient">α, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument not above 0.</exception>
    /// <remarks>Source: Shigley, 10th ed., eq. 10-13.</remarks>
    public static double AlwaysStableBelowSteel(double meanDiameter, double seatingCoefficient)
    {
        Require.Positive(meanDiameter);
        Require.Positive(seatingCoefficient);
        return 2.63 * meanDiameter / seatingCoefficient;
    }

    /// <summary>Free length over mean diameter.</summary>
    /// <param name="freeLength">L0, m, above 0.</param>
    /// <param name="meanDiameter">D, m, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument not above 0.</exception>
    /// <remarks>Source: definition; T. H. Wentzell, Machine Design, example 8.3.</remarks>
    public static double Slenderness(double freeLength, double meanDiameter)
    {
        Require.Positive(freeLength);
        Require.Positive(meanDiameter);
        return freeLength / meanDiameter;
    }

    /// <summary>Force at which a spring buckles when a table gives the share of its free length, N: k · share · L0.</summary>
    /// <param name="rate">k, N/m.</param>
    /// <param name="shareOfFreeLength">Critical deflection over free length, from a table.</param>
    /// <param name="freeLength">L0, m.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument not above 0.</exception>
    /// <remarks>Source: Sadhu Singh, Machine Design-I, example 8.1.</remarks>
    public static double BucklingForce(double rate, double shareOfFreeLength, double freeLength)
    {
        Require.Positive(rate);
        Require.Positive(shareOfFreeLength);
        Require.Positive(freeLength);
        return rate * shareOfFreeLength * freeLength;
    }

    private static double ModulusRatio(double shearModulus, double youngModulus)
    {
        Require.Positive(shearModulus);
        Require.Positive(youngModulus);
        double ratio = shearModulus / youngModulus;
        return ratio < 1 ? ratio : throw new ArgumentOutOfRangeException(nameof(shearModulus), shearModulus, "Below Young's modulus.");
    }
}
