using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Clearance;

/// <summary>Cylinders and discs with flat ends against the wheel.</summary>
/// <remarks>
/// The nearest pair touches the cylinder on its side, on an end's rim or on an end's face. Side: the axis's least distance minus the
/// radius, exact whenever that least lies inside the axis. Else the rims are searched as circles with proof, the faces by the wheel's
/// corners furthest toward them. Source: docs/theory/clearance.md §5.
/// </remarks>
public static class CylinderClearing
{
    /// <summary>The gap between the wheel and a cylinder in S, m.</summary>
    /// <remarks>
    /// Error below 1e-5 m when certified; worst seen against sampling of both bodies: 5e-6 m
    /// (docs/theory/clearance.md §6). Negative: they overlap; on the side the value is how far the cylinder must move square to its axis,
    /// on an end the depth of the deepest rim or face point found.
    /// Source: docs/theory/clearance.md §5.
    /// </remarks>
    /// <exception cref="ArgumentException">An unsound cylinder: a caller's bug.</exception>
    public static Clearing Of(in WheelSolid wheel, in CylinderObstacle cylinder)
    {
        if (!cylinder.IsSound)
        {
            throw new ArgumentException("A cylinder has a unit direction, finite foot, length and radius.", nameof(cylinder));
        }

        Span<SegmentLeast.Interval> stack = stackalloc SegmentLeast.Interval[SegmentLeast.StackLength];
        var least = new SegmentLeast(wheel, stack);
        bool certified = true;
        Clearing side = default;
        bool found = false, onSide = true;
        double axisLeast = double.PositiveInfinity, sideLeast = double.PositiveInfinity;

        // The axis against each piece by itself, before and after the place where it passes the spindle nearest: on either stretch the
        // distance has one low, and a low inside the axis is a touch on the side.
        double length = cylinder.Length;
        double passing = Math.Clamp(NearestToSpindle(cylinder), 0, length);
        for (int half = 0; half < 2; half++)
        {
            double from = half == 0 ? 0 : passing, stretch = half == 0 ? passing : length - passing;
            if (stretch <= 1e-9 && half == (passing > 0.5 * length ? 1 : 0))
            {
                continue;
            }

            Vec3 start = cylinder.Foot + (cylinder.Direction * from);
            for (int piece = 0; piece < wheel.Pieces; piece++)
            {
                double best = double.PositiveInfinity, s = 0;
                certified &= least.Lower(piece, start, cylinder.Direction, stretch, ref best, ref s);
                s += from;
                bool inside = IsTouchOnSide(wheel, piece, cylinder, s, passing);
                if (best < axisLeast)
                {
                    (axisLeast, onSide) = (best, inside);
                }

                if (inside && best < sideLeast)
                {
                    (sideLeast, found) = (best, true);
                    side = OnSide(wheel, cylinder, piece, s);
                }
            }
        }

        if (onSide)
        {
            return side with { Certified = certified };
        }

        // The axis comes nearest at an end: the end's rim or face may be nearer than any side.
        Clearing nearest = found ? side : Clearing.OfPoint(wheel, cylinder.Foot);
        certified &= AtEnds(wheel, cylinder, found ? side.Gap : double.PositiveInfinity, ref nearest);
        return nearest with { Certified = certified };
    }

    /// <summary>Puts the nearest place of both ends in where it is nearer than the gap so far; false where a bound did not close.</summary>
    private static bool AtEnds(in WheelSolid wheel, in CylinderObstacle cylinder, double gap, ref Clearing nearest)
    {
        bool certified = true;
        for (int end = 0; end < 2; end++)
        {
            Vec3 outward = end == 0 ? -cylinder.Direction : cylinder.Direction;
            Vec3 centre = end == 0 ? cylinder.Foot : cylinder.Foot + (cylinder.Direction * cylinder.Length);
            Clearing middle = Clearing.OfPoint(wheel, centre, end);
            if (middle.Gap - cylinder.Radius >= gap)
            {
                continue;
            }

            if (middle.Gap < gap)
            {
                (nearest, gap) = (middle, middle.Gap);
            }

            FaceTouch(wheel, centre, outward, cylinder, end, ref nearest, ref gap);
            certified &= RimLeast.Lower(wheel, centre, outward, cylinder.Radius, end, ref nearest, ref gap);
        }

        return certified;
    }

    private static double NearestToSpindle(in CylinderObstacle cylinder)
    {
        Vec3 d = cylinder.Direction;
        double across = (d.Y * d.Y) + (d.Z * d.Z);
        return across > 1e-18 ? -((cylinder.Foot.Y * d.Y) + (cylinder.Foot.Z * d.Z)) / across : 0;
    }

    /// <summary>
    /// True where the axis is nearest and the way to the wheel is square to it: always inside a stretch, to be seen at its ends.
    /// </summary>
    private static bool IsTouchOnSide(in WheelSolid wheel, int piece, in CylinderObstacle cylinder, double s, double passing)
    {
        bool atEnd = s <= 1e-9 || s >= cylinder.Length - 1e-9;
        if (!atEnd && Math.Abs(s - passing) > 1e-9)
        {
            return true;
        }

        Vec3 p = cylinder.Foot + (cylinder.Direction * s);
        double r = Math.Sqrt((p.Y * p.Y) + (p.Z * p.Z));
        wheel.PieceDistance(piece, p.X, r, out double ga, out double gr);
        return Math.Abs(Clearing.Gradient(p, r, ga, gr).Dot(cylinder.Direction)) < (atEnd ? 1e-9 : 0.02);
    }

    private static Clearing OnSide(in WheelSolid wheel, in CylinderObstacle cylinder, int piece, double s)
    {
        Vec3 p = cylinder.Foot + (cylinder.Direction * s);
        double r = Math.Sqrt((p.Y * p.Y) + (p.Z * p.Z));
        double d = wheel.PieceDistance(piece, p.X, r, out double ga, out double gr);
        Vec3 away = Clearing.Gradient(p, r, ga, gr);
        double share = cylinder.Length > 0 ? s / cylinder.Length : 0;
        return new(d - cylinder.Radius, (WheelPart)piece, p - (away * d), p - (away * cylinder.Radius), share, true);
    }

    /// <summary>A wheel corner standing over an end's flat face: the wheel's normal there points straight at the face.</summary>
    private static void FaceTouch(
        in WheelSolid wheel, in Vec3 centre, in Vec3 outward, in CylinderObstacle cylinder, int end, ref Clearing nearest, ref double gap)
    {
        double cross = Math.Sqrt((outward.Y * outward.Y) + (outward.Z * outward.Z));
        double centreR = Math.Sqrt((centre.Y * centre.Y) + (centre.Z * centre.Z));
        var (y, z) = cross > 1e-9 ? (-outward.Y / cross, -outward.Z / cross)
            : centreR > 0 ? (centre.Y / centreR, centre.Z / centreR) : (1.0, 0.0);
        for (int piece = 0; piece < wheel.Pieces; piece++)
        {
            ProfilePoint corner = wheel.PieceFurthest(piece, -outward.X, cross);
            Vec3 onWheel = new(corner.A, corner.R * y, corner.R * z);
            double height = (onWheel - centre).Dot(outward);
            Vec3 foot = onWheel - (outward * height);
            if (height < gap && height >= -cylinder.Length && (foot - centre).LengthSquared <= cylinder.Radius * cylinder.Radius)
            {
                gap = height;
                nearest = new(height, (WheelPart)piece, onWheel, foot, end, true);
            }
        }
    }
}
