using Cornerwright.Garage.Fields;

namespace Cornerwright.Garage.Access;

/// <summary>What must be undone before a component can be.</summary>
public sealed record Prerequisite
{
    [Field("Component", RefersTo = "access/components")]
    public string Component { get; init; } = "";

    [Field("How far")]
    public Undone State { get; init; }

    [Field("Why")]
    public string Why { get; init; } = "";
}
