using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Clearance.Scans;

/// <summary>Bounds from below on the signed distance between the wheel and eight things at once, for one pose or a cell of poses.</summary>
/// <remarks>
/// The distance is convex in (a, r) and r is convex in place, so its gradient at a thing's centre bounds it from
/// below over the whole thing; where the gradient points to the spindle, r's bend is taken off. Never worse than the
/// centre's distance less the reach. All roundings are taken off. Source: docs/theory/scan-clearance.md §3,
/// docs/theory/certified-clearance.md §3.
/// </remarks>
internal static class EightBounds
{
    /// <summary>m, and m for each metre from the hub: roundings of coordinates below 4 m, of a, r and the distance, doubled.</summary>
    private const float Slack = 1.2e-6f, SlackPerReach = 1.2e-6f;

    /// <summary>Eight nodes of a block. Source: docs/theory/scan-clearance.md §3.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<float> OfNodes(ReadOnlySpan<float> block, WheelShape shape, in CoarsePose pose, float best)
    {
        ref float start = ref MemoryMarshal.GetReference(block);
        var extent = new DiscExtent(
            Vector256.LoadUnsafe(ref start, 24), Vector256.LoadUnsafe(ref start, 32), Vector256.LoadUnsafe(ref start, 40),
            Vector256.LoadUnsafe(ref start, 48), Vector256.LoadUnsafe(ref start, 56));
        return Of(
            extent, Vector256.LoadUnsafe(ref start), Vector256.LoadUnsafe(ref start, 8), Vector256.LoadUnsafe(ref start, 16), shape, pose,
            best);
    }

    /// <summary>Eight triangles of a group. Source: docs/theory/scan-clearance.md §3.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<float> OfTriangles(ReadOnlySpan<float> group, WheelShape shape, in CoarsePose pose, float best)
    {
        ref float start = ref MemoryMarshal.GetReference(group);
        var (ax, ay, az) = (Vector256.LoadUnsafe(ref start), Vector256.LoadUnsafe(ref start, 8), Vector256.LoadUnsafe(ref start, 16));
        var (bx, by, bz) = (Vector256.LoadUnsafe(ref start, 24), Vector256.LoadUnsafe(ref start, 32), Vector256.LoadUnsafe(ref start, 40));
        var (cx, cy, cz) = (Vector256.LoadUnsafe(ref start, 48), Vector256.LoadUnsafe(ref start, 56), Vector256.LoadUnsafe(ref start, 64));
        var third = Vector256.Create(1f / 3);
        var (x, y, z) = ((ax + bx + cx) * third, (ay + by + cy) * third, (az + bz + cz) * third);
        return Of(new TriangleExtent(ax - x, ay - y, az - z, bx - x, by - y, bz - z, cx - x, cy - y, cz - z), x, y, z, shape, pose, best);
    }

