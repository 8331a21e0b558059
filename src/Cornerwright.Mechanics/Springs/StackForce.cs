namespace Cornerwright.Mechanics.Springs;

/// <summary>How a whole stack stands in the space it is given.</summary>
public enum StackState
{
    /// <summary>The space is longer than the free stack: no force, and a gap.</summary>
    Loose,

    /// <summary>Seated, with at least one element still open.</summary>
    Seated,

    /// <summary>Every element is solid (coil bind), or the space is shorter still.</summary>
    Bound,
}

/// <summary>The force of a stack in a given space.</summary>
/// <param name="Force">
/// Compression, N. Loose: 0. Bound: the force at which the last element closed, a lower bound; what is above it
/// is carried metal to metal and cannot be known from the length.
/// </param>
/// <param name="State">Loose, seated or bound.</param>
/// <param name="Gap">Space the stack does not fill, m: above 0 only when loose.</param>
/// <param name="Overrun">How much shorter the space is than the solid stack, m: above 0 only when bound.</param>
/// <remarks>The default value is a loose stack without a gap.</remarks>
public readonly record struct StackForce(double Force, StackState State, double Gap, double Overrun);
