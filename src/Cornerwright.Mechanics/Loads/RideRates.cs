namespace Cornerwright.Mechanics.Loads;

/// <summary>Closed forms for rates, sag and frequencies of one corner.</summary>
/// <remarks>Source: T. D. Gillespie, Fundamentals of Vehicle Dynamics (SAE, 1992), ch. 5.</remarks>
public static class RideRates
{
    /// <summary>Standard acceleration of free fall, m/s². Source: CGPM 1901, NIST SP 811, exact by definition.</summary>
    public const double StandardGravity = 9.80665;

    /// <summary>Rate of two springs one behind the other, N/m: k1 k2/(k1 + k2).</summary>
    /// <param name="first">N/m, above 0.</param>
    /// <param name="second">N/m, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A rate not above 0.</exception>
    /// <remarks>Wheel rate and tyre rate give the ride rate. Source: Gillespie (1992), eq. 5-9.</remarks>
    public static double Series(double first, double second)
    {
        Require.Positive(first);
        Require.Positive(second);
        return first * second / (first + second);
    }

    /// <summary>Rate at the wheel of a spring on a linkage, N/m: k·MR² + F·dMR/dz.</summary>
    /// <param name="tangentRate">k of the spring at its present length, N/m, at least 0.</param>
    /// <param name="motionRatio">MR = -dS/dz: spring travel per wheel travel, positive when bump compresses.</param>
    /// <param name="springForce">F, compression, N, at least 0.</param>
    /// <param name="motionRatioSlope">
    /// dMR/dz, 1/m, z the wheel's travel, bump positive; positive where the spring gets more lever in bump.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// An argument outside its range. The result may be negative: a linkage can lose lever faster than the spring gains force.
    /// </exception>
    /// <remarks>
    /// Wheel force is F·MR by virtual work; its derivative over z is this. The textbook form k·(c/b)² is the first term.
    /// Source: virtual work; Barton and Fieldhouse, Automotive Chassis Engineering (Springer, 2018), eq. 3.33 for the first term.
    /// </remarks>
    public static double WheelRate(double tangentRate, double motionRatio, double springForce = 0, double motionRatioSlope = 0)
    {
        Require.NotNegative(tangentRate);
        Require.Finite(motionRatio);
        Require.NotNegative(springForce);
        Require.Finite(motionRatioSlope);
        return (tangentRate * motionRatio * motionRatio) + (springForce * motionRatioSlope);
    }

    /// <summary>Sag of a linear spring from no load, m: F/k.</summary>
    /// <param name="force">N, signed: a change of force gives a change of height.</param>
    /// <param name="rate">N/m, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Force not finite, or rate not above 0.</exception>
    /// <remarks>Source: Hooke's law.</remarks>
    public static double StaticDeflection(double force, double rate)
    {
        Require.Finite(force);
        Require.Positive(rate);
        return force / rate;
    }

    /// <summary>Undamped natural frequency of a mass on a rate, Hz: √(k/m)/2π.</summary>
    /// <param name="rideRate">k, N/m, above 0.</param>
    /// <param name="mass">m, kg, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument not above 0.</exception>
    /// <remarks>Source: Gillespie (1992), eq. 5-10.</remarks>
    public static double BodyFrequency(double rideRate, double mass)
    {
        Require.Positive(rideRate);
        Require.Positive(mass);
        return Math.Sqrt(rideRate / mass) / (2 * Math.PI);
    }

    /// <summary>Undamped frequency of the unsprung mass between spring and tyre, Hz: √((ks + kt)/mu)/2π.</summary>
    /// <param name="wheelRate">ks at the wheel, N/m, above 0.</param>
    /// <param name="tyreRate">kt, N/m, above 0.</param>
    /// <param name="unsprungMass">mu, kg, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument not above 0.</exception>
    /// <remarks>The body is taken as standing still. Source: Barton and Fieldhouse (2018), p. 213.</remarks>
    public static double WheelHopFrequency(double wheelRate, double tyreRate, double unsprungMass)
    {
        Require.Positive(wheelRate);
        Require.Positive(tyreRate);
        Require.Positive(unsprungMass);
        return Math.Sqrt((wheelRate + tyreRate) / unsprungMass) / (2 * Math.PI);
    }

    /// <summary>Frequency that goes with a sag, Hz: √(g/δ)/2π.</summary>
    /// <param name="staticDeflection">δ from no load, of a linear spring, m, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not above 0.</exception>
    /// <remarks>Source: Gillespie (1992), ch. 5, static deflection and natural frequency.</remarks>
    public static double FrequencyOfSag(double staticDeflection)
    {
        Require.Positive(staticDeflection);
        return Math.Sqrt(StandardGravity / staticDeflection) / (2 * Math.PI);
    }

    /// <summary>Weight on one wheel of an axle, N: m · share · g / 2.</summary>
    /// <param name="carMass">m, kg, above 0.</param>
    /// <param name="axleShare">Share of the mass on this axle, 0 to 1.</param>
    /// <param name="gravity">m/s², above 0; give a textbook's rounded value where it uses one.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>Left and right taken as equal. Source: statics.</remarks>
    public static double WheelWeight(double carMass, double axleShare, double gravity = StandardGravity)
    {
        Require.Positive(carMass);
        Require.Positive(gravity);
        return axleShare is >= 0 and <= 1
            ? carMass * axleShare * gravity / 2
            : throw new ArgumentOutOfRangeException(nameof(axleShare), axleShare, "0 to 1.");
    }
}
