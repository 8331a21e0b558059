using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Scanning;
using Cornerwright.Workshop.Surroundings;

namespace Cornerwright.Web.Components.Clearances;

/// <summary>One corner of one build, worked out for the clearance page.</summary>
/// <param name="Car">Of which.</param>
/// <param name="Build">Of which.</param>
/// <param name="Corner">To be asked pose by pose.</param>
/// <param name="Map">Null while something is missing.</param>
/// <param name="Shelf">The scans that were at hand.</param>
public sealed record ClearanceStudy(Car Car, Build Build, CornerClearance Corner, ClearanceMap? Map, ScanShelf Shelf)
{
    /// <summary>Fine enough that a field is a few pixels on a phone.</summary>
    private const int Travels = 37, Steers = 41;

    /// <summary>The least gap over every pose, proved; null before it is, and where nothing of the body is near.</summary>
    public LeastGap? Least { get; init; }

    /// <summary>True once <see cref="Least"/> has been asked for and answered.</summary>
    public bool Proved { get; init; }

    public CornerPlace Place => Corner.Place;

    /// <summary>What is missing, in words: first for any clearance, else for a map.</summary>
    public IReadOnlyList<string> Missing => Corner.Missing.Count > 0 ? Corner.Missing : Map?.Missing ?? [];

    /// <summary>Problems with scans of this corner.</summary>
    public IReadOnlyList<Problem> Problems => Shelf.Problems;

    /// <summary>Works out corner and map; the proof is another question, since it may take longer.</summary>
    public static ClearanceStudy Of(Car car, Build build, CornerPlace place, ScanShelf shelf)
    {
        var corner = CornerClearance.Of(car, build, place, shelf);
        return new(car, build, corner, corner.Missing.Count == 0 ? ClearanceMap.Of(car, build, place, shelf, Travels, Steers) : null,
            shelf);
    }

    /// <summary>Another corner of the same, to be asked from another thread.</summary>
    public CornerClearance Another() => CornerClearance.Of(Car, Build, Place, Shelf);
}
