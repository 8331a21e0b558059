namespace Cornerwright.Mechanics.Springs;

/// <summary>Distance from coil to coil of a free spring.</summary>
public static class CoilPitch
{
    /// <summary>Pitch by ends, m: closed and ground (L0-2d)/n, closed (L0-3d)/n, open and ground L0/(n+1), open (L0-d)/n.</summary>
    /// <param name="freeLength">L0, m.</param>
    /// <param name="wireDiameter">d, m.</param>
    /// <param name="activeCoils">n.</param>
    /// <param name="ends">How the ends are made.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument not above 0.</exception>
    /// <remarks>Source: Shigley, 10th ed., table 10-1.</remarks>
    public static double ByEnds(double freeLength, double wireDiameter, double activeCoils, CoilEnds ends)
    {
        Require.Positive(freeLength);
        Require.Positive(wireDiameter);
        Require.Positive(activeCoils);
        return ends switch
        {
            CoilEnds.ClosedAndGround => (freeLength - (2 * wireDiameter)) / activeCoils,
            CoilEnds.Closed => (freeLength - (3 * wireDiameter)) / activeCoils,
            CoilEnds.OpenAndGround => freeLength / (activeCoils + 1),
            CoilEnds.Open => (freeLength - wireDiameter) / activeCoils,
            _ => throw new ArgumentOutOfRangeException(nameof(ends), ends, "One of the four kinds of ends."),
        };
    }

    /// <summary>Mean pitch over the whole spring, m: L0/(nt - 1).</summary>
    /// <param name="freeLength">L0, m.</param>
    /// <param name="totalCoils">nt, above 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Length not above 0, or not more than one coil.</exception>
    /// <remarks>Source: V. B. Bhandari, Design of Machine Elements, example 10.1.</remarks>
    public static double Mean(double freeLength, double totalCoils)
    {
        Require.Positive(freeLength);
        double between = totalCoils - 1;
        Require.Positive(between);
        return freeLength / between;
    }
}
