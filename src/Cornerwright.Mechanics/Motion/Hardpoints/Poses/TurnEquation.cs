using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Poses;

/// <summary>A cos θ + S sin θ = C, the equation of a turn that brings a point to a height or to a distance.</summary>
/// <remarks>Source: docs/theory/rigid-axles.md §6.</remarks>
internal static class TurnEquation
{
    /// <summary>How near, relative, to a dead centre the turn is refused: its rate grows as the inverse root.</summary>
    private const double DeadCentre = 1e-12;

    /// <param name="branch">Sign of S where θ = 0 solves the equation: picks the one of two turns that belongs to it.</param>
    /// <returns>False at and beyond a dead centre; then <paramref name="turn"/> is the default.</returns>
    public static bool Solve(in Jet a, in Jet s, in Jet c, int branch, out JetTurn turn)
    {
        // (A + iS) = ρ e^{iθ0}; θ = θ0 ∓ acos(C/ρ).
        Jet reach2 = (a * a) + (s * s), left2 = reach2 - (c * c);
        turn = default;
        if (!(left2.V > DeadCentre * reach2.V) || branch == 0)
        {
            return false;
        }

        Jet other = left2.Sqrt() * branch, inverse = reach2.Inverse();
        turn = new(Cos: ((a * c) + (s * other)) * inverse, Sin: ((s * c) - (a * other)) * inverse);
        return true;
    }
}
