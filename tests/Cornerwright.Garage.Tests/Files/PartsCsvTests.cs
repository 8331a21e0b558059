using System.Text;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Tests.Files;

public sealed class PartsCsvTests
{
    private static readonly PartKind Springs = PartKind.Find("springs")!;

    [Theory]
    [InlineData("Id,Name,Rate\na,A,60 N/mm", ',')]
    [InlineData("Id;Name;Rate, N/mm\na;A;60 N/mm", ';')]
    [InlineData("Id\tName, long\tRate\na\tA\t60 N/mm", '\t')]
    [InlineData("\"Id;;;;\",Name\na,A", ',')]
    [InlineData("Id\na", ',')]
    public void The_delimiter_is_the_one_that_stands_most_often_in_the_first_line(string text, char delimiter) =>
        Assert.Equal(delimiter, CsvTable.Read(text).Value.Delimiter);

    [Fact]
    public void Two_delimiters_equally_often_are_not_guessed() =>
        Assert.Equal(
            "line 1: \"Id;Name,Rate\" is not accepted. Allowed: columns parted by commas, by semicolons or by tabs. Two of them stand "
                + "equally often in the first line: put names that contain one into quotes.",
            Assert.Single(CsvTable.Read("Id;Name,Rate\na;A,b").Problems).ToString());

    [Fact]
    public void Quotes_line_ends_and_a_byte_order_mark_are_as_the_standard_has_them()
    {
        // RFC 4180, section 2, points 2 and 5 to 7; the mark is not in it but every spreadsheet writes it.
        byte[] file = [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes("Id,Note\r\na,\"one, \"\"two\"\"\r\nthree\"\r\n\r\nb,\"\"\r\n")];
        var table = CsvTable.Read(file).Value;
        Assert.Equal(["Id", "Note"], table.Header);
        Assert.Equal([2, 5], table.Rows.Select(x => x.Line));
        Assert.Equal(["a", "one, \"two\"\r\nthree"], table.Rows[0].Cells);
        Assert.Equal(["b", ""], table.Rows[1].Cells);
    }

    [Fact]
    public void Every_broken_line_is_told()
    {
        var problems = CsvTable.Read("Id,Name\na,A,extra\nb,17\" wheel \"x\"\"\nc\nd,D").Problems;
        Assert.Equal(["line 2", "line 3", "line 4"], problems.Select(x => x.Field));
        Assert.Equal("Look for a missing or additional delimiter, or put cells that contain one into quotes.", problems[0].Cure);
        Assert.Equal("Write a quote inside a cell as \"\", with the whole cell in quotes.", problems[1].Cure);
        Assert.Equal("1 cells", problems[2].Given);
        Assert.Equal("line 3", Assert.Single(CsvTable.Read("Id,Name\na,A\nb,\"B\nc,C").Problems).Field);
        Assert.Equal("Save the list again as \"CSV UTF-8\".",
            Assert.Single(CsvTable.Read(Encoding.Latin1.GetBytes("Id\n\u00fc")).Problems).Cure);
        Assert.StartsWith("This is not a CSV file", Assert.Single(CsvTable.Read("Id\na\0").Problems).Cure, StringComparison.Ordinal);
        Assert.Equal("Put the names of the columns into the first line and the parts below.",
            Assert.Single(CsvTable.Read("Id,Name\n\n").Problems).Cure);
        Assert.Equal("Split the list.", Assert.Single(CsvTable.Read("Id\n" + string.Concat(Enumerable.Repeat("a\n", 2001))).Problems).Cure);
    }

    [Fact]
    public void Columns_are_guessed_by_name_label_and_unit_and_left_out_when_in_doubt()
    {
        string[] header = ["ID", "name", "Rate (lbf/in)", "free length [in]", "freeLength.tolerance", "Solid Height (N)", "Price each",
            "Ends", "Ends", "Colour", "Force curve"];
        var choices = ColumnChoice.Guess(header, Springs);
        Assert.Equal(
            ["id Value ", "name Value ", "rate Value lbf/in", "freeLength Value in", "freeLength Tolerance ", "- Value ", "price Value ",
                "- Value ", "- Value ", "- Value ", "- Value "],
            choices.Select(x => $"{x.Field?.Name ?? "-"} {x.Piece} {x.DefaultUnit?.Symbol}"));
    }

