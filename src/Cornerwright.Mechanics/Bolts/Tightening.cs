namespace Cornerwright.Mechanics.Bolts;

/// <summary>Torque and the preload it makes.</summary>
public static class Tightening
{
    /// <summary>
    /// Preload that brings a bolt under tension and thread friction to a share of its yield, N (VDI 2230's FM):
    /// As·ν·Rp / √(1 + 3 [(3/2)(d2/d0)(P/(π d2) + 1.155 μG)]²), d0 the diameter of the stress area.
    /// </summary>
    /// <param name="thread">The bolt's thread.</param>
    /// <param name="yieldStrength">Rp0.2,min, Pa, above 0.</param>
    /// <param name="threadFriction">μG, at least 0.</param>
    /// <param name="utilisation">ν, share of yield, above 0, at most 1; the tables use 0.9.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>Source: VDI 2230 Part 1 (2015), eq. R8/1 with shank d ≥ stress diameter (from memory).</remarks>
    public static double AssemblyPreload(MetricThread thread, double yieldStrength, double threadFriction, double utilisation = 0.9)
    {
        Require.Positive(thread.Pitch);
        Require.Positive(yieldStrength);
        Require.NotNegative(threadFriction);
        if (!(utilisation > 0 && utilisation <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(utilisation), utilisation, "Above 0, at most 1.");
        }

        double lead = thread.Pitch / (Math.PI * thread.PitchDiameter);
        double torsion = 1.5 * thread.PitchDiameter / thread.StressDiameter * (lead + (1.155 * threadFriction));
        return thread.StressArea * utilisation * yieldStrength / Math.Sqrt(1 + (3 * torsion * torsion));
    }

    /// <summary>Torque for a preload, N·m (VDI 2230's MA): F [0.16 P + 0.58 d2 μG + (Dkm/2) μK].</summary>
    /// <param name="preload">F, N, at least 0.</param>
    /// <param name="thread">The bolt's thread.</param>
    /// <param name="threadFriction">μG, at least 0.</param>
    /// <param name="headFriction">μK, under the head or nut, at least 0.</param>
    /// <param name="bearingDiameter">Dkm, mean diameter of the bearing face, m, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>Source: VDI 2230 Part 1 (2015), eq. R13/1.</remarks>
    public static double Torque(double preload, MetricThread thread, double threadFriction, double headFriction, double bearingDiameter)
    {
        Require.NotNegative(preload);
        Require.Positive(thread.Pitch);
        Require.NotNegative(threadFriction);
        Require.NotNegative(headFriction);
        Require.Positive(bearingDiameter);
        return preload * ((0.16 * thread.Pitch) + (0.58 * thread.PitchDiameter * threadFriction) + (bearingDiameter / 2 * headFriction));
    }

    /// <summary>Mean bearing diameter of a hexagon head over a medium clearance hole, m; null for sizes not listed (M6 to M16).</summary>
    /// <param name="diameter">Nominal thread diameter, m.</param>
    /// <remarks>(dw,min + dh)/2. Source: ISO 4014 (washer face dw, grade A) and ISO 273 (medium hole dh), from memory.</remarks>
    public static double? HexBearingDiameter(double diameter) => Math.Round(diameter * 1000, 6) switch
    {
        6 => (8.88 + 6.6) / 2000,
        8 => (11.63 + 9) / 2000,
        10 => (14.63 + 11) / 2000,
        12 => (16.63 + 13.5) / 2000,
        14 => (19.64 + 15.5) / 2000,
        16 => (22.49 + 17.5) / 2000,
        _ => null,
    };

    /// <summary>Torque by nut factor, N·m: K F d.</summary>
    /// <param name="nutFactor">K, above 0; 0.2 is usual for plain steel.</param>
    /// <param name="preload">F, N, at least 0.</param>
    /// <param name="diameter">d, nominal, m, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>Source: Shigley, 10th ed., eq. 8-27.</remarks>
    public static double TorqueByNutFactor(double nutFactor, double preload, double diameter)
    {
        Require.Positive(nutFactor);
        Require.NotNegative(preload);
        Require.Positive(diameter);
        return nutFactor * preload * diameter;
    }

    /// <summary>Nut factor from friction: dm/(2d) · (tan λ + μ sec α)/(1 - μ tan λ sec α) + 0.625 μc.</summary>
    /// <param name="thread">The thread; dm = (d + d3)/2, tan λ = P/(π dm).</param>
    /// <param name="threadFriction">μ, at least 0.</param>
    /// <param name="collarFriction">μc, at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>α = 30°; collar diameter taken as 1.25 d. Source: Shigley, 10th ed., eq. 8-26; Jindal (2010), example 9-3.</remarks>
    public static double NutFactor(MetricThread thread, double threadFriction, double collarFriction)
    {
        Require.Positive(thread.Pitch);
        Require.NotNegative(threadFriction);
        Require.NotNegative(collarFriction);
        double mean = (thread.Diameter + thread.RootDiameter) / 2;
        double lead = thread.Pitch / (Math.PI * mean), friction = threadFriction / Math.Cos(Math.PI / 6);
        return (mean / (2 * thread.Diameter) * (lead + friction) / (1 - (lead * friction))) + (0.625 * collarFriction);
    }

    /// <summary>Preload as a share of proof load, N: share · As · Sp; 0.75 for joints that are undone, 0.9 for lasting ones.</summary>
    /// <param name="share">Above 0, at most 1.</param>
    /// <param name="stressArea">As, m², above 0.</param>
    /// <param name="proofStress">Sp, Pa, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>Source: Shigley, 10th ed., eq. 8-31.</remarks>
    public static double PreloadFromProof(double share, double stressArea, double proofStress)
    {
        Require.Positive(stressArea);
        Require.Positive(proofStress);
        return share is > 0 and <= 1
            ? share * stressArea * proofStress
            : throw new ArgumentOutOfRangeException(nameof(share), share, "Above 0, at most 1.");
    }
}
