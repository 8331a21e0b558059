using Cornerwright.Garage.Fields;

namespace Cornerwright.Garage.Cars;

/// <summary>Numbers that look wrong beside each other and are right all the same. It holds for these numbers and no others.</summary>
public sealed record Confirmation
{
    [Field("Relation", Needed = true, How = "Its name, as the check of the file gives it.")]
    public string Relation { get; init; } = "";

    [Field("Numbers as they were", How = "Path and value of each number in it; when one changes, it is asked again.")]
    public string Numbers { get; init; } = "";

    [Field("Why it is so", Needed = true)]
    public string Why { get; init; } = "";
}
