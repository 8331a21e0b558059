using System.Text;
using System.Text.RegularExpressions;
using Cornerwright.Garage.Files;
using Xunit.Abstractions;

namespace Cornerwright.Garage.Tests.Files;

public sealed class CarFileFuzzTests(ITestOutputHelper output)
{
    private const int Seed = 20260503;
    private const int Damaged = 70_000;
    private const int DamagedBytes = 10_000;
    private const int Ambiguous = 20_000;

    private static readonly Regex Line = new("^ *\"\\w+\": (\".*\"|[\\d.]+|true|\\{ .* \\}|\\[\".*\"\\]),?$", RegexOptions.Compiled);
    private static readonly Regex TypedUnit = new("\"(?<number>[\\d.]+) (?<unit>mm|kg|N/mm|N)\"", RegexOptions.Compiled);

    [Fact]
    public void Damaged_files_are_refused_with_reasons_or_read_without_doubt()
    {
        var random = new Random(Seed);
        var mutations = new Mutations(random);
        byte[] bytes = Encoding.UTF8.GetBytes(SmallCar.Text);
        int read = 0;
        for (int i = 0; i < Damaged + DamagedBytes; i++)
        {
            object input = i < Damaged ? mutations.Of(SmallCar.Text) : mutations.OfBytes(bytes);
            var result = input is string text ? CarFile.Read(text) : CarFile.Read((byte[])input);
            if (!result.Ok)
            {
                Assert.All(result.Problems, x =>
                    Assert.True(x.Field.Length > 0 && x.Allowed.Length > 0 && x.Cure.Length > 0, x.ToString()));
                continue;
            }

            read++;
            string again = CarFile.Write(result.Value);
            Assert.Equal(again, CarFile.Write(CarFile.Read(again).Value));
        }

        output.WriteLine($"seed {Seed}: {Damaged + DamagedBytes} inputs, {read} still read");
        Assert.InRange(read, 1, (Damaged + DamagedBytes) / 2);
    }

    [Fact]
    public void A_field_twice_an_unknown_field_or_a_wrong_unit_is_never_read()
    {
        var random = new Random(Seed + 1);
        string[] lines = SmallCar.Text.Split('\n');
        int[] fields = [.. Enumerable.Range(0, lines.Length).Where(i => Line.IsMatch(lines[i]))];
        var units = TypedUnit.Matches(SmallCar.Text);
        Assert.True(fields.Length > 20 && units.Count > 6);
        for (int i = 0; i < Ambiguous; i++)
        {
            int at = fields[random.Next(fields.Length)];
            string field = lines[at].TrimEnd(',');
            string name = field.Split('"')[1];
            string text = (i % 4) switch
            {
                0 => Insert(lines, at, field + ","),
                1 => Insert(lines, at, $"\"{RandomName(random)}\": {field[(field.IndexOf(':', StringComparison.Ordinal) + 1)..]},"),
                2 => WrongUnit(units[random.Next(units.Count)], random),
                _ => Insert(lines, at, $"\"{Spelled(name, random)}\":{field[(field.IndexOf(':', StringComparison.Ordinal) + 1)..]},"),
            };
            Assert.False(CarFile.Read(text).Ok, $"seed {Seed + 1}, input {i}:\n{text}");
        }
    }

    private static string Insert(string[] lines, int at, string line) => string.Join('\n', [.. lines[..at], line, .. lines[at..]]);

    private static string RandomName(Random random) =>
        string.Concat(Enumerable.Range(0, random.Next(1, 6)).Select(_ => "qxzQ\u00e9"[random.Next(5)]));

    /// <summary>The same name with a letter escaped: a field twice all the same.</summary>
    private static string Spelled(string name, Random random)
    {
        int at = random.Next(name.Length);
        return $"{name[..at]}\\u{(int)name[at]:X4}{name[(at + 1)..]}";
    }

    private static string WrongUnit(Match typed, Random random)
    {
        string[] wrong = ["parsec", "", "mmm", "Hz", "N·m", "°", "kg/h", "m²", "m m"];
        string text = $"\"{typed.Groups["number"].Value} {wrong[random.Next(wrong.Length)]}\"";
        return SmallCar.Text.Remove(typed.Index, typed.Length).Insert(typed.Index, text);
    }
}
