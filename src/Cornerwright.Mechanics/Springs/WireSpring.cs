namespace Cornerwright.Mechanics.Springs;

/// <summary>A cylindrical compression spring of round wire.</summary>
/// <param name="WireDiameter">d, m, above 0.</param>
/// <param name="MeanDiameter">D, of the coil's centre line, m, above <paramref name="WireDiameter"/>.</param>
/// <param name="ActiveCoils">n, coils free to deflect, above 0.</param>
/// <param name="ShearModulus">G of the wire, Pa, above 0.</param>
/// <remarks>
/// Good for pitch angles up to about 9° and index 4 to 20. The default value is no spring: its functions throw.
/// Source: EN 13906-1:2013; docs/theory/springs.md §4.
/// </remarks>
public readonly record struct WireSpring(double WireDiameter, double MeanDiameter, double ActiveCoils, double ShearModulus)
{
    /// <summary>w or C: mean diameter over wire diameter.</summary>
    public double Index => MeanDiameter / WireDiameter;

    /// <summary>Rate, N/m: G d⁴ / (8 D³ n).</summary>
    /// <exception cref="ArgumentOutOfRangeException">A member is not above 0.</exception>
    /// <remarks>Source: EN 13906-1:2013, spring rate; Shigley, 10th ed., eq. 10-9.</remarks>
    public double Rate()
    {
        RequireSound();
        return ShearModulus * Math.Pow(WireDiameter, 4) / (8 * Math.Pow(MeanDiameter, 3) * ActiveCoils);
    }

    /// <summary>Shear stress without curvature, Pa: 8 F D / (π d³). EN 13906-1 uses it for static and rare loads, and at solid.</summary>
    /// <param name="force">Compression, N, at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A member is not above 0, or force below 0.</exception>
    /// <remarks>Source: EN 13906-1:2013, uncorrected shear stress τ.</remarks>
    public double ShearStress(double force)
    {
        RequireSound();
        Require.NotNegative(force);
        return 8 * force * MeanDiameter / (Math.PI * Math.Pow(WireDiameter, 3));
    }

    /// <summary>Shear stress at the coil's inside, Pa: k · 8 F D / (π d³), for loads that come again and again.</summary>
    /// <param name="force">Compression, N, at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A member is not above 0, or force below 0.</exception>
    /// <remarks>Source: EN 13906-1:2013, corrected shear stress τk.</remarks>
    public double CorrectedShearStress(double force) => CoilStressFactor.En13906(Index) * ShearStress(force);

    /// <summary>Force that brings the stress to a given value, N: π d³ τ / (8 k D).</summary>
    /// <param name="stress">τ, Pa, above 0.</param>
    /// <param name="factor">k, from <see cref="CoilStressFactor"/>; 1 for none.</param>
    /// <exception cref="ArgumentOutOfRangeException">A member or argument is not above 0.</exception>
    /// <remarks>Source: Shigley, 10th ed., eq. 10-7 solved for the force.</remarks>
    public double ForceAtStress(double stress, double factor)
    {
        RequireSound();
        Require.Positive(stress);
        Require.Positive(factor);
        return Math.PI * Math.Pow(WireDiameter, 3) * stress / (8 * factor * MeanDiameter);
    }

    /// <summary>Lowest natural frequency between two fixed seats, Hz: d/(π n D²) · √(G/(8 ρ)).</summary>
    /// <param name="density">ρ of the wire, kg/m³; steel 7850.</param>
    /// <exception cref="ArgumentOutOfRangeException">A member or argument is not above 0.</exception>
    /// <remarks>
    /// Source: EN 13906-1:2013, natural frequency fe = 3560 d/(n D²) √(G/ρ) in mm, N/mm², kg/dm³; Shigley, 10th ed., eq. 10-25.
    /// </remarks>
    public double SurgeFrequency(double density)
    {
        RequireSound();
        Require.Positive(density);
        return WireDiameter / (Math.PI * ActiveCoils * MeanDiameter * MeanDiameter) * Math.Sqrt(ShearModulus / (8 * density));
    }

    /// <summary>Gap that should be left between the coils, all together, m: n (0.0015 D²/d + 0.1 d), cold coiled, static load.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A member is not above 0.</exception>
    /// <remarks>
    /// Nearer to solid than this the rate rises and coils clash. Source: EN 13906-1:2013, sum of minimum gaps Sa, cold coiled.
    /// </remarks>
    public double LeastGapSum()
    {
        RequireSound();
        return ActiveCoils * ((0.0015 * MeanDiameter * MeanDiameter / WireDiameter) + (0.1 * WireDiameter));
    }

    private void RequireSound()
    {
        Require.Positive(WireDiameter);
        Require.Positive(ActiveCoils);
        Require.Positive(ShearModulus);
        if (!(MeanDiameter > WireDiameter) || !double.IsFinite(MeanDiameter))
        {
            throw new ArgumentOutOfRangeException(nameof(MeanDiameter), MeanDiameter, "Above the wire's diameter.");
        }
    }
}
