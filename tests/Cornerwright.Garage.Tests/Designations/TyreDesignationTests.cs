using Cornerwright.Garage.Designations;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Garage.Tests.Designations;

public class TyreDesignationTests
{
    [Theory]
    [InlineData("205/55 R16 91V", "205/55R16 91V")]
    [InlineData("205/55R16", "205/55R16")]
    [InlineData("205/55ZR16", "205/55ZR16")]
    [InlineData("205 / 55 zr 16 (91 y)", "205/55ZR16 (91Y)")]
    [InlineData("225/45 R17 94W XL", "225/45R17 94W XL")]
    [InlineData("225/45R17 94 W extra load", "225/45R17 94W XL")]
    [InlineData("225/45R17 REINF 94W", "225/45R17 94W XL")]
    [InlineData("225/45R17 reinforced", "225/45R17 XL")]
    [InlineData("225/45RF17 94(Y)", "225/45RF17 (94Y)")]
    [InlineData("245/40ZRF19 (98Y) XL", "245/40ZRF19 (98Y) XL")]
    [InlineData("HL245/40R19 101Y", "HL245/40R19 101Y")]
    [InlineData("P215/65R15 95H", "P215/65R15 95H")]
    [InlineData("p215/65r15 95h m+s", "P215/65R15 95H M+S")]
    [InlineData("LT245/75R16 120/116Q", "LT245/75R16 120/116Q")]
    [InlineData("LT245/75R16/E", "LT245/75R16/E")]
    [InlineData("LT245/75R16 120/116Q LRE", "LT245/75R16/E 120/116Q")]
    [InlineData("LT 245/75 R16 Load Range E 120/116Q", "LT245/75R16/E 120/116Q")]
    [InlineData("T125/80R17 99M", "T125/80R17 99M")]
    [InlineData("205/65R16C 107/105T", "205/65R16C 107/105T")]
    [InlineData("205/65 R16 C 107/105T", "205/65R16C 107/105T")]
    [InlineData("31x10.50R15LT 109Q", "31x10.50R15LT 109Q")]
    [InlineData("31X10.5 R15 LT", "31x10.50R15LT")]
    [InlineData("31×10,5R15LT/C 109Q", "31x10.50R15LT/C 109Q")]
    [InlineData("32.5x11.50-15", "32.5x11.50D15")]
    [InlineData("165/80-13 82S", "165/80D13 82S")]
    [InlineData("165/80D13 82S", "165/80D13 82S")]
    [InlineData("165/80B13 82S", "165/80B13 82S")]
    [InlineData("225/70R19.5 128/126L", "225/70R19.5 128/126L")]
    [InlineData("145/70R12 69A8", "145/70R12 69A8")]
    public void Reads_and_writes_back(string typed, string canonical)
    {
        Checked<TyreDesignation> read = TyreDesignation.Parse(typed, "tyre");
        Assert.True(read.Ok, string.Join("; ", read.Problems));
        Assert.Equal(canonical, read.Value.Write());
        Assert.Equal(typed, read.Value.Typed);
        Assert.Equal(canonical, TyreDesignation.Parse(canonical, "tyre").Value.Write());
    }

    [Fact]
    public void Every_part_of_a_designation_lands_in_its_field()
    {
        TyreDesignation tyre = TyreDesignation.Parse("LT245/75ZR16/E 120/116Q M+S", "tyre").Value;
        Assert.Equal((TyrePrefix.LT, 245, 75, 16.0), (tyre.Prefix, tyre.WidthMm, tyre.AspectPercent, tyre.RimCode));
        Assert.Equal((true, TyreConstruction.Radial, 'E'), (tyre.Z, tyre.Construction, tyre.LoadRange));
        Assert.Equal(new ServiceDescription(120, 116, "Q", false), tyre.Service);
        Assert.True(tyre.MudAndSnow);
        Assert.Equal((80 * 6894.757, 0.7, ""), (tyre.Inflation.Reference, tyre.Inflation.Exponent, tyre.Inflation.Assumption));

        TyreDesignation flotation = TyreDesignation.Parse("31x10.50R15LT 109Q", "tyre").Value;
        Assert.Equal((31.0, 10.5, true), (flotation.FlotationDiameterIn, flotation.FlotationWidthIn, flotation.LightTruckSuffix));
        Assert.Equal(0.7874, flotation.OuterDiameter, 1e-12);
        Assert.Equal(0.2667, flotation.NominalWidth, 1e-12);
        Assert.Equal((0.7874 - 0.381) / 2, flotation.SectionHeight, 1e-12);

        Assert.Equal(240_000, TyreDesignation.Parse("P215/65R15 95H", "tyre").Value.Inflation.Reference);
        TyreDesignation extra = TyreDesignation.Parse("225/45R17 94W XL", "tyre").Value;
        Assert.Equal(290_000, extra.Inflation.Reference);
        Assert.Equal(670 * 9.80665, extra.GreatestLoad!.Value, 1e-9);
    }

    [Theory]
    [InlineData("", "Type the tyre's size")]
    [InlineData(null, "Type the tyre's size")]
    [InlineData("205/55/16", "construction is missing")]
    [InlineData("205/55 16", "construction is missing")]
    [InlineData("205/5516", "aspect ratio must be")]
    [InlineData("20555R16", "slash between")]
    [InlineData("165R13", "slash between")]
    [InlineData("205/55VR16", "speed symbol stands behind")]
    [InlineData("205/55R", "only")]
    [InlineData("205/55R17.3", "rim diameter must be")]
    [InlineData("205/55R390", "rim diameter must be")]
    [InlineData("1205/55R16", "width must be")]
    [InlineData("20.5/55R16", "width must be")]
    [InlineData("205/5R16", "aspect ratio must be")]
    [InlineData("205/55R16 91", "speed symbol must follow")]
    [InlineData("205/55R16 91O", "speed symbol must follow")]
    [InlineData("205/55R16 V", "not a mark known")]
    [InlineData("205/55R16 E", "not a mark known")]
    [InlineData("205/55R16 191V", "load index runs")]
    [InlineData("205/55R16 91V 94W", "twice")]
    [InlineData("205/55R16 XL XL", "twice")]
    [InlineData("205/55R16 (91V)", "Only Y")]
    [InlineData("205/55R16 (91Y", "written like")]
    [InlineData("LT245/75R16/P", "load range is one letter")]
    [InlineData("P31x10.50R15LT", "no letters before")]
    [InlineData("31x10.505R15LT", "section width behind")]
    [InlineData("31x10,505R15LT", "write 10505 or 10.505")]
    [InlineData("20x10R18", "3 in more")]
    [InlineData("205/55R16 91V sporty", "\"sporty\" is not a mark")]
    public void Refuses_and_says_why(string? typed, string cure)
    {
        Problem problem = Assert.Single(TyreDesignation.Parse(typed, "rear / tyre").Problems);
        Assert.Contains(cure, problem.Cure, StringComparison.Ordinal);
        Assert.Equal("rear / tyre", problem.Field);
        Assert.Equal(typed ?? "", problem.Given);
    }
}
