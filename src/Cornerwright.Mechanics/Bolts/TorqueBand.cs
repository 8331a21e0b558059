namespace Cornerwright.Mechanics.Bolts;

/// <summary>Torques that make sense for a steel bolt of a thread and class. N·m.</summary>
/// <param name="Least">Below it the bolt is hardly stretched and may work loose.</param>
/// <param name="Usual">Oiled thread and head, 90 % of yield: what tables print.</param>
/// <param name="Most">Above it a bolt with ordinary friction yields.</param>
public readonly record struct TorqueBand(double Least, double Usual, double Most)
{
    private const double UsualFriction = 0.12, DryFriction = 0.20, SlipperyFriction = 0.08;

    /// <summary>
    /// A bolt tightened to less than this share of its yield is not used as a bolt. Our choice, no source; lower makes the warning rarer.
    /// </summary>
    private const double LeastUtilisation = 0.3;

    /// <summary>
    /// Mean bearing diameter over thread diameter where the head is not a listed hexagon: of M6 to M16 it is 1.24 to 1.30.
    /// </summary>
    private const double BearingRatio = 1.27;

    /// <summary>The band of a thread and class; null for a class the standard does not list at that diameter.</summary>
    /// <param name="thread">The thread; pitch above 0.</param>
    /// <param name="name">Property class of the bolt ("8.8") or of its nut ("8", which carries a bolt of 8.8).</param>
    /// <remarks>
    /// Usual: 0.9 of yield at friction 0.12. Most: 0.9 of yield at 0.20 in thread and head. Least: 0.3 of yield at 0.08.
    /// Source: VDI 2230 Part 1 (2015), eq. R8/1 and R13/1, friction classes A to D of table A5 (from memory); ISO 898-1:2013, table 3;
    /// ISO 898-2 for the pairing of nut and bolt (from memory).
    /// </remarks>
    public static TorqueBand? Of(MetricThread thread, string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        Require.Positive(thread.Pitch);
        string bolt = name switch { "5" => "5.6", "6" => "6.8", "8" => "8.8", "9" => "9.8", "10" => "10.9", "12" => "12.9", _ => name };
        if (PropertyClass.Strength(bolt, thread.Diameter) is not { } strength)
        {
            return null;
        }

        double bearing = Tightening.HexBearingDiameter(thread.Diameter) ?? (BearingRatio * thread.Diameter);
        return new TorqueBand(At(LeastUtilisation, SlipperyFriction), At(0.9, UsualFriction), At(0.9, DryFriction));

        double At(double utilisation, double friction) => Tightening.Torque(
            Tightening.AssemblyPreload(thread, strength.YieldStrength, friction, utilisation), thread, friction, friction, bearing);
    }
}
