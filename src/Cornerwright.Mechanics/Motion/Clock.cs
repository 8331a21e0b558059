using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Motion;

/// <summary>Clock positions and S coordinates.</summary>
/// <remarks>Source: docs/frames.md.</remarks>
public static class Clock
{
    /// <summary>The S point at (a, r) and a clock position in hours, m. Source: docs/frames.md.</summary>
    public static Vec3 PointAt(double a, double r, double hours)
    {
        var (sin, cos) = Math.SinCos(hours * (Math.PI / 6));
        return new(a, r * cos, r * sin);
    }

    /// <summary>Clock position of an S point, hours in (0, 12]; 12 on the spindle itself. Source: docs/frames.md.</summary>
    public static double HoursOf(in Vec3 pointInSpindle)
    {
        double hours = Math.Atan2(pointInSpindle.Z, pointInSpindle.Y) * (6 / Math.PI);
        return hours > 0 ? hours : hours + 12;
    }
}