    /// <summary>Eight points of a group. Source: docs/theory/scan-clearance.md §3.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<float> OfPoints(ReadOnlySpan<float> group, WheelShape shape, in CoarsePose pose, float best)
    {
        ref float start = ref MemoryMarshal.GetReference(group);
        return Of(
            default(PointExtent), Vector256.LoadUnsafe(ref start), Vector256.LoadUnsafe(ref start, 8), Vector256.LoadUnsafe(ref start, 16),
            shape, pose, best);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<float> Of<TExtent>(
        in TExtent extent, Vector256<float> x, Vector256<float> y, Vector256<float> z, WheelShape shape, in CoarsePose pose, float best)
        where TExtent : struct, IExtent
    {
        // Where the centres are: along the spindle, and square to it.
        var (sx, sy, sz) = (Vector256.Create(pose.SpindleX), Vector256.Create(pose.SpindleY), Vector256.Create(pose.SpindleZ));
        var (ux, uy, uz) = (x - Vector256.Create(pose.HubX), y - Vector256.Create(pose.HubY), z - Vector256.Create(pose.HubZ));
        var a = (ux * sx) + (uy * sy) + (uz * sz);
        var (wx, wy, wz) = (ux - (a * sx), uy - (a * sy), uz - (a * sz));
        var r = Vector256.Sqrt((wx * wx) + (wy * wy) + (wz * wz));
        var inverse = Vector256<float>.One / Vector256.Max(r, Vector256.Create(1e-6f));
        (wx, wy, wz) = (wx * inverse, wy * inverse, wz * inverse);
        var away = Vector256.Sqrt((a * a) + (r * r));

        // How far a point of the thing may be from its centre, motion of the cell included.
        var size = extent.Size;
        var reach = size;
        if (pose.Moving)
        {
            reach += Vector256.Create(pose.MostHub) + (Vector256.Create(pose.MostSpindle) * (away + size + Vector256.Create(pose.MostHub)));
        }

        var slack = Vector256.Create(Slack) + (Vector256.Create(SlackPerReach) * (away + size));
        var enough = Vector256.Create(Math.Max(best, 0)) + reach + slack;
        var lowest = Vector256.Create(float.PositiveInfinity);
        for (int piece = 0; piece < shape.Pieces; piece++)
        {
            // A piece whose box is too far for all eight counts by its box (which says nothing about depths).
            ref readonly ProfileBox box = ref shape.BoxOf(piece);
            var da = Vector256.Max(Vector256.Max(Vector256.Create(box.LeastA) - a, a - Vector256.Create(box.MostA)), Vector256<float>.Zero);
            var dr = Vector256.Max(Vector256.Max(Vector256.Create(box.LeastR) - r, r - Vector256.Create(box.MostR)), Vector256<float>.Zero);
            var boxed = Vector256.Sqrt((da * da) + (dr * dr));
            if (Vector256.GreaterThanAll(boxed, enough))
            {
                lowest = Vector256.Min(lowest, boxed - reach);
                continue;
            }

            var d = EightDistances.Of(shape.Edges(piece), a, r, out var ga, out var gr, out var error);
            var (gx, gy, gz) = ((ga * sx) + (gr * wx), (ga * sy) + (gr * wy), (ga * sz) + (gr * wz));
            var first = d - extent.Against(gx, gy, gz) - (error * reach);
            if (pose.Moving)
            {
                first -= Moved(pose, gx, gy, gz, ga, a, ux, uy, uz, away, size);
            }

            // A gradient toward the spindle: r may grow less than straight on by its bend.
            var bend = reach * reach / (Vector256.Create(2f) * Vector256.Max(r - reach, Vector256.Create(1e-9f)));
            first += Vector256.Min(gr, Vector256<float>.Zero) * bend;
            lowest = Vector256.Min(lowest, Vector256.Max(first, d - reach));
        }

        return lowest - slack;
    }

    /// <summary>The most that the cell's motion can take off, straight on and remainder.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<float> Moved(
        in CoarsePose pose, Vector256<float> gx, Vector256<float> gy, Vector256<float> gz, Vector256<float> ga, Vector256<float> a,
        Vector256<float> ux, Vector256<float> uy, Vector256<float> uz, Vector256<float> away, Vector256<float> size)
    {
        var sum = One(pose.Hub0, pose.Spindle0, gx, gy, gz, ga, a, ux, uy, uz)
            + One(pose.Hub1, pose.Spindle1, gx, gy, gz, ga, a, ux, uy, uz)
            + One(pose.Hub2, pose.Spindle2, gx, gy, gz, ga, a, ux, uy, uz);
        return sum + (Vector256.Create(pose.MostSpindle) * size) + Vector256.Create(pose.Rest)
            + (Vector256.Create(pose.RestPerReach) * away);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<float> One(
        in Vec3 hub, in Vec3 spindle, Vector256<float> gx, Vector256<float> gy, Vector256<float> gz, Vector256<float> ga,
        Vector256<float> a,
        Vector256<float> ux, Vector256<float> uy, Vector256<float> uz)
    {
        // Gradient times the point's change in the wheel's frame, -hᵢ + (sᵢ × s) × u, where ((sᵢ × s) × u) = s (sᵢ·u) - sᵢ (s·u).
        var (hx, hy, hz) = (Vector256.Create((float)hub.X), Vector256.Create((float)hub.Y), Vector256.Create((float)hub.Z));
        var (kx, ky, kz) = (Vector256.Create((float)spindle.X), Vector256.Create((float)spindle.Y), Vector256.Create((float)spindle.Z));
        var straight = (ga * ((kx * ux) + (ky * uy) + (kz * uz))) - (a * ((kx * gx) + (ky * gy) + (kz * gz)))
            - ((hx * gx) + (hy * gy) + (hz * gz));
        return Vector256.Abs(straight);
    }
}
