using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Clearance;

/// <summary>Which way a gap was measured from the wheel.</summary>
public enum GapDirection
{
    /// <summary>Shortest, along the feature's outward normal.</summary>
    Nearest = 0,

    /// <summary>Straight away from the spindle.</summary>
    Radial,

    /// <summary>Along the spindle to the street side.</summary>
    AxialOutboard,

    /// <summary>Along the spindle to the car's side.</summary>
    AxialInboard,
}

/// <summary>A gap between the wheel that is on the car and something near it.</summary>
/// <param name="From">Place on the wheel.</param>
/// <param name="Direction">Which way the tape ran.</param>
/// <param name="ClockHours">Clock position, hours.</param>
/// <param name="Gap">m.</param>
/// <remarks>The default is a zero gap at the crown. Source: docs/theory/clearance.md §4.</remarks>
public readonly record struct GapReading(WheelFeature From, GapDirection Direction, double ClockHours, double Gap)
{
    /// <summary>The obstacle point in S (a, 12, 3), m: for things fixed to the knuckle. Source: docs/theory/clearance.md §4.</summary>
    public Vec3 InSpindle(in TyreSection tyre, in RimSection rim)
    {
        FeaturePoint feature = WheelFeatures.At(tyre, rim, From);
        var (na, nr) = Direction switch
        {
            GapDirection.Nearest => (feature.NormalA, feature.NormalR),
            GapDirection.Radial => (0.0, 1.0),
            GapDirection.AxialOutboard => (1.0, 0.0),
            _ => (-1.0, 0.0),
        };
        return Clock.PointAt(feature.At.A + (Gap * na), feature.At.R + (Gap * nr), ClockHours);
    }

    /// <summary>The obstacle point in B, m, from the pose at which the gap was read. Source: docs/theory/clearance.md §4.</summary>
    public Vec3 InBody(in TyreSection tyre, in RimSection rim, in WheelPose poseAtReading) =>
        SpindleFrame.Of(poseAtReading).ToBody(InSpindle(tyre, rim));
}
