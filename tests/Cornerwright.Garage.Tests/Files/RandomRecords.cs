using System.Globalization;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Tests.Files;

/// <summary>Random cars that hang together, made through the shapes, so that a new field takes part by itself.</summary>
public sealed class RandomRecords(int seed)
{
    private const int MostItems = 3;

    private static readonly string[] Words =
        ["plain", "with \"quotes\"", "a, comma; and more", "ärmel — ½ ° µ", "two\nlines", "tab\there", "車 🛞", "back\\slash",
            "</script>", "e\u0301"];

    // Pairs that must stand in order: the first of each from the lower part of its range, the second from the upper.
    private static readonly string[] Lower = ["Low", "Min", "RodClosed", "SolidHeight", "InnerDiameter", "SpentLength"];
    private static readonly string[] Upper = ["High", "Max", "RodOpen", "FreeLength", "OuterDiameter", "Length"];

    private readonly Random _random = new(seed);
    private int _ids;
    private PartsShelf? _shelf;

    public Car Car()
    {
        _shelf = null;
        _shelf = (PartsShelf)Record(typeof(PartsShelf), 0.5);
        var car = (Car)Record(typeof(Car), 0.5);
        return car with
        {
            Parts = _shelf,
            Front = car.Front with { Steered = car.Front.Steered || Steers(car, AxlePlace.Front) },
            Rear = car.Rear with { Steered = car.Rear.Steered || Steers(car, AxlePlace.Rear) },
            Wishes = [.. car.Builds.Zip(car.Wishes, (build, wish) => wish with { Build = build.Id })],
            MeasuredBuild = car.Builds.Count > 0 ? car.Builds[^1].Id : "",
            MeasuredLoadCase = car.LoadCases.Count > 0 ? car.LoadCases[0].Id : "",
            FrontLeft = Own(car.FrontLeft),
            RearLeft = Own(car.RearLeft),
            FrontRight = car.FrontLeft.Hardpoints is null ? Own(car.FrontRight) : Fitted(car.FrontRight),
            RearRight = car.RearLeft.Hardpoints is null ? Own(car.RearRight) : Fitted(car.RearRight),
        };
    }

    public Part Part(Type type) => (Part)Record(type, 0.5);

    /// <summary>What is said of steering belongs to an axle that is steered.</summary>
    private static bool Steers(Car car, AxlePlace axle) => car.Scans.Any(s => s.Corner.Axle() == axle && s.Steer is not null)
        || Places.Corners.Where(c => c.Axle() == axle).Select(car.At)
        .Any(c => c.Steering is not null || c.Obstacles.Any(o => o.Gaps.Any(g => g.Steer is not null)));

    /// <summary>A table may only mirror one that stands on its own: here the right wheel's the left's.</summary>
    private static Corner Own(Corner corner) => corner.Hardpoints is { } table
        ? Fitted(corner with { Hardpoints = table with { Mirrored = false } }) : corner;

    /// <summary>Springs and dampers on parts that the kind of linkage has.</summary>
    private static Corner Fitted(Corner corner) =>
        corner.Hardpoints is { } table ? corner with { Hardpoints = HardpointNeeds.Fitted(table) } : corner;

    private object Record(Type type, double position)
    {
        var shape = RecordShape.Of(type);
        object record = Activator.CreateInstance(type)!;
        foreach (var field in shape.Fields)
        {
            if (field.Words.Needed || _random.Next(3) > 0)
            {
                record = shape.With(record, field, Value(field, position, field.Get(record)));
            }
        }

        return record;
    }

