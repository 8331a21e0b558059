namespace Cornerwright.Mechanics.Loads;

/// <summary>Why the search for the car's balance stopped.</summary>
public enum BalanceStop
{
    Converged,

    /// <summary>A wheel would have to travel further than its motion covers.</summary>
    OutOfReach,

    IterationLimit,

    /// <summary>The balance is not held by anything: a wheel hangs free, or a number was not finite.</summary>
    NotHeld,
}

/// <summary>
/// How a car stands. Numbers mean something only if Why is Converged. Wheels in the order front left, front right, rear left, rear right.
/// </summary>
/// <param name="Why">Converged, or what went wrong.</param>
/// <param name="Heave">Rise of the body at the axes' origin, m.</param>
/// <param name="Roll">rad, positive when the left side rises (ISO 8855, about X forward).</param>
/// <param name="Pitch">rad, positive when the nose goes down (ISO 8855, about Y left).</param>
/// <param name="Travel">By wheel: hub against body, m, bump positive.</param>
/// <param name="HubRise">By wheel: hub against floor, from the reference, m.</param>
/// <param name="Load">By wheel: contact load, N.</param>
/// <param name="Iterations">Newton steps taken.</param>
public sealed record CarStance(
    BalanceStop Why, double Heave, double Roll, double Pitch, IReadOnlyList<double> Travel, IReadOnlyList<double> HubRise,
    IReadOnlyList<double> Load, int Iterations)
{
    /// <summary>Rise of the body above a wheel against the floor, from the reference, m. Source: definition of travel.</summary>
    public double BodyRise(int wheel) => HubRise[wheel] - Travel[wheel];

    /// <summary>All four loads, N. Source: sum.</summary>
    public double Total => Load[0] + Load[1] + Load[2] + Load[3];

    /// <summary>Share of right front and left rear. Source: the trade's definition of cross weight, docs/theory/setting.md §2.</summary>
    public double CrossWeight => (Load[1] + Load[2]) / Total;
}

/// <summary>How travel and load of every wheel (row) follow the lower seat of every corner (column), at one stance.</summary>
/// <param name="Travel">[wheel, corner]: m of travel per m of seat.</param>
/// <param name="Load">[wheel, corner]: N per m of seat.</param>
public sealed record SeatSensitivity(double[,] Travel, double[,] Load);
