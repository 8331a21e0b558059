namespace Cornerwright.PublishedChecks;

/// <summary>Factors to SI, on purpose not the project's own: built here from the exact definitions of inch, pound and g.</summary>
/// <remarks>Source: NIST SP 811 (2008), App. B.8: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, g = 9.80665 m/s², all exact.</remarks>
public static class CheckUnits
{
    private const double Inch = 0.0254;
    private const double Gravity = 9.80665;
    private const double PoundForce = 0.45359237 * Gravity;
    private const double Psi = PoundForce / (Inch * Inch);

    private static readonly Dictionary<string, double> Factors = new()
    {
        [""] = 1, ["%"] = 0.01,
        ["m"] = 1, ["cm"] = 0.01, ["mm"] = 0.001, ["in"] = Inch,
        ["mm²"] = 1e-6, ["in²"] = Inch * Inch,
        ["N"] = 1, ["kN"] = 1000, ["lbf"] = PoundForce, ["kip"] = 1000 * PoundForce,
        ["N/m"] = 1, ["N/mm"] = 1000, ["kN/m"] = 1000, ["lbf/in"] = PoundForce / Inch, ["Mlbf/in"] = 1e6 * PoundForce / Inch,
        ["kgf/mm"] = Gravity * 1000,
        ["Pa"] = 1, ["kPa"] = 1000, ["MPa"] = 1e6, ["GPa"] = 1e9, ["psi"] = Psi, ["kpsi"] = 1e3 * Psi, ["Mpsi"] = 1e6 * Psi,
        ["N·m"] = 1, ["lbf·ft"] = PoundForce * 12 * Inch, ["lbf·in"] = PoundForce * Inch,
        ["kg"] = 1, ["kg/m³"] = 1,
        ["rad"] = 1, ["deg"] = Math.PI / 180,
        ["Hz"] = 1, ["rad/s"] = 1, ["km/h"] = 1 / 3.6,
    };

    public static double Factor(string unit) =>
        Factors.TryGetValue(unit, out double factor) ? factor : throw new InvalidDataException($"No factor for the unit \"{unit}\".");
}
