using System.Globalization;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Components.Entry;
using Cornerwright.Web.Components.Linkages;
using Cornerwright.Workshop.Judging;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Pages;

/// <summary>The points between which one corner's links run: typed, pasted, drawn, moved, compared, fitted.</summary>
public partial class HardpointsPage
{
    private static readonly HardpointTable Started = (HardpointTable)NewEntry.Of(typeof(HardpointTable));

    private static readonly string[] Choices =
    [
        nameof(HardpointTable.Kind), nameof(HardpointTable.SpringOn), nameof(HardpointTable.DamperOn), nameof(HardpointTable.PushrodOn),
        nameof(HardpointTable.RackOn),
        nameof(HardpointTable.SpringLink), nameof(HardpointTable.DamperLink), nameof(HardpointTable.SpringAlong),
        nameof(HardpointTable.DamperAlong), nameof(HardpointTable.Mirrored),
    ];

    private (Car? Car, CornerPlace? Place, string Build, Judgement? Present, Judgement? Chosen) _studied;
    private LinkageStudy _study = LinkageStudy.None;
    private string _sought = "";

    /// <summary>"front-left" and so on.</summary>
    [Parameter] public string? Place { get; set; }

    /// <summary>The build that is compared with the one on the car.</summary>
    [SupplyParameterFromQuery(Name = "build")] public string? Chosen { get; set; }

    /// <summary>Travel at which the linkage stands, mm.</summary>
    [SupplyParameterFromQuery(Name = "travel")] public double? TravelMm { get; set; }

    /// <summary>Rack to the left, mm.</summary>
    [SupplyParameterFromQuery(Name = "rack")] public double? RackMm { get; set; }

    /// <summary>Plate inward from where it stood when measured, mm.</summary>
    [SupplyParameterFromQuery(Name = "plate")] public double? PlateMm { get; set; }

    private CornerPlace? At => Addresses.CornerOf(Place);

    private HardpointTable? Table => At is { } place ? Car.At(place).Hardpoints : null;

    private LinkageStudy Study
    {
        get
        {
            if (At is not { } place)
            {
                return LinkageStudy.None;
            }

            var present = Car.Build(Car.MeasuredBuild) is null ? null : Bench.JudgementOf(Car.MeasuredBuild);
            var chosen = ChosenId.Length == 0 || ChosenId == Car.MeasuredBuild ? present : Bench.JudgementOf(ChosenId);
            var now = (Car, place, ChosenId, present, chosen);
            if (!ReferenceEquals(_studied.Car, now.Car) || _studied.Place != place || _studied.Build != now.ChosenId
                || !ReferenceEquals(_studied.Present, present) || !ReferenceEquals(_studied.Chosen, chosen))
            {
                (_studied, _study) = (now, LinkageStudy.Of(Car, place, ChosenId, present, chosen, _study));
            }

            return _study;
        }
    }

    private IReadOnlyList<Build> BuildsToChoose => Car.Builds;

    private string ChosenId => Car.Build(Chosen ?? "")?.Id ?? Car.Build(Bench.BuildId)?.Id ?? "";

    private LinkagePlace First => new(Metres(TravelMm, 0.3), Metres(RackMm, 0.15), Metres(PlateMm, 0.03));

    private static double Metres(double? mm, double most) =>
        mm is { } value && double.IsFinite(value) ? Math.Clamp(value / 1000, -most, most) : 0;

    private string LevelAddress(CornerPlace place) => FieldPaths.Address(Id, FieldPaths.Of(place) + "/motion/level");

    private void GoByPoints(CornerPlace place) => Bench.Apply(
        $"Let the verdict go by hardpoints, {place.Words()}",
        car => car.With(place, car.At(place) with { Motion = car.At(place).Motion with { Level = MotionLevel.Hardpoints } }));

    private string Here(string part) => new Uri(Navigation.Uri).PathAndQuery + "#" + part;

    private string FileName(CornerPlace place, string along) => $"{Car.Id}-{Addresses.Slug(place)}-{along}";

    private void Choose(string? build) => Navigation.NavigateTo(Navigation.GetUriWithQueryParameter("build", build), replace: true);

    /// <summary>Where the linkage was left stands in the address, so that it can be shown to somebody else.</summary>
    private void Moved(LinkagePlace place) => Navigation.NavigateTo(
        Navigation.GetUriWithQueryParameters(new Dictionary<string, object?>
        {
            ["travel"] = Mm(place.Travel),
            ["rack"] = Mm(place.Rack),
            ["plate"] = Mm(place.Plate),
        }),
        replace: true);

    private static string? Mm(double metres) => Math.Abs(metres) < 1e-9 ? null
        : (metres * 1000).ToString("0.##", CultureInfo.InvariantCulture);

    private void Put(CornerPlace place, HardpointTable? table) => Bench.Apply(
        (table is null ? "Take out" : "Start") + $" the hardpoints, {place.Words()}",
        car => car.With(place, car.At(place) with { Hardpoints = table }));

    private void PutTable(CornerPlace place, string words, Func<HardpointTable, HardpointTable> rework) => Bench.Apply(
        words, car => car.At(place).Hardpoints is { } table && rework(table) is var after && !ReferenceEquals(after, table)
            ? car.With(place, car.At(place) with { Hardpoints = after }) : car);

    // Another kind may not have what carried spring and damper: then its usual carriers are taken.
    private void MendTable(CornerPlace place, string words, Func<object?, object?> rework) => Bench.Apply(
        words, car => car.With(place, car.At(place) with { Hardpoints = (HardpointTable?)rework(car.At(place).Hardpoints) is { } table
            ? HardpointNeeds.Fitted(table) : null }));
}
