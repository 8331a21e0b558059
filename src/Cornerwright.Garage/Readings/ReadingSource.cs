namespace Cornerwright.Garage.Readings;

/// <summary>Where a number comes from. It sets the tolerance that is assumed when none was typed.</summary>
public enum ReadingSource
{
    /// <summary>Nobody measured it.</summary>
    Guess,
    Tape,
    Calliper,
    Scale,
    Gauge,
    DataSheet,

    /// <summary>Chosen, not measured: a collar height to set, a limit, a target.</summary>
    Setting,
}
