namespace Cornerwright.Mechanics.Motion.Hardpoints.Steering;

/// <summary>Two steered wheels against Ackermann's geometry.</summary>
/// <param name="Inner">rad, of the wheel on the inside of the turn, positive towards the turn.</param>
/// <param name="Outer">rad, of the other wheel, likewise.</param>
/// <param name="IdealOuter">rad, of the other wheel if both wheels' axes were to meet on the rear axle's line.</param>
/// <param name="Deviation">Outer - IdealOuter, rad: positive steers the outer wheel too far.</param>
/// <param name="Share">
/// (Inner - Outer)/(Inner - IdealOuter): 1 is Ackermann, 0 parallel wheels, below 0 the outer wheel turns further than the inner one.
/// </param>
public readonly record struct AckermannReading(double Inner, double Outer, double IdealOuter, double Deviation, double Share);

/// <summary>Ackermann's geometry: at a walking pace all wheels roll without slip when their axes meet in one point.</summary>
/// <remarks>
/// With the turn centre on the rear axle's line: cot(outer) - cot(inner) = w/L. The textbooks' w is the distance of the steering axes at
/// the ground; with the track instead the difference is the scrub radius. Definition of the geometry: ISO 8855:2011, 7.1.9.
/// Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 8, steering geometry; docs/theory/steering.md §2.
/// </remarks>
public static class SteeringAckermann
{
    /// <summary>Mean steer, rad, below which a share would be a quotient of two roundings and static toe: none is given.</summary>
    private const double LeastSteer = 1e-4;

    /// <summary>Outer wheel's angle for the inner's. Source: cot(outer) = cot(inner) + w/L, as the class.</summary>
    /// <param name="inner">rad, above 0 and below π.</param>
    /// <param name="wheelbase">m.</param>
    /// <param name="width">w, m.</param>
    public static double IdealOuter(double inner, double wheelbase, double width)
    {
        Require.Positive(wheelbase);
        Require.Positive(width);
        var (sin, cos) = Math.SinCos(inner);
        return Math.Atan2(sin, cos + (width / wheelbase * sin));
    }

    /// <summary>Both wheels' angles for a turn. Source: tan = L/(R ∓ w/2), as the class.</summary>
    /// <param name="radius">R, m, from the turn centre to the car's axis, above half the width.</param>
    /// <param name="wheelbase">L, m.</param>
    /// <param name="width">w, m.</param>
    public static (double Inner, double Outer) ForRadius(double radius, double wheelbase, double width)
    {
        Require.Positive(wheelbase);
        Require.Positive(width);
        Require.Positive(radius - (0.5 * width));
        return (Math.Atan2(wheelbase, radius - (0.5 * width)), Math.Atan2(wheelbase, radius + (0.5 * width)));
    }

    /// <summary>Reads a pair of wheels; which is the inner one follows from their mean. Source: docs/theory/steering.md §2.</summary>
    /// <param name="steerLeft">rad, positive to the left.</param>
    /// <param name="steerRight">rad, positive to the left.</param>
    /// <param name="wheelbase">m.</param>
    /// <param name="width">w, m.</param>
    /// <returns>Null where the wheels as good as point straight ahead, or the inner one does not point into the turn.</returns>
    public static AckermannReading? Read(double steerLeft, double steerRight, double wheelbase, double width)
    {
        double mean = 0.5 * (steerLeft + steerRight);
        var (inner, outer) = mean > 0 ? (steerLeft, steerRight) : (-steerRight, -steerLeft);
        if (!(Math.Abs(mean) >= LeastSteer) || !(inner > 0) || !(inner < Math.PI))
        {
            return null;
        }

        double ideal = IdealOuter(inner, wheelbase, width);
        return new(inner, outer, ideal, outer - ideal, (inner - outer) / (inner - ideal));
    }
}
