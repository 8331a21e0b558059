using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Geometry;

/// <summary>Why points do or do not make a circle.</summary>
public enum CircleFitStop
{
    Fitted,

    /// <summary>Fewer than three points, or a number that is not finite.</summary>
    TooFew,

    /// <summary>The points lie on a line, or in one place.</summary>
    OnALine,

    /// <summary>The points cover so short an arc that the middle did not settle.</summary>
    NotSettled,
}

/// <summary>A circle in space through points, with what is left over.</summary>
/// <param name="Centre">m.</param>
/// <param name="Axis">Unit, square to the circle's plane; its sense is left to the caller.</param>
/// <param name="Radius">m.</param>
/// <param name="Residuals">By point: distance from the circle, m, also of those that were left out.</param>
/// <param name="Outliers">Numbers of the points that were left out because they disagree with all others.</param>
/// <param name="Deviation">Standard deviation of one coordinate of a point, m.</param>
/// <param name="CentreDeviation">Standard deviation of the centre in the direction in which it is known worst, m.</param>
/// <param name="AxisDeviation">Standard deviation of the axis in the direction in which it is known worst, rad.</param>
/// <param name="Why">What came of it.</param>
/// <remarks>Source: docs/theory/scans.md §3.</remarks>
public sealed record CircleFitted(
    Vec3 Centre, Vec3 Axis, double Radius, IReadOnlyList<double> Residuals, IReadOnlyList<int> Outliers, double Deviation,
    double CentreDeviation, double AxisDeviation, CircleFitStop Why);

/// <summary>A plane through points, and in it the circle with the least sum of squared distances.</summary>
/// <remarks>
/// Start: algebraic (I. Kåsa, "A circle fitting procedure and its error analysis", IEEE Trans. Instrum. Meas. 25 (1976) 8); then
/// Gauss and Newton on the distances (W. Gander, G. H. Golub, R. Strebel, "Least-squares fitting of circles and
/// ellipses", BIT 34 (1994) 558).
/// Method, limits and tests: docs/theory/scans.md §3.
/// </remarks>
public static class CircleFit
{
    private const int MostSteps = 60;

    /// <summary>
    /// See <see cref="RigidFit"/>; of two coordinates, across the circle and square to its plane, χ² exceeds 20 once in 22,000.
    /// </summary>
    private const double OutlierFall = 20;

    /// <summary>Width of the spread across, over its length, below which points count as lying on a line.</summary>
    private const double LeastWidth = 0.02;

    /// <summary>Fits a circle; a point that disagrees with all others is left out and named.</summary>
    /// <param name="points">m, on one circle to within their error.</param>
    /// <param name="pickDeviation">What one coordinate of a point is good for, m, above 0.</param>
    /// <remarks>
    /// At most one point in three is left out, and never so many that fewer than four stay. Source: docs/theory/scans.md §3.
    /// </remarks>
    public static CircleFitted Fit(ReadOnlySpan<Vec3> points, double pickDeviation)
    {
        Require.Positive(pickDeviation);
        int n = points.Length;
        foreach (var p in points)
        {
            n = double.IsFinite(p.X + p.Y + p.Z) ? n : 0;
        }

        if (n < 3)
        {
            return Without(CircleFitStop.TooFew, points.Length);
        }

        double[] weights = new double[n];
        Array.Fill(weights, 1);
        int used = n;
        var circle = Round(points, weights);
        for (int left = n / 3; left > 0 && used > 4 && circle.Why == CircleFitStop.Fitted; left--)
        {
            int worst = Worst(points, weights, used, circle.SquareOf(points, weights), pickDeviation);
            if (worst < 0)
            {
                break;
            }

            weights[worst] = 0;
            used--;
            circle = Round(points, weights);
        }

        return circle.Why == CircleFitStop.Fitted ? Whole(points, weights, used, circle, pickDeviation) : Without(circle.Why, n);
    }

    private static CircleFitted Without(CircleFitStop why, int n) =>
        new(default, Vec3.UnitZ, 0, new double[n], [], double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity, why);

    private static CircleFitted Whole(ReadOnlySpan<Vec3> points, double[] weights, int used, in Circle circle, double pickDeviation)
    {
        int n = points.Length;
        double[] residuals = new double[n];
        var outliers = new List<int>();
        double square = 0;

        // Information about the middle and radius in the plane, and about height and tilt of the plane.
        var flat = new NormalEquations(stackalloc double[9], stackalloc double[3]);
        var tilt = new NormalEquations(stackalloc double[9], stackalloc double[3]);
        for (int i = 0; i < n; i++)
        {
            var (u, v, h) = circle.InPlane(points[i]);
            double r = Math.Sqrt((u * u) + (v * v)), off = r - circle.Radius;
            residuals[i] = Math.Sqrt((off * off) + (h * h));
            if (weights[i] == 0)
            {
                outliers.Add(i);
                continue;
            }

            square += residuals[i] * residuals[i];
            flat.Add([r > 0 ? u / r : 1, r > 0 ? v / r : 0, 1], 0);
            tilt.Add([1, u, v], 0);
        }

        double deviation = Math.Max(pickDeviation, Math.Sqrt(square / Math.Max(1, (2 * used) - 6)));
        var (_, middle) = Variances(flat, 0);
        var (height, slope) = Variances(tilt, 1);
        double inPlane = Math.Sqrt(middle), across = Math.Sqrt(height), lean = Math.Sqrt(slope);
        return new CircleFitted(
            circle.Centre, circle.Normal, circle.Radius, residuals, outliers, deviation, deviation * Math.Max(inPlane, across),
            deviation * lean, CircleFitStop.Fitted);
    }

