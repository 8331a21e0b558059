namespace Cornerwright.Mechanics.Springs;

/// <summary>By how much the greatest shear stress in a coiled wire exceeds that of a straight bar in torsion.</summary>
/// <remarks>The index is mean coil diameter over wire diameter, above 1; car springs lie between 5 and 15.</remarks>
public static class CoilStressFactor
{
    /// <summary>Curvature and direct shear, A. M. Wahl: (4C-1)/(4C-4) + 0.615/C.</summary>
    /// <param name="index">Above 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Index not above 1.</exception>
    /// <remarks>Source: A. M. Wahl, Mechanical Springs, 2nd ed. (1963); Shigley, Mechanical Engineering Design, 10th ed., §10-2.</remarks>
    public static double Wahl(double index)
    {
        RequireIndex(index);
        return (((4 * index) - 1) / ((4 * index) - 4)) + (0.615 / index);
    }

    /// <summary>Curvature and direct shear, M. Bergsträsser: (4C+2)/(4C-3), which is EN 13906-1's k = (w+0.5)/(w-0.75).</summary>
    /// <param name="index">Above 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Index not above 1.</exception>
    /// <remarks>Source: EN 13906-1:2013, stress correction factor k; Shigley, 10th ed., eq. 10-5.</remarks>
    public static double En13906(double index)
    {
        RequireIndex(index);
        return (index + 0.5) / (index - 0.75);
    }

    /// <summary>Direct shear alone, for a load so steady that the curvature's peak yields away: 1 + 0.5/C.</summary>
    /// <param name="index">Above 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Index not above 1.</exception>
    /// <remarks>Source: Shigley, 10th ed., eq. 10-3.</remarks>
    public static double DirectShear(double index)
    {
        RequireIndex(index);
        return 1 + (0.5 / index);
    }

    private static void RequireIndex(double index)
    {
        if (!(index > 1) || !double.IsFinite(index))
        {
            throw new ArgumentOutOfRangeException(nameof(index), index, "A spring index is above 1: the coil is wider than its wire.");
        }
    }
}
