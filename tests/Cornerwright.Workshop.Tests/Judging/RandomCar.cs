using System.Collections;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Workshop.Tests.Judging;

/// <summary>
/// Varies a car's document at random: readings taken away or changed within the range of their field, parts swapped, list entries dropped.
/// </summary>
internal sealed class RandomCar(Car car, Random random)
{
    private readonly Car _car = car;
    private double _lose, _scale, _swap;

    /// <summary>One variation; how much is lost, changed and swapped differs from one to the next.</summary>
    public Car Next()
    {
        // Many gentle ones, which get far into the judge, and some wild ones.
        double wild = random.NextDouble();
        wild *= wild;
        (_lose, _scale, _swap) = (0.12 * wild * random.NextDouble(), 0.4 * wild, 0.2 * wild);
        return (Car)Vary(_car);
    }

    private object Vary(object record)
    {
        foreach (var field in RecordShape.Of(record.GetType()).Fields)
        {
            object? before = field.Get(record), after = before is null ? null : Varied(field, before);
            if (!ReferenceEquals(before, after) && !Equals(before, after))
            {
                record = RecordShape.Of(record.GetType()).With(record, field, after);
            }
        }

        return record;
    }

    private object? Varied(FieldShape field, object value) => field.Kind switch
    {
        FieldKind.Reading when random.NextDouble() < _lose => null,
        FieldKind.Reading when random.NextDouble() < _scale => Scaled(field, (Reading)value),
        FieldKind.Record when field.Words.Needed || random.NextDouble() >= _lose / 4 || !Optional(field) => Vary(value),
        FieldKind.Record => null,
        FieldKind.RecordList => Entries(field, (IEnumerable)value),
        FieldKind.Text when field.Words.RefersTo.Length > 0 && random.NextDouble() < _swap =>
            random.Next(8) == 0 ? "" : AnyId(field, (string)value),
        FieldKind.TextList when field.Words.RefersTo.Length > 0 && random.NextDouble() < _swap => Stack((IReadOnlyList<string>)value),
        FieldKind.Choice when random.NextDouble() < _lose =>
            Enum.GetValues(field.ElementType).GetValue(random.Next(Enum.GetValues(field.ElementType).Length)),
        _ => value,
    };

    private static bool Optional(FieldShape field) =>
        field.ElementType == typeof(StrutPlace) || field.ElementType == typeof(SteeringAxis) || field.ElementType == typeof(FrontPoint);

    private Reading Scaled(FieldShape field, Reading reading)
    {
        double si = random.Next(6) == 0
            ? field.MinSi + (random.NextDouble() * (field.MaxSi - field.MinSi))
            : reading.Si * Math.Exp((random.NextDouble() - 0.5) * (random.Next(4) == 0 ? 2 : 0.2));
        return reading with { Value = Quantity.Of(field.Unit!.FromSi(Math.Clamp(si, field.MinSi, field.MaxSi)), field.Unit) };
    }

    // Parts and load cases stay on the shelf, since the builds refer to them; steps, gaps, curve points and obstacles may go.
    private Array Entries(FieldShape field, IEnumerable list)
    {
        bool referred = typeof(Part).IsAssignableFrom(field.ElementType) || field.ElementType == typeof(LoadCase)
            || field.ElementType == typeof(Garage.Builds.Build);
        var kept = new List<object>();
        foreach (object entry in list)
        {
            if (referred || random.NextDouble() >= _lose)
            {
                kept.Add(Vary(entry));
            }
        }

        var array = Array.CreateInstance(field.ElementType, kept.Count);
        for (int i = 0; i < kept.Count; i++)
        {
            array.SetValue(kept[i], i);
        }

        return array;
    }

    private string AnyId(FieldShape field, string now)
    {
        var ids = Ids(field.Words.RefersTo).ToList();
        return ids.Count == 0 ? now : ids[random.Next(ids.Count)];
    }

    private IReadOnlyList<string> Stack(IReadOnlyList<string> stack) => random.Next(4) switch
    {
        0 => [.. stack.Reverse()],
        1 => [.. stack.Where(_ => random.Next(2) == 0)],
        2 => [.. stack, .. Ids("parts/springs,parts/sheets").OrderBy(_ => random.Next()).Take(1)],
        _ => [.. Ids("parts/springs,parts/sheets").OrderBy(_ => random.Next()).Take(1 + random.Next(3))],
    };

    private IEnumerable<string> Ids(string refersTo)
    {
        foreach (string place in refersTo.Split(','))
        {
            if (place.StartsWith("parts/", StringComparison.Ordinal)
                && RecordShape.Of<PartsShelf>().ByName.TryGetValue(place["parts/".Length..], out var kind))
            {
                foreach (var part in (IEnumerable<Part>)kind.Get(_car.Parts)!)
                {
                    yield return part.Id;
                }
            }
            else if (place == "builds")
            {
                foreach (var build in _car.Builds)
                {
                    yield return build.Id;
                }
            }
        }
    }
}
