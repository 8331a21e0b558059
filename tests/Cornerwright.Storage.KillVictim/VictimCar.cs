using System.Globalization;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Storage.KillVictim;

/// <summary>An invented car whose content follows from one number, so that parent and child agree on every document.</summary>
public static class VictimCar
{
    public const string Id = "dune";

    public const string BuildId = "street";

    public static Car Of(int step) => new()
    {
        Id = Id,
        Name = "Dune",
        Note = FormattableString.Invariant($"step {step}"),
        LoadCases =
            [new LoadCase { Id = "kerb", Name = "Kerb", FrontLeft = Reading.Of("395 kg", Dimension.Mass, "2 kg", ReadingSource.Scale) }],
        MeasuredLoadCase = "kerb",
        MeasuredBuild = BuildId,
        Parts = new PartsShelf
        {
            Springs = [new Spring { Id = "s60", Name = "Sixty",
                Rate = Reading.Of("60 N/mm", Dimension.SpringRate, "2 N/mm", ReadingSource.DataSheet) }],
            Spacers = [.. Enumerable.Range(1, 60).Select(i => new Spacer
            {
                Id = FormattableString.Invariant($"sp{i}"),
                Name = FormattableString.Invariant($"Spacer {i}"),
                Thickness = Reading.Of(FormattableString.Invariant($"{i} mm"), Dimension.Length),
            })],
        },
        Builds =
            [new Build { Id = BuildId, Name = "Street", FrontLeft = new CornerBuild { Stack = ["s60"], PerchHeight = PerchHeight(step) } }],
    };

    private static Reading PerchHeight(int step) =>
        Reading.Of((100 + (step % 700)).ToString(CultureInfo.InvariantCulture) + " mm", Dimension.Length);
}
