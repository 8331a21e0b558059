using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Geometry;

/// <summary>Why pairs of points do or do not fix a turn and a shift.</summary>
public enum RigidFitStop
{
    /// <summary>They do.</summary>
    Fitted,

    /// <summary>Fewer than three pairs, or a number that is not finite.</summary>
    TooFew,

    /// <summary>All on one line, or in one place: the turn about it stays open.</summary>
    OnALine,

    /// <summary>They fit far better with left and right exchanged: two were taken for each other, or one side is mirrored.</summary>
    Mirrored,
}

/// <summary>A turn and a shift through pairs of points, with what is left over.</summary>
/// <param name="Transform">Takes the first of each pair near to the second; the identity unless Why is Fitted.</param>
/// <param name="Residuals">By pair: distance left over, m, also of those that were left out.</param>
/// <param name="Outliers">Numbers of the pairs that were left out because they disagree with all others.</param>
/// <param name="Deviation">
/// Standard deviation of one coordinate of one pair, m: from what is left over, at least as large as was said of a pick.
/// </param>
/// <param name="Scale">Size of the second points' figure over that of the first: not 1 where the unit is wrong. It is not applied.</param>
/// <param name="Why">What came of it.</param>
/// <remarks>Source: docs/theory/scans.md §2.</remarks>
public sealed record RigidFitted(
    RigidTransform Transform, IReadOnlyList<double> Residuals, IReadOnlyList<int> Outliers, double Deviation, double Scale,
    RigidFitStop Why)
{
    internal double[] PlaceDoubt { get; init; } = [];

    internal Vec3 Middle { get; init; }

    internal int Used { get; init; }

    /// <summary>Covariance of where the fit puts a point, m², as xx, xy, xz, yy, yz, zz.</summary>
    /// <param name="place">In the second points' frame, m.</param>
    /// <param name="into">Six numbers.</param>
    /// <remarks>
    /// Equal independent errors in all coordinates: σ²/n + [p]× (Σ|q|²I - qqᵀ)⁻¹ [p]×ᵀ σ², p and q from the middle. Source:
    /// docs/theory/scans.md §2; linear least squares.
    /// </remarks>
    public void CovarianceAt(in Vec3 place, Span<double> into)
    {
        Vec3 p = place - Middle;
        ReadOnlySpan<double> c = PlaceDoubt;

        // Columns of [p]ₓ: a small turn ω moves the point by ω × p.
        Vec3 x = new(0, -p.Z, p.Y), y = new(p.Z, 0, -p.X), z = new(-p.Y, p.X, 0);
        double even = Deviation * Deviation / Used;
        into[0] = even + Form(x, x, c);
        into[1] = Form(x, y, c);
        into[2] = Form(x, z, c);
        into[3] = even + Form(y, y, c);
        into[4] = Form(y, z, c);
        into[5] = even + Form(z, z, c);
    }

    private static double Form(in Vec3 a, in Vec3 b, ReadOnlySpan<double> c) =>
        (a.X * ((c[0] * b.X) + (c[1] * b.Y) + (c[2] * b.Z))) + (a.Y * ((c[3] * b.X) + (c[4] * b.Y) + (c[5] * b.Z)))
        + (a.Z * ((c[6] * b.X) + (c[7] * b.Y) + (c[8] * b.Z)));
}

/// <summary>The turn and shift that bring one set of points onto another with the least sum of squares.</summary>
/// <remarks>
/// Source: B. K. P. Horn, "Closed-form solution of absolute orientation using unit quaternions", J. Opt. Soc. Am. A 4
/// (1987) 629. Method, limits and tests: docs/theory/scans.md §2.
/// </remarks>
public static class RigidFit
{
    /// <summary>
    /// Width of the spread across, over its length, below which points count as lying on a line. Below 1 in 50 a
    /// pick's error turns the scan by degrees.
    /// </summary>
    private const double LeastWidth = 0.02;

    /// <summary>
    /// A pair is left out when the sum of squares falls by more than this many variances without it. Of a sound pair
    /// it falls as χ² of three coordinates does, which exceeds 20 once in 5,900 (Abramowitz and Stegun 1964, 26.4);
    /// the fall counts what the pair itself pulls.
    /// </summary>
    private const double OutlierFall = 20;

