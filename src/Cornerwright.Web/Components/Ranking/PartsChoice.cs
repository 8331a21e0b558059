using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;
using Cornerwright.Workshop.Ranking;

namespace Cornerwright.Web.Components.Ranking;

/// <summary>One kind of part among which a search chooses.</summary>
/// <param name="Field">Of the wishes: the ids that are named.</param>
/// <param name="Kind">Of the shelf: the parts themselves.</param>
internal sealed record PartsChoice(FieldShape Field, PartKind Kind)
{
    /// <summary>Ids that the wishes name; none: the usual ones.</summary>
    public IReadOnlyList<string> Named(Wishes wishes) => (IReadOnlyList<string>)Field.Get(wishes)!;

    /// <summary>The parts that a pool takes into account.</summary>
    public IEnumerable<Part> Of(PartsPool pool) => pool.Of(Kind);
}