    [Fact]
    public void A_list_with_semicolons_and_decimal_commas_becomes_parts()
    {
        var table = CsvTable.Read(
            "Id;Name;Rate (N/mm);Free length;Price;Ends\nr8;Red;78,5;7 3/4 in;49,90;closed and ground\nr9;Blue;80;180 mm;;open\n").Value;
        var columns = ColumnChoice.Guess(table.Header, Springs).ToArray();
        columns[4] = new ColumnChoice(Springs.Shape.ByName["price"]);
        var springs = PartsCsv.Import(table, Springs, columns, new PartsShelf()).Value.Springs;
        Assert.Equal(78_500, springs[0].Rate!.Si, 1e-9);
        Assert.Equal("78,5", springs[0].Rate!.Typed);
        Assert.Equal(0.19685, springs[0].FreeLength!.Si, 1e-12);
        Assert.Equal(49.90m, springs[0].Price);
        Assert.Null(springs[1].Price);
        Assert.Equal((SpringEnds.ClosedAndGround, SpringEnds.Open), (springs[0].Ends, springs[1].Ends));
        Assert.All(springs, x => Assert.Equal(ReadingSource.DataSheet, x.Rate!.Source));
    }

    [Fact]
    public void Every_error_of_every_row_is_told_and_nothing_is_imported()
    {
        const string List = """
            Id,Name,Rate,Free length (mm),Solid height (mm),Price each,Already owned,Ends
            a,A,60 mm,180,60,10,yes,open
            a,B,60,180,60,"1,250",no,open
            c,,60 N/mm,5000,60,EUR 5,maybe,round
            taken,D,60 N/mm,60,180,,,
            """;
        var shelf = new PartsShelf { Sheets = [new Sheet { Id = "taken", Name = "T" }] };
        var result = PartsCsv.Import(CsvTable.Read(List).Value, Springs, shelf);
        Assert.False(result.Ok);
        var told = result.Problems.Select(x => $"{x.Field} | {x.Given} | {x.Cure}").ToList();
        Assert.Equal(
            [
                "line 2, column \"Rate\" | 60 mm | \"mm\" measures something else: use one of the units listed.",
                "line 3, column \"Rate\" | 60 | Add the unit behind the number.",
                "line 3, column \"Price each\" | 1,250 | Write 1250 or 1.250.",
                "line 3, column \"Id\" | a | Give it another id: line 2 has it too.",
                "line 4, column \"Name\" |  | Fill it in.",
                "line 4, column \"Free length (mm)\" | 5000 | Check the number and its unit.",
                "line 4, column \"Price each\" | EUR 5 | Write the price as plain digits, without currency and thousands marks.",
                "line 4, column \"Already owned\" | maybe | Write yes, no, or nothing for no.",
                "line 4, column \"Ends\" | round | Choose one of these.",
                "line 5, column \"Id\" | taken | Give it another id: a part on the shelf has it already.",
            ],
            told);
        Assert.Equal("5 to 900 mm", result.Problems[5].Allowed);
        var order =
            PartsCsv.Import(CsvTable.Read("Id,Name,Free length (mm),Solid height (mm)\nd,D,60,180").Value, Springs, new PartsShelf());
        Assert.Equal("line 2 / spring d / solid height and free length: \"180 and 60\" is not accepted. Allowed: the first smaller than "
            + "the second. They may have been exchanged.", Assert.Single(order.Problems).ToString());
    }

    [Fact]
    public void A_choice_of_columns_that_cannot_work_is_told_before_any_row()
    {
        var table = CsvTable.Read("A,B,C,D\n1,2,3,4").Value;
        var rate = Springs.Shape.ByName["rate"];
        ColumnChoice[] columns = [new(rate), new(rate), new(Springs.Shape.ByName["freeLength"], ColumnPiece.Date),
            new(Springs.Shape.ByName["wireDiameter"], DefaultUnit: Units.Newton)];
        var problems = PartsCsv.Import(table, Springs, columns, new PartsShelf()).Problems;
        Assert.Equal(["N", "Rate", "A, B, C, D", "A, B, C, D", "Free length"], problems.Select(x => x.Given));
        Assert.Equal("Choose the column that holds it, or name one \"id\".", problems[2].Cure);
    }

