using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;
using Cornerwright.Workshop.Ranking;

namespace Cornerwright.Web.Components.Ranking;

/// <summary>One kind of part among which a search chooses.</summary>
/// <param name="Field">Of the wishes: the ids that are named.</param>
/// <param name="Shelf">Of the shelf: the parts themselves.</param>
internal sealed record PartsChoice(FieldShape Field, FieldShape Shelf)
{
    /// <summary>Ids that the wishes name; none: the usual ones.</summary>
    public IReadOnlyList<string> Named(Wishes wishes) => (IReadOnlyList<string>)Field.Get(wishes)!;

    /// <summary>The parts that a pool takes into account.</summary>
    public IEnumerable<Part> Of(PartsPool pool) => Field.PropertyName switch
    {
        nameof(Wishes.Springs) => pool.Springs,
        nameof(Wishes.Sheets) => pool.Sheets,
        nameof(Wishes.Perches) => pool.Perches.OfType<Part>(),
        nameof(Wishes.TopMounts) => pool.TopMounts.OfType<Part>(),
        nameof(Wishes.Dampers) => pool.Dampers.OfType<Part>(),
        nameof(Wishes.BumpStops) => pool.BumpStops.OfType<Part>(),
        nameof(Wishes.Wheels) => pool.Wheels.OfType<Part>(),
        nameof(Wishes.Tyres) => pool.Tyres.OfType<Part>(),
        _ => pool.Spacers.OfType<Part>(),
    };
}
