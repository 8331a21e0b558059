using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Cornerwright.Mechanics.Clearance;

/// <summary>A convex polygon in the half-plane (a, r) laid out for speed: four edges at once.</summary>
/// <remarks>
/// Outside, the distance is the least over the edges; inside, the nearest edge line is an edge, so it is the greatest of the signed line
/// distances. An edge on the spindle bounds nothing and is left out. Corners run from street-side axis towards growing r
/// (counter-clockwise with a to the right and r up). Fixed width of four, no fused operations: the same result on every machine with IEEE
/// doubles. Error: rounding only, below 1e-12 m.
/// Source: docs/theory/clearance.md §1.
/// </remarks>
public readonly ref struct ConvexProfile
{
    private const int Lanes = 4;
    private const int Columns = 5;
    private readonly ReadOnlySpan<double> data;
    private readonly int padded;

    private ConvexProfile(ReadOnlySpan<double> data, int padded)
    {
        this.data = data;
        this.padded = padded;
    }

    /// <summary>How many doubles <see cref="Write"/> needs for so many corners. Source: layout of this type.</summary>
    public static int BufferLength(int corners) => Columns * Padded(corners);

    /// <summary>
    /// Writes the edges of a convex, counter-clockwise polygon into <paramref name="buffer"/>. Source: docs/theory/clearance.md §1.
    /// </summary>
    public static ConvexProfile Write(scoped ReadOnlySpan<ProfilePoint> corners, Span<double> buffer)
    {
        int padded = Padded(corners.Length);
        int edge = 0;
        for (int i = 0; i < corners.Length; i++)
        {
            ProfilePoint p = corners[i], q = corners[i + 1 < corners.Length ? i + 1 : 0];
            double da = q.A - p.A, dr = q.R - p.R;
            double length = Math.Sqrt((da * da) + (dr * dr));
            if (length > 1e-12 && !(p.R == 0 && q.R == 0))
            {
                Put(buffer, padded, edge++, p, da / length, dr / length, length);
            }
        }

        // Fill the last four with copies of an edge already there: harmless for least and greatest.
        for (int i = edge; i < padded; i++)
        {
            for (int c = 0; c < Columns; c++)
            {
                buffer[(c * padded) + i] = buffer[c * padded];
            }
        }

        return new(buffer[..(Columns * padded)], padded);
    }

    /// <summary>A polygon that <see cref="Write"/> laid out in this buffer before. Source: layout of this type.</summary>
    public static ConvexProfile Written(int corners, ReadOnlySpan<double> buffer) => new(buffer[..BufferLength(corners)], Padded(corners));

    /// <summary>
    /// Signed distance (m, negative inside) and its gradient, a unit vector in the half-plane. Source: docs/theory/clearance.md §1.
    /// </summary>
    public double SignedDistance(double a, double r, out double gradientA, out double gradientR)
    {
        ref double start = ref MemoryMarshal.GetReference(data);
        var (pa, pr) = (Vector256.Create(a), Vector256.Create(r));
        var least = Vector256.Create(double.PositiveInfinity);
        var most = Vector256.Create(double.NegativeInfinity);
        var (leastAt, mostAt) = (Vector256<double>.Zero, Vector256<double>.Zero);
        var index = Vector256.Create(0.0, 1.0, 2.0, 3.0);
        var four = Vector256.Create(4.0);
        for (int i = 0; i < padded; i += Lanes)
        {
            var xa = pa - Vector256.LoadUnsafe(ref start, (nuint)i);
            var xr = pr - Vector256.LoadUnsafe(ref start, (nuint)(padded + i));
            var ta = Vector256.LoadUnsafe(ref start, (nuint)((2 * padded) + i));
            var tr = Vector256.LoadUnsafe(ref start, (nuint)((3 * padded) + i));
            var length = Vector256.LoadUnsafe(ref start, (nuint)((4 * padded) + i));

            // Signed distance to the edge's line (outward normal is the tangent turned back a quarter), squared distance to the edge.
            var line = (xa * tr) - (xr * ta);
            var along = Vector256.Min(Vector256.Max((xa * ta) + (xr * tr), Vector256<double>.Zero), length);
            var ra = xa - (along * ta);
            var rr = xr - (along * tr);
            var square = (ra * ra) + (rr * rr);

            var nearer = Vector256.LessThan(square, least);
            least = Vector256.ConditionalSelect(nearer, square, least);
            leastAt = Vector256.ConditionalSelect(nearer, index, leastAt);
            var further = Vector256.GreaterThan(line, most);
            most = Vector256.ConditionalSelect(further, line, most);
            mostAt = Vector256.ConditionalSelect(further, index, mostAt);
            index += four;
        }

        int top = 0, near = 0;
        for (int k = 1; k < Lanes; k++)
        {
            top = most[k] > most[top] ? k : top;
            near = least[k] < least[near] ? k : near;
        }

        if (most[top] <= 0)
        {
            int e = (int)mostAt[top];
            (gradientA, gradientR) = (data[(3 * padded) + e], -data[(2 * padded) + e]);
            return most[top];
        }

        int j = (int)leastAt[near];
        double ja = a - data[j], jr = r - data[padded + j];
        double jta = data[(2 * padded) + j], jtr = data[(3 * padded) + j];
        double s = Math.Min(Math.Max((ja * jta) + (jr * jtr), 0), data[(4 * padded) + j]);
        double ga = ja - (s * jta), gr = jr - (s * jtr);
        double distance = Math.Sqrt((ga * ga) + (gr * gr));
        if (!(distance > 0))
        {
            (gradientA, gradientR) = (jtr, -jta);
            return 0;
        }

        (gradientA, gradientR) = (ga / distance, gr / distance);
        return distance;
    }

    /// <summary>The corner furthest in a direction of the half-plane. Source: definition of a support point.</summary>
    public ProfilePoint Furthest(double directionA, double directionR)
    {
        double best = double.NegativeInfinity;
        int at = 0;
        for (int i = 0; i < padded; i++)
        {
            double along = (data[i] * directionA) + (data[padded + i] * directionR);
            if (along > best)
            {
                (best, at) = (along, i);
            }
        }

        return new(data[at], data[padded + at]);
    }

    private static int Padded(int corners) => (corners + Lanes - 1) / Lanes * Lanes;

    private static void Put(Span<double> buffer, int padded, int i, ProfilePoint p, double ta, double tr, double length)
    {
        buffer[i] = p.A;
        buffer[padded + i] = p.R;
        buffer[(2 * padded) + i] = ta;
        buffer[(3 * padded) + i] = tr;
        buffer[(4 * padded) + i] = length;
    }
}
