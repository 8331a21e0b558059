using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Clearance;

/// <summary>The least signed distance from the wheel to a circle (the rim of a cylinder's flat end), with proof.</summary>
/// <remarks>
/// An arc lies within radius·(1 - cos(angle/2)) of its chord, and along the chord the lines of <see cref="SegmentLeast"/> bound the
/// distance from below. Source: docs/theory/clearance.md §5.
/// </remarks>
internal static class RimLeast
{
    /// <summary>Proof tolerance, m: half of the stated bound of 1e-5 m.</summary>
    private const double Tolerance = 5e-6;
    private const int EvaluationLimit = 3000;
    private const int Depth = 48;

    private readonly record struct Node(double Angle, Vec3 At, double F, double Ga, double Gr, double R);

    private readonly record struct Arc(Node From, Node To);

    public static bool Lower(
        in WheelSolid wheel, in Vec3 centre, in Vec3 normal, double radius, int end, ref Clearing nearest, ref double gap)
    {
        if (!(radius > 0))
        {
            return true;
        }

        Vec3 u = (Math.Abs(normal.X) < 0.7 ? normal.Cross(Vec3.UnitX) : normal.Cross(Vec3.UnitY)).Unit();
        Vec3 v = normal.Cross(u);
        Span<Arc> stack = stackalloc Arc[Depth];
        bool proved = true;
        double best = gap;
        Vec3 bestAt = default;
        for (int piece = 0; piece < wheel.Pieces; piece++)
        {
            proved &= Piece(wheel, piece, centre, u, v, radius, stack, ref best, ref bestAt);
        }

        if (best < gap)
        {
            gap = best;
            nearest = Clearing.OfPoint(wheel, bestAt, end);
        }

        return proved;
    }

    private static bool Piece(
        in WheelSolid wheel, int piece, in Vec3 centre, in Vec3 u, in Vec3 v, double radius, Span<Arc> stack, ref double best,
        ref Vec3 bestAt)
    {
        // Four quarters to start with; none when the whole circle is too far.
        double r = Math.Sqrt((centre.Y * centre.Y) + (centre.Z * centre.Z));
        if (wheel.PieceDistance(piece, centre.X, r, out _, out _) - radius >= best)
        {
            return true;
        }

        int count = 0;
        Node first = At(wheel, piece, centre, u, v, radius, 0, ref best, ref bestAt);
        Node previous = first;
        for (int i = 1; i <= 4; i++)
        {
            Node next = i == 4
                ? first with { Angle = 2 * Math.PI }
                : At(wheel, piece, centre, u, v, radius, i * Math.PI / 2, ref best, ref bestAt);
            stack[count++] = new(previous, next);
            previous = next;
        }

        for (int evaluations = 0; count > 0; evaluations++)
        {
            Arc here = stack[--count];
            if (Bound(here, radius) >= best - Tolerance)
            {
                continue;
            }

            if (evaluations > EvaluationLimit || count + 2 > stack.Length)
            {
                return false;
            }

            Node middle = At(wheel, piece, centre, u, v, radius, Split(here, centre, u, v), ref best, ref bestAt);
            Arc left = new(here.From, middle), right = new(middle, here.To);
            (stack[count], stack[count + 1]) = here.From.F < here.To.F ? (right, left) : (left, right);
            count += 2;
        }

        return true;
    }

    /// <summary>Where the derivative's secant meets zero, kept off the ends; else the middle.</summary>
    private static double Split(in Arc here, in Vec3 centre, in Vec3 u, in Vec3 v)
    {
        double d0 = Slope(here.From, centre, u, v), d1 = Slope(here.To, centre, u, v);
        double h = here.To.Angle - here.From.Angle;
        double share = d0 < 0 && d1 > 0 ? Math.Clamp(-d0 / (d1 - d0), 0.1, 0.9) : 0.5;
        return here.From.Angle + (share * h);
    }

    private static double Slope(in Node node, in Vec3 centre, in Vec3 u, in Vec3 v)
    {
        Vec3 arm = node.At - centre;
        Vec3 tangent = (v * arm.Dot(u)) - (u * arm.Dot(v));
        return Clearing.Gradient(node.At, node.R, node.Ga, node.Gr).Dot(tangent);
    }

    private static double Bound(in Arc here, double radius)
    {
        Node p = here.From, q = here.To;
        Vec3 step = q.At - p.At;
        double h = step.Length;
        double sagitta = radius * (1 - Math.Cos(0.5 * (q.Angle - p.Angle)));
        if (!(h > 0))
        {
            return p.F - sagitta;
        }

        double da = step.X / h, chord = (q.R - p.R) / h;
        double k0 = (p.Ga * da) + (p.Gr * (p.Gr >= 0 ? Rise(p, step) / h : chord));
        double k1 = (q.Ga * da) + (q.Gr * (q.Gr >= 0 ? Rise(q, step) / h : chord));
        if (k0 >= 0 || k1 <= 0)
        {
            return Math.Min(p.F, q.F) - sagitta;
        }

        double along = (q.F - p.F - (k1 * h)) / (k0 - k1);
        return p.F + (k0 * along) - sagitta;
    }

    private static double Rise(in Node node, in Vec3 step) =>
        node.R > 0 ? ((node.At.Y * step.Y) + (node.At.Z * step.Z)) / node.R : 0;

    private static Node At(
        in WheelSolid wheel, int piece, in Vec3 centre, in Vec3 u, in Vec3 v, double radius, double angle, ref double best, ref Vec3 bestAt)
    {
        var (sin, cos) = Math.SinCos(angle);
        Vec3 at = centre + (u * (radius * cos)) + (v * (radius * sin));
        double r = Math.Sqrt((at.Y * at.Y) + (at.Z * at.Z));
        double f = wheel.PieceDistance(piece, at.X, r, out double ga, out double gr);
        if (f < best)
        {
            (best, bestAt) = (f, at);
        }

        return new(angle, at, f, ga, gr, r);
    }
}
