namespace Cornerwright.Mechanics.Motion;

/// <summary>Why a pose could or could not be given.</summary>
public enum Reach
{
    /// <summary>The pose is inside what the readings or the linkage allow.</summary>
    Reached = 0,

    /// <summary>Outside the table of readings, within the stated margin: continued along the end's straight line.</summary>
    Extrapolated,

    /// <summary>Outside the table of readings by more than the margin.</summary>
    OutsideReadings,

    /// <summary>The arms or the strut cannot close at this travel, or they pass a dead centre on the way to it.</summary>
    LinkageCannotClose,

    /// <summary>This motion holds nothing about the quantity asked for (for example no damper length in the table).</summary>
    NotGiven,

    /// <summary>The travel asked for is not a finite number.</summary>
    NotFinite,
}

/// <summary>Reading of <see cref="Reach"/>.</summary>
public static class ReachReading
{
    /// <summary>True when the state that came with it holds numbers to work with. Source: definition of <see cref="Reach"/>.</summary>
    public static bool IsUsable(this Reach reach) => reach is Reach.Reached or Reach.Extrapolated;
}
