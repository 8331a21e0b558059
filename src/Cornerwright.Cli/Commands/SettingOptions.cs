using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Setting;

namespace Cornerwright.Cli.Commands;

/// <summary>Puts what a person wants on the command line into a wish; every mistake at once.</summary>
internal static class SettingOptions
{
    public static Checked<SettingWish> Read(SettingWish wish, TurnsSettings settings)
    {
        var problems = new List<Problem>();
        wish = Each(wish, "--height", settings.Heights, nameof(CornerWish.Height), problems);
        wish = Each(wish, "--camber", settings.Cambers, nameof(CornerWish.Camber), problems);
        wish = Each(wish, "--toe", settings.Toes, nameof(CornerWish.Toe), problems);
        if (settings.Cross is { } cross
            && Value("--cross", cross, Field(typeof(SettingWish), nameof(SettingWish.CrossWeight)), problems) is { } share)
        {
            wish = wish with { CrossWeight = share };
        }

        return problems.Count > 0 ? Checked<SettingWish>.Wrong(problems) : Checked<SettingWish>.From(wish);
    }

    private static SettingWish Each(SettingWish wish, string option, string[] typed, string property, List<Problem> problems)
    {
        var field = Field(typeof(CornerWish), property);
        foreach (string text in typed)
        {
            string[] sides = text.Split('=', 2);
            if (sides.Length < 2)
            {
                problems.Add(new Problem(option, text, "a place, \"=\" and a value, such as front=415mm",
                    "Say for which corner, axle or side it is wanted."));
                continue;
            }

            var places = BuildChoice.Corners([sides[0]]);
            problems.AddRange(places.Problems.Select(p => p with { Field = option }));
            if (Value(option, sides[1], field, problems) is { } value && places.Ok)
            {
                foreach (var place in places.Value)
                {
                    wish = wish.With(place, RecordShape.Of<CornerWish>().With(wish.At(place), field, value));
                }
            }
        }

        return wish;
    }

    private static Reading? Value(string option, string text, FieldShape field, List<Problem> problems)
    {
        var reading = Reading.Parse(option, field.Words.Dimension, text, source: ReadingSource.Setting);
        problems.AddRange(reading.Problems);
        if (reading.Ok && field.RangeProblem(option, reading.Value) is { } range)
        {
            problems.Add(range);
            return null;
        }

        return reading.Ok ? reading.Value : null;
    }

    private static FieldShape Field(Type type, string property) => RecordShape.Of(type).Fields.First(f => f.PropertyName == property);
}
