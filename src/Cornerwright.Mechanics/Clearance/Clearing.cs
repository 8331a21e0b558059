using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Clearance;

/// <summary>The gap between wheel and obstacle, and where it is.</summary>
/// <param name="Gap">m, negative when they overlap (then a depth, see each obstacle).</param>
/// <param name="Part">Nearest part of the wheel.</param>
/// <param name="OnWheel">Nearest point of the wheel in S (a, 12, 3), m.</param>
/// <param name="OnObstacle">Nearest point of the obstacle in S, m.</param>
/// <param name="Along">
/// Obstacle's own coordinate: point 0; polyline segment number plus share; cylinder share of its length from the foot.
/// </param>
/// <param name="Certified">
/// True when no smaller gap can exist beyond the obstacle's stated error; false when a limit was reached first.
/// </param>
/// <remarks>The default has no meaning. Source: docs/theory/clearance.md §5.</remarks>
public readonly record struct Clearing(double Gap, WheelPart Part, Vec3 OnWheel, Vec3 OnObstacle, double Along, bool Certified)
{
    public double ClockHours => Clock.HoursOf(OnWheel);
    public double WheelA => OnWheel.X;
    public double WheelR => Math.Sqrt((OnWheel.Y * OnWheel.Y) + (OnWheel.Z * OnWheel.Z));

    /// <summary>The gap of a point in S, exact to rounding (below 1e-12 m). Source: docs/theory/clearance.md §1.</summary>
    /// <exception cref="ArgumentException">A point that is not finite: a caller's bug.</exception>
    public static Clearing OfPoint(in WheelSolid wheel, in Vec3 pointInSpindle, double along = 0)
    {
        double r = Math.Sqrt((pointInSpindle.Y * pointInSpindle.Y) + (pointInSpindle.Z * pointInSpindle.Z));
        if (!double.IsFinite(r + pointInSpindle.X))
        {
            throw new ArgumentException("An obstacle's point is finite.", nameof(pointInSpindle));
        }

        double d = wheel.SignedDistance(pointInSpindle.X, r, out WheelPart part, out double ga, out double gr);
        return new(d, part, pointInSpindle - (Gradient(pointInSpindle, r, ga, gr) * d), pointInSpindle, along, true);
    }

    /// <summary>The half-plane gradient as a direction in S; on the spindle itself 12 o'clock stands for all.</summary>
    internal static Vec3 Gradient(in Vec3 p, double r, double ga, double gr) =>
        r > 0 ? new(ga, gr * p.Y / r, gr * p.Z / r) : new(ga, gr, 0);
}
