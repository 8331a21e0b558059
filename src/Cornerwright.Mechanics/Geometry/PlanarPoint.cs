namespace Cornerwright.Mechanics.Geometry;

/// <summary>
/// A point or direction in the front view of one corner, m: outboard and up, from the hub-face centre at the reference state.
/// </summary>
/// <remarks>The default value is the hub-face centre. The same on left and right wheels: outboard is +Y left, -Y right.
/// Source: plain vector algebra; frame in docs/theory/motion.md §1.</remarks>
public readonly record struct PlanarPoint(double Outboard, double Up)
{
    public double LengthSquared => (Outboard * Outboard) + (Up * Up);
    public double Length => Math.Sqrt(LengthSquared);
    public bool IsFinite => double.IsFinite(Outboard) && double.IsFinite(Up);

    public static PlanarPoint operator +(PlanarPoint a, PlanarPoint b) => new(a.Outboard + b.Outboard, a.Up + b.Up);
    public static PlanarPoint operator -(PlanarPoint a, PlanarPoint b) => new(a.Outboard - b.Outboard, a.Up - b.Up);
    public static PlanarPoint operator *(PlanarPoint a, double k) => new(a.Outboard * k, a.Up * k);

    public double Dot(PlanarPoint b) => (Outboard * b.Outboard) + (Up * b.Up);

    /// <summary>
    /// The component out of the plane of this × <paramref name="b"/>: positive when b is turned from outboard towards up.
    /// </summary>
    /// <remarks>Source: plain vector algebra.</remarks>
    public double Cross(PlanarPoint b) => (Outboard * b.Up) - (Up * b.Outboard);
}
