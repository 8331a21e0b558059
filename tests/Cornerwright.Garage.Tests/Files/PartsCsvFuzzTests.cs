using System.Text;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Xunit.Abstractions;

namespace Cornerwright.Garage.Tests.Files;

public sealed class PartsCsvFuzzTests(ITestOutputHelper output)
{
    private const int Seed = 20260504;
    private const int Damaged = 70_000;
    private const int DamagedBytes = 10_000;
    private const int Ambiguous = 20_000;

    private static readonly string[] Lists =
    [
        "id,name,price,rate,rate.tolerance,freeLength (mm),ends,note\ns60,Sixty,89.50,60 N/mm,2 N/mm,180,open,\"a, "
            + "\"\"b\"\"\"\ns70,Seventy,,70 N/mm,,200,closed,\n",
        "Id;Name;Rate (N/mm);Free length;Price each\r\nr8;Red;78,5;7 3/4 in;49,90\r\nr9;Blue;80;180 mm;\r\n",
        "id\tname\tinnerDiameter\tinnerDiameter.source\nr8\tRed\t60.5 mm\tcalliper\nr9\tBlue\t2 1/2 in\tgauge\n",
    ];

    private static readonly PartKind Springs = PartKind.Find("springs")!;

    [Fact]
    public void Damaged_lists_are_refused_with_reasons_or_imported_without_doubt()
    {
        var random = new Random(Seed);
        var mutations = new Mutations(random);
        byte[][] bytes = [.. Lists.Select(Encoding.UTF8.GetBytes)];
        int imported = 0;
        for (int i = 0; i < Damaged + DamagedBytes; i++)
        {
            int which = i % Lists.Length;
            var table = i < Damaged ? CsvTable.Read(mutations.Of(Lists[which])) : CsvTable.Read(mutations.OfBytes(bytes[which]));
            var result = table.Ok ? PartsCsv.Import(table.Value, Springs, new PartsShelf()) : null;
            var problems = result?.Problems ?? table.Problems;
            Assert.All(problems, x => Assert.True(x.Field.Length > 0 && x.Allowed.Length > 0 && x.Cure.Length > 0, x.ToString()));
            if (result is not { Ok: true })
            {
                Assert.NotEmpty(problems);
                continue;
            }

            imported++;
            string list = PartsCsvWriter.Write(result.Value, Springs).Text;
            var back = PartsCsv.Import(CsvTable.Read(list).Value, Springs, new PartsShelf());
            Assert.True(back.Ok, $"input {i}: {string.Join("\n", back.Problems)}\n{list}");
            Assert.Equal(list, PartsCsvWriter.Write(back.Value, Springs).Text);
            Assert.True(CarFile.Read(CarFile.Write(new Cars.Car { Id = "a", Name = "A", Parts = result.Value })).Ok, list);
        }

        output.WriteLine($"seed {Seed}: {Damaged + DamagedBytes} inputs, {imported} still imported");
        Assert.InRange(imported, 1, (Damaged + DamagedBytes) * 3 / 4);
    }

    [Fact]
    public void A_row_twice_a_cell_too_many_or_a_wrong_unit_is_never_imported()
    {
        var random = new Random(Seed + 1);
        string[] units = ["parsec", "", "Hz", "N·m", "kg/h", "1,234"];
        for (int i = 0; i < Ambiguous; i++)
        {
            string delimiter = ",;\t"[random.Next(3)].ToString();
            string id = $"s{random.Next(1000)}";
            string good = string.Join(delimiter, id, "Spring", $"{random.Next(10, 200)} N/mm");
            string bad = (i % 4) switch
            {
                0 => good,
                1 => string.Join(delimiter, "other", "Spring", $"{random.Next(10, 200)} {units[random.Next(units.Length)]}"),
                2 => string.Join(delimiter, "other", "Spring", "60 N/mm", ""),
                _ => string.Join(delimiter, "other", "", "60 N/mm"),
            };
            string text = string.Join('\n', [string.Join(delimiter, "id", "name", "rate"), .. Shuffled(random, good, bad)]);
            var table = CsvTable.Read(text);
            Assert.False(table.Ok && PartsCsv.Import(table.Value, Springs, new PartsShelf()).Ok, $"seed {Seed + 1}, input {i}:\n{text}");
        }
    }

    private static string[] Shuffled(Random random, params string[] rows)
    {
        random.Shuffle(rows);
        return rows;
    }
}
