using System.Runtime.Intrinsics;
using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Clearance.Certifying;

/// <summary>
/// Shows, or fails to show, that no point of an obstacle comes nearer to the wheel than a threshold anywhere in a cell of poses.
/// </summary>
/// <remarks>
/// The tree is walked as for one pose, with the cell's motion in every bound; triangles that stay open are halved as
/// long as their own extent matters more than the motion. Source: docs/theory/certified-clearance.md §3.
/// </remarks>
internal ref struct CellProof
{
    private const int StackLength = 128;
    private const int PartLimit = 600;

    private readonly WheelShape shape;
    private readonly CellMotion motion;
    private readonly CoarsePose coarse;
    private readonly double threshold;

    public CellProof(WheelShape shape, in CellMotion motion, double threshold)
    {
        this.shape = shape;
        this.motion = motion;
        this.threshold = threshold;
        coarse = motion.Coarse;
        Obstruction = motion.Pose.HubFace;
    }

    private readonly record struct Waiting(int Level, int Node, float Bound);

    private readonly record struct Part(Vec3 A, Vec3 B, Vec3 C);

    /// <summary>Where it failed: a point in B that may come too near, with the gradient of its distance there.</summary>
    public Vec3 Obstruction { get; private set; }

    public Vec3 Gradient { get; private set; }

    /// <summary>True when shown for all of the tree.</summary>
    public bool Holds(BoundTree tree)
    {
        Span<Waiting> stack = stackalloc Waiting[StackLength];
        Span<float> bounds = stackalloc float[BoundTree.Lanes];
        Span<Part> parts = stackalloc Part[48];
        float enough = MathF.BitIncrement((float)(threshold + tree.Inflation));
        int count = 0;
        stack[count++] = new(tree.Levels.Length, 0, 0);
        while (count > 0)
        {
            Waiting here = stack[--count];
            if (here.Level == 0)
            {
                if (!LeafHolds(tree, here.Node, enough, bounds, parts))
                {
                    return false;
                }

                continue;
            }

            int level = here.Level - 1, bottom = count;
            ReadOnlySpan<float> block = tree.Levels[level].AsSpan(here.Node * BoundTree.BlockFloats, BoundTree.BlockFloats);
            var eight = EightBounds.OfNodes(block, shape, coarse, enough);
            if (!Vector256.LessThanAny(eight, Vector256.Create(enough)))
            {
                continue;
            }

            // The worst child on top: a cell that fails is to fail at once.
            eight.CopyTo(bounds);
            int children = Math.Min(BoundTree.Lanes, tree.Counts[level] - (here.Node * BoundTree.Lanes));
            for (int k = 0; k < children; k++)
            {
                if (!(bounds[k] >= enough))
                {
                    int to = count++;
                    while (to > bottom && stack[to - 1].Bound < bounds[k])
                    {
                        stack[to] = stack[to - 1];
                        to--;
                    }

                    stack[to] = new(level, (here.Node * BoundTree.Lanes) + k, bounds[k]);
                }
            }
        }

        return true;
    }

    private bool LeafHolds(BoundTree tree, int group, float enough, scoped Span<float> bounds, scoped Span<Part> parts)
    {
        ReadOnlySpan<float> data = tree.Leaves.AsSpan(group * tree.GroupFloats, tree.GroupFloats);
        var eight = tree.Vertices == 3
            ? EightBounds.OfTriangles(data, shape, coarse, enough)
            : EightBounds.OfPoints(data, shape, coarse, enough);
        if (!Vector256.LessThanAny(eight, Vector256.Create(enough)))
        {
            return true;
        }

        eight.CopyTo(bounds);
        int first = group * BoundTree.Lanes, members = Math.Min(BoundTree.Lanes, tree.PrimitiveCount - first);
        for (int k = 0; k < members; k++)
        {
            if (bounds[k] >= enough)
            {
                continue;
            }

            Vec3 a = tree.Corner(first + k, 0);
            Part whole = tree.Vertices == 3 ? new(a, tree.Corner(first + k, 1), tree.Corner(first + k, 2)) : new(a, a, a);
            for (int piece = 0; piece < shape.Pieces; piece++)
            {
                if (!PartsHold(piece, whole, threshold + tree.Inflation, parts))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private bool PartsHold(int piece, in Part whole, double enough, scoped Span<Part> parts)
    {
        int count = 0, looked = 0;
        parts[count++] = whole;
        while (count > 0)
        {
            Part part = parts[--count];
            Vec3 middle = (part.A + part.B + part.C) / 3;
            var bound = Bound(piece, part, middle, out double distance, out double own, out double moved, out Vec3 gradient);
            if (bound >= enough)
            {
                continue;
            }

            // A real point of the obstacle that is too near at a real pose, or one that only the motion brings too near: the cell fails.
            if (distance < enough || own <= moved || ++looked > PartLimit || count + 2 > parts.Length)
            {
                (Obstruction, Gradient) = (middle, gradient);
                return false;
            }

            Halve(part, gradient, parts, ref count);
        }

        return true;
    }

    /// <summary>The least distance of a part over the cell, from below, m; docs/theory/certified-clearance.md §3 in doubles.</summary>
    private readonly double Bound(
        int piece, in Part part, in Vec3 middle, out double distance, out double own, out double moved, out Vec3 gradient)
    {
        Vec3 s = motion.Pose.Spindle, u = middle - motion.Pose.HubFace;
        double a = u.Dot(s);
        Vec3 w = u - (s * a);
        double r = w.Length, away = u.Length;
        distance = shape.PieceDistance(piece, a, r, out double ga, out double gr);
        gradient = (s * ga) + (r > 0 ? w * (gr / r) : default);
        Vec3 pa = part.A - middle, pb = part.B - middle, pc = part.C - middle;
        double size = Math.Sqrt(Math.Max(pa.LengthSquared, Math.Max(pb.LengthSquared, pc.LengthSquared)));
        double reach = size + coarse.MostHub + (coarse.MostSpindle * (away + size + coarse.MostHub));
        own = -Math.Min(gradient.Dot(pa), Math.Min(gradient.Dot(pb), gradient.Dot(pc)));
        moved = Straight(0, gradient, u) + Straight(1, gradient, u) + Straight(2, gradient, u)
            + (coarse.MostSpindle * size) + coarse.Rest + (coarse.RestPerReach * away);
        double bend = gr >= 0 ? 0 : r > reach ? -gr * reach * reach / (2 * (r - reach)) : double.PositiveInfinity;
        double byReach = distance - reach, byGradient = distance - own - moved - bend;

        // What shrinks with the part alone, to decide whether halving it can help.
        own += gr < 0 && reach > 0 ? Math.Min(bend, reach) * (size / reach) : 0;
        return Math.Max(byReach, byGradient);
    }

    /// <summary>How far one way of the cell brings a point toward the wheel, straight on, m.</summary>
    private readonly double Straight(int way, in Vec3 gradient, in Vec3 u)
    {
        PoseChange change = motion[way];
        Vec3 s = motion.Pose.Spindle;
        Vec3 turned = (s * change.Spindle.Dot(u)) - (change.Spindle * s.Dot(u));
        return Math.Abs(gradient.Dot(turned - change.Hub));
    }

    /// <summary>Of the three ways the one whose cut helps most where the proof failed.</summary>
    public readonly int WayToCut(PoseBends bends, ReadOnlySpan<double> extents)
    {
        Vec3 u = Obstruction - motion.Pose.HubFace;
        double away = u.Length, best = double.NegativeInfinity;
        int cut = 0;
        for (int way = 0; way < 3; way++)
        {
            if (!(extents[way] > 0))
            {
                continue;
            }

            PoseChange change = motion[way];
            double turn = change.Spindle.Length, score = Straight(way, Gradient, u) + bends.OwnRest(way, extents[way], away)
                + (change.Hub.Length * coarse.MostSpindle) + (0.5 * turn * coarse.MostSpindle * away);
            if (score > best)
            {
                (best, cut) = (score, way);
            }
        }

        return cut;
    }

    private static void Halve(in Part part, in Vec3 gradient, Span<Part> parts, ref int count)
    {
        var (a, b, c) = (part.A, part.B, part.C);
        double ab = (b - a).LengthSquared, bc = (c - b).LengthSquared, ca = (a - c).LengthSquared;
        Part one, other;
        if (ab >= bc && ab >= ca)
        {
            Vec3 m = (a + b) / 2;
            (one, other) = (new(a, m, c), new(m, b, c));
        }
        else if (bc >= ca)
        {
            Vec3 m = (b + c) / 2;
            (one, other) = (new(a, b, m), new(a, m, c));
        }
        else
        {
            Vec3 m = (c + a) / 2;
            (one, other) = (new(m, b, c), new(a, b, m));
        }

        // The half further downhill is looked at first.
        bool oneFirst = gradient.Dot(one.A + one.B + one.C) < gradient.Dot(other.A + other.B + other.C);
        parts[count++] = oneFirst ? other : one;
        parts[count++] = oneFirst ? one : other;
    }
}
