using Cornerwright.Garage.Fields;

namespace Cornerwright.Garage.Access;

/// <summary>
/// Something that can come off the car: what holds it, what must go before it, what stands on it, what is dangerous about it.
/// </summary>
public sealed record Component
{
    [Field("Id", Needed = true)]
    public string Id { get; init; } = "";

    [Field("Name", Needed = true)]
    public string Name { get; init; } = "";

    [Field("Place")]
    public ComponentPlace Place { get; init; }

    [Field("Part of a build", How = "A change of that part of a build takes this component off.")]
    public BuildRole Role { get; init; }

    [Field("Done on the bench", How = "It comes apart away from the car.")]
    public bool OnBench { get; init; }

    [Field("How it comes off", How = "Left empty: take off and its name.")]
    public string OffWords { get; init; } = "";

    [Field("How it is slackened", How = "Left empty: slacken and its name.")]
    public string LooseWords { get; init; } = "";

    [Field("How it is fitted", How = "Left empty: fit and its name.")]
    public string OnWords { get; init; } = "";

    [Field("Held by", How = "Everything that is undone to take it off.")]
    public IReadOnlyList<Fastener> Fasteners { get; init; } = [];

    [Field("Before it comes off", How = "What blocks it.")]
    public IReadOnlyList<Prerequisite> BeforeOff { get; init; } = [];

    [Field("Before it is slackened", How = "What keeps a spanner from it.")]
    public IReadOnlyList<Prerequisite> BeforeLoose { get; init; } = [];

    [Field("Supports", How = "What stands or hangs on it: must be off before it, and is fitted after it.")]
    public IReadOnlyList<Carried> Supports { get; init; } = [];

    [Field("Hazards")]
    public IReadOnlyList<Hazard> Hazards { get; init; } = [];

    [Field("Moves the alignment", How = "Camber, caster or toe must be read again after it was undone.")]
    public bool MovesAlignment { get; init; }

    [Field("Special tools", How = "Beyond what turns its fasteners; commas between.")]
    public string Tools { get; init; } = "";

    [Field("Consumables", How = "Grease, sealing rings, clips; commas between.")]
    public string Consumables { get; init; } = "";

    [Field("Minutes to take off", How = "At one wheel.")]
    public double? MinutesOff { get; init; }

    [Field("Minutes to fit", How = "At one wheel.")]
    public double? MinutesOn { get; init; }

    [Field("Where its numbers come from")]
    public string Source { get; init; } = "";
}

/// <summary>What stands or hangs on a component.</summary>
public sealed record Carried
{
    [Field("Component", RefersTo = "access/components")]
    public string Component { get; init; } = "";
}

/// <summary>How a car comes apart: every component that work on its corners may have to move.</summary>
public sealed record AccessGraph
{
    [Field("Note", How = "Which manual it follows, who checked it.")]
    public string Note { get; init; } = "";

    [Field("Components")]
    public IReadOnlyList<Component> Components { get; init; } = [];

    public Component? Find(string id) => Components.FirstOrDefault(c => c.Id == id);
}