    private object? Value(FieldShape field, double position, object? unchanged) => field.Kind switch
    {
        FieldKind.Text => Text(field),
        FieldKind.TextList => AllOnShelf(field),
        FieldKind.YesNo => _random.Next(2) == 0,
        FieldKind.Whole => _random.Next(0, 12),
        FieldKind.Number => Math.Round(_random.NextDouble() * 12, _random.Next(0, 16)),
        FieldKind.Money => Math.Round((decimal)(_random.NextDouble() * 2000), _random.Next(0, 3)),
        FieldKind.Date => new DateOnly(2026, 1, 1).AddDays(_random.Next(300)),
        FieldKind.Choice => Pick(Enum.GetValues(field.ElementType).Cast<object>().ToArray()),
        FieldKind.Reading => Reading(field, position),
        FieldKind.Record => field.ElementType == typeof(PartsShelf) && _shelf is not null ? unchanged : Record(field.ElementType, position),
        _ => List(field.ElementType),
    };

    private Array List(Type type)
    {
        var list = Array.CreateInstance(type, _random.Next(0, MostItems + 1));
        for (int i = 0; i < list.Length; i++)
        {
            list.SetValue(Record(type, (i + 0.5) / list.Length), i);
        }

        return list;
    }

    private string Text(FieldShape field) => field switch
    {
        { Name: "id" } => FormattableString.Invariant($"{Pick("a/b", "w~", "Ä", "x y")}{_ids++}"),
        { Name: "contentHash" } => Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData([(byte)_random.Next(256)])),
        { Name: "takenOn" } => "2026-09-12",
        { Words.RefersTo: "parts/springs,parts/sheets" } => "",
        { Words.RefersTo: { Length: > 0 } elsewhere } when !elsewhere.StartsWith("parts/", StringComparison.Ordinal) => "",
        { Name: "thread" } => Pick("", "M10", "M12x1.5", "m14 × 1,5"),
        { Name: "class" } => Pick("", "8.8", "10.9", "10"),
        { Words.RefersTo.Length: > 0 } => OnShelf(field.Words.RefersTo["parts/".Length..]),
        { Name: "designation", Label: "Rim designation" } => Pick("8Jx18 ET35 5x112", "7 1/2 J x 17 H2 ET-12", "9.5Jx19 ET22"),
        { Name: "designation" } => Pick("225/45 R17 94W XL", "P215/65R15 95H", "31x10.50R15LT 109Q"),
        _ => Pick(Words),
    };

    private string OnShelf(string list)
    {
        var parts = ((System.Collections.IEnumerable)RecordShape.Of<PartsShelf>().ByName[list].Get(_shelf!)!).Cast<Part>().ToArray();
        return parts.Length == 0 ? "" : Pick(parts).Id;
    }

    private string[] AllOnShelf(FieldShape field) => _shelf is null ? [] :
        [.. field.Words.RefersTo.Split(',').SelectMany(list =>
            ((System.Collections.IEnumerable)RecordShape.Of<PartsShelf>().ByName[list["parts/".Length..]].Get(_shelf)!).Cast<Part>())
            .Select(p => p.Id)];

    /// <summary>In any unit of the field, at the place of its range that rising lists and ordered pairs need.</summary>
    private Reading Reading(FieldShape field, double position)
    {
        double third = Lower.Any(field.PropertyName.EndsWith) ? 0.1 : Upper.Any(field.PropertyName.EndsWith) ? 0.8 : position * 0.9;
        double si = field.MinSi + ((field.MaxSi - field.MinSi) * (third + (_random.NextDouble() * 0.1)));
        var unit = Pick(Units.Of(field.Words.Dimension).ToArray());
        var source = Pick(Enum.GetValues<ReadingSource>());
        string? tolerance = _random.Next(3) == 0 ? Pick("±", "+/-", "") + QuantityText.Write(si == 0 ? 1 : Math.Abs(si) / 50, unit, 6)
            : null;
        DateOnly? date = _random.Next(3) == 0 ? new DateOnly(2026, 1, 1).AddDays(_random.Next(300)) : null;
        return Garage.Readings.Reading.Parse(field.Label, field.Words.Dimension, QuantityText.Write(si, unit, 6), tolerance,
            Pick(Enum.GetValues<ToleranceKind>()), source, date).Value;
    }

    private T Pick<T>(params T[] from) => from[_random.Next(from.Length)];

    public override string ToString() => "seed " + seed.ToString(CultureInfo.InvariantCulture);
}
