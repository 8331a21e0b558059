using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Steering;

/// <summary>A steered wheel on the ground.</summary>
/// <param name="Steer">rad, positive to the left.</param>
/// <param name="Contact">In the body frame, m; Z does not matter.</param>
public readonly record struct SteeredWheel(double Steer, Vec3 Contact);

/// <summary>Circles of a turn at a walking pace.</summary>
/// <param name="Centre">Turn centre on the rear axle's line, body frame, m; Z is 0. Y above 0 is a left turn.</param>
/// <param name="Radius">From the turn centre to the car's axis, m.</param>
/// <param name="KerbDiameter">Kerb to kerb, m: of the circle that the outermost tyre's outer edge draws.</param>
/// <param name="WallDiameter">Wall to wall, m: of the circle that the outermost point of the body draws, never below the kerb's.</param>
/// <param name="Scrub">rad, slip angle that each front wheel makes against the other because they disagree; 0 for Ackermann.</param>
public readonly record struct TurningCircle(Vec3 Centre, double Radius, double KerbDiameter, double WallDiameter, double Scrub);

/// <summary>The turn that two steered wheels make together.</summary>
/// <remarks>Source: docs/theory/steering.md §3.</remarks>
public static class SteeringTurn
{
    private const double LeastSteer = 1e-4;      // rad: a circle of 50 km

    /// <summary>
    /// The turn centre is where both front tyres, taken as equal, slip by the same angle in opposite directions, so that their side forces
    /// cancel; with Ackermann's geometry neither slips. Source: docs/theory/steering.md §3.
    /// </summary>
    /// <param name="left">Left front wheel.</param>
    /// <param name="right">Right front wheel.</param>
    /// <param name="rearAxleX">X of the rear axle's line, m, behind both contacts.</param>
    /// <param name="tyreWidth">m, at least 0; half of it is added to the outermost contact's radius.</param>
    /// <param name="bodyPoints">Corners of the body seen from above, body frame, m; mirror images are not added.</param>
    /// <returns>Null where the wheels as good as point straight ahead, or against each other beyond any turn.</returns>
    public static TurningCircle? Circle(
        SteeredWheel left, SteeredWheel right, double rearAxleX, double tyreWidth, IReadOnlyList<Vec3> bodyPoints)
    {
        Require.NotNegative(tyreWidth);
        Require.Positive(left.Contact.X - rearAxleX);
        Require.Positive(right.Contact.X - rearAxleX);
        double mean = 0.5 * (left.Steer + right.Steer);
        if (!(Math.Abs(mean) >= LeastSteer) || !(Math.Abs(mean) < 0.5 * Math.PI))
        {
            return null;
        }

        // cot of the heading's angle grows with the distance of the centre; solve for curvature's side only, by halving an angle.
        double side = Math.Sign(mean);
        double Excess(double angle)
        {
            double y = side * 0.5 * (left.Contact.X + right.Contact.X - (2 * rearAxleX)) / Math.Tan(angle);
            return side * (left.Steer - Heading(left, rearAxleX, y, side) + right.Steer - Heading(right, rearAxleX, y, side));
        }

        double found = LastGood.Before(angle => Excess(angle) > 0, 0.5 * Math.PI, 1, 1e-15);
        double centreY = side * 0.5 * (left.Contact.X + right.Contact.X - (2 * rearAxleX)) / Math.Tan(found);
        if (!double.IsFinite(centreY) || !(Math.Abs(Excess(found)) < 1e-6))
        {
            return null;
        }

        Vec3 centre = new(rearAxleX, centreY, 0);
        double tyres = Math.Max(FromAbove(left.Contact, centre), FromAbove(right.Contact, centre)) + (0.5 * tyreWidth);
        double body = bodyPoints.Count == 0 ? 0 : bodyPoints.Max(p => FromAbove(p, centre));
        double scrub = Math.Abs(left.Steer - Heading(left, rearAxleX, centreY, side));
        return new(centre, Math.Abs(centreY), 2 * tyres, 2 * Math.Max(tyres, body), scrub);
    }

    /// <summary>Steer, rad to the left, with which a wheel would roll about a centre without slip.</summary>
    private static double Heading(in SteeredWheel wheel, double rearAxleX, double centreY, double side) =>
        side * Math.Atan2(wheel.Contact.X - rearAxleX, side * (centreY - wheel.Contact.Y));

    private static double FromAbove(in Vec3 p, in Vec3 centre) =>
        Math.Sqrt(((p.X - centre.X) * (p.X - centre.X)) + ((p.Y - centre.Y) * (p.Y - centre.Y)));
}
