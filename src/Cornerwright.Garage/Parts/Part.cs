using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Garage.Parts;

/// <summary>Anything that can be bought and bolted on.</summary>
public abstract record Part
{
    [Field("Id", Needed = true, How = "Short and unique within its kind; builds refer to it.")]
    public string Id { get; init; } = "";

    [Field("Name", Needed = true)]
    public string Name { get; init; } = "";

    /// <summary>For one piece, in the car's currency.</summary>
    [Field("Price each")]
    public decimal? Price { get; init; }

    [Field("Already owned")]
    public bool Owned { get; init; }

    [Field("Note")]
    public string Note { get; init; } = "";

    /// <summary>What the part's own fields say against each other, or what cannot be read of them.</summary>
    /// <param name="path">The part in the trade's words, e.g. "spring f-8-220".</param>
    public virtual IEnumerable<Problem> Contradictions(string path) => [];
}
