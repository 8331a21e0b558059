using Cornerwright.Garage.Access;
using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Log;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Scans;
using Cornerwright.Garage.Setting;

namespace Cornerwright.Garage.Cars;

/// <summary>One car: what was measured on it, the parts in question, and the builds made of them. The whole document.</summary>
public sealed record Car
{
    [Field("Id", Needed = true)]
    public string Id { get; init; } = "";

    [Field("Name", Needed = true)]
    public string Name { get; init; } = "";

    [Field("Note")]
    public string Note { get; init; } = "";

    [Field("Currency", How = "Of all prices.")]
    public string Currency { get; init; } = "";

    [Field("Wheelbase", Dimension.Length, "mm", 800, 6000)]
    public Reading? Wheelbase { get; init; }

    [Field("Ground clearance", Dimension.Length, "mm", 20, 600,
        How = "Lowest hard place between the axles to level ground, at the reference height, on the present tyres.")]
    public Reading? GroundClearance { get; init; }

    [Field("Top speed", Dimension.Speed, "km/h", 30, 450, How = "The highest the car can reach; the tyres' speed symbol must cover it.")]
    public Reading? TopSpeed { get; init; }

    [Field("Load cases", How = "The first is the one in which heights are wanted.")]
    public IReadOnlyList<LoadCase> LoadCases { get; init; } = [];

    [Field("Measured in load case", RefersTo = "loadCases", How = "How the car was loaded when the readings were taken.")]
    public string MeasuredLoadCase { get; init; } = "";

    [Field("Measured on build", RefersTo = "builds", How = "The build that was on the car when the readings were taken.")]
    public string MeasuredBuild { get; init; } = "";

    [Field("Front axle")]
    public Axle Front { get; init; } = new();

    [Field("Rear axle")]
    public Axle Rear { get; init; } = new();

    [Field("Front left corner")]
    public Corner FrontLeft { get; init; } = new();

    [Field("Front right corner")]
    public Corner FrontRight { get; init; } = new();

    [Field("Rear left corner")]
    public Corner RearLeft { get; init; } = new();

    [Field("Rear right corner")]
    public Corner RearRight { get; init; } = new();

    [Field("Scans", How = "Of what stands round the wheels.")]
    public IReadOnlyList<Scan> Scans { get; init; } = [];

    [Field("Parts")]
    public PartsShelf Parts { get; init; } = new();

    [Field("Limits of this car")]
    public Limits Limits { get; init; } = new();

    [Field("Allowances of this car")]
    public Allowances Allowances { get; init; } = new();

    [Field("Builds")]
    public IReadOnlyList<Build> Builds { get; init; } = [];

    [Field("Settings wanted")]
    public IReadOnlyList<SettingWish> Wishes { get; init; } = [];

    [Field("Readings after the work")]
    public IReadOnlyList<Occasion> Occasions { get; init; } = [];

    [Field("Judge with what was learned", How = "The readings after the work correct the numbers of this car; nothing typed is changed.")]
    public bool UseLearned { get; init; }

    [Field("How it comes apart")]
    public AccessGraph Access { get; init; } = new();

    [Field("Log")]
    public CarLog Log { get; init; } = new();

    [Field("Searches", How = "What was looked for among the parts, so that the search can be repeated.")]
    public IReadOnlyList<Wishes> Searches { get; init; } = [];

    [Field("Numbers confirmed", How = "What looked wrong beside another number, and why it is right.")]
    public IReadOnlyList<Confirmation> Confirmed { get; init; } = [];

    public Corner At(CornerPlace corner) => corner switch
    {
        CornerPlace.FrontLeft => FrontLeft,
        CornerPlace.FrontRight => FrontRight,
        CornerPlace.RearLeft => RearLeft,
        _ => RearRight,
    };

    public Car With(CornerPlace corner, Corner value) => corner switch
    {
        CornerPlace.FrontLeft => this with { FrontLeft = value },
        CornerPlace.FrontRight => this with { FrontRight = value },
        CornerPlace.RearLeft => this with { RearLeft = value },
        _ => this with { RearRight = value },
    };

    public Axle At(AxlePlace axle) => axle == AxlePlace.Front ? Front : Rear;

    /// <summary>How a build is to be set; null where nobody said.</summary>
    public SettingWish? Wish(string buildId) => Wishes.FirstOrDefault(w => w.Build == buildId);

    /// <summary>The same car with this wish in place of the one for the same build.</summary>
    public Car With(SettingWish wish) => this with
    {
        Wishes = Wishes.Any(w => w.Build == wish.Build) ? [.. Wishes.Select(w => w.Build == wish.Build ? wish : w)] : [.. Wishes, wish],
    };

    /// <summary>The same car with these readings in place of those of the same id, or added at the end.</summary>
    public Car With(Occasion occasion) => this with
    {
        Occasions = Occasions.Any(o => o.Id == occasion.Id) ? [.. Occasions.Select(o => o.Id == occasion.Id ? occasion : o)]
            : [.. Occasions, occasion],
    };

    public Build? Build(string id) => Builds.FirstOrDefault(b => b.Id == id);

    /// <summary>The same car with these wishes in place of those of the same id, or added at the end.</summary>
    public Car With(Wishes wishes) => this with
    {
        Searches = Searches.Any(w => w.Id == wishes.Id)
            ? [.. Searches.Select(w => w.Id == wishes.Id ? wishes : w)]
            : [.. Searches, wishes],
    };

    /// <summary>The same car with this build in place of the one of the same id, or added at the end.</summary>
    public Car With(Build build) => this with
    {
        Builds = Builds.Any(b => b.Id == build.Id)
            ? [.. Builds.Select(b => b.Id == build.Id ? build : b)]
            : [.. Builds, build],
    };
}
