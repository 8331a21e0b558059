using Cornerwright.Workshop.Allowing;

namespace Cornerwright.Workshop.Corners;

/// <summary>One thing of the body and the wheel under one load, at rest among them: where it comes nearest then.</summary>
internal sealed class LoadState(ThingPlaces places, Sway? sway)
{
    /// <summary>Where the wheel is under this load.</summary>
    public ThingPlaces Places => places;

    /// <summary>Null at rest.</summary>
    public Sway? Sway => sway;

    /// <summary>True where the tyre alone leans on its wheel toward what moves with it.</summary>
    public bool Leans { get; init; }

    public BodyGaps Body { get; } = new(places);

    public WorstPose Worst { get; set; }

    public RivalPoses Rivals { get; set; }
}
