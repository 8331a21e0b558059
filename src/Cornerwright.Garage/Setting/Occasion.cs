using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;

namespace Cornerwright.Garage.Setting;

/// <summary>One time at which the finished car was read: how it was built and set then, who sat in it, and what was read.</summary>
public sealed record Occasion
{
    [Field("Id", Needed = true)]
    public string Id { get; init; } = "";

    [Field("Name", Needed = true)]
    public string Name { get; init; } = "";

    [Field("Note")]
    public string Note { get; init; } = "";

    [Field("Load case", RefersTo = "loadCases", How = "The one the car stood in; its loads are used where nothing was read on scales.")]
    public string LoadCase { get; init; } = "";

    [Field("On board", How = "Beyond the load case: people and ballast in the car while it was read.")]
    public IReadOnlyList<PlacedLoad> Aboard { get; init; } = [];

    /// <summary>The build as it was then: later changes of the build do not change what was read.</summary>
    [Field("Built and set as", Needed = true)]
    public Build Fitted { get; init; } = new();

    [Field("Front left")] public CornerReadings FrontLeft { get; init; } = new();
    [Field("Front right")] public CornerReadings FrontRight { get; init; } = new();
    [Field("Rear left")] public CornerReadings RearLeft { get; init; } = new();
    [Field("Rear right")] public CornerReadings RearRight { get; init; } = new();

    [Field("Left out of what is learned", How = "Undoes what these readings taught, without losing them.")]
    public bool Ignored { get; init; }

    public CornerReadings At(CornerPlace corner) => corner switch
    {
        CornerPlace.FrontLeft => FrontLeft,
        CornerPlace.FrontRight => FrontRight,
        CornerPlace.RearLeft => RearLeft,
        _ => RearRight,
    };

    public Occasion With(CornerPlace corner, CornerReadings value) => corner switch
    {
        CornerPlace.FrontLeft => this with { FrontLeft = value },
        CornerPlace.FrontRight => this with { FrontRight = value },
        CornerPlace.RearLeft => this with { RearLeft = value },
        _ => this with { RearRight = value },
    };
}
