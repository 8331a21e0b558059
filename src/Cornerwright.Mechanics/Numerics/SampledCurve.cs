namespace Cornerwright.Mechanics.Numerics;

/// <summary>A quantity of a corner as a curve over wheel travel, made from readings at steps.</summary>
/// <remarks>Source: docs/theory/motion.md §5.</remarks>
public abstract class SampledCurve
{
    /// <summary>Travel of the lowest reading, m.</summary>
    public abstract double Start { get; }

    /// <summary>Travel of the highest reading, m.</summary>
    public abstract double End { get; }

    /// <summary>Value, first and second derivative; outside the readings the end's straight line is continued.</summary>
    /// <remarks>Source: each curve's own.</remarks>
    public abstract (double Value, double First, double Second) At(double position);
}
