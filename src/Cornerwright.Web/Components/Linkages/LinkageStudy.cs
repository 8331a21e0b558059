using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Web.Components.Linkages;

/// <summary>All that one corner's page draws of a linkage, present against proposed.</summary>
/// <param name="Present">As the car was measured; null where the table makes no linkage.</param>
/// <param name="Proposed">As the chosen build sets it; null where that is the build on the car.</param>
/// <param name="Problems">Why there is none.</param>
/// <param name="ThroughTravel">Charts.</param>
/// <param name="ThroughSteer">Charts; empty where nothing steers.</param>
/// <param name="Doubts">Which coordinates to measure better.</param>
/// <param name="Way">Travel over which that is averaged, m.</param>
public sealed record LinkageStudy(
    LinkageSetting? Present, LinkageSetting? Proposed, IReadOnlyList<Problem> Problems, IReadOnlyList<CurveSheet> ThroughTravel,
    IReadOnlyList<CurveSheet> ThroughSteer,
    IReadOnlyList<QuantityDoubt> Doubts, (double Least, double Most) Way)
{
    private const int DoubtPoses = 7;

    /// <summary>Where nobody knows the stops, m.</summary>
    private const double UsualWay = 0.06;

    /// <summary>Nothing to draw.</summary>
    public static LinkageStudy None { get; } = new(null, null, [], [], [], [], default);

    /// <summary>The one that is drawn and moved: the chosen build's.</summary>
    public LinkageSetting? Shown => Proposed ?? Present;

    /// <param name="car">With a table at this corner.</param>
    /// <param name="place">Which corner.</param>
    /// <param name="chosenId">The build to compare with what is on the car.</param>
    /// <param name="present">Judgement of the build on the car; null while it is not there.</param>
    /// <param name="chosen">Judgement of the chosen build.</param>
    /// <param name="before">What was known before: what does not depend on what changed is taken over.</param>
    public static LinkageStudy Of(Car car, CornerPlace place, string chosenId, Judgement? present, Judgement? chosen,
        LinkageStudy? before = null)
    {
        ArgumentNullException.ThrowIfNull(car);
        if (car.At(place).Hardpoints is null)
        {
            return None;
        }

        var measured = car.Build(car.MeasuredBuild);
        var build = car.Build(chosenId);
        bool same = build is null || build.Id == measured?.Id;
        var now = LinkageSetting.Of(car, place, measured, same ? chosen ?? present : present);
        if (!now.Try(out var presentSetting))
        {
            return None with { Problems = now.Problems };
        }

        var then = same ? null : LinkageSetting.Of(car, place, build, chosen);
        if (then is { Ok: false })
        {
            return None with { Problems = then.Problems };
        }

        var proposed = then?.Value;
        var way = DoubtWay(presentSetting);
        return new(
            presentSetting, proposed, [], CurveSheet.Of(presentSetting, proposed, SweepAlong.Travel),
            CurveSheet.Of(presentSetting, proposed, SweepAlong.Rack),
            Still(before, presentSetting, way) ? before!.Doubts : QuantityDoubt.Of(presentSetting.Points, Spread(way)), way);
    }

    // To whole millimetres: a stop that moves by a hair does not ask for everything anew.
    private static (double Least, double Most) DoubtWay(LinkageSetting setting) => (
        setting.Droop is { } droop && double.IsFinite(droop) ? Math.Round(Math.Clamp(droop, -0.15, -0.02), 3) : -UsualWay,
        setting.Bump is { } bump && double.IsFinite(bump) ? Math.Round(Math.Clamp(bump, 0.02, 0.15), 3) : UsualWay);

    private static double[] Spread((double Least, double Most) way) =>
        [.. Enumerable.Range(0, DoubtPoses).Select(i => way.Least + ((way.Most - way.Least) * i / (DoubtPoses - 1)))];

    /// <summary>True when nothing that the doubts stand on has changed: the same points, angles and way.</summary>
    private static bool Still(LinkageStudy? before, LinkageSetting now, (double Least, double Most) way) =>
        before?.Present is { } then && before.Way == way && then.Points.Place == now.Points.Place
            && ReferenceEquals(then.Points.Table, now.Points.Table)
        && then.Points.Linkage.Camber == now.Points.Linkage.Camber && then.Points.Linkage.Toe == now.Points.Linkage.Toe;
}
