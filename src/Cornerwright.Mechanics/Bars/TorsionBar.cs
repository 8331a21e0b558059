namespace Cornerwright.Mechanics.Bars;

/// <summary>A straight round bar or tube in torsion.</summary>
/// <remarks>Source: J. M. Gere, Mechanics of Materials, ch. 3; Shigley, 10th ed., §3-12 and eq. 4-7.</remarks>
public static class TorsionBar
{
    /// <summary>Polar moment of area, m⁴: π (do⁴ - di⁴)/32.</summary>
    /// <param name="outerDiameter">do, m, above 0.</param>
    /// <param name="innerDiameter">di, m, 0 for a solid bar, below do.</param>
    /// <exception cref="ArgumentOutOfRangeException">A diameter outside its range.</exception>
    /// <remarks>Source: Gere, §3.3.</remarks>
    public static double PolarMoment(double outerDiameter, double innerDiameter = 0)
    {
        Require.Positive(outerDiameter);
        Require.NotNegative(innerDiameter);
        return innerDiameter < outerDiameter
            ? Math.PI * (Math.Pow(outerDiameter, 4) - Math.Pow(innerDiameter, 4)) / 32
            : throw new ArgumentOutOfRangeException(nameof(innerDiameter), innerDiameter, "Below the outer diameter.");
    }

    /// <summary>Greatest shear stress, at the surface, Pa: T (do/2)/Ip.</summary>
    /// <param name="torque">T, N·m, signed.</param>
    /// <param name="outerDiameter">do, m, above 0.</param>
    /// <param name="innerDiameter">di, m, 0 for a solid bar.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>Source: Gere, eq. 3-13; solid bars 16 T/(π d³).</remarks>
    public static double ShearStress(double torque, double outerDiameter, double innerDiameter = 0)
    {
        Require.Finite(torque);
        return torque * outerDiameter / 2 / PolarMoment(outerDiameter, innerDiameter);
    }

    /// <summary>Torque per twist, N·m/rad: G Ip/L.</summary>
    /// <param name="outerDiameter">do, m, above 0.</param>
    /// <param name="length">L, m, above 0.</param>
    /// <param name="shearModulus">G, Pa, above 0.</param>
    /// <param name="innerDiameter">di, m, 0 for a solid bar.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>Source: Gere, §3.3; Shigley, 10th ed., eq. 4-7.</remarks>
    public static double Stiffness(double outerDiameter, double length, double shearModulus, double innerDiameter = 0)
    {
        Require.Positive(length);
        Require.Positive(shearModulus);
        return shearModulus * PolarMoment(outerDiameter, innerDiameter) / length;
    }

    /// <summary>Twist over a length that carries one torque, rad: T L/(G Ip). Twists of successive lengths add up.</summary>
    /// <param name="torque">T, N·m, signed.</param>
    /// <param name="outerDiameter">do, m, above 0.</param>
    /// <param name="length">L, m, above 0.</param>
    /// <param name="shearModulus">G, Pa, above 0.</param>
    /// <param name="innerDiameter">di, m, 0 for a solid bar.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>Source: Gere, eq. 3-15.</remarks>
    public static double Twist(double torque, double outerDiameter, double length, double shearModulus, double innerDiameter = 0)
    {
        Require.Finite(torque);
        return torque / Stiffness(outerDiameter, length, shearModulus, innerDiameter);
    }
}
