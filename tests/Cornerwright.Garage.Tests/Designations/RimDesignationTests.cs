using Cornerwright.Garage.Designations;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Garage.Tests.Designations;

public class RimDesignationTests
{
    [Theory]
    [InlineData("8Jx18 ET35 5x112", "8Jx18 ET35 5x112")]
    [InlineData("8J x 18 ET35 5x112 CB57.1", "8Jx18 ET35 5x112 CB57.1")]
    [InlineData("8.5Jx18 H2 ET 35 5/112", "8.5Jx18 H2 ET35 5x112")]
    [InlineData("8,5Jx18H2 ET-12,5 5×114,3", "8.5Jx18 H2 ET-12.5 5x114.3")]
    [InlineData("18x8 +35 5x114.3", "8x18 ET35 5x114.3")]
    [InlineData("18x8 −12", "8x18 ET-12")]
    [InlineData("8x18 IS35", "8x18 ET35")]
    [InlineData("15 x 6 J", "6Jx15")]
    [InlineData("15x6JJ", "6JJx15")]
    [InlineData("13 x 5.50 B", "5.5Bx13")]
    [InlineData("8 1/2 J x 18", "8.5Jx18")]
    [InlineData("8½Jx18", "8.5Jx18")]
    [InlineData("18 x 8 1/2", "8.5x18")]
    [InlineData("8JX18EH2+ ET35", "8Jx18 EH2+ ET35")]
    [InlineData("8Jx18 EH2 +35", "8Jx18 EH2 ET35")]
    [InlineData("8Jx18 5/112 ET35 Ø 66,6", "8Jx18 ET35 5x112 CB66.6")]
    [InlineData("8Jx18 ET35mm 5 x 112 mm CB 66.6 mm", "8Jx18 ET35 5x112 CB66.6")]
    [InlineData("10Jx14", "10Jx14")]
    [InlineData("10x10", "10x10")]
    [InlineData("15x10 -44", "10x15 ET-44")]
    [InlineData("6.75x19.5", "6.75x19.5")]
    [InlineData("8Jx18 ET0", "8Jx18 ET0")]
    [InlineData("8Jx18 ET-0", "8Jx18 ET0")]
    public void Reads_and_writes_back(string typed, string canonical)
    {
        Checked<RimDesignation> read = RimDesignation.Parse(typed, "rim");
        Assert.True(read.Ok, string.Join("; ", read.Problems));
        Assert.Equal(canonical, read.Value.Write());
        Assert.Equal(typed, read.Value.Typed);
        Assert.Equal(canonical, RimDesignation.Parse(canonical, "rim").Value.Write());
    }

    [Fact]
    public void Every_part_of_a_designation_lands_in_its_field()
    {
        RimDesignation rim = RimDesignation.Parse("8.5Jx18 H2 ET-35.5 5x114.3 CB57.1", "rim").Value;
        Assert.Equal((8.5, 18.0, "J", "H2"), (rim.WidthCode, rim.DiameterCode, rim.Flange, rim.Hump));
        Assert.Equal((-35.5, 5, 114.3, 57.1), (rim.OffsetMm, rim.BoltCount, rim.BoltCircleMm, rim.CentreBoreMm));
        Assert.Equal(0.2159, rim.Width, 1e-12);
        Assert.Equal(0.457, rim.NominalDiameter);
        Assert.Equal(-0.0355, rim.Offset!.Value, 1e-15);
    }

    // Source: ISO 4000-2:2021, clause 4, examples of rim designations.
    [Theory]
    [InlineData("15 x 6 J", 15, 6, "J")]
    [InlineData("13 x 5.50 B", 13, 5.5, "B")]
    public void Designations_of_the_standard(string typed, double diameter, double width, string flange)
    {
        RimDesignation rim = RimDesignation.Parse(typed, "rim").Value;
        Assert.Equal((diameter, width, flange), (rim.DiameterCode, rim.WidthCode, rim.Flange));
    }

    [Theory]
    [InlineData("", "Type the rim")]
    [InlineData("14x10", "10Jx14 or 14Jx10|14Jx10 or 10Jx14")]
    [InlineData("12x13", "could be the diameter")]
    [InlineData("18Jx8", "width code must be")]
    [InlineData("8.3Jx18", "width code must be")]
    [InlineData("8Jx18J", "stands once")]
    [InlineData("8Jx45", "diameter code must be")]
    [InlineData("5x112 8Jx18", "diameter code must be")]
    [InlineData("8J18", "an x between")]
    [InlineData("8Jx18 35", "stands alone")]
    [InlineData("8Jx18 ET", "number must follow")]
    [InlineData("8Jx18 ET350", "0 to 150 mm")]
    [InlineData("8Jx18 ET35 ET40", "offset is given twice")]
    [InlineData("8Jx18 5x112 5x120", "bolt circle is given twice")]
    [InlineData("8Jx18 5x4.5", "not inches")]
    [InlineData("8Jx18 2x112", "number of bolts")]
    [InlineData("8Jx18 5x112,125", "write 112125 or 112.125")]
    [InlineData("8Jx18 ET35,5x112", "put a gap")]
    [InlineData("8Jx18 CB1.5", "30 to 250")]
    [InlineData("8Jx18 chrome", "\"chrome\" is not a mark")]
    public void Refuses_and_says_why(string typed, string cures)
    {
        Problem problem = Assert.Single(RimDesignation.Parse(typed, "rim").Problems);
        Assert.Contains(cures.Split('|'), c => problem.Cure.Contains(c, StringComparison.Ordinal));
        Assert.Equal(typed, problem.Given);
    }
}
