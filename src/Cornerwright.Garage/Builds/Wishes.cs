using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Builds;

/// <summary>Whether a helper or tender is to stand in the stack.</summary>
public enum HelperWish
{
    Either,
    With,
    Without,
}

/// <summary>What decides between choices that are equally sure to hold.</summary>
public enum Preference
{
    Cheapest,
    Softest,
    Stiffest,
    NearestHeight,
}

/// <summary>
/// What a person wants of an axle, and from which parts: a search for it can be repeated. The limits of the car and of
/// the starting build hold as well.
/// </summary>
public sealed record Wishes
{
    [Field("Id", Needed = true)]
    public string Id { get; init; } = "";

    [Field("Name", Needed = true)]
    public string Name { get; init; } = "";

    [Field("Axle")]
    public AxlePlace Axle { get; init; }

    [Field("Starting from", RefersTo = "builds",
        How = "Everything that is not chosen anew stays as in this build: the other axle, bars, packers, tyre pressures.")]
    public string StartingBuild { get; init; } = "";

    [Field("Height wanted", Dimension.Length, "mm", 150, 800,
        How = "Hub centre to arch edge. Every collar is turned to it. Left out: the height in the limits, else as measured.")]
    public Reading? Height { get; init; }

    [Field("Least gap anywhere", Dimension.Length, "mm", 0, 100,
        How = "Tyre and rim to anything. Where the limits ask for more, they count.")]
    public Reading? LeastGap { get; init; }

    [Field("Ride frequency at least", Dimension.Frequency, "Hz", 0.3, 10)]
    public Reading? FrequencyLow { get; init; }

    [Field("Ride frequency at most", Dimension.Frequency, "Hz", 0.3, 10)]
    public Reading? FrequencyHigh { get; init; }

    [Field("Camber wanted at ride", Dimension.Angle, "deg", -10, 5, How = "A sliding plate is moved to it.")]
    public Reading? Camber { get; init; }

    [Field("Camber off by at most", Dimension.Angle, "deg", 0.05, 5)]
    public Reading? CamberBand { get; init; }

    [Field("To spend at most", How = "On what is not owned yet, both sides of the axle.")]
    public decimal? Budget { get; init; }

    [Field("Helper or tender")]
    public HelperWish Helper { get; init; }

    [Field("Equally sure: first comes the")]
    public Preference Prefer { get; init; }

    [Field("Builds to list", How = "1 to 500; left out: 30.")]
    public int? Listed { get; init; }

    [Field("Springs", RefersTo = "parts/springs",
        How = "Ids of those taken into account; none: all but what only the other axle uses. The same for every kind below.")]
    public IReadOnlyList<string> Springs { get; init; } = [];

    [Field("Sheets and adapters", RefersTo = "parts/sheets")] public IReadOnlyList<string> Sheets { get; init; } = [];
    [Field("Perches", RefersTo = "parts/perches")] public IReadOnlyList<string> Perches { get; init; } = [];
    [Field("Top mounts", RefersTo = "parts/topMounts")] public IReadOnlyList<string> TopMounts { get; init; } = [];
    [Field("Dampers", RefersTo = "parts/dampers")] public IReadOnlyList<string> Dampers { get; init; } = [];
    [Field("Bump stops", RefersTo = "parts/bumpStops")] public IReadOnlyList<string> BumpStops { get; init; } = [];
    [Field("Wheels", RefersTo = "parts/wheels")] public IReadOnlyList<string> Wheels { get; init; } = [];
    [Field("Tyres", RefersTo = "parts/tyres")] public IReadOnlyList<string> Tyres { get; init; } = [];
    [Field("Spacers", RefersTo = "parts/spacers")] public IReadOnlyList<string> Spacers { get; init; } = [];

    /// <summary>Left out, a wheel may also go without a spacer.</summary>
    [Field("Only with a spacer")]
    public bool OnlyWithSpacer { get; init; }

    /// <summary>Most builds that a search lists.</summary>
    public const int MostListed = 500;

    private const int UsuallyListed = 30;

    /// <summary>How many builds the search lists.</summary>
    public int ListLength => Math.Clamp(Listed ?? UsuallyListed, 1, MostListed);
}
