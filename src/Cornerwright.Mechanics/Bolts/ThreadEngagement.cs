namespace Cornerwright.Mechanics.Bolts;

/// <summary>What a thread is cut into.</summary>
public enum TappedMaterial
{
    /// <summary>Steel of a strength like the bolt's.</summary>
    Steel,

    /// <summary>Aluminium or magnesium alloy.</summary>
    LightAlloy,
}

/// <summary>How much thread a wheel bolt or stud has, with and without a spacer.</summary>
/// <remarks>Lengths in m. A result below 0 means that the threads do not reach each other.</remarks>
public static class ThreadEngagement
{
    /// <summary>Least engagement, m: steel 1.0 d, light alloy 2.0 d.</summary>
    /// <param name="diameter">d, nominal thread diameter, m, above 0.</param>
    /// <param name="material">What the thread is cut into.</param>
    /// <exception cref="ArgumentOutOfRangeException">Diameter not above 0.</exception>
    /// <remarks>
    /// A rule of thumb: "about 1.5 to 2 d" in light alloy, the safe end taken. The car maker's figure comes first.
    /// Source: Machinery's Handbook; NASA RP-1228, Fastener Design Manual (partly from memory).
    /// </remarks>
    public static double Least(double diameter, TappedMaterial material)
    {
        Require.Positive(diameter);
        return material switch
        {
            TappedMaterial.Steel => diameter,
            TappedMaterial.LightAlloy => 2 * diameter,
            _ => throw new ArgumentOutOfRangeException(nameof(material), material, "Steel or light alloy."),
        };
    }

    /// <summary>
    /// Thread of a wheel bolt in the hub, m: bolt length from its seat, less wheel and spacer, at most what the hub offers.
    /// </summary>
    /// <param name="lengthFromSeat">Threaded end to the seat's touching circle, m, above 0.</param>
    /// <param name="wheelThickness">Wheel's seat to its mounting face, m, at least 0.</param>
    /// <param name="spacerThickness">m, at least 0; 0 for none or for one bolted on by itself.</param>
    /// <param name="threadInHub">Depth of usable thread, m, above 0.</param>
    /// <param name="plainPart">Chamfers and plain bore before the thread begins, m, at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>Source: lengths along one axis.</remarks>
    public static double OfBolt(
        double lengthFromSeat, double wheelThickness, double spacerThickness, double threadInHub, double plainPart = 0)
    {
        Require.Positive(lengthFromSeat);
        Require.NotNegative(wheelThickness);
        Require.NotNegative(spacerThickness);
        Require.Positive(threadInHub);
        Require.NotNegative(plainPart);
        return Math.Min(threadInHub, lengthFromSeat - wheelThickness - spacerThickness - plainPart);
    }

    /// <summary>Thread of a stud in its nut, m: what stands out of the hub, less wheel and spacer, at most the nut's thread.</summary>
    /// <param name="standOut">Stud's end over the hub face, m, above 0.</param>
    /// <param name="wheelThickness">Mounting face to the nut's seat, m, at least 0.</param>
    /// <param name="spacerThickness">m, at least 0; 0 for none or for one bolted on by itself.</param>
    /// <param name="threadInNut">m, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    /// <remarks>Source: lengths along one axis.</remarks>
    public static double OfStud(double standOut, double wheelThickness, double spacerThickness, double threadInNut) =>
        OfBolt(standOut, wheelThickness, spacerThickness, threadInNut);

    /// <summary>Engagement in turns: length over pitch.</summary>
    /// <param name="engagement">m.</param>
    /// <param name="pitch">m, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Engagement not finite, or pitch not above 0.</exception>
    /// <remarks>How a mechanic checks it: count the turns from first bite. Source: definition of pitch, ISO 68-1.</remarks>
    public static double Turns(double engagement, double pitch)
    {
        Require.Finite(engagement);
        Require.Positive(pitch);
        return engagement / pitch;
    }
}
