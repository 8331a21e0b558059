using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Clearance.Scans;

/// <summary>The least signed distance from the wheel to the points of one triangle, with proof.</summary>
/// <remarks>
/// Branch and bound: gradients at a part's middle and at its most promising corner bound the distance over the part (convex where
/// the gradient points away from the spindle; else r is at most the corners' chord); the higher of the two counts;
/// the longest side is halved until no bound lies below the best value by more than the tolerance. Lines and points
/// are triangles too. Source: docs/theory/scan-clearance.md §4.
/// </remarks>
internal ref struct TriangleLeast
{
    /// <summary>Proof tolerance, m: a fifth of the stated 1e-6 m.</summary>
    public const double Tolerance = 2e-7;

    /// <summary>
    /// Of a depth: inside the wheel whole regions are nearly equally deep, and nobody needs the depth of a deep overlap to a micrometre.
    /// </summary>
    public const double DepthTolerance = 1e-4;

    /// <summary>Parts looked at for one triangle and piece; usual are 1 to 60.</summary>
    public const int PartLimit = 4000;

    /// <summary>Parts looked at for all triangles of one question; usual are 60.</summary>
    public const int TotalLimit = 100_000;

    /// <summary>Room for the parts in waiting: halving a side of 100 m 40 times leaves nothing.</summary>
    public const int StackLength = 96;

    private readonly WheelShape shape;
    private readonly WheelPose pose;
    private readonly Span<Part> stack;
    private int total;

    public TriangleLeast(WheelShape shape, in WheelPose pose, Span<Part> stack)
    {
        this.shape = shape;
        this.pose = pose;
        this.stack = stack;
        Certified = true;
    }

    internal readonly record struct Part(Vec3 A, Vec3 B, Vec3 C);

    /// <summary>Values of a linear bound at the three corners, m.</summary>
    private readonly record struct Line(double A, double B, double C)
    {
        public double Least => Math.Min(A, Math.Min(B, C));

        public int LowestCorner => A <= B && A <= C ? 0 : B <= C ? 1 : 2;
    }

    private readonly record struct Node(Vec3 At, double Axial, double R, Vec3 Outward, double F, double Ga, double Gr);

    /// <summary>False once a limit was met: the best value is then only the least seen.</summary>
    public bool Certified { get; private set; }

    /// <summary>Lowers <paramref name="best"/> where the triangle comes nearer, and says where and with which piece.</summary>
    /// <returns>True when it was lowered.</returns>
    public bool Lower(in Vec3 a, in Vec3 b, in Vec3 c, ref double best, ref Vec3 at, ref int nearestPiece)
    {
        bool lowered = false;
        for (int piece = 0; piece < shape.Pieces; piece++)
        {
            double before = best;
            Search(piece, a, b, c, ref best, ref at);
            if (best < before)
            {
                (nearestPiece, lowered) = (piece, true);
            }
        }

        return lowered;
    }

    private void Search(int piece, in Vec3 a, in Vec3 b, in Vec3 c, ref double best, ref Vec3 at)
    {
        int count = 0, looked = 0;
        stack[count++] = new(a, b, c);
        while (count > 0)
        {
            Part part = stack[--count];
            if (++looked > PartLimit || ++total > TotalLimit || count + 2 > stack.Length)
            {
                Certified = false;
                return;
            }

            Vec3 middle = (part.A + part.B + part.C) / 3;
            double size = Math.Sqrt(
                Math.Max((part.A - middle).LengthSquared, Math.Max((part.B - middle).LengthSquared, (part.C - middle).LengthSquared)));
            if (looked == 1 && BoxDistance(piece, middle) - size >= Math.Max(best, 0))
            {
                return;
            }

            Node node = NodeAt(piece, middle);
            Take(node, ref best, ref at);
            Line first = LineOf(node, part);
            int corner = first.LowestCorner;
            if (Math.Max(node.F - size, first.Least) >= best - Leave(best))
            {
                continue;
            }

            node = NodeAt(piece, corner == 0 ? part.A : corner == 1 ? part.B : part.C);
            Take(node, ref best, ref at);
            if (LeastOfHigher(first, LineOf(node, part)) >= best - Leave(best))
            {
                continue;
            }

            Halve(part, corner, ref count);
        }
    }

    /// <summary>
    /// How far below the best value a bound may lie without being looked into, m. Source: docs/theory/scan-clearance.md §4.
    /// </summary>
    public static double Leave(double best) => best >= 0 ? Tolerance : Math.Max(Tolerance, -DepthTolerance * best);

    /// <summary>A bound from below where it is above 0.</summary>
    private readonly double BoxDistance(int piece, in Vec3 p)
    {
        Vec3 u = p - pose.HubFace;
        double a = u.Dot(pose.Spindle), r = (u - (pose.Spindle * a)).Length;
        ref readonly ProfileBox box = ref shape.BoxOf(piece);
        double da = Math.Max(Math.Max(box.LeastA - a, a - box.MostA), 0), dr = Math.Max(Math.Max(box.LeastR - r, r - box.MostR), 0);
        return Math.Sqrt((da * da) + (dr * dr)) - 1e-6;
    }

    private static void Take(in Node node, ref double best, ref Vec3 at)
    {
        if (node.F < best)
        {
            (best, at) = (node.F, node.At);
        }
    }

    /// <summary>The node's bound from below at a part's corners; between them it is linear.</summary>
    private readonly Line LineOf(in Node node, in Part part) =>
        new(node.F + Change(node, part.A), node.F + Change(node, part.B), node.F + Change(node, part.C));

    /// <summary>
    /// The least over the part of the higher of two linear bounds: at a corner, or where they cross on a side. This closes a fold at once.
    /// </summary>
    private static double LeastOfHigher(in Line p, in Line q)
    {
        double least = Math.Min(Math.Max(p.A, q.A), Math.Min(Math.Max(p.B, q.B), Math.Max(p.C, q.C)));
        least = Math.Min(least, Crossing(p.A, p.B, q.A, q.B));
        least = Math.Min(least, Crossing(p.B, p.C, q.B, q.C));
        return Math.Min(least, Crossing(p.C, p.A, q.C, q.A));
    }

    private static double Crossing(double p0, double p1, double q0, double q1)
    {
        double d0 = p0 - q0, d1 = p1 - q1;
        return d0 * d1 < 0 ? p0 + ((p1 - p0) * (d0 / (d0 - d1))) : double.PositiveInfinity;
    }

    private readonly double Change(in Node node, in Vec3 p)
    {
        Vec3 u = p - pose.HubFace;
        double a = u.Dot(pose.Spindle);
        double byR = node.Gr >= 0 ? node.Outward.Dot(p - node.At) : (u - (pose.Spindle * a)).Length - node.R;
        return (node.Ga * (a - node.Axial)) + (node.Gr * byR);
    }

    private readonly Node NodeAt(int piece, in Vec3 p)
    {
        Vec3 u = p - pose.HubFace;
        double a = u.Dot(pose.Spindle);
        Vec3 w = u - (pose.Spindle * a);
        double r = w.Length;
        double f = shape.PieceDistance(piece, a, r, out double ga, out double gr);
        return new(p, a, r, r > 0 ? w / r : default, f, ga, gr);
    }

    /// <summary>Halves the longest side; the half with the promising corner is looked at first.</summary>
    private readonly void Halve(in Part part, int corner, ref int count)
    {
        var (a, b, c) = (part.A, part.B, part.C);
        double ab = (b - a).LengthSquared, bc = (c - b).LengthSquared, ca = (a - c).LengthSquared;
        Part one, other;
        bool oneHasIt;
        if (ab >= bc && ab >= ca)
        {
            Vec3 m = (a + b) / 2;
            (one, other, oneHasIt) = (new(a, m, c), new(m, b, c), corner == 0);
        }
        else if (bc >= ca)
        {
            Vec3 m = (b + c) / 2;
            (one, other, oneHasIt) = (new(a, b, m), new(a, m, c), corner == 1);
        }
        else
        {
            Vec3 m = (c + a) / 2;
            (one, other, oneHasIt) = (new(m, b, c), new(a, b, m), corner == 2);
        }

        stack[count++] = oneHasIt ? other : one;
        stack[count++] = oneHasIt ? one : other;
    }
}
