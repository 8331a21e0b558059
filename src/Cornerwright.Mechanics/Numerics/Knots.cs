namespace Cornerwright.Mechanics.Numerics;

/// <summary>Finds the piece of a table that a number lies in.</summary>
/// <remarks>Source: bisection of a sorted list.</remarks>
internal static class Knots
{
    /// <summary>The largest piece whose start is at or below x; the first below the table, the last above it and for NaN.</summary>
    /// <param name="points">Rising, at least two: piece i runs from point i to point i + 1.</param>
    public static int PieceOf(ReadOnlySpan<double> points, double x)
    {
        int low = 0, high = points.Length - 1;
        while (high - low > 1)
        {
            int middle = (low + high) >> 1;
            (low, high) = x < points[middle] ? (low, middle) : (middle, high);
        }

        return low;
    }
}
