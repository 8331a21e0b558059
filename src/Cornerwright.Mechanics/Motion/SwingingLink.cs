using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Motion;

/// <summary>
/// A straight link of constant length from a wheel carrier to the end of a bar that turns about a line straight across the car, in B, m.
/// </summary>
/// <param name="Outer">The end at the carrier, at the reference state.</param>
/// <param name="BarEnd">The end at the bar, likewise.</param>
/// <param name="BushesAhead">From the bar's end forward to the line about which the bar turns; beyond <see cref="Straight"/>, infinite
/// among it, the end moves straight up and down.</param>
/// <param name="BushesAbove">The same upward; plays no part where the end moves straight.</param>
/// <param name="Length">Between the ends, which may differ from their distance: another link on the same bar.</param>
/// <param name="Radius">Half of the link's thickness.</param>
/// <remarks>The default is no link. Source: docs/theory/clearance.md §10.</remarks>
public readonly record struct SwingingLink(
    Vec3 Outer, Vec3 BarEnd, double BushesAhead, double BushesAbove, double Length, double Radius)
{
    /// <summary>
    /// m: an arm this long moves its end straight, within 5 µm at 100 mm of travel; longer ones would cost digits.
    /// </summary>
    public const double Straight = 1000;

    /// <summary>True for a link; false for the default.</summary>
    public bool Exists => Length > 0;

    /// <summary>
    /// Where the bar's end is with the other end there, on the side on which it was at the reference state. Where the link is too short
    /// or too long to reach, the nearest place that the bar's end can take. Source: docs/theory/clearance.md §10.
    /// </summary>
    public Vec3 BarEndAt(in Vec3 outer)
    {
        // In the plane in which the bar's end moves, what the link spans across the car is taken off its length.
        double aside = outer.Y - BarEnd.Y, reach = Math.Sqrt(Math.Max(0, (Length * Length) - (aside * aside)));
        if (!(Math.Abs(BushesAhead) < Straight))
        {
            double level = outer.X - BarEnd.X, drop = Math.Sqrt(Math.Max(0, (reach * reach) - (level * level)));
            return BarEnd with { Z = outer.Z + (BarEnd.Z <= Outer.Z ? -drop : drop) };
        }

        // Two circles: the bar's arm about its line, the link about its outer end.
        double px = BarEnd.X + BushesAhead, pz = BarEnd.Z + BushesAbove;
        double arm = Math.Sqrt((BushesAhead * BushesAhead) + (BushesAbove * BushesAbove));
        double dx = outer.X - px, dz = outer.Z - pz, away = Math.Sqrt((dx * dx) + (dz * dz));
        double along = Math.Clamp(((arm * arm) - (reach * reach) + (away * away)) / (2 * away), -arm, arm);
        double beside = Math.Sqrt((arm * arm) - (along * along));
        double side = ((Outer.X - px) * (BarEnd.Z - pz)) - ((Outer.Z - pz) * (BarEnd.X - px)) >= 0 ? 1 : -1;
        return new(px + (((dx * along) - (dz * side * beside)) / away), BarEnd.Y, pz + (((dz * along) + (dx * side * beside)) / away));
    }
}