    /// <summary>Fits pairs; a pair that disagrees with all others is left out and named.</summary>
    /// <param name="from">m.</param>
    /// <param name="to">m, one for each.</param>
    /// <param name="pickDeviation">What one coordinate of a pick is good for, m, above 0.</param>
    /// <remarks>
    /// At most one pair in three is left out, and never so many that fewer than three stay. Source: docs/theory/scans.md §2.
    /// </remarks>
    public static RigidFitted Fit(ReadOnlySpan<Vec3> from, ReadOnlySpan<Vec3> to, double pickDeviation)
    {
        Require.Positive(pickDeviation);
        if (from.Length != to.Length)
        {
            throw new ArgumentException("Points come in pairs.", nameof(to));
        }

        int n = from.Length;
        if (n < 3 || !AllFinite(from) || !AllFinite(to))
        {
            return Without(RigidFitStop.TooFew, n);
        }

        if (OnALine(from) || OnALine(to))
        {
            return Without(RigidFitStop.OnALine, n);
        }

        bool[] kept = new bool[n];
        Array.Fill(kept, true);
        int used = n;
        for (int left = n / 3; left > 0 && used > 3; left--)
        {
            int worst = Worst(from, to, kept, used, pickDeviation);
            if (worst < 0)
            {
                break;
            }

            kept[worst] = false;
            used--;
        }

        var (best, square) = Best(from, to, kept, mirrored: false);
        double deviation = Math.Max(pickDeviation, Math.Sqrt(square / Math.Max(1, (3 * used) - 6)));
        if (deviation > 3 * pickDeviation && IsMirrored(from, to, kept, square))
        {
            return Without(RigidFitStop.Mirrored, n);
        }

        return Whole(from, to, kept, used, best, deviation);
    }

    private static RigidFitted Whole(
        ReadOnlySpan<Vec3> from, ReadOnlySpan<Vec3> to, bool[] kept, int used, RigidTransform best, double deviation)
    {
        int n = from.Length;
        double[] residuals = new double[n];
        var outliers = new List<int>();
        Vec3 middle = default;
        for (int i = 0; i < n; i++)
        {
            residuals[i] = (best.Apply(from[i]) - to[i]).Length;
            if (kept[i])
            {
                middle += to[i] / used;
            }
            else
            {
                outliers.Add(i);
            }
        }

        var turn = new NormalEquations(stackalloc double[9], stackalloc double[3]);
        double ownSize = 0, size = 0;
        var (fromMiddle, _) = Middles(from, to, kept);
        for (int i = 0; i < n; i++)
        {
            if (kept[i])
            {
                Vec3 q = to[i] - middle;

                // A small turn ω moves q by ω × q: three rows, whose squares are those of inertia.
                turn.Add([0, q.Z, -q.Y], 0);
                turn.Add([-q.Z, 0, q.X], 0);
                turn.Add([q.Y, -q.X, 0], 0);
                size += q.LengthSquared;
                ownSize += (from[i] - fromMiddle).LengthSquared;
            }
        }

        // The points do not lie on a line, so no turn stays open.
        double[] doubt = new double[9];
        bool known = turn.Covariance(doubt);
        for (int i = 0; i < doubt.Length; i++)
        {
            doubt[i] = known ? doubt[i] * deviation * deviation : double.PositiveInfinity;
        }

        double scale = Math.Sqrt(size / ownSize);
        return new RigidFitted(best, residuals, outliers, deviation, scale, RigidFitStop.Fitted)
        {
            PlaceDoubt = doubt, Middle = middle, Used = used,
        };
    }

    private static RigidFitted Without(RigidFitStop why, int n) =>
        new(RigidTransform.Identity, new double[n], [], double.PositiveInfinity, 1, why);

    private static bool AllFinite(ReadOnlySpan<Vec3> points)
    {
        foreach (var p in points)
        {
            if (!double.IsFinite(p.X + p.Y + p.Z))
            {
                return false;
            }
        }

        return true;
    }

