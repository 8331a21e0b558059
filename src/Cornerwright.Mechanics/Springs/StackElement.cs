namespace Cornerwright.Mechanics.Springs;

/// <summary>The closed set of things that can stand in a spring stack.</summary>
public enum StackElementKind
{
    /// <summary>A sheet, adapter or packer: one length whatever the force.</summary>
    Rigid,

    /// <summary>A coil of one rate.</summary>
    Linear,

    /// <summary>A coil with a tabulated curve.</summary>
    Progressive,
}

/// <summary>How one element of a stack stands under the stack's force.</summary>
public enum ElementState
{
    /// <summary>No force on it: the stack is loose, or just touching.</summary>
    Free,

    /// <summary>Compressed, coils apart: it works as a spring.</summary>
    Open,

    /// <summary>Solid: coils touching, or a rigid piece.</summary>
    Closed,
}

/// <summary>One piece of a spring stack: a coil or a rigid thickness.</summary>
/// <remarks>
/// The default value is a rigid piece of no thickness. Length under a compressive force F (N):
/// max(solid, free - deflection(F)), never longer than free. Source: docs/theory/springs.md §2.
/// </remarks>
public readonly record struct StackElement
{
    private StackElement(
        StackElementKind kind, double freeLength, double solidLength, double rate, SpringCurve? curve, double closingForce) =>
        (Kind, FreeLength, SolidLength, Rate, Curve, ClosingForce) = (kind, freeLength, solidLength, rate, curve, closingForce);

    public StackElementKind Kind { get; }

    /// <summary>Length without load, m.</summary>
    public double FreeLength { get; }

    /// <summary>Length with all coils touching, m (a rigid piece: its thickness).</summary>
    public double SolidLength { get; }

    /// <summary>Rate of a linear coil, N/m; 0 for the other kinds, which have no single rate.</summary>
    public double Rate { get; }

    /// <summary>The curve of a progressive coil, otherwise null.</summary>
    public SpringCurve? Curve { get; }

    /// <summary>Force at which the element goes solid, N; 0 for a rigid piece, which is always solid.</summary>
    public double ClosingForce { get; }

    /// <summary>Deflection from free to solid, m.</summary>
    public double Travel => FreeLength - SolidLength;

    /// <summary>A coil of one rate.</summary>
    /// <param name="freeLength">m, above <paramref name="solidLength"/>.</param>
    /// <param name="solidLength">m, at least 0.</param>
    /// <param name="rate">N/m, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range or not finite.</exception>
    /// <remarks>Source: Hooke's law; docs/theory/springs.md §2.</remarks>
    public static StackElement Linear(double freeLength, double solidLength, double rate)
    {
        RequireLengths(freeLength, solidLength);
        if (!(rate > 0) || !double.IsFinite(rate))
        {
            throw new ArgumentOutOfRangeException(nameof(rate), rate, "A rate is above 0 N/m.");
        }

        return new(StackElementKind.Linear, freeLength, solidLength, rate, null, rate * (freeLength - solidLength));
    }

    /// <summary>A coil with a tabulated curve. Where the solid length lies beyond the table, the table's last line goes on.</summary>
    /// <param name="freeLength">m, above <paramref name="solidLength"/>.</param>
    /// <param name="solidLength">m, at least 0.</param>
    /// <param name="curve">Force against deflection from free length; held by reference.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length is outside its range or not finite.</exception>
    /// <remarks>Source: docs/theory/springs.md §2.</remarks>
    public static StackElement Progressive(double freeLength, double solidLength, SpringCurve curve)
    {
        ArgumentNullException.ThrowIfNull(curve);
        RequireLengths(freeLength, solidLength);
        return new(StackElementKind.Progressive, freeLength, solidLength, 0, curve, curve.ForceAt(freeLength - solidLength));
    }

    /// <summary>A sheet, adapter or packer.</summary>
    /// <param name="length">Thickness along the stack's axis, m, at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Below 0 or not finite.</exception>
    /// <remarks>Source: definition.</remarks>
    public static StackElement Rigid(double length) =>
        length >= 0 && double.IsFinite(length)
            ? new(StackElementKind.Rigid, length, length, 0, null, 0)
            : throw new ArgumentOutOfRangeException(nameof(length), length, "A thickness is at least 0 m.");

    /// <summary>Deflection from free length (m) under a force (N, at least 0), never beyond <see cref="Travel"/>.</summary>
    /// <remarks>Source: docs/theory/springs.md §2.</remarks>
    public double DeflectionAt(double force) =>
        force >= ClosingForce ? Travel
        : Kind == StackElementKind.Linear ? Math.Min(force / Rate, Travel)
        : Math.Min(Curve!.DeflectionAt(force), Travel);

    /// <summary>Deflection per force (m/N) for a force that grows from <paramref name="force"/> (N); 0 once closed.</summary>
    /// <remarks>Source: docs/theory/springs.md §2.</remarks>
    public double ComplianceAt(double force) =>
        force >= ClosingForce ? 0
        : Kind == StackElementKind.Linear ? 1 / Rate
        : Curve!.ComplianceAt(force);

    /// <summary>Length under a force (N, at least 0), m.</summary>
    /// <remarks>Source: docs/theory/springs.md §2.</remarks>
    public double LengthAt(double force) => FreeLength - DeflectionAt(force);

    /// <summary>Whether the element is solid under a force (N). A rigid piece always is.</summary>
    /// <remarks>Source: definition of <see cref="ClosingForce"/>.</remarks>
    public bool IsClosedAt(double force) => force >= ClosingForce;

    /// <summary>Free, open or closed under a force (N, at least 0).</summary>
    /// <remarks>Source: definition of <see cref="ClosingForce"/>.</remarks>
    public ElementState StateAt(double force) =>
        force >= ClosingForce ? ElementState.Closed : force > 0 ? ElementState.Open : ElementState.Free;

    private static void RequireLengths(double freeLength, double solidLength)
    {
        if (!(solidLength >= 0) || !double.IsFinite(solidLength))
        {
            throw new ArgumentOutOfRangeException(nameof(solidLength), solidLength, "A solid length is at least 0 m.");
        }

        if (!(freeLength > solidLength) || !double.IsFinite(freeLength))
        {
            throw new ArgumentOutOfRangeException(nameof(freeLength), freeLength, "A free length is above the solid length.");
        }
    }
}
