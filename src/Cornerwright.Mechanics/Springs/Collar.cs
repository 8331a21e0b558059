namespace Cornerwright.Mechanics.Springs;

/// <summary>The threaded ring that carries the spring: what turning it does.</summary>
public static class Collar
{
    /// <summary>Axial move of the collar, m: turns · pitch (one thread start).</summary>
    /// <param name="turns">Signed; positive raises the perch.</param>
    /// <param name="pitch">m, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Turns not finite, or pitch not above 0.</exception>
    /// <remarks>Source: definition of pitch, ISO 68-1.</remarks>
    public static double Advance(double turns, double pitch)
    {
        Require.Finite(turns);
        Require.Positive(pitch);
        return turns * pitch;
    }

    /// <summary>Turns for an axial move of the collar.</summary>
    /// <param name="advance">m, signed.</param>
    /// <param name="pitch">m, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Advance not finite, or pitch not above 0.</exception>
    /// <remarks>Source: definition of pitch, ISO 68-1.</remarks>
    public static double Turns(double advance, double pitch)
    {
        Require.Finite(advance);
        Require.Positive(pitch);
        return advance / pitch;
    }

    /// <summary>Vertical part of a move along an inclined axis, m: x · cos(angle).</summary>
    /// <param name="advance">x, along the strut's axis, m, signed.</param>
    /// <param name="inclination">Between the axis and the vertical, rad.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not finite.</exception>
    /// <remarks>Source: plane trigonometry.</remarks>
    public static double VerticalPart(double advance, double inclination)
    {
        Require.Finite(advance);
        Require.Finite(inclination);
        return advance * Math.Cos(inclination);
    }

    /// <summary>Body's move over the wheel at equal spring load, m: turns · pitch / MR. Positive: the car rises.</summary>
    /// <param name="turns">Signed; positive raises the perch.</param>
    /// <param name="pitch">m, above 0.</param>
    /// <param name="motionRatio">MR = -dS/dz, spring travel per wheel travel, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>First order: MR is taken as constant over the move. Source: virtual displacement of the linkage.</remarks>
    public static double BodyRise(double turns, double pitch, double motionRatio)
    {
        Require.Positive(motionRatio);
        return Advance(turns, pitch) / motionRatio;
    }
}
