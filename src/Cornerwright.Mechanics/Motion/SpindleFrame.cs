using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Motion;

/// <summary>The S frame at a pose: origin at the hub face, a along the spindle, 12 and 3 o'clock square to it.</summary>
/// <remarks>
/// A point in S is a <see cref="Vec3"/> whose X is a, whose Y points to 12 and whose Z points to 3 o'clock. Source: docs/frames.md.
/// </remarks>
public readonly record struct SpindleFrame(Vec3 Origin, Vec3 Axis, Vec3 Twelve, Vec3 Three)
{
    /// <summary>The S frame of a pose. Source: docs/frames.md, clock position.</summary>
    public static SpindleFrame Of(in WheelPose pose)
    {
        Vec3 s = pose.Spindle;
        double up = Math.Sqrt((s.X * s.X) + (s.Y * s.Y));
        Vec3 twelve = new(-s.Z * s.X / up, -s.Z * s.Y / up, up);
        return new(pose.HubFace, s, twelve, twelve.Cross(s));
    }

    /// <summary>A point of B in S, m. Source: rigid transform.</summary>
    public Vec3 ToSpindle(in Vec3 pointInBody)
    {
        Vec3 p = pointInBody - Origin;
        return new(p.Dot(Axis), p.Dot(Twelve), p.Dot(Three));
    }

    /// <summary>A direction of B in S. Source: rigid transform.</summary>
    public Vec3 DirectionToSpindle(in Vec3 directionInBody) =>
        new(directionInBody.Dot(Axis), directionInBody.Dot(Twelve), directionInBody.Dot(Three));

    /// <summary>A point of S in B, m. Source: rigid transform.</summary>
    public Vec3 ToBody(in Vec3 pointInSpindle) =>
        Origin + (Axis * pointInSpindle.X) + (Twelve * pointInSpindle.Y) + (Three * pointInSpindle.Z);
}
