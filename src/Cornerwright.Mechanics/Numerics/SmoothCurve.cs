namespace Cornerwright.Mechanics.Numerics;

/// <summary>A cubic that passes among readings so that the squares of what it misses them by are least.</summary>
/// <remarks>
/// For readings that carry errors: a curve through every reading turns an error of e at steps h apart into an error of about e/h of
/// the slope; the cubic averages it out. Fitted in Legendre polynomials over the range of the readings, so that the equations
/// stay well conditioned. Linear in the values: the same steps with moved values move the curve by the curve of the moves.
/// Source: Press et al., Numerical Recipes, 3rd ed. (2007), §15.4 (general linear least squares); docs/theory/motion.md §5.
/// </remarks>
public sealed class SmoothCurve : SampledCurve
{
    private const int Terms = 4;
    private readonly double start, end, middle, half, c0, c1, c2, c3;

    private SmoothCurve(double start, double end, ReadOnlySpan<double> power)
    {
        (this.start, this.end, middle, half) = (start, end, (start + end) / 2, (end - start) / 2);
        (c0, c1, c2, c3) = (power[0], power[1], power[2], power[3]);
    }

    /// <summary>Fewer readings than this leave nothing to average: five for the four numbers of a cubic.</summary>
    public const int LeastReadings = Terms + 1;

    /// <inheritdoc/>
    public override double Start => start;

    /// <inheritdoc/>
    public override double End => end;

    /// <summary>Fits readings in increasing order of <paramref name="at"/>.</summary>
    /// <returns>Null where there are too few, they are out of order or not finite.</returns>
    /// <remarks>Source: Numerical Recipes (2007), eq. 15.4.8 (normal equations).</remarks>
    public static SmoothCurve? Create(ReadOnlySpan<double> at, ReadOnlySpan<double> value)
    {
        if (at.Length < LeastReadings || at.Length != value.Length)
        {
            return null;
        }

        for (int i = 0; i < at.Length; i++)
        {
            if (!double.IsFinite(at[i]) || !double.IsFinite(value[i]) || (i > 0 && !(at[i] > at[i - 1])))
            {
                return null;
            }
        }

        // Normal equations in Legendre polynomials of t, which runs from -1 to 1.
        double centre = (at[0] + at[^1]) / 2, reach = (at[^1] - at[0]) / 2;
        var equations = new NormalEquations(stackalloc double[Terms * Terms], stackalloc double[Terms]);
        Span<double> p = stackalloc double[Terms];
        for (int i = 0; i < at.Length; i++)
        {
            double t = (at[i] - centre) / reach;
            (p[0], p[1], p[2], p[3]) = (1, t, ((3 * t * t) - 1) / 2, ((5 * t * t) - 3) * t / 2);
            equations.Add(p, value[i]);
        }

        ReadOnlySpan<double> right = equations.Unknowns;
        return equations.Solve()
            ? new SmoothCurve(at[0], at[^1], [right[0] - (right[2] / 2), right[1] - (1.5 * right[3]), 1.5 * right[2], 2.5 * right[3]])
            : null;
    }

    /// <inheritdoc/>
    /// <remarks>Source: a cubic and its derivatives.</remarks>
    public override (double Value, double First, double Second) At(double position)
    {
        double inside = Math.Clamp(position, start, end), t = (inside - middle) / half, beyond = position - inside;
        double value = c0 + (t * (c1 + (t * (c2 + (t * c3))))), first = (c1 + (t * ((2 * c2) + (3 * t * c3)))) / half;
        return beyond == 0 ? (value, first, ((2 * c2) + (6 * t * c3)) / (half * half)) : (value + (first * beyond), first, 0);
    }
}
