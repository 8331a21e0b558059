using Cornerwright.Garage.Fields;

namespace Cornerwright.Garage.Parts;

/// <summary>Every part that a car's builds may use, by kind.</summary>
public sealed record PartsShelf
{
    [Field("Wheels")] public IReadOnlyList<Wheel> Wheels { get; init; } = [];
    [Field("Tyres")] public IReadOnlyList<Tyre> Tyres { get; init; } = [];
    [Field("Spacers")] public IReadOnlyList<Spacer> Spacers { get; init; } = [];
    [Field("Centring rings")] public IReadOnlyList<CentringRing> CentringRings { get; init; } = [];
    [Field("Wheel bolts and nuts")] public IReadOnlyList<WheelBolt> WheelBolts { get; init; } = [];
    [Field("Springs")] public IReadOnlyList<Spring> Springs { get; init; } = [];
    [Field("Sheets and adapters")] public IReadOnlyList<Sheet> Sheets { get; init; } = [];
    [Field("Perches")] public IReadOnlyList<Perch> Perches { get; init; } = [];
    [Field("Top mounts")] public IReadOnlyList<TopMount> TopMounts { get; init; } = [];
    [Field("Dampers")] public IReadOnlyList<Damper> Dampers { get; init; } = [];
    [Field("Bump stops")] public IReadOnlyList<BumpStop> BumpStops { get; init; } = [];
    [Field("Anti-roll bars")] public IReadOnlyList<AntiRollBar> AntiRollBars { get; init; } = [];
    [Field("Bar links")] public IReadOnlyList<BarLink> BarLinks { get; init; } = [];

    /// <summary>All parts of all kinds, in the order of the shelf.</summary>
    public IEnumerable<Part> All() => PartKind.All.SelectMany(kind => kind.On(this));
}
