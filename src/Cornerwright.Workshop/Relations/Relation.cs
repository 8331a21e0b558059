namespace Cornerwright.Workshop.Relations;

/// <summary>One number of the car document that a relation ties.</summary>
/// <param name="Path">Where it stands: "parts/springs/f-8-220/rate".</param>
/// <param name="Label">In words.</param>
/// <param name="Typed">As it was typed.</param>
public sealed record Tie(string Path, string Label, string Typed)
{
    /// <summary>As a confirmation keeps it: "parts/springs/f-8-220/rate = 8 kgf/mm".</summary>
    public string Kept => $"{Path} = {Typed}";
}

/// <summary>Numbers of a car that bear on each other and do not go together, or did until somebody confirmed them.</summary>
public sealed record Relation
{
    /// <summary>The kind and the place: "spring-rate/parts/springs/f-8-220". The same in every version of the car.</summary>
    public required string Id { get; init; }

    /// <summary>The kind alone: "spring-rate".</summary>
    public required string Kind { get; init; }

    public required Band Band { get; init; }

    /// <summary>What does not go together, with what was expected.</summary>
    public required string Sentence { get; init; }

    public required IReadOnlyList<Tie> Ties { get; init; }

    /// <summary>Why it is so all the same, where somebody confirmed these very numbers; else empty.</summary>
    public string Why { get; init; } = "";

    /// <summary>True once somebody said why; false again as soon as one of the numbers changes.</summary>
    public bool IsConfirmed => Why.Length > 0;
}
