namespace Cornerwright.Mechanics.Springs;

/// <summary>One spring of a nest: springs inside each other on the same two seats.</summary>
/// <param name="Rate">N/m, above 0.</param>
/// <param name="Gap">How much shorter than the longest spring it is when free, m, at least 0.</param>
public readonly record struct NestedSpring(double Rate, double Gap);

/// <summary>Springs in parallel, each of which may begin to work after a gap.</summary>
/// <remarks>Source: docs/theory/springs.md §6.</remarks>
public static class SpringNest
{
    /// <summary>Force of the whole nest at a deflection from first contact, N.</summary>
    /// <param name="nest">In any order.</param>
    /// <param name="deflection">m, at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Deflection below 0 or not finite.</exception>
    /// <remarks>Source: V. B. Bhandari, Design of Machine Elements, examples 10.18 and 10.19.</remarks>
    public static double ForceAt(ReadOnlySpan<NestedSpring> nest, double deflection)
    {
        Require.NotNegative(deflection);
        double force = 0;
        foreach (var spring in nest)
        {
            force += ForceOf(spring, deflection);
        }

        return force;
    }

    /// <summary>Share of one spring at a deflection of the nest, N.</summary>
    /// <param name="spring">Rate and gap.</param>
    /// <param name="deflection">Of the nest, m, at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Rate not above 0, or gap or deflection below 0.</exception>
    /// <remarks>Source: Hooke's law after the gap.</remarks>
    public static double ForceOf(NestedSpring spring, double deflection)
    {
        Require.Positive(spring.Rate);
        Require.NotNegative(spring.Gap);
        Require.NotNegative(deflection);
        return spring.Rate * Math.Max(0, deflection - spring.Gap);
    }

    /// <summary>Deflection from first contact under a force, m; null for a nest without springs.</summary>
    /// <param name="nest">In any order.</param>
    /// <param name="force">N, at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Force below 0 or not finite.</exception>
    /// <remarks>
    /// For every gap as the deepest one already closed, x = (F + Σ k·gap)/Σ k over the springs at work; the force grows
    /// with deflection, so the least of these x is the deflection. Source: docs/theory/springs.md §6.
    /// </remarks>
    public static double? DeflectionAt(ReadOnlySpan<NestedSpring> nest, double force)
    {
        Require.NotNegative(force);
        double? least = null;
        foreach (var deepest in nest)
        {
            double rates = 0, moments = 0;
            foreach (var spring in nest)
            {
                Require.Positive(spring.Rate);
                if (spring.Gap <= deepest.Gap)
                {
                    rates += spring.Rate;
                    moments += spring.Rate * spring.Gap;
                }
            }

            double x = (force + moments) / rates;
            least = least is { } known ? Math.Min(known, x) : x;
        }

        return least;
    }
}
