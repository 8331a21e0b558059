using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <summary>A place on a cylinder: share of its length, and how far off its axis, in the spindle frame, as a share of its radius.</summary>
internal readonly record struct TouchPlace(double Along, Vec3 Off)
{
    /// <summary>Where a clearing touches a cylinder.</summary>
    public static TouchPlace On(in CylinderObstacle cylinder, in Clearing clearing)
    {
        Vec3 onAxis = cylinder.Foot + (cylinder.Direction * (clearing.Along * cylinder.Length));
        return new TouchPlace(clearing.Along, cylinder.Radius > 0 ? (clearing.OnObstacle - onAxis) / cylinder.Radius : default);
    }
}

/// <summary>The state in which one thing comes nearest to the wheel.</summary>
/// <param name="Share">Of the way from full droop to full bump, 0 to 1; keeps its meaning when the ends of travel move.</param>
/// <param name="Place">The nearest place on a cylinder, in its own coordinates: it rides along when the cylinder moves.</param>
/// <param name="Other">The other wheel's travel likewise, on an axle that carries both; 0 elsewhere.</param>
/// <param name="State">Which state of load, at rest first; of what moves with the wheel 1 for the tyre leaning on it.</param>
internal readonly record struct WorstPose(
    double Share, double Steer, Clearing Clearing, TouchPlace Place, double Other = 0, int State = 0);
