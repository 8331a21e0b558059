namespace Cornerwright.Mechanics.Numerics;

/// <summary>Why a table is no curve.</summary>
public enum CurveFault
{
    None = 0,
    TooFewPoints,
    LengthsDiffer,
    NotFinite,
    NotIncreasing,
}

/// <summary>A curve through readings that never swings past them: piecewise cubic with Fritsch-Carlson/Butland slopes.</summary>
/// <remarks>
/// Where the readings rise the curve rises, where they fall it falls; first derivative continuous, second jumps at readings.
/// Ends: three-point slopes, limited. Two readings make a straight line.
/// Source: Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980) 238; Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300;
/// end slopes as in Moler, Numerical Computing with MATLAB (2004), §3.6.
/// </remarks>
public sealed class MonotoneCurve : SampledCurve
{
    private readonly double[] x;
    private readonly double[] y;
    private readonly double[] slope;

    private MonotoneCurve(double[] x, double[] y, double[] slope) => (this.x, this.y, this.slope) = (x, y, slope);

    /// <inheritdoc/>
    public override double Start => x[0];

    /// <inheritdoc/>
    public override double End => x[^1];

    /// <summary>Builds the curve from readings in increasing order of <paramref name="at"/>; at least two.</summary>
    /// <returns>Null and the fault when the readings make no curve.</returns>
    /// <remarks>Source: Fritsch and Butland (1984), eq. 3; Moler (2004) §3.6.</remarks>
    public static MonotoneCurve? Create(ReadOnlySpan<double> at, ReadOnlySpan<double> value, out CurveFault fault)
    {
        fault = Check(at, value);
        if (fault != CurveFault.None)
        {
            return null;
        }

        int n = at.Length;
        var slopes = new double[n];
        if (n == 2)
        {
            slopes[0] = slopes[1] = (value[1] - value[0]) / (at[1] - at[0]);
        }
        else
        {
            for (int i = 1; i < n - 1; i++)
            {
                double before = at[i] - at[i - 1], after = at[i + 1] - at[i];
                double d0 = (value[i] - value[i - 1]) / before, d1 = (value[i + 1] - value[i]) / after;
                double w0 = (2 * after) + before, w1 = after + (2 * before);
                slopes[i] = d0 * d1 > 0 ? (w0 + w1) / ((w0 / d0) + (w1 / d1)) : 0;
            }

            slopes[0] =
                EndSlope(at[1] - at[0], at[2] - at[1], (value[1] - value[0]) / (at[1] - at[0]), (value[2] - value[1]) / (at[2] - at[1]));
            slopes[n - 1] = EndSlope(
                at[n - 1] - at[n - 2],
                at[n - 2] - at[n - 3],
                (value[n - 1] - value[n - 2]) / (at[n - 1] - at[n - 2]),
                (value[n - 2] - value[n - 3]) / (at[n - 2] - at[n - 3]));
        }

        return new(at.ToArray(), value.ToArray(), slopes);
    }

    /// <summary>Value, first and second derivative; outside the readings the end's straight line is continued.</summary>
    /// <remarks>Source: cubic Hermite form, Fritsch and Carlson (1980), eq. 2.</remarks>
    public override (double Value, double First, double Second) At(double position)
    {
        if (position <= x[0])
        {
            return position == x[0] ? Inside(position) : (y[0] + (slope[0] * (position - x[0])), slope[0], 0);
        }

        return position > x[^1] ? (y[^1] + (slope[^1] * (position - x[^1])), slope[^1], 0) : Inside(position);
    }

    private (double Value, double First, double Second) Inside(double position)
    {
        int low = Knots.PieceOf(x, position), high = low + 1;
        double h = x[high] - x[low];
        double t = position - x[low];
        double secant = (y[high] - y[low]) / h;
        double c2 = ((3 * secant) - (2 * slope[low]) - slope[high]) / h;
        double c3 = (slope[low] + slope[high] - (2 * secant)) / (h * h);
        return (
            y[low] + (t * (slope[low] + (t * (c2 + (t * c3))))),
            slope[low] + (t * ((2 * c2) + (3 * t * c3))),
            (2 * c2) + (6 * t * c3));
    }

    private static double EndSlope(double near, double far, double secantNear, double secantFar)
    {
        double s = ((((2 * near) + far) * secantNear) - (near * secantFar)) / (near + far);
        if (!(s * secantNear > 0))
        {
            return 0;
        }

        return secantNear * secantFar <= 0 && Math.Abs(s) > Math.Abs(3 * secantNear) ? 3 * secantNear : s;
    }

    private static CurveFault Check(ReadOnlySpan<double> at, ReadOnlySpan<double> value)
    {
        if (at.Length != value.Length)
        {
            return CurveFault.LengthsDiffer;
        }

        if (at.Length < 2)
        {
            return CurveFault.TooFewPoints;
        }

        for (int i = 0; i < at.Length; i++)
        {
            if (!double.IsFinite(at[i]) || !double.IsFinite(value[i]))
            {
                return CurveFault.NotFinite;
            }

            if (i > 0 && !(at[i] > at[i - 1]))
            {
                return CurveFault.NotIncreasing;
            }
        }

        return CurveFault.None;
    }
}
