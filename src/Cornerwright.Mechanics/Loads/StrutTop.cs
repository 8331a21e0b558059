namespace Cornerwright.Mechanics.Loads;

/// <summary>Sliding the top of a strut on its plate, seen from the front.</summary>
public static class StrutTop
{
    /// <summary>Turn of strut and wheel about the lower ball joint, rad: atan(x/L).</summary>
    /// <param name="shift">x, of the top, square to the line from the ball joint to the top, m; inboard positive.</param>
    /// <param name="distance">L, from the lower ball joint to the top, m, above 0.</param>
    /// <returns>How much camber goes toward negative (the top leans in), rad, positive for an inboard shift.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Shift not finite, or distance not above 0.</exception>
    /// <remarks>The arm is taken as standing still. Source: plane trigonometry.</remarks>
    public static double CamberLost(double shift, double distance)
    {
        Require.Finite(shift);
        Require.Positive(distance);
        return Math.Atan(shift / distance);
    }
}
