namespace Cornerwright.Workshop.Ranking;

/// <summary>A choice of springs, seats and dampers that passes the quick checks at both corners.</summary>
/// <param name="Perch">Height of the perch, m, left and right.</param>
/// <param name="WheelRate">At ride, N/m, without the tyre.</param>
/// <param name="Sprung">Mass that rides on the spring, kg.</param>
/// <param name="Droop">Travel of full droop, m.</param>
/// <param name="Bump">Travel of full bump, tyre contact aside, m.</param>
/// <param name="HeightMiss">Larger miss of the height wanted of the two sides, m.</param>
internal readonly record struct SuspensionCandidate(
    SuspensionChoice Choice,
    (double Left, double Right) Perch,
    (double Left, double Right) WheelRate,
    (double Left, double Right) Sprung,
    (double Left, double Right) Droop,
    (double Left, double Right) Bump,
    double HeightMiss,
    decimal Cost)
{
    /// <summary>Ride frequency on a wheel set, Hz, by side; NaN where it cannot be said.</summary>
    public (double Left, double Right) FrequencyOn(WheelSet wheels) =>
        (StaticCorner.FrequencyOf(WheelRate.Left, Sprung.Left, wheels.Stiffness.Left),
            StaticCorner.FrequencyOf(WheelRate.Right, Sprung.Right, wheels.Stiffness.Right));
}
