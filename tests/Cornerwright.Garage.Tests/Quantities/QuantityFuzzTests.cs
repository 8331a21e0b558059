using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Xunit.Abstractions;

namespace Cornerwright.Garage.Tests.Quantities;

public class QuantityFuzzTests(ITestOutputHelper output)
{
    private const int Inputs = 100_000;
    private const int Seed = 71;

    private static readonly string[] Corpus =
    [
        "7 3/4 in", "7.75\"", "7-3/4\"", "5' 3\"", "5 ft 3 in", "5'-3 1/2\"", "8 kgf/mm", "8 kg/mm", "450 lb/in", "450 lbs/in",
        "80 N/mm", "25 ft-lb", "25 lbf·ft", "34 Nm", "34 N·m", "34 N m", "2.2 bar", "32 psi", "220 kPa", "1°30'", "1° 30' 15\"",
        "-1.5 deg", "−1.5°", "3/8 in", "187,5 mm", "1 1/2 turns", "1½ turns", "0,250 mm", "1.250 mm", "1,234.5 mm", "1.234,5 mm",
        "1,250 mm", "130 km/h", "80 mph", "45 kg", "3 kN", "95 %", "0.62", "1.6 Hz", "3500 N·s/m", "900 MPa", "0.02 deg/mm",
        "0.001 1/mm", "300 Nm/deg", "6 coils", "1e3 mm", "±0.5 mm", "12345,125 mm", "7 ¾ in.", "0.000001 m", "999999999 mm",
    ];

    [Fact]
    public void A_hundred_thousand_bent_quantities()
    {
        var mutator = new TextMutator(Seed, Corpus);
        Dimension[] dimensions = Enum.GetValues<Dimension>();
        int accepted = 0;
        for (int i = 0; i < Inputs; i++)
        {
            string text = mutator.Make();
            Dimension dimension = mutator.Next(4) == 0 ? dimensions[mutator.Next(dimensions.Length)] : Likely(text);
            bool bare = mutator.Next(5) == 0;
            Checked<Quantity> read = mutator.Next(6) == 0 ? QuantityText.ParseTolerance(text, dimension, "x")
                : bare ? QuantityText.Parse(text, dimension, "x", Units.Of(dimension)[0])
                : QuantityText.Parse(text, dimension, "x");
            accepted += read.Ok ? 1 : 0;
            if (read.Try(out Quantity? quantity))
            {
                Judge(text, dimension, quantity);
            }
            else
            {
                Problem problem = Assert.Single(read.Problems);
                Assert.True(problem.Cure.Length > 5 && problem.Allowed.Length > 5, $"seed {Seed}, input {i}: {text}");
            }
        }

        output.WriteLine($"seed {Seed}: {accepted} of {Inputs} accepted");
        Assert.InRange(accepted, Inputs / 10, Inputs * 9 / 10);
    }

    private static void Judge(string text, Dimension dimension, Quantity quantity)
    {
        string because = $"seed {Seed}: \"{text}\" as {dimension} gave {quantity.Understood}";
        Assert.True(double.IsFinite(quantity.Si) && double.IsFinite(quantity.Number), because);
        Assert.True(quantity.Typed == text, because);
        Assert.True(quantity.Dimension == dimension, because);
        Assert.True(AmbiguityOracle.Offence(text) is null, because);
        Checked<Quantity> again = QuantityText.Parse(quantity.Understood, dimension, "x");
        Assert.True(again.Ok && again.Value.Si == quantity.Si && ReferenceEquals(again.Value.Unit, quantity.Unit), because);
    }

    [Fact]
    public void Plain_decimals_have_the_value_their_digits_say()
    {
        // A second reading of the number, by decimal arithmetic.
        var random = new Random(Seed);
        for (int i = 0; i < 20_000; i++)
        {
            decimal number = random.NextInt64(0, 10_000_000_000) / (decimal)Math.Pow(10, random.Next(0, 8));
            string typed = number.ToString(System.Globalization.CultureInfo.InvariantCulture);
            Assert.Equal((double)number, QuantityText.Parse(typed + " mm", Dimension.Length, "x").Value.Number);
            Checked<Quantity> comma = QuantityText.Parse(typed.Replace('.', ',') + " mm", Dimension.Length, "x");
            Assert.Equal(AmbiguityOracle.Offence(typed.Replace('.', ',')) is null, comma.Ok);
            Assert.True(!comma.Ok || comma.Value.Number == (double)number, typed);
        }
    }

    [Fact]
    public void Too_long_a_text_is_refused_and_shown_cut()
    {
        Problem problem = Assert.Single(QuantityText.Parse(new string('1', 1_000_000) + " mm", Dimension.Length, "x").Problems);
        Assert.Equal(65, problem.Given.Length);
        Assert.Contains("at most 64", problem.Cure, StringComparison.Ordinal);
    }

    private static Dimension Likely(string text)
    {
        foreach (Dimension dimension in Enum.GetValues<Dimension>())
        {
            if (QuantityText.Parse(text, dimension, "x").Ok)
            {
                return dimension;
            }
        }

        return Dimension.Length;
    }
}
