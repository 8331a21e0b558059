namespace Cornerwright.Mechanics.Bars;

/// <summary>A U-shaped anti-roll bar: a straight part in torsion and two arms that bend.</summary>
/// <remarks>Rates at the ends, perpendicular to the arms; links and bushings taken as rigid. Source: docs/theory/springs.md §6.</remarks>
public static class AntiRollBar
{
    /// <summary>
    /// Force per difference of height between the ends, N/m. It is what one end feels when the other is held:
    /// 1/k = a² L/(G Ip) + 2 c³/(3 E I), with I = Ip/2.
    /// </summary>
    /// <param name="stiffness">G Ip/L of the straight part, N·m/rad, above 0: <see cref="TorsionBar.Stiffness"/>.</param>
    /// <param name="lever">a, from the straight part's axis square to the end's line of motion, m, above 0.</param>
    /// <param name="armCompliance">Bending of one arm, m/N, at least 0: <see cref="ArmCompliance"/>; 0 for stiff arms.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>Source: elementary torsion and bending (Gere, ch. 3 and 9).</remarks>
    public static double RateOneEnd(double stiffness, double lever, double armCompliance = 0)
    {
        Require.Positive(stiffness);
        Require.Positive(lever);
        Require.NotNegative(armCompliance);
        return 1 / ((lever * lever / stiffness) + (2 * armCompliance));
    }

    /// <summary>Force per move of each end when both move equally and oppositely, N/m: twice <see cref="RateOneEnd"/>.</summary>
    /// <param name="stiffness">G Ip/L of the straight part, N·m/rad, above 0.</param>
    /// <param name="lever">a, m, above 0.</param>
    /// <param name="armCompliance">Bending of one arm, m/N, at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>Source: symmetry; each end moves half of the difference.</remarks>
    public static double RateInRoll(double stiffness, double lever, double armCompliance = 0) =>
        2 * RateOneEnd(stiffness, lever, armCompliance);

    /// <summary>Bending of one arm as a cantilever, m/N: c³/(3 E I), I = π d⁴/64.</summary>
    /// <param name="armLength">c, along the arm, m, above 0.</param>
    /// <param name="diameter">d, m, above 0.</param>
    /// <param name="youngModulus">E, Pa, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument not above 0.</exception>
    /// <remarks>Source: Gere, beam tables, cantilever with a load at its end.</remarks>
    public static double ArmCompliance(double armLength, double diameter, double youngModulus)
    {
        Require.Positive(armLength);
        Require.Positive(diameter);
        Require.Positive(youngModulus);
        return Math.Pow(armLength, 3) / (3 * youngModulus * Math.PI * Math.Pow(diameter, 4) / 64);
    }

    /// <summary>
    /// Rate by Puhn's formula for steel bars, N/m; 500000 D⁴/(0.4244 A² B + 0.2264 C³) lbf/in with all lengths in inches.
    /// </summary>
    /// <param name="diameter">D, m, above 0.</param>
    /// <param name="lever">A, square to the straight part, m, above 0.</param>
    /// <param name="straightLength">B, m, above 0.</param>
    /// <param name="armLength">C, along the arm, m, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument not above 0.</exception>
    /// <remarks>
    /// It is <see cref="RateOneEnd"/> with G = 12 Mpsi and E = 30 Mpsi. Source: F. Puhn, How to Make Your Car Handle (HPBooks),
    /// anti-roll bar formula (partly from memory).
    /// </remarks>
    public static double PuhnRate(double diameter, double lever, double straightLength, double armLength)
    {
        Require.Positive(diameter);
        Require.Positive(lever);
        Require.Positive(straightLength);
        Require.Positive(armLength);
        const double inch = 0.0254, poundForcePerInch = 0.45359237 * 9.80665 / inch;
        double a = lever / inch, b = straightLength / inch, c = armLength / inch;
        return poundForcePerInch * 500_000 * Math.Pow(diameter / inch, 4) / ((0.4244 * a * a * b) + (0.2264 * c * c * c));
    }

    /// <summary>Roll stiffness of an axle from a bar, N·m/rad: k · MR² · t²/2.</summary>
    /// <param name="rateInRoll">k at each end when both move oppositely, N/m, above 0.</param>
    /// <param name="motionRatio">Bar-end travel per wheel travel, at least 0.</param>
    /// <param name="track">t, m, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>Body roll φ moves each wheel by φ t/2. Source: statics; Gillespie (1992), eq. 6-15 for springs.</remarks>
    public static double RollStiffness(double rateInRoll, double motionRatio, double track)
    {
        Require.Positive(rateInRoll);
        Require.NotNegative(motionRatio);
        Require.Positive(track);
        return rateInRoll * motionRatio * motionRatio * track * track / 2;
    }
}
