using Cornerwright.Garage.Designations;

namespace Cornerwright.Garage.Tests.Designations;

public class TyreSizeTests
{
    // Source: UN Regulation No. 30, para 6.1.1.1 (looked up) with the size tables of ETRTO / ISO 4000-1 (from memory).
    // Measuring rim code, design section width mm; table values, so to half a millimetre.
    [Theory]
    [InlineData("165/70R13", 5, 170)]
    [InlineData("175/65R14", 5, 177)]
    [InlineData("185/65R15", 5.5, 189)]
    [InlineData("195/50R15", 6, 201)]
    [InlineData("195/65R15", 6, 201)]
    [InlineData("205/60R15", 6, 209)]
    [InlineData("205/55R16", 6.5, 214)]
    [InlineData("225/50R16", 7, 233)]
    [InlineData("205/50R17", 6.5, 214)]
    [InlineData("215/45R17", 7, 213)]
    [InlineData("225/45R17", 7.5, 225)]
    [InlineData("235/40R18", 8.5, 241)]
    [InlineData("255/35R18", 9, 260)]
    [InlineData("265/35R18", 9.5, 271)]
    [InlineData("245/35R19", 8.5, 248)]
    [InlineData("275/35R19", 9.5, 278)]
    public void Section_width_on_the_measuring_rim(string size, double rimCode, double widthMm)
    {
        TyreDesignation tyre = TyreDesignation.Parse(size, "tyre").Value;
        Assert.Equal(rimCode, tyre.MeasuringRimCode);
        Assert.Equal(widthMm / 1000, tyre.SectionWidthOn(RimCodes.Width(rimCode)), 5e-4);
        Assert.Equal(widthMm / 1000, TyreSize.DesignSectionWidth(tyre.NominalWidth, tyre.AspectPercent), 5e-4);
    }

    // Source: UN Regulation No. 30, para 6.1.2; sizes from memory.
    [Theory]
    [InlineData("165/70R13", 562)]
    [InlineData("175/65R14", 584)]
    [InlineData("185/65R15", 621)]
    [InlineData("195/50R15", 577)]
    [InlineData("195/65R15", 635)]
    [InlineData("205/60R15", 627)]
    [InlineData("205/55R16", 632)]
    [InlineData("225/50R16", 632)]
    [InlineData("205/50R17", 638)] // half a millimetre of section height rounds up: 102.5 to 103
    [InlineData("235/40R18", 645)]
    [InlineData("245/40R18", 653)]
    [InlineData("245/35R19", 655)]
    [InlineData("275/35R19", 675)]
    public void Outer_diameter(string size, double diameterMm)
    {
        TyreDesignation tyre = TyreDesignation.Parse(size, "tyre").Value;
        Assert.Equal(diameterMm / 1000, tyre.OuterDiameter, 1e-12);
        Assert.Equal(diameterMm / 1000, TyreSize.OuterDiameter(tyre.NominalWidth, tyre.AspectPercent, tyre.RimCode), 1e-12);
    }

    // Exact in decimals: width · aspect / 100, halves up. Independent of doubles, so that no size is lost to their noise.
    [Fact]
    public void Section_height_rounds_halves_up_for_every_size()
    {
        for (int width = 95; width <= 455; width += 5)
        {
            for (int aspect = 20; aspect <= 95; aspect++)
            {
                int expected = ((width * aspect) + 50) / 100;
                Assert.Equal(expected / 1000.0, TyreSize.SectionHeight(width / 1000.0, aspect), 1e-12);
            }
        }
    }

    // Source: UN Regulation No. 30, definition of nominal rim diameter, and No. 54 (22.5 and other half codes); from memory.
    [Theory]
    [InlineData(10, 254)]
    [InlineData(12, 305)]
    [InlineData(13, 330)]
    [InlineData(14, 356)]
    [InlineData(15, 381)]
    [InlineData(16, 406)]
    [InlineData(17, 432)]
    [InlineData(18, 457)]
    [InlineData(19, 483)]
    [InlineData(20, 508)]
    [InlineData(21, 533)]
    [InlineData(22, 559)]
    [InlineData(24, 610)]
    [InlineData(14.5, 368)]
    [InlineData(16.5, 419)]
    [InlineData(17.5, 445)]
    [InlineData(19.5, 495)]
    [InlineData(22.5, 572)]
    public void Nominal_rim_diameter(double code, double millimetres) =>
        Assert.Equal(millimetres / 1000, RimCodes.NominalDiameter(code), 1e-12);

    // Source: ISO 4000-2, Table 4 (partly looked up, partly from memory); the diameter's own tolerance is 0.4 mm.
    [Theory]
    [InlineData(13, 329.4)]
    [InlineData(14, 354.8)]
    [InlineData(15, 380.2)]
    [InlineData(16, 405.6)]
    [InlineData(17, 436.6)]
    [InlineData(18, 462.0)]
    [InlineData(19, 487.4)]
    public void Specified_rim_diameter(double code, double millimetres) =>
        Assert.Equal(millimetres / 1000, RimCodes.SpecifiedDiameter(code)!.Value, 1e-9);

