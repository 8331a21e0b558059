using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Springs;

/// <summary>What keeps a table from being a spring curve.</summary>
public enum CurveFlawKind
{
    None,
    LengthsDiffer,
    TooFewPoints,
    NotFinite,
    Negative,
    NotIncreasing,
}

/// <summary>The first flaw of a table of readings.</summary>
/// <param name="Kind">None when the table is good.</param>
/// <param name="Row">Row of the flaw, counted from 0; -1 when it is not about one row.</param>
public readonly record struct CurveFlaw(CurveFlawKind Kind, int Row);

/// <summary>
/// Force (N) of one spring against its deflection from free length (m): points joined by straight lines,
/// both strictly increasing, beginning at (0, 0). Beyond the last point the last line goes on.
/// </summary>
/// <remarks>Source: docs/theory/springs.md §2.</remarks>
public sealed class SpringCurve
{
    private readonly double[] _deflections;
    private readonly double[] _forces;

    private SpringCurve(double[] deflections, double[] forces) => (_deflections, _forces) = (deflections, forces);

    /// <summary>Number of points, the origin included.</summary>
    public int Count => _forces.Length;

    /// <summary>Largest tabulated deflection, m: beyond it the curve is extended, not measured.</summary>
    public double LastDeflection => _deflections[^1];

    /// <summary>Forces at the points, N, increasing from 0.</summary>
    public ReadOnlySpan<double> Forces => _forces;

    /// <summary>Deflections at the points, m, increasing from 0.</summary>
    public ReadOnlySpan<double> Deflections => _deflections;

    /// <summary>Looks for the first reason why a table cannot be a curve.</summary>
    /// <param name="deflections">From free length, m; row by row with <paramref name="forces"/>.</param>
    /// <param name="forces">Compression, N.</param>
    /// <remarks>Source: docs/theory/springs.md §2 (what makes the force of a stack unique).</remarks>
    public static CurveFlaw FlawOf(ReadOnlySpan<double> deflections, ReadOnlySpan<double> forces)
    {
        if (deflections.Length != forces.Length)
        {
            return new(CurveFlawKind.LengthsDiffer, -1);
        }

        int points = 0;
        for (int i = 0; i < forces.Length; i++)
        {
            if (!double.IsFinite(deflections[i]) || !double.IsFinite(forces[i]))
            {
                return new(CurveFlawKind.NotFinite, i);
            }

            if (deflections[i] < 0 || forces[i] < 0)
            {
                return new(CurveFlawKind.Negative, i);
            }

            bool origin = i == 0 && deflections[0] == 0 && forces[0] == 0;
            if (origin)
            {
                continue;
            }

            double before = i == 0 ? 0 : deflections[i - 1], forceBefore = i == 0 ? 0 : forces[i - 1];
            if (!(deflections[i] > before) || !(forces[i] > forceBefore))
            {
                return new(CurveFlawKind.NotIncreasing, i);
            }

            points++;
        }

        return points == 0 ? new(CurveFlawKind.TooFewPoints, -1) : default;
    }

    /// <summary>The curve through a table; the point (0, 0) is put in front where the table lacks it.</summary>
    /// <param name="deflections">From free length, m, strictly increasing, at least 0.</param>
    /// <param name="forces">Compression, N, strictly increasing, at least 0.</param>
    /// <exception cref="ArgumentException">The table has a flaw: ask <see cref="FlawOf"/> first.</exception>
    /// <remarks>Source: docs/theory/springs.md §2.</remarks>
    public static SpringCurve Through(ReadOnlySpan<double> deflections, ReadOnlySpan<double> forces)
    {
        var flaw = FlawOf(deflections, forces);
        if (flaw.Kind != CurveFlawKind.None)
        {
            throw new ArgumentException($"Not a spring curve: {flaw.Kind} at row {flaw.Row}.", nameof(forces));
        }

        bool hasOrigin = deflections[0] == 0;
        return hasOrigin
            ? new(deflections.ToArray(), forces.ToArray())
            : new([0, .. deflections], [0, .. forces]);
    }

    /// <summary>Deflection (m) under a force (N, at least 0). Error: rounding only.</summary>
    /// <remarks>Source: linear interpolation between the points.</remarks>
    public double DeflectionAt(double force)
    {
        int i = Knots.PieceOf(_forces, force);
        return _deflections[i] + ((force - _forces[i]) * Compliance(i));
    }

    /// <summary>Force (N) at a deflection from free length (m, at least 0). Error: rounding only.</summary>
    /// <remarks>Source: linear interpolation between the points.</remarks>
    public double ForceAt(double deflection)
    {
        int i = Knots.PieceOf(_deflections, deflection);
        return _forces[i] + ((deflection - _deflections[i]) / Compliance(i));
    }

    /// <summary>Deflection per force, m/N, of the line that begins at or holds a force (N, at least 0).</summary>
    /// <remarks>At a point where two lines meet, the one above. Source: slope of the interpolant.</remarks>
    public double ComplianceAt(double force) => Compliance(Knots.PieceOf(_forces, force));

    private double Compliance(int i) => (_deflections[i + 1] - _deflections[i]) / (_forces[i + 1] - _forces[i]);
}
