namespace Cornerwright.Mechanics.Bolts;

/// <summary>Strength of a bolt by the mark on its head. Pa.</summary>
/// <param name="TensileStrength">Rm,min.</param>
/// <param name="YieldStrength">Rp0.2,min (or lower yield).</param>
/// <param name="ProofStress">Sp, what it must bear without lasting stretch.</param>
public readonly record struct BoltStrength(double TensileStrength, double YieldStrength, double ProofStress);

/// <summary>Property classes of steel bolts, screws and studs.</summary>
public static class PropertyClass
{
    /// <summary>Least strengths of a class; null for a class or diameter the standard does not list.</summary>
    /// <param name="name">As on the head: "8.8", "10.9"...</param>
    /// <param name="diameter">Nominal thread diameter, m: class 8.8 changes above 16 mm, 9.8 ends there.</param>
    /// <remarks>Source: ISO 898-1:2013, table 3 (8.8, 10.9, 12.9 partly looked up, the others from memory).</remarks>
    public static BoltStrength? Strength(string name, double diameter)
    {
        Require.Positive(diameter);
        bool thick = diameter > 0.016 + 1e-9;
        return name switch
        {
            "4.6" => Of(400, 240, 225),
            "4.8" => Of(420, 340, 310),
            "5.6" => Of(500, 300, 280),
            "5.8" => Of(520, 420, 380),
            "6.8" => Of(600, 480, 440),
            "8.8" => thick ? Of(830, 660, 600) : Of(800, 640, 580),
            "9.8" => thick ? null : Of(900, 720, 650),
            "10.9" => Of(1040, 940, 830),
            "12.9" => Of(1220, 1100, 970),
            _ => null,
        };
    }

    /// <summary>Proof load, N: As · Sp.</summary>
    /// <param name="stressArea">As, m², above 0.</param>
    /// <param name="strength">Of the bolt's class.</param>
    /// <exception cref="ArgumentOutOfRangeException">Area not above 0.</exception>
    /// <remarks>Source: ISO 898-1:2013, tables 5 and 7.</remarks>
    public static double ProofLoad(double stressArea, BoltStrength strength)
    {
        Require.Positive(stressArea);
        return stressArea * strength.ProofStress;
    }

    /// <summary>Least ultimate tensile load, N: As · Rm.</summary>
    /// <param name="stressArea">As, m², above 0.</param>
    /// <param name="strength">Of the bolt's class.</param>
    /// <exception cref="ArgumentOutOfRangeException">Area not above 0.</exception>
    /// <remarks>Source: ISO 898-1:2013, tables 4 and 6.</remarks>
    public static double TensileLoad(double stressArea, BoltStrength strength)
    {
        Require.Positive(stressArea);
        return stressArea * strength.TensileStrength;
    }

    private static BoltStrength Of(double tensileMPa, double yieldMPa, double proofMPa) =>
        new(tensileMPa * 1e6, yieldMPa * 1e6, proofMPa * 1e6);
}
