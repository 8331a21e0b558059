using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;

namespace Cornerwright.Web.Components.Layout;

/// <summary>A page of a car in its index.</summary>
/// <param name="Label">One or two words.</param>
/// <param name="Glyph">Name of its line drawing.</param>
/// <param name="Address">Where it is.</param>
/// <param name="Whole">True when only this very address is the page, and no address below it.</param>
/// <param name="OnPhoneBar">One of the four that stand on a phone's bar; the rest lie behind its last button.</param>
public sealed record CarSheetLink(string Label, string Glyph, string Address, bool Whole = false, bool OnPhoneBar = false);

/// <summary>The pages of a car in the order of the job: the one list that every index is drawn from.</summary>
public static class CarSheets
{
    /// <param name="car">Null while it is being fetched.</param>
    /// <param name="carId">From the address.</param>
    /// <param name="buildId">The build in hand; empty when there is none.</param>
    public static IReadOnlyList<(string Stage, IReadOnlyList<CarSheetLink> Sheets)> Of(Car? car, string carId, string buildId) =>
    [
        ("Measure",
        [
            new("Car", "sheet", Addresses.Car(carId), Whole: true),
            new("Readings", "corner", Addresses.Corner(carId, CornerPlace.FrontLeft), Whole: true, OnPhoneBar: true),
            new("Scans", "scan", Addresses.Scans(carId)),
        ]),
        ("Choose",
        [
            new("Parts", "parts", Addresses.Parts(carId)),
            new("Rank", "rank", Addresses.Choose(carId)),
            new("Builds", "builds", Addresses.Builds(carId), OnPhoneBar: true),
        ]),
        ("Predict", buildId.Length == 0 ? [] :
        [
            new("Build in hand", "corner", Addresses.Build(carId, buildId), Whole: true),
            new("Verdict", "verdict", Addresses.Verdict(carId, buildId), OnPhoneBar: true),
            new("Clearance", "clearance", Addresses.Clearance(carId, buildId)),
            new("Compare", "compare", Compare(car, carId, buildId)),
        ]),
        ("Do",
        [
            .. buildId.Length == 0 ? Array.Empty<CarSheetLink>() : [new("Work order", "order", Addresses.Order(carId, buildId))],
            .. buildId.Length == 0 ? Array.Empty<CarSheetLink>() : [new("Setting", "setting", Addresses.Setting(carId, buildId))],
            new("Taking apart", "apart", Addresses.Access(carId)),
        ]),
        ("Remember",
        [
            new("Log", "log", Addresses.Log(carId)),
            new("History", "history", Addresses.History(carId)),
        ]),
    ];

    /// <summary>The build on the car now against the one in hand, or the first two.</summary>
    private static string Compare(Car? car, string carId, string buildId)
    {
        var builds = car?.Builds ?? [];
        string left = car?.MeasuredBuild is { Length: > 0 } measured ? measured : builds.FirstOrDefault()?.Id ?? "";
        string right = buildId != left ? buildId : builds.FirstOrDefault(b => b.Id != left)?.Id ?? left;
        return Addresses.Compare(carId, left, right);
    }
}
