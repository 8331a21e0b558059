namespace Cornerwright.Mechanics.Loads;

/// <summary>What the collars are to bring about. Null: it may come out as it likes.</summary>
/// <param name="Travel">By wheel: travel wanted, m, bump positive (the body comes up by its negative).</param>
/// <param name="TravelBand">A travel may miss by this, m, above 0.</param>
/// <param name="CrossWeight">Share of right front and left rear.</param>
/// <param name="CrossBand">It may miss by this, above 0.</param>
public sealed record CollarTargets(IReadOnlyList<double?> Travel, double TravelBand, double? CrossWeight, double CrossBand);

/// <summary>One collar: its smallest turn and how far it may go.</summary>
/// <param name="Step">Rise of the seat for one step, m, above 0; a quarter turn lifts a quarter of the pitch.</param>
/// <param name="Least">Fewest steps (down is negative).</param>
/// <param name="Most">Most steps.</param>
public readonly record struct CollarKnob(double Step, int Least, int Most)
{
    /// <summary>A seat that cannot be turned. Source: definition.</summary>
    public static CollarKnob Fixed => new(0.001, 0, 0);

    /// <summary>True where the collar can be turned at all. Source: definition.</summary>
    public bool Turns => Least < Most;
}

/// <summary>Steps of the four collars and what they bring.</summary>
/// <param name="Why">Converged, or why the car's balance was lost.</param>
/// <param name="Steps">By corner, whole steps, up positive.</param>
/// <param name="Exact">By corner: steps that would hit the targets best if they need not be whole and threads had no end.</param>
/// <param name="Stance">With <paramref name="Steps"/>.</param>
/// <param name="ExactStance">With <paramref name="Exact"/>; null where that car could not be balanced.</param>
/// <param name="Cost">Sum of squares of the misses, each in its band, with the price of every collar moved.</param>
public sealed record CollarChoice(
    BalanceStop Why, IReadOnlyList<int> Steps, IReadOnlyList<double> Exact, CarStance Stance, CarStance? ExactStance, double Cost);
