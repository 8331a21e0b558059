using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Tests.Drawing;

/// <summary>One corner of one build of a car that was drawn at random.</summary>
/// <param name="Kind">How the wheel hangs and how that is known.</param>
internal sealed record DrawnCorner(Car Car, string BuildId, CornerPlace Place, HangKind Kind, string Note = "")
{
    public Build Build => Car.Build(BuildId)!;

    public Corner Corner => Car.At(Place);

    public DrawnCorner With(Corner corner) => this with { Car = Car.With(Place, corner) };

    public DrawnCorner With(Build build) => this with { Car = Car.With(build) };

    /// <summary>Judged as the whole car would be, but for the other corners.</summary>
    public CornerResult Result() => CornerResult.Of(CornerPlan.Compile(Car, Build, Place, null));

    /// <summary>All clearances, by check.</summary>
    public IReadOnlyDictionary<string, Finding> Clearances() => Clearances(Result());

    public static IReadOnlyDictionary<string, Finding> Clearances(CornerResult result) =>
        new JudgedCorner(result).Findings(false)
            .Where(f => f.Check.StartsWith("clear-", StringComparison.Ordinal)).ToDictionary(f => f.Check);

    /// <summary>The parts and settings of this corner, on this build or on the one the car was measured on.</summary>
    public CornerBuild Fitted => Build.At(Place);
}

/// <summary>How a wheel hangs, and how that is known.</summary>
internal enum HangKind
{
    StrutRatios,
    StrutHardpoints,
    StrutPlanar,
    WishbonePlanar,
    ArmCycled,
    ArmRatios,
    RigidHardpoints,
    RigidRatios,
    TwistHardpoints,
    TwistRatios,
}
