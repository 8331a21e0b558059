using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Tests.Files;

public sealed class HardpointBlockTests
{
    private static readonly Unit Mm = Units.Find("mm", Dimension.Length)!;

    private static Garage.Problems.Checked<HardpointTable> Read(string text, HardpointTable? onto = null) =>
        HardpointBlock.Read(onto ?? new(), text, Mm, ReadingSource.Tape);

    [Fact]
    public void A_block_from_a_spreadsheet_becomes_points_and_the_others_stay()
    {
        var before = new HardpointTable { TieOuter = new BodyPoint { X = Reading.Of("1 mm", Dimension.Length) } };
        var table = Read("Point\tX\tY\tZ\tTol\r\nStrut top\t-31\t583.5\t846\t2\r\nlowerBall\t6 mm\t27.5 in\t186\t\r\n", before).Value;
        Assert.Equal(0.5835, table.StrutTop!.Y!.Si, 1e-12);
        Assert.Equal(0.001, table.StrutTop.Z!.StandardDeviation, 1e-12);   // ±2 mm read as two sigma
        Assert.Equal(0.6985, table.LowerBall!.Y!.Si, 1e-12);               // 27.5 × 25.4 mm, exact by definition
        Assert.True(table.LowerBall.X!.ToleranceAssumed);
        Assert.Same(before.TieOuter, table.TieOuter);
    }

    [Theory]
    [InlineData("Strut top;1;2;3\nLower ball joint;1,5;2;3", 0.0015)]
    [InlineData("\"Strut top\",1,2,3\nLower ball joint,1.5,2,3", 0.0015)]
    public void Semicolons_and_commas_part_cells_too(string text, double x) => Assert.Equal(x, Read(text).Value.LowerBall!.X!.Si, 1e-12);

    [Theory]
    [InlineData("Strut top\t1\t2o\t3", "row 1, Strut top / Y, left", "2o")]
    [InlineData("Strut top\t1\t2", "row 1, Strut top", "3 cells")]
    [InlineData("Roof\t1\t2\t3", "row 1, name", "Roof")]
    [InlineData("Strut top\t1\t2\t3\nStrut top\t1\t2\t3", "row 2, name", "Strut top")]
    [InlineData("Strut top\t1\t20000\t3", "row 1, Strut top / Y, left", "20000 mm")]
    [InlineData("Strut top\t1\t2\t3\t-1", "row 1, Strut top / tolerance", "-1")]
    [InlineData("Point\tX\tY\tZ", "block", "only headings")]
    [InlineData("", "block", "")]
    public void What_cannot_be_read_is_named_cell_by_cell(string text, string field, string given)
    {
        var problem = Assert.Single(Read(text).Problems);
        Assert.Equal((field, given), (problem.Field, problem.Given));
    }

    [Fact]
    public void Every_wrong_cell_is_listed_at_once() =>
        Assert.Equal(3, Read("Strut top\ta\tb\tc\nTie rod, outer joint\t1\t2\t3").Problems.Count);

    [Fact]
    public void What_is_written_reads_back()
    {
        var table = Read("Strut top\t-31\t583.5\t846\t2\nTie rod, inner joint\t1\t2\t3").Value;
        string text = HardpointBlock.Write(table);
        Assert.Equal(table, Read(text).Value);
    }

    [Fact]
    public void Each_kind_names_what_it_lacks()
    {
        foreach (var kind in Enum.GetValues<LinkageKind>())
        {
            var table = new HardpointTable { Kind = kind, SpringOn = HardpointNeeds.Carriers(kind)[0],
                DamperOn = HardpointNeeds.Carriers(kind)[0] };
            Assert.Equal(HardpointNeeds.Of(table).Count, HardpointNeeds.Missing(table).Count);
            string block = string.Concat(HardpointNeeds.Of(table).Select((f, i) => $"{f.Label}\t{i}\t{i}\t{i}\n"));
            Assert.Empty(HardpointNeeds.Missing(Read(block, table).Value));
        }

        Assert.Contains("Strut top", HardpointNeeds.Missing(new HardpointTable()));
        Assert.DoesNotContain("Strut top", HardpointNeeds.Missing(new HardpointTable { Kind = LinkageKind.FiveLink }));
    }

    [Fact]
    public void Two_tables_cannot_mirror_each_other()
    {
        var mirrored = new Corner { Hardpoints = new HardpointTable { Mirrored = true } };
        var car = new Car { FrontLeft = mirrored, FrontRight = mirrored };
        Assert.Equal(2, Consistency.Check(car).Count(p => p.Field.Contains("hardpoints", StringComparison.Ordinal)));
        car = car with { FrontRight = new Corner { Hardpoints = new HardpointTable() } };
        Assert.DoesNotContain(Consistency.Check(car), p => p.Field.Contains("hardpoints", StringComparison.Ordinal));
    }
}
