namespace Cornerwright.Mechanics.Bolts;

/// <summary>How a preloaded bolt and what it clamps share an outside load.</summary>
public static class BoltedJoint
{
    /// <summary>Axial stiffness of a rod or shank, N/m: A E/L.</summary>
    /// <param name="area">A, m², above 0.</param>
    /// <param name="youngModulus">E, Pa, above 0.</param>
    /// <param name="length">L, m, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument not above 0.</exception>
    /// <remarks>Source: Shigley, 10th ed., eq. 8-16.</remarks>
    public static double RodStiffness(double area, double youngModulus, double length)
    {
        Require.Positive(area);
        Require.Positive(youngModulus);
        Require.Positive(length);
        return area * youngModulus / length;
    }

    /// <summary>
    /// Stiffness of clamped parts of one material, N/m, as two frusta that spread from washers of 1.5 d:
    /// π E d t/(2 ln[(l t + d/2)(5 d/2)/((l t + 5 d/2)(d/2))]), t = tan of the spread's half angle.
    /// </summary>
    /// <param name="diameter">d, m, above 0.</param>
    /// <param name="gripLength">l, m, above 0.</param>
    /// <param name="youngModulus">E, Pa, above 0.</param>
    /// <param name="halfAngle">rad, between 0 and π/2; 30° in Shigley, 45° in older books.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>Source: Shigley, 10th ed., eq. 8-21 for any angle.</remarks>
    public static double MemberStiffness(double diameter, double gripLength, double youngModulus, double halfAngle)
    {
        Require.Positive(diameter);
        Require.Positive(gripLength);
        Require.Positive(youngModulus);
        if (!(halfAngle > 0 && halfAngle < Math.PI / 2))
        {
            throw new ArgumentOutOfRangeException(nameof(halfAngle), halfAngle, "Between 0 and π/2.");
        }

        double tan = Math.Tan(halfAngle), spread = gripLength * tan;
        double ratio = 5 * (spread + (0.5 * diameter)) / (spread + (2.5 * diameter));
        return Math.PI * youngModulus * diameter * tan / (2 * Math.Log(ratio));
    }

    /// <summary>Share of an outside load that the bolt takes: kb/(kb + km).</summary>
    /// <param name="boltStiffness">kb, N/m, above 0.</param>
    /// <param name="memberStiffness">km, N/m, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument not above 0.</exception>
    /// <remarks>Source: Shigley, 10th ed., eq. 8-24 (f).</remarks>
    public static double LoadShare(double boltStiffness, double memberStiffness)
    {
        Require.Positive(boltStiffness);
        Require.Positive(memberStiffness);
        return boltStiffness / (boltStiffness + memberStiffness);
    }

    /// <summary>Tensile stress in the thread, Pa: (Fi + C P)/As. Holds while the joint does not gape.</summary>
    /// <param name="preload">Fi, N, at least 0.</param>
    /// <param name="loadShare">C, 0 to 1.</param>
    /// <param name="outsideLoad">P on this bolt, N, signed, tension positive.</param>
    /// <param name="stressArea">As, m², above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>Source: Shigley, 10th ed., eq. 8-24 and 8-25.</remarks>
    public static double ThreadStress(double preload, double loadShare, double outsideLoad, double stressArea)
    {
        Require.NotNegative(preload);
        Require.Finite(outsideLoad);
        Require.Positive(stressArea);
        return loadShare is >= 0 and <= 1
            ? (preload + (loadShare * outsideLoad)) / stressArea
            : throw new ArgumentOutOfRangeException(nameof(loadShare), loadShare, "0 to 1.");
    }

    /// <summary>Stretch of a bolt under its preload, m: F L/(A E).</summary>
    /// <param name="preload">F, N, at least 0.</param>
    /// <param name="length">L that stretches, m, above 0.</param>
    /// <param name="area">A, m², above 0.</param>
    /// <param name="youngModulus">E, Pa, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>Source: Hooke's law; T. H. Wentzell, Machine Design, example 6.2.</remarks>
    public static double Stretch(double preload, double length, double area, double youngModulus)
    {
        Require.NotNegative(preload);
        return preload / RodStiffness(area, youngModulus, length);
    }
}
