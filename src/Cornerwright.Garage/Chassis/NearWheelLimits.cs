namespace Cornerwright.Garage.Chassis;

/// <summary>
/// How much may stand near one wheel. A judgement keeps a bit for each thing
/// and a fixed room for each line; more than that is refused, never left out.
/// </summary>
public static class NearWheelLimits
{
    /// <summary>Most gaps that are joined to one line.</summary>
    public const int MostGaps = 16;

    /// <summary>Most things known by gaps at one corner: 64 bits, less four for the pieces of the strut.</summary>
    public const int MostThings = 60;
}
