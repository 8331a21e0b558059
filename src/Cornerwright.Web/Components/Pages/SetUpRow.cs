using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Web.Components.Pages;

/// <summary>One line of the set-up sheet: what is planned at each corner, with room for what was measured afterwards.</summary>
/// <param name="Planned">In the order of <see cref="Places.Corners"/>; empty where nothing is planned.</param>
public sealed record SetUpRow(string Words, IReadOnlyList<string> Planned)
{
    public static IReadOnlyList<SetUpRow> Of(Judgement judged)
    {
        ArgumentNullException.ThrowIfNull(judged);
        return
        [
            Setting("Perch height", c => c.PerchHeight),
            Setting("Body height", c => c.BodyHeight),
            Figure("Rod showing at ride", "rod-showing"),
            new("Hub to arch edge", [.. Places.Corners.Select(Height)]),
            Figure("Camber", "camber-ride"),
            new("Toe", Blank()),
            new("Corner load", [.. Places.Corners.Select(Load)]),
            Setting("Tyre pressure, cold", c => c.Pressure),
            new("Damper clicks", Blank()),
            new("Collar turns moved", Blank()),
        ];

        SetUpRow Setting(string words, Func<CornerBuild, Reading?> get) =>
            new(words, [.. Places.Corners.Select(c => get(judged.Build.At(c)) is { } r ? QuantityText.Write(r.Si, r.Value.Unit, 1) : "")]);

        SetUpRow Figure(string words, string name) =>
            new(words,
                [.. Places.Corners.Select(c => judged.Figures.FirstOrDefault(f => f.Corner == c && f.Name == name)?.Value.Text ?? "")]);

        // Where the body comes to stand higher, the arch edge goes up with it.
        string Height(CornerPlace corner) =>
            judged.Car.At(corner).RideHeight is { } measured
                && judged.Figures.FirstOrDefault(f => f.Corner == corner && f.Name == "height-change") is { } change
                ? change.Value.With(measured.Si + change.Value.Si).Text
                : "";

        string Load(CornerPlace corner) =>
            judged.Car.LoadCases is [{ } wanted, ..] && wanted.At(corner) is { } load
                ? QuantityText.Write(load.Si, load.Value.Unit, 0) : "";

        static string[] Blank() => [.. Places.Corners.Select(_ => "")];
    }
}
