using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Setting;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Remembering;

namespace Cornerwright.Workshop.Tests.WorkOrders;

public sealed class HeightRecordTests
{
    private static Reading Height(double si, string date) =>
        Reading.Parse("height", Dimension.Length, QuantityText.Write(si, Units.Millimetre, 3),
            date: DateOnly.Parse(date, System.Globalization.CultureInfo.InvariantCulture)).Value;

    [Fact]
    public void A_car_that_stands_three_millimetres_higher_than_it_was_said_to_shows_three_millimetres()
    {
        var car = DemoCar.Read() with { Occasions = [] };
        var build = car.Build("gravel-3")!;

        // The prediction a second way: the reference height and the travel at ride of the judge's own picture.
        var ride = Judge.Build(car, build, new JudgeOptions(Cures: false, Pictures: true)).Pictures
            .ToDictionary(p => p.Corner, p => p.Marks.Single(m => m.Words == "ride, " + car.LoadCases[0].Name).Travel);
        double Predicted(CornerPlace c) => car.At(c).RideHeight!.Si - ride[c];
        Occasion At(string id, double miss, string date, string loadCase = "") => Places.Corners.Aggregate(
            new Occasion { Id = id, Name = id, Fitted = build, LoadCase = loadCase },
            (o, c) => o.With(c, new CornerReadings { Height = Height(Predicted(c) + miss, date) }));

        var records = HeightRecord.Of(car with
        {
            Occasions = [At("second", 0.003, "2026-10-20"), At("first", -0.002, "2026-10-04"), At("laden", 0.1, "2026-10-21", "another")],
        });
        Assert.Equal(["first", "second"], records.Select(r => r.Occasion.Id));
        Assert.Equal(new DateOnly(2026, 10, 20), records[1].Date);
        Assert.Equal(4, records[1].Heights.Count);
        Assert.All(records[0].Heights, h => Assert.Equal(-0.002, h.Miss, 2e-5));
        Assert.All(records[1].Heights, h => Assert.Equal(0.003, h.Miss, 2e-5));
        Assert.All(records[1].Heights, h => Assert.InRange(h.Doubt, 0.0005, 0.05));
    }

    [Fact]
    public void Nothing_read_is_nothing_compared() => Assert.Empty(HeightRecord.Of(DemoCar.Read() with { Occasions = [] }));
}
