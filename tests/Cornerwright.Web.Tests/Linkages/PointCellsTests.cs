using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Web.Components.Linkages;

namespace Cornerwright.Web.Tests.Linkages;

public class PointCellsTests
{
    private static readonly IReadOnlyList<FieldShape> Rows = HardpointNeeds.Of(new HardpointTable());

    private static FieldShape Row(string property) => Rows.Single(f => f.PropertyName == property);

    [Fact]
    public void A_bare_number_is_millimetres_a_unit_counts_and_both_stand_as_typed()
    {
        var ball = Row(nameof(HardpointTable.LowerBall));
        var table = PointCells.Type(new HardpointTable(), ball, 0, "6.25", "front left").Value;
        table = PointCells.Type(table, ball, 1, "27 3/4 in", "front left").Value;
        Assert.Equal(0.00625, table.LowerBall!.X!.Si, 1e-12);
        Assert.Equal(27.75 * 0.0254, table.LowerBall.Y!.Si, 1e-12);
        Assert.Equal(("6.25", "27 3/4 in", ""),
            (PointCells.Text(table, ball, 0), PointCells.Text(table, ball, 1), PointCells.Text(table, ball, 2)));
        Assert.Equal("2", PointCells.Assumed(table, ball));
        table = PointCells.Type(table, ball, PointCells.ToleranceColumn, "0.5", "front left").Value;
        Assert.Equal(0.00025, table.LowerBall!.Y!.StandardDeviation, 1e-12);
        Assert.Equal("0.5", PointCells.Text(table, ball, PointCells.ToleranceColumn));
        table = PointCells.Type(PointCells.Type(table, ball, 0, "", "").Value, ball, 1, " ", "").Value;
        Assert.Null(table.LowerBall);
    }

    [Theory]
    [InlineData(0, "7o3", "Lower ball joint / X, forward")]
    [InlineData(1, "70300", "Lower ball joint / Y, left")]
    [InlineData(2, "5 kg", "Lower ball joint / Z, up")]
    [InlineData(3, "2", "Lower ball joint / ± each")]
    public void What_cannot_be_read_is_named_with_its_cell_and_changes_nothing(int column, string text, string field)
    {
        var typed = PointCells.Type(new HardpointTable(), Row(nameof(HardpointTable.LowerBall)), column, text, "front left");
        var problem = Assert.Single(typed.Problems);
        Assert.StartsWith(field, problem.Field, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Cure);
    }

    [Fact]
    public void A_block_of_numbers_goes_down_and_to_the_right_of_the_cell_it_is_pasted_in()
    {
        var pasted = PointCells.Paste(new HardpointTable(), Rows, 1, 1, "371\t214\n388\t208.5\r\n").Value;
        Assert.Equal((0.371, 0.214), (pasted.LowerFrontInner!.Y!.Si, pasted.LowerFrontInner.Z!.Si));
        Assert.Equal((0.388, 0.2085), (pasted.LowerRearInner!.Y!.Si, pasted.LowerRearInner.Z!.Si));
        Assert.Null(pasted.LowerFrontInner.X);
        Assert.Null(pasted.HubFace);
    }

    [Fact]
    public void A_block_with_names_is_taken_by_name_wherever_the_cursor_stands() =>
        Assert.Equal(LinkageCars.Table, PointCells.Paste(new HardpointTable(), Rows, 3, 2, LinkageCars.Block).Value);

    [Theory]
    [InlineData(0, 3, "1\t2")]
    [InlineData(0, 0, "1\t2\t3\t4\t5")]
    [InlineData(7, 0, "1\n2\n3")]
    [InlineData(0, 0, "1\tx\n2\t3")]
    public void A_block_that_does_not_fit_or_holds_one_bad_cell_is_refused_whole(int row, int column, string block)
    {
        var pasted = PointCells.Paste(LinkageCars.Table, Rows, row, column, block);
        Assert.False(pasted.Ok);
        Assert.All(pasted.Problems, p => Assert.NotEmpty(p.Cure));
    }
}
