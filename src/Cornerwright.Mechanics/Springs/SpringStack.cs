namespace Cornerwright.Mechanics.Springs;

/// <summary>Coils and rigid pieces in series: all carry one axial force, their lengths add up.</summary>
/// <remarks>
/// Elements may stand in any order. Lengths in m, forces in N (compression, at least 0), rates in N/m.
/// Nothing here allocates. Source: docs/theory/springs.md §2.
/// </remarks>
public static class SpringStack
{
    /// <summary>Length without load, m.</summary>
    /// <remarks>Source: sum of the elements' free lengths.</remarks>
    public static double FreeLength(ReadOnlySpan<StackElement> stack)
    {
        double length = 0;
        foreach (ref readonly var element in stack)
        {
            length += element.FreeLength;
        }

        return length;
    }

    /// <summary>Length with every element solid, m.</summary>
    /// <remarks>Source: sum of the elements' solid lengths.</remarks>
    public static double SolidLength(ReadOnlySpan<StackElement> stack)
    {
        double length = 0;
        foreach (ref readonly var element in stack)
        {
            length += element.SolidLength;
        }

        return length;
    }

    /// <summary>Force at which the last open element goes solid, N; 0 for a stack of rigid pieces.</summary>
    /// <remarks>Source: largest of the elements' closing forces.</remarks>
    public static double BindForce(ReadOnlySpan<StackElement> stack)
    {
        double force = 0;
        foreach (ref readonly var element in stack)
        {
            force = Math.Max(force, element.ClosingForce);
        }

        return force;
    }

    /// <summary>Deflection from free length under a force, m. Never falls with force.</summary>
    /// <param name="stack">Elements in any order.</param>
    /// <param name="force">Compression, N, at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Force below 0 or NaN.</exception>
    /// <remarks>Error: rounding only. Source: docs/theory/springs.md §2.</remarks>
    public static double DeflectionAt(ReadOnlySpan<StackElement> stack, double force)
    {
        RequireForce(force);
        return Deflection(stack, force);
    }

    /// <summary>Length under a force, m. Never grows with force.</summary>
    /// <param name="stack">Elements in any order.</param>
    /// <param name="force">Compression, N, at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Force below 0 or NaN.</exception>
    /// <remarks>Error: rounding only. Source: docs/theory/springs.md §2.</remarks>
    public static double LengthAt(ReadOnlySpan<StackElement> stack, double force)
    {
        RequireForce(force);
        return FreeLength(stack) - Deflection(stack, force);
    }

    /// <summary>Force, and how the stack stands, in a space of a given length.</summary>
    /// <param name="stack">Elements in any order.</param>
    /// <param name="length">Space along the stack's axis, m; any finite number, since an impossible space is an answer too.</param>
    /// <exception cref="ArgumentOutOfRangeException">Length not finite.</exception>
    /// <remarks>
    /// Closed form: deflection is a polyline in force whose corners are the closing forces and the points of the
    /// curves; the two corners round the wanted deflection are found, and the line between them inverted.
    /// Error against an independent bisection: below 1e-9 relative. Source: docs/theory/springs.md §3.
    /// </remarks>
    public static StackForce ForceAt(ReadOnlySpan<StackElement> stack, double length)
    {
        if (!double.IsFinite(length))
        {
            throw new ArgumentOutOfRangeException(nameof(length), length, "A space has a finite length.");
        }

        // Outside the springs' range: loose, or solid.
        double free = FreeLength(stack), solid = SolidLength(stack);
        if (length > free)
        {
            return new(0, StackState.Loose, length - free, 0);
        }

        if (length <= solid)
        {
            return new(BindForce(stack), StackState.Bound, 0, solid - length);
        }

        // The nearest corners of the polyline below and above the wanted deflection.
        double wanted = free - length;
        var low = new Corner(0, 0);
        double bind = BindForce(stack);
        var high = new Corner(bind, Deflection(stack, bind));
        foreach (ref readonly var element in stack)
        {
            if (element.Kind != StackElementKind.Rigid)
            {
                Narrow(stack, element.ClosingForce, wanted, ref low, ref high);
            }

            if (element.Kind == StackElementKind.Progressive)
            {
                NarrowByCurve(stack, element, wanted, ref low, ref high);
            }
        }

        // Between them the stack is one straight line. Rounding may leave no width: then the corners are one.
        double width = high.Deflection - low.Deflection;
        double share = width > 0 ? Math.Clamp((wanted - low.Deflection) / width, 0, 1) : 1;
        double force = low.Force + (share * (high.Force - low.Force));
        return new(force, StackState.Seated, 0, 0);
    }

