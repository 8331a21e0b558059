using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Clearance;

/// <summary>The least signed distance from one piece of the wheel to the points of a straight segment, with proof.</summary>
/// <remarks>
/// Along the segment a is linear and r convex; the distance to a convex profile is convex in (a, r). From each evaluated point this gives
/// a straight line that lies below the distance: with the tangent of r where the gradient points away from the spindle, with the chord
/// of r where it points toward it. The lines' crossing bounds the interval from below; intervals are split until no bound is below the
/// best value by more than the tolerance. Source: docs/theory/clearance.md §5; cutting planes, Kelley, J. SIAM 8 (1960) 703.
/// </remarks>
internal ref struct SegmentLeast
{
    /// <summary>Proof tolerance, m: a tenth of the stated bound of 1e-6 m, leaving room for rounding.</summary>
    public const double Tolerance = 1e-7;

    /// <summary>Evaluations allowed a segment and piece; common cases take 4 to 10.</summary>
    public const int EvaluationLimit = 400;

    private const int Depth = 48;

    private readonly WheelSolid wheel;
    private readonly Span<Interval> stack;

    public SegmentLeast(WheelSolid wheel, Span<Interval> stack)
    {
        this.wheel = wheel;
        this.stack = stack;
    }

    public static int StackLength => Depth;

    /// <summary>One evaluated point: place s (m along), distance F with its half-plane gradient, radius R.</summary>
    internal readonly record struct Node(double S, double F, double Ga, double Gr, double R, double RadiusSlope);

    internal readonly record struct Interval(Node From, Node To);

    /// <summary>Lowers <paramref name="best"/> where this piece comes nearer; true when proved.</summary>
    public readonly bool Lower(int piece, in Vec3 from, in Vec3 direction, double length, ref double best, ref double bestS)
    {
        if (wheel.IsFar(piece, from, direction, length, best))
        {
            return true;
        }

        Node start = At(piece, from, direction, 0);
        Take(start, ref best, ref bestS);
        Node end = At(piece, from, direction, length);
        Take(end, ref best, ref bestS);
        if (0.5 * (start.F + end.F - length) >= best)
        {
            return true;
        }

        int count = 0, evaluations = 0;
        stack[count++] = new(start, end);
        while (count > 0)
        {
            Interval here = stack[--count];
            double h = here.To.S - here.From.S;
            if (!Bound(here, direction.X, h, out double crossing, out double bound) || bound >= best - Tolerance)
            {
                continue;
            }

            if (++evaluations > EvaluationLimit || count + 2 > stack.Length)
            {
                return false;
            }

            // Split where the derivative's secant meets zero, every other time where the two lines cross.
            double d0 = (here.From.Ga * direction.X) + (here.From.Gr * here.From.RadiusSlope);
            double d1 = (here.To.Ga * direction.X) + (here.To.Gr * here.To.RadiusSlope);
            double split = (evaluations & 1) == 1 && d0 < 0 && d1 > 0 ? here.From.S - (h * d0 / (d1 - d0)) : crossing;
            split = Math.Clamp(split, here.From.S + (1e-3 * h), here.To.S - (1e-3 * h));
            Node middle = At(piece, from, direction, split);
            Take(middle, ref best, ref bestS);
            stack[count++] = new(here.From, middle);
            stack[count++] = new(middle, here.To);
        }

        return true;
    }

    /// <summary>A quick look from both ends and the middle: the least distance found, and what no distance lies below.</summary>
    /// <param name="piece">Of the wheel.</param>
    /// <param name="from">m, in S.</param>
    /// <param name="direction">A unit vector.</param>
    /// <param name="length">m.</param>
    /// <param name="atLeast">Is lowered to what this piece cannot come below, m; what cannot go below it is not looked at.</param>
    /// <param name="found">Is lowered to the least distance found, m.</param>
    public readonly void Look(int piece, in Vec3 from, in Vec3 direction, double length, ref double atLeast, ref double found)
    {
        if (wheel.IsFar(piece, from, direction, length, atLeast))
        {
            return;
        }

        Node start = At(piece, from, direction, 0), middle = At(piece, from, direction, 0.5 * length),
            end = At(piece, from, direction, length);
        double least = Math.Min(middle.F, Math.Min(start.F, end.F));
        found = Math.Min(found, least);
        double first = Bound(new(start, middle), direction.X, 0.5 * length, out _, out double bound) ? bound : least,
            second = Bound(new(middle, end), direction.X, 0.5 * length, out _, out bound) ? bound : least;
        atLeast = Math.Min(atLeast, Math.Min(least, Math.Min(first, second)));
    }

    /// <summary>A bound from below that one interval's end lines give; false when an end itself is the bound.</summary>
    private static bool Bound(in Interval here, double da, double h, out double crossing, out double bound)
    {
        Node p = here.From, q = here.To;
        double chord = (q.R - p.R) / h;
        double k0 = (p.Ga * da) + (p.Gr * (p.Gr >= 0 ? p.RadiusSlope : chord));
        double k1 = (q.Ga * da) + (q.Gr * (q.Gr >= 0 ? q.RadiusSlope : chord));
        if (k0 >= 0 || k1 <= 0)
        {
            (crossing, bound) = (p.S, 0);
            return false;
        }

        double along = (q.F - p.F - (k1 * h)) / (k0 - k1);
        (crossing, bound) = (p.S + along, p.F + (k0 * along));
        return true;
    }

    private static void Take(in Node node, ref double best, ref double bestS)
    {
        if (node.F < best)
        {
            (best, bestS) = (node.F, node.S);
        }
    }

    private readonly Node At(int piece, in Vec3 from, in Vec3 direction, double s)
    {
        double y = from.Y + (s * direction.Y), z = from.Z + (s * direction.Z);
        double r = Math.Sqrt((y * y) + (z * z));
        double slope = r > 0 ? ((y * direction.Y) + (z * direction.Z)) / r : 0;
        double f = wheel.PieceDistance(piece, from.X + (s * direction.X), r, out double ga, out double gr);
        return new(s, f, ga, gr, r, slope);
    }
}
