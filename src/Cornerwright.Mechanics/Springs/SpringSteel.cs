namespace Cornerwright.Mechanics.Springs;

/// <summary>What the steels of springs have in common. Pa and kg/m³.</summary>
public static class SpringSteel
{
    /// <summary>G of oil-hardened and tempered wire (EN 10270-2). Source: EN 13906-1:2013, material table (from memory).</summary>
    public const double ShearModulusOilTempered = 79.5e9;

    /// <summary>G of patented cold-drawn wire (EN 10270-1). Source: EN 13906-1:2013, material table (from memory).</summary>
    public const double ShearModulusColdDrawn = 81.5e9;

    /// <summary>G of hot-rolled bar (EN 10089). Source: EN 13906-1:2013, material table (from memory).</summary>
    public const double ShearModulusHotRolled = 78.5e9;

    /// <summary>E of spring steel wire. Source: EN 13906-1:2013, material table (from memory).</summary>
    public const double YoungModulus = 206e9;

    /// <summary>ρ of spring steel. Source: EN 13906-1:2013, 7.85 kg/dm³.</summary>
    public const double Density = 7850;

    /// <summary>Permissible uncorrected shear stress at solid length, Pa: 0.56 Rm, cold-coiled springs.</summary>
    /// <param name="tensileStrength">Least Rm of the wire, Pa, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not above 0.</exception>
    /// <remarks>Source: EN 13906-1:2013, permissible stress τc at solid length, cold coiled (from memory).</remarks>
    public static double PermissibleStressAtSolid(double tensileStrength)
    {
        Require.Positive(tensileStrength);
        return 0.56 * tensileStrength;
    }
}
