using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Tests.Numerics;

/// <summary>Where something holds, and which piece of a table a number lies in.</summary>
public class SearchTests
{
    [Theory]
    [InlineData(0.3, 0.1234567, 1e-9)]
    [InlineData(-0.3, -0.2999, 1e-6)]
    [InlineData(0.3, 1e-7, 1e-9)]
    public void The_last_place_is_found_on_the_holding_side(double limit, double edge, double accuracy)
    {
        double found = LastGood.Before(x => Math.Abs(x) <= Math.Abs(edge), limit, 40, accuracy);
        Assert.InRange(Math.Abs(edge) - Math.Abs(found), 0, accuracy);
        Assert.True(found * edge >= 0);
    }

    [Fact]
    public void All_the_way_gives_the_limit_and_nowhere_gives_nothing()
    {
        Assert.Equal(0.3, LastGood.Before(_ => true, 0.3, 40, 1e-6));
        Assert.InRange(LastGood.Before(_ => false, 0.3, 40, 1e-6), 0, 0);
        Assert.Equal(0, LastGood.Before(_ => true, 0, 40, 1e-6));
    }

    // The march stops at the first break; what holds again beyond it is out of reach.
    [Fact]
    public void What_holds_beyond_a_break_does_not_count()
    {
        Assert.Equal(0.1, LastGood.Before(x => x is <= 0.1 or >= 0.2, 0.3, 30, 1e-9), 1e-8);

        // Twenty steps of 0.05 jump over a break of 0.03: said in its documentation.
        Assert.Equal(1, LastGood.Before(x => x is <= 0.51 or >= 0.54, 1, 20, 1e-9));
    }

    [Fact]
    public void An_accuracy_below_rounding_ends_too()
    {
        int asked = 0;
        double found = LastGood.Before(x => asked++ >= 0 && x <= 1 / 3.0, 1, 1, 0);
        Assert.Equal(1 / 3.0, found, 1e-15);
        Assert.InRange(asked, 50, 70);
    }

    [Theory]
    [InlineData(-1, 0)]
    [InlineData(0, 0)]
    [InlineData(0.9, 0)]
    [InlineData(1, 1)]
    [InlineData(3.9, 1)]
    [InlineData(4, 2)]
    [InlineData(9, 2)]
    [InlineData(99, 2)]
    public void A_number_at_a_knot_lies_in_the_piece_that_begins_there(double x, int piece)
    {
        Assert.Equal(piece, Knots.PieceOf([0, 1, 4, 9], x));
        Assert.Equal(0, Knots.PieceOf([0, 1], x));
    }
}
