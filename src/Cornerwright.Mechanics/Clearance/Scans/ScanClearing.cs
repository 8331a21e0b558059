using System.Runtime.Intrinsics;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Clearance.Scans;

/// <summary>Triangles and points of a tree against the wheel at one pose.</summary>
/// <remarks>
/// Depth first, the nearest of eight children first, pruned by <see cref="EightBounds"/>; what is left is decided in
/// double precision. Nothing is allocated. Source: docs/theory/scan-clearance.md §3 to §5.
/// </remarks>
public static class ScanClearing
{
    /// <summary>
    /// What the answer may be too large by, m, and for an overlap a ten-thousandth of its depth more; it is never too
    /// small by more than rounding (1e-12 m).
    /// </summary>
    public const double StatedError = 1e-6;

    private const int StackLength = 128;

    private readonly record struct Waiting(float Bound, int Level, int Node);

    /// <summary>The gap between wheel and obstacle at a pose, m, if it is below a limit.</summary>
    /// <param name="tree">Body-fixed, in B.</param>
    /// <param name="shape">The wheel.</param>
    /// <param name="pose">A left or right wheel's.</param>
    /// <param name="nearest">
    /// In: a place in the tree that was nearest at a pose close by, or below 0 for none; along a sweep this makes the search several times
    /// quicker. Out: the place that is nearest here, if below the limit.
    /// </param>
    /// <param name="clearing">
    /// Place and gap in S; Along is the number of the triangle or point as it came. Negative gap: the depth of the deepest point of the
    /// obstacle's surface in a single piece of the wheel.
    /// </param>
    /// <param name="upTo">m; a gap of at least this is not looked for.</param>
    /// <returns>False when the gap is not below <paramref name="upTo"/>.</returns>
    /// <exception cref="ArgumentException">A pose that is not finite: a caller's bug.</exception>
    /// <remarks>Source: docs/theory/scan-clearance.md §3 to §5.</remarks>
    public static bool TryBelow(
        BoundTree tree, WheelShape shape, in WheelPose pose, ref int nearest, out Clearing clearing, double upTo = double.PositiveInfinity)
    {
        ArgumentNullException.ThrowIfNull(tree);
        ArgumentNullException.ThrowIfNull(shape);
        if (!double.IsFinite(pose.HubFace.LengthSquared) || !(Math.Abs(pose.Spindle.LengthSquared - 1) < 1e-6))
        {
            throw new ArgumentException("A pose has a finite hub face and a unit spindle.", nameof(pose));
        }

        double best = upTo + tree.Inflation;
        Vec3 at = default;
        int piece = -1, place = nearest;
        bool certified = Search(tree, shape, pose, ref best, ref at, ref piece, ref place);
        if (piece < 0)
        {
            clearing = default;
            return false;
        }

        nearest = place;
        clearing = Placed(tree, shape, pose, at, piece, place, certified);
        return true;
    }

    /// <summary>The gap at a pose, from scratch. Source: <see cref="TryBelow"/>.</summary>
    public static Clearing Of(BoundTree tree, WheelShape shape, in WheelPose pose)
    {
        int nearest = -1;
        return TryBelow(tree, shape, pose, ref nearest, out Clearing clearing)
            ? clearing
            : throw new InvalidOperationException("A tree without a nearest place.");
    }

    private static bool Search(
        BoundTree tree, WheelShape shape, in WheelPose pose, ref double best, ref Vec3 at, ref int piece, ref int place)
    {
        Span<TriangleLeast.Part> parts = stackalloc TriangleLeast.Part[TriangleLeast.StackLength];
        var exact = new TriangleLeast(shape, pose, parts);
        if ((uint)place < (uint)tree.PrimitiveCount)
        {
            Lower(tree, ref exact, place, ref best, ref at, ref piece);
        }

        var coarse = new CoarsePose(pose);
        Span<Waiting> stack = stackalloc Waiting[StackLength];
        Span<float> bounds = stackalloc float[BoundTree.Lanes];
        int count = 0;
        stack[count++] = new(float.NegativeInfinity, tree.Levels.Length, 0);
        while (count > 0)
        {
            Waiting here = stack[--count];
            if (here.Bound >= best - TriangleLeast.Leave(best))
            {
                continue;
            }

            if (here.Level == 0)
            {
                Leaf(tree, shape, coarse, ref exact, here.Node, bounds, ref best, ref at, ref piece, ref place);
                continue;
            }

            // The children, the nearest on top of the stack.
            int level = here.Level - 1, bottom = count;
            ReadOnlySpan<float> block = tree.Levels[level].AsSpan(here.Node * BoundTree.BlockFloats, BoundTree.BlockFloats);
            EightBounds.OfNodes(block, shape, coarse, (float)best).CopyTo(bounds);
            int children = Math.Min(BoundTree.Lanes, tree.Counts[level] - (here.Node * BoundTree.Lanes));
            for (int k = 0; k < children; k++)
            {
                float bound = bounds[k];
                if (!(bound < best - TriangleLeast.Leave(best)))
                {
                    continue;
                }

                int to = count++;
                while (to > bottom && stack[to - 1].Bound < bound)
                {
                    stack[to] = stack[to - 1];
                    to--;
                }

                stack[to] = new(bound, level, (here.Node * BoundTree.Lanes) + k);
            }
        }

        return exact.Certified;
    }

    private static void Leaf(
        BoundTree tree, WheelShape shape, in CoarsePose coarse, ref TriangleLeast exact, int group, Span<float> bounds,
        ref double best, ref Vec3 at, ref int piece, ref int place)
    {
        ReadOnlySpan<float> data = tree.Leaves.AsSpan(group * tree.GroupFloats, tree.GroupFloats);
        var eight = tree.Vertices == 3
            ? EightBounds.OfTriangles(data, shape, coarse, (float)best)
            : EightBounds.OfPoints(data, shape, coarse, (float)best);
        if (!Vector256.LessThanAny(eight, Vector256.Create((float)best)))
        {
            return;
        }

        eight.CopyTo(bounds);
        int first = group * BoundTree.Lanes;
        int members = Math.Min(BoundTree.Lanes, tree.PrimitiveCount - first);
        int start = 0;
        for (int k = 1; k < members; k++)
        {
            start = bounds[k] < bounds[start] ? k : start;
        }

        for (int n = 0; n < members; n++)
        {
            int k = n == 0 ? start : n == start ? 0 : n;
            if (bounds[k] < best - TriangleLeast.Leave(best) && Lower(tree, ref exact, first + k, ref best, ref at, ref piece))
            {
                place = first + k;
            }
        }
    }

    private static bool Lower(BoundTree tree, ref TriangleLeast exact, int place, ref double best, ref Vec3 at, ref int piece)
    {
        Vec3 a = tree.Corner(place, 0);
        return tree.Vertices == 3
            ? exact.Lower(a, tree.Corner(place, 1), tree.Corner(place, 2), ref best, ref at, ref piece)
            : exact.Lower(a, a, a, ref best, ref at, ref piece);
    }

    private static Clearing Placed(BoundTree tree, WheelShape shape, in WheelPose pose, in Vec3 at, int piece, int place, bool certified)
    {
        Vec3 p = SpindleFrame.Of(pose).ToSpindle(at);
        double r = Math.Sqrt((p.Y * p.Y) + (p.Z * p.Z));
        double d = shape.PieceDistance(piece, p.X, r, out double ga, out double gr);
        Vec3 away = Clearing.Gradient(p, r, ga, gr);
        return new(d - tree.Inflation, shape.PartOf(piece), p - (away * d), p - (away * tree.Inflation), tree.SourceOf(place), certified);
    }
}