    private static bool OnALine(ReadOnlySpan<Vec3> points)
    {
        var along = PointSpread.Of(points).Along;
        return !(along.Y > LeastWidth * along.X);
    }

    // The pair without which the others agree best; -1 if it agrees with them well enough.
    private static int Worst(ReadOnlySpan<Vec3> from, ReadOnlySpan<Vec3> to, bool[] kept, int used, double pickDeviation)
    {
        int worst = -1;
        double least = double.PositiveInfinity, all = Best(from, to, kept, mirrored: false).Square;
        for (int i = 0; i < kept.Length; i++)
        {
            if (!kept[i])
            {
                continue;
            }

            kept[i] = false;
            double square = Best(from, to, kept, mirrored: false).Square;
            kept[i] = true;
            if (square < least)
            {
                (worst, least) = (i, square);
            }
        }

        double variance = Math.Max(pickDeviation * pickDeviation, least / Math.Max(1, (3 * (used - 1)) - 6));
        return all - least > OutlierFall * variance ? worst : -1;
    }

    // Flat figures are their own mirror images, so only a figure with some depth can tell.
    private static bool IsMirrored(ReadOnlySpan<Vec3> from, ReadOnlySpan<Vec3> to, bool[] kept, double square) =>
        Best(from, to, kept, mirrored: true).Square < square / 9;

    private static (Vec3 From, Vec3 To) Middles(ReadOnlySpan<Vec3> from, ReadOnlySpan<Vec3> to, bool[] kept)
    {
        Vec3 a = default, b = default;
        int used = 0;
        for (int i = 0; i < kept.Length; i++)
        {
            if (kept[i])
            {
                (a, b, used) = (a + from[i], b + to[i], used + 1);
            }
        }

        return (a / used, b / used);
    }

    // Horn's symmetric 4 × 4 matrix; its uppermost eigenvector is the turn.
    private static (RigidTransform Fit, double Square) Best(ReadOnlySpan<Vec3> from, ReadOnlySpan<Vec3> to, bool[] kept, bool mirrored)
    {
        var (middleFrom, middleTo) = Middles(from, to, kept);
        double sxx = 0, sxy = 0, sxz = 0, syx = 0, syy = 0, syz = 0, szx = 0, szy = 0, szz = 0;
        for (int i = 0; i < kept.Length; i++)
        {
            if (kept[i])
            {
                Vec3 a = mirrored ? middleFrom - from[i] : from[i] - middleFrom, b = to[i] - middleTo;
                (sxx, sxy, sxz) = (sxx + (a.X * b.X), sxy + (a.X * b.Y), sxz + (a.X * b.Z));
                (syx, syy, syz) = (syx + (a.Y * b.X), syy + (a.Y * b.Y), syz + (a.Y * b.Z));
                (szx, szy, szz) = (szx + (a.Z * b.X), szy + (a.Z * b.Y), szz + (a.Z * b.Z));
            }
        }

        Span<double> n =
        [
            sxx + syy + szz, syz - szy, szx - sxz, sxy - syx,
            syz - szy, sxx - syy - szz, sxy + syx, szx + sxz,
            szx - sxz, sxy + syx, -sxx + syy - szz, syz + szy,
            sxy - syx, szx + sxz, syz + szy, -sxx - syy + szz,
        ];
        Span<double> v = stackalloc double[16];
        SymmetricEigen.Decompose(n, v, 4);
        Span<int> order = stackalloc int[4];
        SymmetricEigen.Order(n, 4, order);
        int k = order[0];
        var turn = RigidTransform.From(v[k], v[4 + k], v[8 + k], v[12 + k], default);
        var fit = turn with { Shift = middleTo - turn.Turn(middleFrom) };
        double square = 0;
        for (int i = 0; i < kept.Length; i++)
        {
            if (kept[i])
            {
                Vec3 a = mirrored ? middleFrom - from[i] : from[i] - middleFrom;
                square += (turn.Turn(a) - (to[i] - middleTo)).LengthSquared;
            }
        }

        return (fit, square);
    }
}