    private static int Worst(ReadOnlySpan<Vec3> points, double[] weights, int used, double all, double pickDeviation)
    {
        int worst = -1;
        double least = double.PositiveInfinity;
        for (int i = 0; i < points.Length; i++)
        {
            if (weights[i] == 0)
            {
                continue;
            }

            weights[i] = 0;
            var without = Round(points, weights);
            double square = without.Why == CircleFitStop.Fitted ? without.SquareOf(points, weights) : double.PositiveInfinity;
            weights[i] = 1;
            if (square < least)
            {
                (worst, least) = (i, square);
            }
        }

        double variance = Math.Max(pickDeviation * pickDeviation, least / Math.Max(1, (2 * (used - 1)) - 6));
        return all - least > OutlierFall * variance ? worst : -1;
    }

    private static Circle Round(ReadOnlySpan<Vec3> points, ReadOnlySpan<double> weights)
    {
        var spread = PointSpread.Of(points, weights);
        if (!(spread.Along.Y > LeastWidth * spread.Along.X))
        {
            return new Circle(default, Vec3.UnitX, Vec3.UnitY, Vec3.UnitZ, 0, CircleFitStop.OnALine);
        }

        var plane = new Circle(spread.Middle, spread.Longest, spread.Second, spread.Thinnest, 0, CircleFitStop.Fitted);

        // Kåsa: u² + v² = 2au + 2bv + c is linear in a, b, c.
        var equations = new NormalEquations(stackalloc double[9], stackalloc double[3]);
        ReadOnlySpan<double> right = equations.Unknowns;
        for (int i = 0; i < points.Length; i++)
        {
            var (u, v, _) = plane.InPlane(points[i]);
            equations.Add([u, v, 1], (u * u) + (v * v), weights[i]);
        }

        if (!equations.Solve())
        {
            return plane with { Why = CircleFitStop.OnALine };
        }

        double a = right[0] / 2, b = right[1] / 2, radius = Math.Sqrt(Math.Max(0, right[2] + (a * a) + (b * b)));
        for (int step = 0; step < MostSteps; step++)
        {
            equations.Clear();
            for (int i = 0; i < points.Length; i++)
            {
                var (u, v, _) = plane.InPlane(points[i]);
                double du = u - a, dv = v - b, r = Math.Sqrt((du * du) + (dv * dv));
                if (r > 0)
                {
                    equations.Add([du / r, dv / r, 1], r - radius, weights[i]);
                }
            }

            if (!equations.Solve())
            {
                return plane with { Why = CircleFitStop.NotSettled };
            }

            (a, b, radius) = (a + right[0], b + right[1], radius + right[2]);
            if (!(radius > 0) || !(Math.Abs(a) + Math.Abs(b) + radius < 1e3))
            {
                return plane with { Why = CircleFitStop.NotSettled };
            }

            if (Math.Abs(right[0]) + Math.Abs(right[1]) + Math.Abs(right[2]) < 1e-13 * (1 + radius))
            {
                return plane with { Centre = plane.Centre + (plane.U * a) + (plane.V * b), Radius = radius };
            }
        }

        return plane with { Why = CircleFitStop.NotSettled };
    }

    // With unit errors: the variance of the first unknown, and the worst over the directions of two of the three, from one on.
    private static (double First, double WorstOfTwo) Variances(NormalEquations information, int from)
    {
        Span<double> c = stackalloc double[9];
        return information.Covariance(c)
            ? (c[0], SymmetricEigen.LargerOfTwo(c[4 * from], c[(4 * from) + 1], c[(4 * from) + 4]))
            : (double.PositiveInfinity, double.PositiveInfinity);
    }

    /// <summary>A circle, or only its plane, with two directions in the plane.</summary>
    private readonly record struct Circle(Vec3 Centre, Vec3 U, Vec3 V, Vec3 Normal, double Radius, CircleFitStop Why)
    {
        public (double U, double V, double Height) InPlane(in Vec3 p)
        {
            Vec3 d = p - Centre;
            return (d.Dot(U), d.Dot(V), d.Dot(Normal));
        }

        public double DistanceOf(in Vec3 p)
        {
            var (u, v, h) = InPlane(p);
            double off = Math.Sqrt((u * u) + (v * v)) - Radius;
            return Math.Sqrt((off * off) + (h * h));
        }

        public double SquareOf(ReadOnlySpan<Vec3> points, ReadOnlySpan<double> weights)
        {
            double square = 0;
            for (int i = 0; i < points.Length; i++)
            {
                double d = DistanceOf(points[i]);
                square += weights[i] * d * d;
            }

            return square;
        }
    }
}
