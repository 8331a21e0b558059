namespace Cornerwright.Mechanics.Bolts;

/// <summary>An ISO metric thread. Lengths in m.</summary>
/// <remarks>The default value has no diameter: its areas are 0. Source: ISO 68-1, ISO 261, ISO 724.</remarks>
public readonly record struct MetricThread
{
    // Diameter in mm, coarse pitch, then fine pitches: ISO 261 general plan, the sizes met on a car. From memory.
    private static readonly double[][] GeneralPlanMm =
    [
        [3, 0.5, 0.35], [4, 0.7, 0.5], [5, 0.8, 0.5], [6, 1, 0.75], [7, 1, 0.75], [8, 1.25, 1, 0.75],
        [10, 1.5, 1.25, 1, 0.75], [12, 1.75, 1.5, 1.25, 1], [14, 2, 1.5, 1.25, 1], [16, 2, 1.5, 1],
        [18, 2.5, 2, 1.5, 1], [20, 2.5, 2, 1.5, 1], [22, 2.5, 2, 1.5, 1], [24, 3, 2, 1.5, 1],
    ];

    private MetricThread(double diameter, double pitch) => (Diameter, Pitch) = (diameter, pitch);

    /// <summary>Nominal (major) diameter d, m.</summary>
    public double Diameter { get; }

    /// <summary>Pitch P, m: advance in one turn of a single-start thread.</summary>
    public double Pitch { get; }

    /// <summary>Pitch diameter d2 = d - 0.649519 P, m. Source: ISO 724.</summary>
    public double PitchDiameter => Diameter - (0.75 * Math.Sqrt(3) / 2 * Pitch);

    /// <summary>Root diameter of the bolt's thread d3 = d - 1.226869 P, m. Source: ISO 724, ISO 898-1 (d1 - H/6).</summary>
    public double RootDiameter => Diameter - (17.0 / 12 * Math.Sqrt(3) / 2 * Pitch);

    /// <summary>Diameter (d2 + d3)/2 of the stress area, m. Source: ISO 898-1:2013, 9.1.6.1.</summary>
    public double StressDiameter => (PitchDiameter + RootDiameter) / 2;

    /// <summary>Nominal stress area π/4 ((d2 + d3)/2)², m². Source: ISO 898-1:2013, 9.1.6.1.</summary>
    public double StressArea => Math.PI / 4 * StressDiameter * StressDiameter;

    /// <summary>Whether the pitch is the coarse one of the diameter. Source: ISO 261.</summary>
    public bool IsCoarse => CoarsePitchMm(Diameter * 1000) is { } coarse && Math.Abs((coarse / 1000) - Pitch) < 1e-9;

    /// <summary>A thread of any diameter and pitch.</summary>
    /// <param name="diameter">d, m, above 0.</param>
    /// <param name="pitch">P, m, above 0, so small that a core is left.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>Source: ISO 68-1.</remarks>
    public static MetricThread Of(double diameter, double pitch)
    {
        Require.Positive(diameter);
        Require.Positive(pitch);
        var thread = new MetricThread(diameter, pitch);
        return thread.RootDiameter > 0
            ? thread
            : throw new ArgumentOutOfRangeException(nameof(pitch), pitch, "So small that a core is left.");
    }

    /// <summary>Coarse pitch of a diameter, mm; null for a diameter that is not in the plan (M3 to M24).</summary>
    /// <param name="diameterMm">Nominal diameter, mm.</param>
    /// <remarks>Source: ISO 261 and ISO 262 (partly from memory).</remarks>
    public static double? CoarsePitchMm(double diameterMm)
    {
        foreach (double[] row in GeneralPlanMm)
        {
            if (Math.Abs(row[0] - diameterMm) < 1e-6)
            {
                return row[1];
            }
        }

        return null;
    }

    /// <summary>Whether a diameter is made with a pitch, coarse or fine.</summary>
    /// <param name="diameterMm">Nominal diameter, mm.</param>
    /// <param name="pitchMm">Pitch, mm.</param>
    /// <remarks>Source: ISO 261 and ISO 262 (partly from memory).</remarks>
    public static bool IsInGeneralPlan(double diameterMm, double pitchMm)
    {
        foreach (double[] row in GeneralPlanMm)
        {
            if (Math.Abs(row[0] - diameterMm) < 1e-6)
            {
                return row.AsSpan(1).ContainsAnyInRange(pitchMm - 1e-6, pitchMm + 1e-6);
            }
        }

        return false;
    }
}