    [Fact]
    public void A_tolerance_beside_an_empty_value_is_told() =>
        Assert.Equal("Fill the value in, or empty this cell.", Assert.Single(PartsCsv.Import(
            CsvTable.Read("id,name,rate,rate.tolerance\na,A,,2 N/mm").Value, Springs, new PartsShelf()).Problems).Cure);

    [Fact]
    public void Designations_are_checked_with_their_line()
    {
        var problems =
            PartsCsv.Import(CsvTable.Read("id,name,designation\nw,W,8Jx").Value, PartKind.Find("Wheels")!, new PartsShelf()).Problems;
        Assert.All(problems, x => Assert.StartsWith("line 2 / wheel w / rim designation", x.Field, StringComparison.Ordinal));
        Assert.NotEmpty(problems);
    }

    [Fact]
    public void A_wheel_bolts_thread_and_class_are_checked_with_their_line()
    {
        var bolts = PartKind.Find("wheelBolts")!;
        var good = PartsCsv.Import(
            CsvTable.Read("id,name,thread,length [mm],seat,class\nb,B,M12x1.5,27.5,cone,10.9").Value, bolts, new PartsShelf()).Value;
        Assert.Equal((BoltSeat.Cone, 0.0275), (good.WheelBolts[0].Seat, good.WheelBolts[0].Length!.Si));
        var problems = PartsCsv.Import(
            CsvTable.Read("id,name,thread,seat,class\nb,B,12x1.5,,10.9\nc,C,M12x1.5,,strong").Value, bolts, new PartsShelf()).Problems;
        Assert.Equal(["line 2 / wheel bolts or nuts b / thread", "line 3 / wheel bolts or nuts c / property class"],
            problems.Select(x => x.Field));
    }

    [Fact]
    public void Imported_parts_go_behind_those_on_the_shelf()
    {
        var shelf = new PartsShelf { Springs = [new Spring { Id = "old", Name = "Old" }] };
        var more = PartsCsv.Import(CsvTable.Read("id,name\nnew,New").Value, Springs, shelf).Value;
        Assert.Equal(["old", "new"], PartsCsv.Put(shelf, more).Springs.Select(x => x.Id));
    }

    [Fact]
    public void Every_kind_of_part_comes_back_from_its_own_list()
    {
        for (int seed = 1; seed <= 40; seed++)
        {
            var random = new RandomRecords(seed);
            foreach (var kind in PartKind.All)
            {
                Part[] parts = [.. Enumerable.Range(0, 4).Select(_ => random.Part(kind.Shape.Type))];
                var shelf = kind.With(new PartsShelf(), parts);
                var written = PartsCsvWriter.Write(shelf, kind);
                var back = PartsCsv.Import(CsvTable.Read(written.Text).Value, kind, new PartsShelf());
                Assert.True(back.Ok, $"seed {seed}: {string.Join("\n", back.Problems)}\n{written.Text}");
                Assert.Equal(written.Text, PartsCsvWriter.Write(back.Value, kind).Text);
                Assert.Equal(Text(WithoutLists(shelf, kind)), Text(back.Value));
                Assert.Equal(parts.Sum(p => kind.Shape.Fields.Count(f =>
                    f.Kind == Garage.Fields.FieldKind.RecordList && ((Array)f.Get(p)!).Length > 0)), written.LeftOut.Count);
            }
        }
    }

    private static string Text(PartsShelf shelf) => CarFile.Write(new Cars.Car { Id = "a", Name = "A", Parts = shelf });

    private static PartsShelf WithoutLists(PartsShelf shelf, PartKind kind)
    {
        var lists = kind.Shape.Fields.Where(f => f.Kind == Garage.Fields.FieldKind.RecordList);
        return kind.With(shelf, [.. kind.On(shelf)
            .Select(p => lists.Aggregate(p, (part, f) => kind.Shape.With(part, f, Array.CreateInstance(f.ElementType, 0))))]);
    }
}