    [Fact]
    public void No_specified_diameter_where_none_is_defined()
    {
        Assert.Null(RimCodes.SpecifiedDiameter(16.5));
        Assert.Null(RimCodes.SpecifiedDiameter(9));
        Assert.Null(RimCodes.SpecifiedDiameter(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => RimCodes.NominalDiameter(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => RimCodes.NominalDiameter(16.25));
    }

    // Source: UN Regulation No. 30, paras 6.1.4.2 and 6.1.5 (from memory); d, H, S in mm.
    [Fact]
    public void Tolerances_of_a_new_tyre()
    {
        Assert.Equal(0.209, TyreSize.GreatestOverallWidth(0.201, TyreConstruction.Radial), 5e-4);
        Assert.Equal(0.21306, TyreSize.GreatestOverallWidth(0.201, TyreConstruction.Diagonal), 1e-9);
        Assert.Equal(0.21704, TyreSize.GreatestOverallWidth(0.201, TyreConstruction.Radial, rimProtector: true), 1e-9);
        Assert.Equal(0.62522, TyreSize.LeastOuterDiameter(0.406, 0.113), 1e-9);
        Assert.Equal(0.64104, TyreSize.GreatestOuterDiameter(0.406, 0.113, TyreConstruction.Radial), 1e-9);
        Assert.Equal(0.65532, TyreSize.GreatestOuterDiameter(0.381, 0.127, TyreConstruction.BiasBelted), 1e-9);
        Assert.Equal(0.64516, TyreSize.GreatestOuterDiameter(0.381, 0.127, TyreConstruction.Radial), 1e-9);
        Assert.Equal(0.64516 * 1.01, TyreSize.GreatestOuterDiameter(0.381, 0.127, TyreConstruction.Radial, snow: true), 1e-9);
    }

    // Source: T. B. Rhyne, Tire Science and Technology 33(3), 2005, final simplified formula; kgf/mm, 0.5 % (partly from memory).
    [Theory]
    [InlineData("195/65R15", 220, 22.46)]
    [InlineData("205/55R16", 240, 25.21)]
    [InlineData("235/40R18", 250, 28.87)]
    public void Vertical_stiffness(string size, double kilopascals, double kilogramsPerMillimetre)
    {
        double rate = TyreDesignation.Parse(size, "tyre").Value.VerticalStiffness(kilopascals * 1000);
        Assert.Equal(kilogramsPerMillimetre, rate / 9806.65, kilogramsPerMillimetre * 0.005);
    }

    // Source: ETRTO Standards Manual, general formulae, factor 3.05 (from memory); printed to the millimetre.
    [Theory]
    [InlineData("195/65R15", 1937)]
    [InlineData("225/45R17", 1934)]
    public void Rolling_circumference(string size, double millimetres) =>
        Assert.Equal(millimetres / 1000, TyreDesignation.Parse(size, "tyre").Value.RollingCircumference, 1e-3);

    // Common practice, no source: ranges as recalled from makers' tables.
    [Theory]
    [InlineData("165/70R13", 4.5, 6)]
    [InlineData("175/65R14", 5, 6)]
    [InlineData("185/65R15", 5, 6.5)]
    [InlineData("195/65R15", 5.5, 7)]
    [InlineData("195/50R15", 5.5, 7)]
    [InlineData("205/55R16", 5.5, 7.5)]
    [InlineData("225/50R16", 6, 8)]
    [InlineData("215/45R17", 7, 8)]
    [InlineData("225/45R17", 7, 8.5)]
    [InlineData("235/40R18", 8, 9.5)]
    [InlineData("245/40R18", 8, 9.5)]
    [InlineData("255/35R18", 8.5, 10)]
    [InlineData("265/35R18", 9, 10.5)]
    [InlineData("275/35R19", 9, 11)]
    public void Permitted_rim_widths(string size, double least, double greatest)
    {
        TyreDesignation tyre = TyreDesignation.Parse(size, "tyre").Value;
        Assert.Equal((least, greatest), tyre.PermittedRimCodes);
        Assert.InRange(tyre.MeasuringRimCode, least, greatest);
    }

    [Fact]
    public void Half_an_inch_of_rim_is_five_millimetres_of_tyre()
    {
        // Source: UN Regulation No. 30, para 6.1.1.1, K = 0.4 (looked up).
        Assert.Equal(0.00508, TyreSize.SectionWidthOnOtherRim(0.201, 0.1524, 0.1651) - 0.201, 1e-9);
        TyreDesignation flotation = TyreDesignation.Parse("31x10.50R15LT", "tyre").Value;
        double measuring = RimCodes.Width(flotation.MeasuringRimCode);
        Assert.Equal(0.2667, flotation.SectionWidthOn(measuring), 1e-12);
        Assert.Equal(0.2667 + 0.00508, flotation.SectionWidthOn(measuring + 0.0127), 1e-12);
    }

    // Source: UN Regulation No. 54, Annex 5, Part II, and makers' tables (from memory): measuring rim, then permitted rims.
    [Theory]
    [InlineData("30x9.50R15LT", 7.5, 6.5, 8.5)]
    [InlineData("31x10.50R15LT", 8.5, 7, 9)]
    [InlineData("32x11.50R15LT", 9, 8, 10)]
    [InlineData("33x12.50R15LT", 10, 8.5, 11)]
    public void Rims_of_flotation_sizes(string size, double measuring, double least, double greatest)
    {
        TyreDesignation tyre = TyreDesignation.Parse(size, "tyre").Value;
        Assert.Equal(measuring, tyre.MeasuringRimCode);
        Assert.Equal((least, greatest), tyre.PermittedRimCodes);
    }
}
