namespace Cornerwright.Mechanics.Motion.Hardpoints.Linkage;

/// <summary>An anti-roll bar's end at one corner.</summary>
/// <param name="Turn">From the reference state about the axis given, rad; of a right corner reflected to the left.</param>
/// <param name="TurnByTravel">rad per m of travel.</param>
/// <param name="EndRatio">Travel of the bar's end along its link per wheel travel, at least 0.</param>
/// <remarks>Source: docs/theory/hardpoints.md §5.</remarks>
public readonly record struct BarState(double Turn, double TurnByTravel, double EndRatio);
