namespace Cornerwright.Web.Components.Clearances;

/// <summary>How near is near: the steps of the map's shading.</summary>
/// <param name="Name">Of its class in the style sheet.</param>
/// <param name="Words">For the key.</param>
public sealed record MapBand(string Name, string Words)
{
    /// <summary>Steps above the gap wanted, m.</summary>
    private static readonly double[] Steps = [0.010, 0.025, 0.050];

    /// <summary>Nearest first.</summary>
    public static IReadOnlyList<MapBand> All { get; } =
    [
        new("touches", "touches"),
        new("short", "less than wanted"),
        new("first", "up to 10 mm more"),
        new("second", "10 to 25 mm more"),
        new("third", "25 to 50 mm more"),
        new("far", "further away"),
    ];

    /// <summary>Which band a gap belongs to; -1 for a gap that is no number.</summary>
    public static int Of(double gap, double wanted)
    {
        if (double.IsNaN(gap))
        {
            return -1;
        }

        if (!(gap >= wanted))
        {
            return gap < 0 ? 0 : 1;
        }

        int band = 2;
        foreach (double step in Steps)
        {
            band += gap - wanted >= step ? 1 : 0;
        }

        return band;
    }
}
