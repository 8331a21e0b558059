using System.Globalization;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Bench;

/// <summary>The demo car with a shelf full of invented parts for its front: 2,016,000 combinations, many of which fit, many not.</summary>
internal static class InventedCatalogue
{
    private const int Seed = 7;

    public static Wishes Wishes { get; } =
        new() { Id = "all", Name = "All of it", Axle = AxlePlace.Front, StartingBuild = "gravel-3", Listed = 50 };

    public static Car Make()
    {
        var random = new Random(Seed);
        var car = DemoCar.Read();
        var shelf = car.Parts;
        var main = shelf.Springs.First(s => s.Id == "f-6-250");
        var helper = shelf.Springs.First(s => s.Id == "f-helper");
        var mains = Enumerable.Range(0, 40).Select(i =>
        {
            double rate = 40 + (5 * (i % 8)), free = 200 + (20 * (i / 8));
            return main with
            {
                Id = $"s{i}", Name = Text($"{rate:0} N/mm, {free:0} mm"), Rate = Data($"{rate:0} N/mm", Dimension.SpringRate),
                    FreeLength = Data($"{free:0} mm", Dimension.Length),
                SolidHeight = Data(Text($"{(0.30 * free) + (0.4 * rate):0.0} mm"), Dimension.Length), GreatestDeflection = null,
                WireDiameter = null, Price = 70 + random.Next(60),
                InnerDiameter = Data(i % 5 == 4 ? "65 mm" : "60 mm", Dimension.Length),
            };
        });
        var helpers = Enumerable.Range(0, 3).Select(i => helper with
        {
            Id = $"h{i}", Name = $"Helper {i}", FreeLength = Data($"{45 + (12 * i)} mm", Dimension.Length),
                SolidHeight = Data($"{16 + (4 * i)} mm", Dimension.Length), Price = 25 + random.Next(20),
        });
        var perch = shelf.Perches.First(p => p.Id == "p-front");
        var mount = shelf.TopMounts.First(m => m.Id == "m-ball");
        var stop = shelf.BumpStops.First(b => b.Id == "b-front");
        var wheel = shelf.Wheels.First(w => w.Id == "w-gravel-40");
        var tyre = shelf.Tyres.First(t => t.Id == "t-gravel-55");
        var start = car.Build("gravel-3")!;
        return car with
        {
            Builds = [car.Build("now")!, start],
            Parts = shelf with
            {
                Springs = [.. shelf.Springs, .. mains, .. helpers],
                Perches = [.. shelf.Perches, .. Enumerable.Range(0, 3)
                    .Select(i => perch with { Id = $"p{i}", Name = $"Perch {i}", Depth = Data($"{18 + (3 * i)} mm", Dimension.Length),
                        Price = 30 + (10 * i) })],
                TopMounts =
                    [.. shelf.TopMounts, .. Enumerable.Range(0, 3).Select(i =>
                        mount with { Id = $"m{i}", Name = $"Mount {i}", SeatDrop = Data($"{18 + (4 * i)} mm", Dimension.Length),
                            RodDrop = Data($"{34 + (4 * i)} mm", Dimension.Length), Price = 90 + (25 * i) })],
                BumpStops = [.. shelf.BumpStops, .. Enumerable.Range(0, 2).Select(i =>
                    stop with { Id = $"b{i}", Name = $"Stop {i}", Length = Data($"{46 + (8 * i)} mm", Dimension.Length), Price = 8 + i })],
                Wheels =
                    [.. shelf.Wheels, .. Enumerable.Range(0, 10)
                        .Select(i => wheel with { Id = $"w{i}", Name = $"Wheel {i}", Designation = wheel.Designation.Replace("ET40",
                            $"ET{28 + (2 * i)}", StringComparison.Ordinal), Price = 120 + random.Next(150) })],
                Tyres =
                    [.. shelf.Tyres, .. Enumerable.Range(0, 10)
                        .Select(i => tyre with { Id = $"t{i}", Name = $"Tyre {i}", Designation = Sizes[i], SectionWidth = null,
                            OuterDiameter = null, TreadWidth = null, ShoulderDrop = null, Price = 80 + random.Next(70) })],
                Spacers =
                    [.. Enumerable.Range(0, 3).Select(i => new Spacer { Id = $"sp{i}", Name = $"Spacer {i}",
                        Thickness = Data($"{1 + i} mm", Dimension.Length), Bolted = true, Price = 15 })],
            },
        };
    }

    /// <summary>The search among the invented parts only.</summary>
    public static Wishes WishesOf(Car car) => Wishes with
    {
        Springs = [.. car.Parts.Springs.Where(s => s.Id[0] is 's' or 'h').Select(s => s.Id)],
        Sheets = ["f-adapter"],
        Perches = ["p0", "p1", "p2"],
        TopMounts = ["m0", "m1", "m2"],
        Dampers = ["d-front"],
        BumpStops = ["b0", "b1"],
        Wheels = [.. Enumerable.Range(0, 10).Select(i => $"w{i}")],
        Tyres = [.. Enumerable.Range(0, 10).Select(i => $"t{i}")],
        Spacers = ["sp0", "sp1", "sp2"],
    };

    private static readonly string[] Sizes =
    [
        "205/60 R16 92H", "205/55 R16 91H", "215/55 R16 93H", "215/60 R16 95H", "225/55 R16 95H", "225/50 R16 92H", "195/60 R16 89H",
        "195/65 R16 92H", "205/65 R16 95H", "215/50 R16 90H",
    ];

    private static Reading Data(string value, Dimension dimension) => Reading.Of(value, dimension, null, ReadingSource.DataSheet);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
