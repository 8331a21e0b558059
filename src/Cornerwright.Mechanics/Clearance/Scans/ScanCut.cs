namespace Cornerwright.Mechanics.Clearance.Scans;

/// <summary>Leaves parts of a scan out.</summary>
/// <remarks>Source: layout of meshes and clouds; docs/theory/scans.md §5.</remarks>
public static class ScanCut
{
    /// <summary>The scan without the marked points; triangles go with them, and points that no triangle is left to.</summary>
    /// <param name="coordinates">x, y, z of each point.</param>
    /// <param name="corners">Three a triangle; empty for a cloud.</param>
    /// <param name="gone">One a point.</param>
    /// <param name="wholly">
    /// True: a triangle goes only with all its corners, so that what reaches across a border stays. False: it goes with any of them.
    /// </param>
    /// <remarks>Source: docs/theory/scans.md §5.</remarks>
    public static (float[] Coordinates, int[] Corners) Without(
        ReadOnlySpan<float> coordinates, ReadOnlySpan<int> corners, ReadOnlySpan<bool> gone, bool wholly)
    {
        bool cloud = corners.IsEmpty;
        bool[] used = new bool[gone.Length];
        var kept = new List<int>(corners.Length);
        for (int i = 0; i + 2 < corners.Length; i += 3)
        {
            int a = corners[i], b = corners[i + 1], c = corners[i + 2];
            if (wholly ? gone[a] && gone[b] && gone[c] : gone[a] || gone[b] || gone[c])
            {
                continue;
            }

            kept.Add(a);
            kept.Add(b);
            kept.Add(c);
            used[a] = used[b] = used[c] = true;
        }

        int[] number = new int[gone.Length];
        var left = new List<float>();
        for (int i = 0; i < gone.Length; i++)
        {
            if (cloud ? !gone[i] : used[i])
            {
                number[i] = left.Count / 3;
                left.Add(coordinates[3 * i]);
                left.Add(coordinates[(3 * i) + 1]);
                left.Add(coordinates[(3 * i) + 2]);
            }
        }

        int[] renumbered = new int[kept.Count];
        for (int i = 0; i < renumbered.Length; i++)
        {
            renumbered[i] = number[kept[i]];
        }

        return ([.. left], renumbered);
    }
}
