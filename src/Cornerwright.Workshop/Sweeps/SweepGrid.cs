using Cornerwright.Workshop.Linkages;

namespace Cornerwright.Workshop.Sweeps;

/// <summary>The poses of a sweep: every travel at every place of the steering at every place of the plate.</summary>
/// <param name="Travels">Of the hub's face from the reference state, m, bump positive.</param>
/// <param name="Steering">Places of the rack, m along +Y, or steer angles, rad, left positive.</param>
/// <param name="ByAngle">True where <paramref name="Steering"/> holds angles: of the corner's own wheel, at the reference height.</param>
/// <param name="Slides">Of the top plate from its middle, m inward; empty for as the build has it.</param>
public sealed record SweepGrid(IReadOnlyList<double> Travels, IReadOnlyList<double> Steering, bool ByAngle, IReadOnlyList<double> Slides)
{
    /// <summary>Poses at one corner that are still computed.</summary>
    public const int MostPoses = 500_000;

    public long Poses => (long)Travels.Count * Steering.Count * Math.Max(1, Slides.Count);
}

/// <summary>What is asked of a sweep besides poses.</summary>
/// <param name="ByHardpoints">Go by the tables of hardpoints even where the verdict goes by something else.</param>
/// <param name="CentreOfGravity">Height above the ground, m; null leaves the anti shares out.</param>
/// <param name="FrontBraking">The front axle's share of the braking force, 0 to 1.</param>
public sealed record SweepWishes(bool ByHardpoints = false, double? CentreOfGravity = null, double FrontBraking = 0.65);
