using Cornerwright.Garage.Fields;

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
}
