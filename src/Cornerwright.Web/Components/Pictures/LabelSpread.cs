namespace Cornerwright.Web.Components.Pictures;

/// <summary>Moves labels apart so that none covers another, each as near to its place as all the others let it.</summary>
public static class LabelSpread
{
    /// <summary>Centres of the labels, in the order given.</summary>
    /// <param name="wanted">Where each would like its centre.</param>
    /// <param name="heights">How much room each takes.</param>
    /// <param name="low">No label reaches below this, where they all fit.</param>
    /// <param name="high">No label reaches above this, where they all fit.</param>
    /// <remarks>
    /// Least sum of squared shifts that keeps the order: isotonic regression by pooling neighbours.
    /// Source: Ayer, Brunk, Ewing, Reid and Silverman (1955), Annals of Mathematical Statistics 26, 641.
    /// </remarks>
    public static double[] Place(IReadOnlyList<double> wanted, IReadOnlyList<double> heights, double low, double high)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        ArgumentNullException.ThrowIfNull(heights);
        int n = wanted.Count;
        if (n == 0)
        {
            return [];
        }

        int[] order = [.. Enumerable.Range(0, n).OrderBy(i => wanted[i]).ThenBy(i => i)];

        // Offsets of the centres when all labels stand packed from zero.
        var offset = new double[n];
        double top = 0;
        for (int i = 0; i < n; i++)
        {
            offset[i] = top + (heights[order[i]] / 2);
            top += heights[order[i]];
        }

        // With the offsets taken off, "none covers another" reads "never falling".
        var sums = new List<(double Sum, int Count)>();
        for (int i = 0; i < n; i++)
        {
            sums.Add((wanted[order[i]] - offset[i], 1));
            while (sums.Count > 1 && sums[^2].Sum / sums[^2].Count > sums[^1].Sum / sums[^1].Count)
            {
                var pooled = (sums[^2].Sum + sums[^1].Sum, sums[^2].Count + sums[^1].Count);
                sums.RemoveRange(sums.Count - 2, 2);
                sums.Add(pooled);
            }
        }

        var placed = new double[n];
        int at = 0;
        double last = Math.Max(low, high - top);
        foreach (var (sum, count) in sums)
        {
            double start = Math.Clamp(sum / count, low, last);
            for (int i = 0; i < count; i++, at++)
            {
                placed[order[at]] = start + offset[at];
            }
        }

        return placed;
    }
}
