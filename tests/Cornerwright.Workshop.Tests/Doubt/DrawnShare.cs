namespace Cornerwright.Workshop.Tests.Doubt;

/// <summary>One check: the probability that the judge states, and the share of random draws in which it held.</summary>
/// <param name="Name">"gravel-1 front left stop-order".</param>
/// <param name="Stated">By first-order propagation.</param>
/// <param name="Drawn">Share of the draws, 0 to 1.</param>
/// <param name="Marked">True where the judge says that first order is not enough.</param>
/// <param name="Unsolved">Share of the draws in which the value could not be computed; they count as not holding.</param>
/// <param name="Expected">By how much the judge expects to be off, by which it marks.</param>
internal sealed record DrawnShare(string Name, double Stated, double Drawn, bool Marked, double Unsolved, double Expected)
{
    /// <summary>Two percentage points: what is promised where nothing is marked.</summary>
    public const double Promise = 0.02;

    /// <summary>Three standard errors of a share that is drawn this often.</summary>
    public static double Noise(double share, int draws) => 3 * Math.Sqrt(Math.Max(share * (1 - share), 1.0 / draws) / draws);

    public double Off => Math.Abs(Stated - Drawn);

    public override string ToString() => string.Create(
        System.Globalization.CultureInfo.InvariantCulture,
        $"{Name}: stated {100 * Stated:0.00} %, drawn {100 * Drawn:0.00} %, {(Marked ? "marked" : "not marked")} (off by "
        + $"{100 * Expected:0.0} points expected{(Unsolved > 0 ? $", {100 * Unsolved:0.0} % unsolved" : "")})");
}
