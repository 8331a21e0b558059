using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Workshop.Allowing;

/// <summary>
/// How a tyre moves inboard on its own wheel under side force, against what moves with that wheel: strut, arms, tie rod. The tread band
/// moves most, the bead not at all, and nothing of the rim.
/// </summary>
/// <param name="In">Inboard at hub height, m, at least 0.</param>
/// <param name="Bead">Radius at which the tyre is held, m.</param>
/// <param name="Radius">Of the tyre, m.</param>
/// <remarks>Source: docs/theory/allowances.md §4.</remarks>
internal readonly record struct WheelLean(double In, double Bead, double Radius)
{
    /// <summary>Of the band's tilt against its shift: 2.4 against 1.9 mm/kN at the radius, of an example tyre. §4.</summary>
    private const double Tilt = 1.26;

    /// <summary>Nothing is met nearer by more than this, m.</summary>
    public double Most => In * (1 + Tilt);

    /// <summary>A place of the knuckle, in S, as the leaning tyre meets it: no further off than at rest if it stands inboard.</summary>
    public Vec3 Meets(in Vec3 place)
    {
        double r = Math.Sqrt((place.Y * place.Y) + (place.Z * place.Z));
        double band = Math.Clamp((r - Bead) / (Radius - Bead), 0, 1), tilted = 1 - (Tilt * Math.Clamp(place.Y / Radius, -1, 1));
        return place with { X = place.X + (In * band * Math.Max(0, tilted)) };
    }

    /// <summary>A piece of the strut likewise, by its two ends.</summary>
    public CylinderObstacle Meets(in CylinderObstacle piece)
    {
        Vec3 foot = Meets(piece.Foot), top = Meets(piece.Foot + (piece.Direction * piece.Length)), along = top - foot;
        double length = Math.Sqrt(along.LengthSquared);
        return length > 1e-9 ? piece with { Foot = foot, Direction = along * (1 / length), Length = length } : piece with { Foot = foot };
    }
}
