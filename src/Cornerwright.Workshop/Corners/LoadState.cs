using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Allowing;

namespace Cornerwright.Workshop.Corners;

/// <summary>The wheel under one load that counts for a thing of the body, or at rest.</summary>
internal sealed class LoadState
{
    private readonly Sway? _sway;
    private readonly SwayCorner? _at;

    private LoadState(ThingPlaces places, Sway? sway, SwayCorner? at, double most) =>
        (Places, _sway, _at, Most) = (places, sway, at, most);

    public static LoadState AtRest(ThingPlaces places) => new(places, null, null, 0);

    public static LoadState Under(ThingPlaces rest, in Sway sway, SwayCorner at) =>
        new(rest.Under(sway, at), sway, at, sway.Most(at.Allowed));

    /// <summary>The tyre alone leans on its wheel toward what moves with it.</summary>
    public static LoadState Leaning(ThingPlaces rest, in WheelLean lean) => new(rest, null, null, lean.Most) { Leans = true };

    /// <summary>Where the wheel is under this load.</summary>
    public ThingPlaces Places { get; }

    /// <summary>Null at rest.</summary>
    public Sway? Sway => _sway;

    /// <summary>True where the tyre alone leans on its wheel toward what moves with it.</summary>
    public bool Leans { get; private init; }

    /// <summary>The wheel, or of the leaning tyre what it meets, is moved by no more than this, m.</summary>
    public double Most { get; }

    /// <summary>By how much the wheel is moved in B, m.</summary>
    public Vec3 Moved(in PosePlace place) => _sway is { } sway ? sway.Move(place.Travel, place.Steer, _at!) : default;

    /// <summary>The wheel's frame under this load.</summary>
    /// <param name="rest">With nothing to bear.</param>
    /// <param name="place">Where that is.</param>
    public SpindleFrame Of(in SpindleFrame rest, in PosePlace place) =>
        _sway is null ? rest : rest with { Origin = rest.Origin + Moved(place) };

    /// <summary>True unless one moves the wheel to the side from which the other moves it away.</summary>
    public bool IsLike(LoadState other) => (_sway?.Way ?? 0) * (other._sway?.Way ?? 0) >= 0;
}
