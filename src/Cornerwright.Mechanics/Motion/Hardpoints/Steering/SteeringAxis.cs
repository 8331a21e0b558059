using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Steering;

/// <summary>The line the wheel steers about, and where it stands to the wheel. The default is no axis.</summary>
/// <param name="Exists">False when the wheel does not steer or the line lies level; then all else is 0.</param>
/// <param name="Point">A point of the line, m.</param>
/// <param name="Direction">Upward, length 1.</param>
/// <param name="Pitch">m/rad of slide along the line; 0 for a hinge.</param>
/// <param name="Caster">rad, positive when the top leans rearward.</param>
/// <param name="Inclination">Kingpin inclination, rad, positive when the top leans inboard.</param>
/// <param name="Trail">m along the wheel's heading, positive when the line meets the ground ahead of the contact.</param>
/// <param name="Scrub">m across the heading, positive when it meets the ground inboard of the contact.</param>
/// <param name="TrailAlongCar">The trail along X of the car, m.</param>
/// <param name="ScrubAcrossCar">The scrub across the car, m.</param>
/// <param name="CasterOffset">m along the heading at the wheel centre's height, positive when the line passes ahead.</param>
/// <param name="KingpinOffset">m across the heading at the wheel centre's height, positive when it passes inboard.</param>
/// <remarks>Source: ISO 8855:2011, 7.2 (definitions); docs/theory/hardpoints.md §6.</remarks>
public readonly record struct SteeringAxis(
    bool Exists, Vec3 Point, Vec3 Direction, double Pitch, double Caster, double Inclination, double Trail, double Scrub,
    double TrailAlongCar, double ScrubAcrossCar, double CasterOffset, double KingpinOffset)
{
    /// <summary>Level or nearer than this to level, a line has no useful place on the ground.</summary>
    private const double LeastRise = 1e-6;

    internal static SteeringAxis Of(in Vec3 point, in Vec3 direction, double pitch, in Vec3 contact, in Vec3 wheelCentre, in Vec3 spindle)
    {
        double length = direction.Length;
        if (!(Math.Abs(direction.Z) > LeastRise * length))
        {
            return default;
        }

        Vec3 up = direction / (direction.Z > 0 ? length : -length);
        double level = Math.Sqrt((spindle.X * spindle.X) + (spindle.Y * spindle.Y));
        double sin = spindle.X / level, cos = spindle.Y / level;
        var (groundX, groundY) = Passing(point, up, contact);
        var (centreX, centreY) = Passing(point, up, wheelCentre);
        return new(
            true, point, up, pitch, Math.Atan2(-up.X, up.Z), Math.Atan2(-up.Y, up.Z),
            Trail: (groundX * cos) - (groundY * sin), Scrub: -((groundX * sin) + (groundY * cos)),
            TrailAlongCar: groundX, ScrubAcrossCar: -groundY,
            CasterOffset: (centreX * cos) - (centreY * sin), KingpinOffset: -((centreX * sin) + (centreY * cos)));
    }

    /// <summary>From a point to where the line passes its height, level part.</summary>
    private static (double X, double Y) Passing(in Vec3 point, in Vec3 up, in Vec3 at)
    {
        double along = (at.Z - point.Z) / up.Z;
        return (point.X + (along * up.X) - at.X, point.Y + (along * up.Y) - at.Y);
    }
}

/// <summary>The line about which the knuckle turns at this instant while it slides along it. The default is no turn.</summary>
/// <param name="Exists">False when the knuckle only shifts.</param>
/// <param name="Point">The line's point nearest to the wheel centre, m.</param>
/// <param name="Direction">Length 1, upward, whichever way the knuckle turns about it.</param>
/// <param name="Pitch">m/rad of slide along the line.</param>
/// <remarks>Source: R. S. Ball, A Treatise on the Theory of Screws (1900), ch. 1.</remarks>
public readonly record struct ScrewAxis(bool Exists, Vec3 Point, Vec3 Direction, double Pitch)
{
    /// <summary>rad per m; slower turns have their axis further off than any car is long.</summary>
    private const double LeastTurn = 1e-9;

    /// <param name="turn">rad per unit.</param>
    /// <param name="centre">A point, m.</param>
    /// <param name="velocity">Of that point, m per unit.</param>
    internal static ScrewAxis Of(in Vec3 turn, in Vec3 centre, in Vec3 velocity)
    {
        double square = turn.LengthSquared;
        return square > LeastTurn * LeastTurn
            ? new(true, centre + (turn.Cross(velocity) / square), turn / (turn.Z < 0 ? -Math.Sqrt(square) : Math.Sqrt(square)),
            turn.Dot(velocity) / square)
            : default;
    }
}