    /// <summary>
    /// Rate for a force that grows from <paramref name="force"/>, N/m; null when every element is solid, since no number describes that.
    /// </summary>
    /// <param name="stack">Elements in any order.</param>
    /// <param name="force">Compression, N, at least 0. At a corner the rate above it is meant.</param>
    /// <exception cref="ArgumentOutOfRangeException">Force below 0 or NaN.</exception>
    /// <remarks>1/k = sum of 1/k of the open elements. Source: docs/theory/springs.md §2.</remarks>
    public static double? TangentRateAt(ReadOnlySpan<StackElement> stack, double force)
    {
        RequireForce(force);
        double compliance = 0;
        foreach (ref readonly var element in stack)
        {
            compliance += element.ComplianceAt(force);
        }

        return compliance > 0 ? 1 / compliance : null;
    }

    /// <summary>Length of element <paramref name="index"/> under the stack's force, m.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Force below 0 or NaN.</exception>
    /// <remarks>Source: docs/theory/springs.md §2.</remarks>
    public static double ElementLength(ReadOnlySpan<StackElement> stack, int index, double force)
    {
        RequireForce(force);
        return stack[index].LengthAt(force);
    }

    /// <summary>Whether element <paramref name="index"/> is solid under the stack's force. Rigid pieces always are.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Force below 0 or NaN.</exception>
    /// <remarks>Source: docs/theory/springs.md §2.</remarks>
    public static bool IsClosed(ReadOnlySpan<StackElement> stack, int index, double force)
    {
        RequireForce(force);
        return stack[index].IsClosedAt(force);
    }

    /// <summary>Force at which element <paramref name="index"/> goes solid, N; 0 for a rigid piece.</summary>
    /// <remarks>Source: docs/theory/springs.md §2.</remarks>
    public static double ClosingForce(ReadOnlySpan<StackElement> stack, int index) => stack[index].ClosingForce;

    private readonly record struct Corner(double Force, double Deflection);

    private static double Deflection(ReadOnlySpan<StackElement> stack, double force)
    {
        double deflection = 0;
        foreach (ref readonly var element in stack)
        {
            deflection += element.DeflectionAt(force);
        }

        return deflection;
    }

    // Takes the corner at a force as the new bound, on the side where it lies. True: it lies at or below the wanted deflection.
    private static bool Narrow(ReadOnlySpan<StackElement> stack, double force, double wanted, ref Corner low, ref Corner high)
    {
        if (force <= low.Force)
        {
            return true;
        }

        if (force >= high.Force)
        {
            return false;
        }

        double deflection = Deflection(stack, force);
        if (deflection <= wanted)
        {
            low = new(force, deflection);
            return true;
        }

        high = new(force, deflection);
        return false;
    }

    // Bisects the points of one curve, since deflection never falls with force.
    private static void NarrowByCurve(
        ReadOnlySpan<StackElement> stack, in StackElement element, double wanted, ref Corner low, ref Corner high)
    {
        var forces = element.Curve!.Forces;
        int below = 0, above = forces.Length;
        while (above - below > 1)
        {
            int middle = (below + above) >> 1;
            if (Narrow(stack, forces[middle], wanted, ref low, ref high))
            {
                below = middle;
            }
            else
            {
                above = middle;
            }
        }
    }

    private static void RequireForce(double force)
    {
        if (!(force >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(force), force, "A stack carries compression: at least 0 N.");
        }
    }
}
