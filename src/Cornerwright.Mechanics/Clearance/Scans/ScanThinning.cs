namespace Cornerwright.Mechanics.Clearance.Scans;

/// <summary>A scan with fewer points.</summary>
/// <param name="Coordinates">x, y, z of each point, m.</param>
/// <param name="Corners">Three a triangle; empty for a cloud.</param>
/// <param name="Bound">
/// Furthest that any point of either surface lies from the other, m, at most: to be added in full to what is measured on it.
/// </param>
public sealed record ScanThinned(float[] Coordinates, int[] Corners, double Bound);

/// <summary>Draws together the points that lie in one cell of a grid, and says how far anything moved.</summary>
/// <remarks>
/// Source of the method: J. Rossignac, P. Borrel, "Multi-resolution 3D approximations for rendering complex scenes", in Modeling in
/// Computer Graphics (1993) 455. Bound: docs/theory/scans.md §5.
/// </remarks>
public static class ScanThinning
{
    /// <summary>Thins a mesh or, without corners, a cloud.</summary>
    /// <param name="coordinates">x, y, z of each point, m.</param>
    /// <param name="corners">Three a triangle; empty for a cloud.</param>
    /// <param name="cell">Edge of the cells, m, above 0; no point moves further than √3 of it.</param>
    /// <remarks>
    /// Every point goes to the mean of its cell, so a triangle's every point moves by no more than the furthest of
    /// its corners. Triangles that shrink to a line or a point stay as such, so that nothing of the old surface is
    /// further than the bound from the new one, and the new one holds nothing else. Source: docs/theory/scans.md §5.
    /// </remarks>
    public static ScanThinned Thin(ReadOnlySpan<float> coordinates, ReadOnlySpan<int> corners, double cell)
    {
        Require.Positive(cell);
        int points = coordinates.Length / 3;
        int[] home = new int[points];
        var cells = new Dictionary<(long, long, long), int>();
        var sums = new List<(double X, double Y, double Z, int Count)>();
        for (int i = 0; i < points; i++)
        {
            var (x, y, z) = ((double)coordinates[3 * i], (double)coordinates[(3 * i) + 1], (double)coordinates[(3 * i) + 2]);
            var key = ((long)Math.Floor(x / cell), (long)Math.Floor(y / cell), (long)Math.Floor(z / cell));
            if (!cells.TryGetValue(key, out home[i]))
            {
                cells[key] = home[i] = sums.Count;
                sums.Add(default);
            }

            var s = sums[home[i]];
            sums[home[i]] = (s.X + x, s.Y + y, s.Z + z, s.Count + 1);
        }

        float[] thin = new float[3 * sums.Count];
        for (int i = 0; i < sums.Count; i++)
        {
            var s = sums[i];
            (thin[3 * i], thin[(3 * i) + 1], thin[(3 * i) + 2]) = ((float)(s.X / s.Count), (float)(s.Y / s.Count), (float)(s.Z / s.Count));
        }

        double square = 0;
        for (int i = 0; i < points; i++)
        {
            double dx = coordinates[3 * i] - thin[3 * home[i]], dy = coordinates[(3 * i) + 1] - thin[(3 * home[i]) + 1],
                dz = coordinates[(3 * i) + 2] - thin[(3 * home[i]) + 2];
            square = Math.Max(square, (dx * dx) + (dy * dy) + (dz * dz));
        }

        return new(thin, Joined(corners, home), Math.Sqrt(square));
    }

    private static int[] Joined(ReadOnlySpan<int> corners, int[] home)
    {
        var whole = new HashSet<(int, int, int)>();
        var edges = new HashSet<(int, int)>();
        var touched = new HashSet<int>();
        var joined = new List<int>();
        for (int i = 0; i + 2 < corners.Length; i += 3)
        {
            int a = home[corners[i]], b = home[corners[i + 1]], c = home[corners[i + 2]];
            if (a == b || b == c || a == c || !whole.Add(Sorted(a, b, c)))
            {
                continue;
            }

            joined.AddRange([a, b, c]);
            edges.Add(Pair(a, b));
            edges.Add(Pair(b, c));
            edges.Add(Pair(a, c));
            touched.UnionWith([a, b, c]);
        }

        // What shrank to a line is kept unless a triangle has it as an edge; what shrank to a point, unless anything touches it.
        for (int i = 0; i + 2 < corners.Length; i += 3)
        {
            int a = home[corners[i]], b = home[corners[i + 1]], c = home[corners[i + 2]];
            int other = a != b ? b : c;
            if ((a == b || b == c || a == c) && a != other && edges.Add(Pair(a, other)))
            {
                joined.AddRange([a, other, other]);
                touched.UnionWith([a, other]);
            }
        }

        for (int i = 0; i + 2 < corners.Length; i += 3)
        {
            int a = home[corners[i]];
            if (a == home[corners[i + 1]] && a == home[corners[i + 2]] && touched.Add(a))
            {
                joined.AddRange([a, a, a]);
            }
        }

        return [.. joined];
    }

    private static (int, int) Pair(int a, int b) => a < b ? (a, b) : (b, a);

    private static (int, int, int) Sorted(int a, int b, int c)
    {
        (a, b) = Pair(a, b);
        (b, c) = Pair(b, c);
        (a, b) = Pair(a, b);
        return (a, b, c);
    }
}
