using Cornerwright.Garage.Designations;

namespace Cornerwright.Garage.Tests.Designations;

public class TyreLoadTests
{
    // Source: UN Regulation No. 30, Annex 4, and No. 54, Annex 4 (from memory).
    [Theory]
    [InlineData(0, 45)]
    [InlineData(60, 250)]
    [InlineData(75, 387)]
    [InlineData(84, 500)]
    [InlineData(91, 615)]
    [InlineData(94, 670)]
    [InlineData(99, 775)]
    [InlineData(108, 1000)]
    [InlineData(119, 1360)]
    [InlineData(126, 1700)]
    [InlineData(150, 3350)]
    public void Load_index(int index, double kilograms)
    {
        Assert.Equal(kilograms, LoadIndex.Kilograms(index));
        Assert.Equal(kilograms * 9.80665, LoadIndex.Newtons(index), 1e-9);
    }

    // The table follows the R80 series of preferred numbers from 45 kg; no row may stray from it by more than its rounding.
    [Fact]
    public void Load_indices_follow_their_series()
    {
        double worst = 0;
        for (int index = LoadIndex.Least; index <= LoadIndex.Greatest; index++)
        {
            double series = 45 * Math.Pow(10, index / 80.0);
            worst = Math.Max(worst, Math.Abs((LoadIndex.Kilograms(index) / series) - 1));
            Assert.True(index == 0 || LoadIndex.Kilograms(index) > LoadIndex.Kilograms(index - 1));
        }

        Assert.InRange(worst, 0, 0.02);
        Assert.Throws<ArgumentOutOfRangeException>(() => LoadIndex.Kilograms(151));
        Assert.Throws<ArgumentOutOfRangeException>(() => LoadIndex.Kilograms(-1));
    }

    // Source: UN Regulation No. 30, speed category table; A1 to K from No. 54 / ISO 4000-1 (from memory).
    [Theory]
    [InlineData("A8", 40)]
    [InlineData("F", 80)]
    [InlineData("G", 90)]
    [InlineData("K", 110)]
    [InlineData("L", 120)]
    [InlineData("M", 130)]
    [InlineData("N", 140)]
    [InlineData("P", 150)]
    [InlineData("Q", 160)]
    [InlineData("R", 170)]
    [InlineData("S", 180)]
    [InlineData("T", 190)]
    [InlineData("U", 200)]
    [InlineData("H", 210)]
    [InlineData("V", 240)]
    [InlineData("W", 270)]
    [InlineData("Y", 300)]
    public void Speed_symbols(string symbol, double kmh)
    {
        Assert.Equal(kmh, SpeedSymbol.Kmh(symbol));
        Assert.Equal(kmh / 3.6, SpeedSymbol.MetresPerSecond(symbol));
    }

    // Source: UN Regulation No. 30, definition of maximum load rating; Reimpell, Stoll & Betzler, ch. 2
    // (V210, V240, W240 looked up, the others from memory).
    [Theory]
    [InlineData("V", 210, 1.00)]
    [InlineData("V", 215, 0.985)]
    [InlineData("V", 230, 0.94)]
    [InlineData("V", 240, 0.91)]
    [InlineData("W", 240, 1.00)]
    [InlineData("W", 260, 0.90)]
    [InlineData("W", 270, 0.85)]
    [InlineData("Y", 270, 1.00)]
    [InlineData("Y", 280, 0.95)]
    [InlineData("Y", 290, 0.90)]
    [InlineData("Y", 300, 0.85)]
    [InlineData("H", 210, 1.00)]
    public void Load_at_speed(string symbol, double kmh, double share) =>
        Assert.Equal(share, SpeedSymbol.LoadShare(symbol, kmh / 3.6)!.Value, 1e-9);

    [Fact]
    public void Nothing_may_be_carried_beyond_the_symbol()
    {
        Assert.Null(SpeedSymbol.LoadShare("H", 211 / 3.6));
        Assert.Null(SpeedSymbol.LoadShare("Y", 301 / 3.6));
        Assert.Null(SpeedSymbol.LoadShare("O", 10));
        Assert.Null(SpeedSymbol.LoadShare("V", double.NaN));
        Assert.Null(SpeedSymbol.Kmh(null));
    }

    // Source: ETRTO Standards Manual, passenger car tyres, exponent 0.8; load table row LI 91 (partly from memory),
    // printed in steps of 5 kg, so to 2.5 kg.
    [Theory]
    [InlineData(150, 410)]
    [InlineData(160, 430)]
    [InlineData(180, 475)]
    [InlineData(190, 495)]
    [InlineData(210, 535)]
    [InlineData(220, 555)]
    [InlineData(230, 575)]
    [InlineData(240, 595)]
    [InlineData(250, 615)]
    [InlineData(280, 615)]
    public void Load_at_less_pressure(double kilopascals, double kilograms) =>
        Assert.Equal(kilograms, TyreLoad.AtPressure(615, kilopascals * 1000, TyreLoad.ReferencePressure(TyreLoadClass.Standard)), 2.5);

    // Source: load and inflation table of LT235/85R16 load range E (Tire and Rim Association values, printed in a coach owner's
    // specification page), single mounting, lb; the table is rounded and its exponent 0.704.
    [Theory]
    [InlineData(35, 1700)]
    [InlineData(40, 1870)]
    [InlineData(65, 2623)]
    [InlineData(80, 3042)]
    public void A_light_truck_tyre_bears_less_at_less_pressure(double psi, double pounds)
    {
        var inflation = TyreDesignation.Parse("LT235/85R16/E 120/116Q", "tyre").Value.Inflation;
        Assert.Equal(pounds, TyreLoad.AtPressure(3042, psi * 6894.757, inflation.Reference, inflation.Exponent), 0.01 * pounds);
    }

    [Theory]
    [InlineData("215/70R16C 108/106T", 450_000, true)]
    [InlineData("31x10.50R15LT 109Q", 551_580.56, true)]
    [InlineData("T125/70R15 95M", 420_000, true)]
    [InlineData("205/55R16 91V", 250_000, false)]
    public void What_the_marking_leaves_open_is_told(string size, double pascals, bool told)
    {
        var inflation = TyreDesignation.Parse(size, "tyre").Value.Inflation;
        Assert.Equal(pascals, inflation.Reference, 1e-3);
        Assert.Equal(told, inflation.Assumption.Length > 0);
    }

    [Fact]
    public void Pressure_and_load_are_each_others_inverse()
    {
        // Source: as above; 500 kg on a 91 needs 193 kPa; a 94 XL carries 595 kg at 250 kPa.
        Assert.Equal(193_000, TyreLoad.PressureFor(500, 615, 250_000)!.Value, 500.0);
        Assert.Equal(595, TyreLoad.AtPressure(670, 250_000, TyreLoad.ReferencePressure(TyreLoadClass.ExtraLoad)), 2.5);
        for (double load = 100; load < 615; load += 37)
        {
            Assert.Equal(load, TyreLoad.AtPressure(615, TyreLoad.PressureFor(load, 615, 250_000)!.Value, 250_000), 1e-9);
        }

        Assert.Null(TyreLoad.PressureFor(616, 615, 250_000));
        Assert.Null(TyreLoad.PressureFor(double.NaN, 615, 250_000));
    }
}
