namespace Cornerwright.Mechanics.Springs;

/// <summary>How the ends of a wire spring are made.</summary>
public enum CoilEnds
{
    /// <summary>Last coil laid against its neighbour and ground flat ("squared and ground").</summary>
    ClosedAndGround,

    /// <summary>Last coil laid against its neighbour, not ground ("squared").</summary>
    Closed,

    /// <summary>Open at full pitch, ground flat ("plain and ground").</summary>
    OpenAndGround,

    /// <summary>Cut off at full pitch ("plain"); the usual tangential end of a car spring in a shaped seat.</summary>
    Open,
}

/// <summary>Length of a wire spring with all its coils touching, and the coils that do not work.</summary>
public static class SolidLengthRule
{
    /// <summary>Total coils less active coils: closed 2, open and ground 1, open 0.</summary>
    /// <remarks>Source: Shigley, 10th ed., table 10-1; EN 13906-1:2013 has nt = n + 2 for closed ends.</remarks>
    public static double DeadCoils(CoilEnds ends) => ends switch
    {
        CoilEnds.ClosedAndGround or CoilEnds.Closed => 2,
        CoilEnds.OpenAndGround => 1,
        CoilEnds.Open => 0,
        _ => throw new ArgumentOutOfRangeException(nameof(ends), ends, "One of the four kinds of ends."),
    };

    /// <summary>Solid length, m: ground d·nt, not ground d·(nt + 1).</summary>
    /// <param name="totalCoils">nt, above 0.</param>
    /// <param name="wireDiameter">d, m: the largest within tolerance, since Lc is a limit.</param>
    /// <param name="ends">How the ends are made.</param>
    /// <exception cref="ArgumentOutOfRangeException">Coils or diameter not above 0.</exception>
    /// <remarks>Source: Shigley, 10th ed., table 10-1; for closed and ground ends also EN 13906-1:2013, Lc ≤ nt·dmax.</remarks>
    public static double Textbook(double totalCoils, double wireDiameter, CoilEnds ends) =>
        WithAllowance(totalCoils, wireDiameter, ends is CoilEnds.ClosedAndGround or CoilEnds.OpenAndGround ? 0 : 1);

    /// <summary>Greatest solid length of a cold-coiled spring with closed ends, m: ground nt·dmax, not ground (nt + 1.5)·dmax.</summary>
    /// <param name="totalCoils">nt, above 0.</param>
    /// <param name="largestWireDiameter">dmax, m.</param>
    /// <param name="ground">Whether the ends are ground flat.</param>
    /// <exception cref="ArgumentOutOfRangeException">Coils or diameter not above 0.</exception>
    /// <remarks>Source: EN 13906-1:2013, solid length Lc, cold coiled (from memory).</remarks>
    public static double En13906ColdCoiled(double totalCoils, double largestWireDiameter, bool ground) =>
        WithAllowance(totalCoils, largestWireDiameter, ground ? 0 : 1.5);

    /// <summary>Solid length by another convention, m: d·(nt + allowance).</summary>
    /// <param name="totalCoils">nt, above 0.</param>
    /// <param name="wireDiameter">d, m.</param>
    /// <param name="coilsMore">Coils added for the ends; negative where the end coils are tapered away (-1 in some textbooks).</param>
    /// <exception cref="ArgumentOutOfRangeException">Coils, with the allowance, or diameter not above 0.</exception>
    /// <remarks>Source: U. C. Jindal, Machine Design (2010), example 8-7, uses -1.</remarks>
    public static double WithAllowance(double totalCoils, double wireDiameter, double coilsMore)
    {
        Require.Positive(totalCoils);
        Require.Positive(wireDiameter);
        double coils = totalCoils + coilsMore;
        Require.Positive(coils);
        return coils * wireDiameter;
    }

    /// <summary>Free length that leaves a share of the working deflection at solid, m: Ls + (1 + share)·y.</summary>
    /// <param name="solidLength">Ls, m.</param>
    /// <param name="workingDeflection">y at the greatest working force, m.</param>
    /// <param name="clashShare">ξ, at least 0; 0.15 is usual.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument below 0.</exception>
    /// <remarks>Source: Shigley, 10th ed., eq. 10-17 and example 10-2 (fractional overrun to closure).</remarks>
    public static double FreeLengthFor(double solidLength, double workingDeflection, double clashShare)
    {
        Require.NotNegative(solidLength);
        Require.NotNegative(workingDeflection);
        Require.NotNegative(clashShare);
        return solidLength + ((1 + clashShare) * workingDeflection);
    }
}
