namespace Cornerwright.Mechanics.Loads;

/// <summary>The one way in which four wheel loads can change while the car's weight stays what and where it is.</summary>
/// <remarks>
/// Four unknown loads, three conditions (weight, roll moment, pitch moment): indeterminate by one. Source: statics; Milliken and Milliken,
/// Race Car Vehicle Dynamics (SAE, 1995), ch. 18.
/// </remarks>
public static class Warp
{
    /// <summary>Changes of the four loads that balance among themselves, front left positive, as numbers whose sizes add up to 4.</summary>
    /// <param name="wheels">Front left, front right, rear left, rear right.</param>
    /// <returns>(+, -, -, +): with equal tracks 1, -1, -1, 1; with others in proportion to 1/track.</returns>
    /// <remarks>Null vector of the conditions of balance, by 3 × 3 determinants. Source: Cramer's rule.</remarks>
    public static double[] LoadPattern(IReadOnlyList<WheelUnderCar> wheels)
    {
        ArgumentNullException.ThrowIfNull(wheels);
        double[] n = new double[4];
        double size = 0;
        for (int i = 0; i < 4; i++)
        {
            int a = i == 0 ? 1 : 0, b = i <= 1 ? 2 : 1, c = i <= 2 ? 3 : 2;
            double area =
                ((wheels[b].X - wheels[a].X) * (wheels[c].Y - wheels[a].Y)) - ((wheels[c].X - wheels[a].X) * (wheels[b].Y - wheels[a].Y));
            n[i] = i % 2 == 0 ? area : -area;
            size += Math.Abs(n[i]);
        }

        double scale = 4 / size * (n[0] < 0 ? -1 : 1);
        return [n[0] * scale, n[1] * scale, n[2] * scale, n[3] * scale];
    }

    /// <summary>
    /// Least and greatest cross weight (right front and left rear, share of the whole) that leaves every wheel on the ground.
    /// </summary>
    /// <param name="loads">As they are now, N, at least 0, together above 0.</param>
    /// <param name="pattern">From <see cref="LoadPattern"/>.</param>
    /// <remarks>Loads are linear in the warp; the first to reach zero ends it, either way. Source: statics.</remarks>
    public static (double Least, double Greatest) CrossWeightRange(ReadOnlySpan<double> loads, ReadOnlySpan<double> pattern)
    {
        double up = double.PositiveInfinity, down = double.PositiveInfinity, total = 0;
        for (int i = 0; i < 4; i++)
        {
            total += loads[i];
            up = pattern[i] < 0 ? Math.Min(up, loads[i] / -pattern[i]) : up;
            down = pattern[i] > 0 ? Math.Min(down, loads[i] / pattern[i]) : down;
        }

        Require.Positive(total);
        double cross = loads[1] + loads[2], per = pattern[1] + pattern[2];   // below 0: the pattern unloads this diagonal
        return ((cross + (per * up)) / total, (cross - (per * down)) / total);
    }
}
