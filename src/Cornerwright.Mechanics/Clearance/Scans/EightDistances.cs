using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Cornerwright.Mechanics.Clearance.Scans;

/// <summary>Signed distance of eight half-plane points to a convex piece in single precision, for bounds only.</summary>
/// <remarks>
/// Within 1 m of the hub the distance is right to 1e-6 m and the gradient to <see cref="GradientError"/> over the
/// distance: whoever prunes with them takes both off. No fused operations. Source: docs/theory/clearance.md §1,
/// docs/theory/scan-clearance.md §3.
/// </remarks>
internal static class EightDistances
{
    /// <summary>
    /// m; divided by the distance it bounds the error of the gradient's direction: three roundings of coordinates below 1 m, doubled.
    /// </summary>
    public const float GradientError = 4e-7f;

    /// <summary>m; nearer to the surface than this the direction is taken from the lines.</summary>
    private const float Near = 1e-6f;

    /// <summary>Distance and gradient; inside, those of the nearest edge's line. Source: docs/theory/clearance.md §1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<float> Of(
        ReadOnlySpan<float> edges, Vector256<float> a, Vector256<float> r, out Vector256<float> gradientA, out Vector256<float> gradientR,
        out Vector256<float> gradientError)
    {
        var least = Vector256.Create(float.PositiveInfinity);
        var most = Vector256.Create(float.NegativeInfinity);
        Vector256<float> outA = default, outR = default;
        for (int e = 0; e + 4 < edges.Length; e += 5)
        {
            var xa = a - Vector256.Create(edges[e]);
            var xr = r - Vector256.Create(edges[e + 1]);
            var ta = Vector256.Create(edges[e + 2]);
            var tr = Vector256.Create(edges[e + 3]);
            var along = Vector256.Min(Vector256.Max((xa * ta) + (xr * tr), Vector256<float>.Zero), Vector256.Create(edges[e + 4]));
            var ra = xa - (along * ta);
            var rr = xr - (along * tr);
            var square = (ra * ra) + (rr * rr);
            var nearer = Vector256.LessThan(square, least);
            least = Vector256.ConditionalSelect(nearer, square, least);
            outA = Vector256.ConditionalSelect(nearer, ra, outA);
            outR = Vector256.ConditionalSelect(nearer, rr, outR);
            most = Vector256.Max(most, (xa * tr) - (xr * ta));
        }

        // Within a few roundings of the surface the direction outward is lost; the furthest line bounds the distance from below everywhere.
        var distance = Vector256.Sqrt(least);
        var inverse = Vector256<float>.One / Vector256.Max(distance, Vector256.Create(Near));
        (gradientA, gradientR) = (outA * inverse, outR * inverse);
        gradientError = inverse * Vector256.Create(GradientError);
        var byLine = Vector256.LessThanOrEqual(most, Vector256.Create(Near));
        if (byLine == Vector256<float>.Zero)
        {
            return distance;
        }

        OfFurthestLine(edges, a, r, most, out var lineA, out var lineR);
        gradientA = Vector256.ConditionalSelect(byLine, lineA, gradientA);
        gradientR = Vector256.ConditionalSelect(byLine, lineR, gradientR);
        gradientError = Vector256.ConditionalSelect(byLine, Vector256.Create(GradientError), gradientError);
        return Vector256.ConditionalSelect(byLine, most, distance);
    }

    /// <summary>The outward normal of the edge whose line is furthest. Source: docs/theory/clearance.md §1.</summary>
    private static void OfFurthestLine(
        ReadOnlySpan<float> edges, Vector256<float> a, Vector256<float> r, Vector256<float> most, out Vector256<float> normalA,
        out Vector256<float> normalR)
    {
        (normalA, normalR) = (default, default);
        for (int e = 0; e + 4 < edges.Length; e += 5)
        {
            var ta = Vector256.Create(edges[e + 2]);
            var tr = Vector256.Create(edges[e + 3]);
            var line = ((a - Vector256.Create(edges[e])) * tr) - ((r - Vector256.Create(edges[e + 1])) * ta);
            var it = Vector256.GreaterThanOrEqual(line, most);
            normalA = Vector256.ConditionalSelect(it, tr, normalA);
            normalR = Vector256.ConditionalSelect(it, -ta, normalR);
        }
    }
}
