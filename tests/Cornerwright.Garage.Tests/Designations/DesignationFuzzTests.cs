using System.Reflection;
using System.Text.RegularExpressions;
using Cornerwright.Garage.Designations;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Tests.Quantities;
using Xunit.Abstractions;

namespace Cornerwright.Garage.Tests.Designations;

public partial class DesignationFuzzTests(ITestOutputHelper output)
{
    private const int Inputs = 100_000;
    private const int Seed = 72;

    private static readonly string[] Tyres =
    [
        "205/55 R16 91V", "205/55R16", "205/55ZR16", "225/45 R17 94W XL", "P215/65R15 95H", "LT245/75R16 120/116Q", "LT245/75R16/E",
        "31x10.50R15LT 109Q", "31X10.5 R15 LT", "165/80-13 82S", "225/45ZRF17 (94Y) XL", "205/65R16C 107/105T", "HL245/40R19 101Y",
        "225/70R19.5 128/126L M+S", "31x10,50R15LT/C", "205/55/16", "T125/80R17 99M", "225/45R17 94W EXTRA LOAD",
    ];

    private static readonly string[] Rims =
    [
        "8Jx18 ET35 5x112", "8J x 18 ET35 5x112 CB57.1", "8.5Jx18 H2 ET 35 5/112", "18x8 +35 5x114.3", "15 x 6 J", "13 x 5.50 B",
        "8 1/2 J x 18", "8½Jx18", "8,5Jx18H2 ET-12,5 5×114,3", "14x10", "10x10", "15x10 -44", "6Jx15 EH2+ ET38 4x100 CB54,1 mm",
        "6.75x19.5", "8Jx18 5/112 Ø 66,6",
    ];

    private static readonly PropertyInfo[] TyreParts = Parts<TyreDesignation>();
    private static readonly PropertyInfo[] RimParts = Parts<RimDesignation>();

    [Fact]
    public void A_hundred_thousand_bent_tyre_sizes() => Run(Tyres, text => TyreDesignation.Parse(text, "x"), (text, tyre) =>
    {
        string because = $"seed {Seed}: \"{text}\" gave {tyre.Write()}";
        Assert.True(tyre.Typed == text && AmbiguityOracle.Offence(Relevant(text)) is null, because);
        Checked<TyreDesignation> again = TyreDesignation.Parse(tyre.Write(), "x");
        Assert.True(again.Ok && again.Value.Write() == tyre.Write() && Same(TyreParts, tyre, again.Value), because);
        double[] sizes =
        [
            tyre.OuterDiameter, tyre.SectionHeight, tyre.NominalWidth, tyre.SectionWidthOn(0.2), tyre.GreatestWidthOn(0.2),
            tyre.LeastOuterDiameter, tyre.GreatestOuterDiameter, tyre.RollingCircumference, tyre.VerticalStiffness(220_000),
            tyre.MeasuringRimCode, tyre.PermittedRimCodes.Least, tyre.GreatestLoad ?? 1,
        ];
        Assert.All(sizes, size => Assert.True(double.IsFinite(size) && size > 0, because));
    });

    [Fact]
    public void A_hundred_thousand_bent_rims() => Run(Rims, text => RimDesignation.Parse(text, "x"), (text, rim) =>
    {
        string because = $"seed {Seed}: \"{text}\" gave {rim.Write()}";
        Assert.True(rim.Typed == text && AmbiguityOracle.Offence(Relevant(text)) is null, because);
        Checked<RimDesignation> again = RimDesignation.Parse(rim.Write(), "x");
        Assert.True(again.Ok && again.Value.Write() == rim.Write() && Same(RimParts, rim, again.Value), because);
        Assert.True(double.IsFinite(rim.Width) && rim.NominalDiameter > 0, because);

        // Without a flange letter, two numbers that could each be the diameter must have been equal.
        bool bothWays = rim.WidthCode >= RimCodes.SmallestDiameterCode && RimCodes.IsDiameterCode(rim.WidthCode)
            && rim.DiameterCode <= RimCodes.LargestWidthCode;
        Assert.True(rim.Flange is not null || !bothWays || rim.WidthCode == rim.DiameterCode, because);
    });

    private void Run<T>(string[] corpus, Func<string, Checked<T>> parse, Action<string, T> judge)
        where T : notnull
    {
        var mutator = new TextMutator(Seed, corpus);
        int accepted = 0;
        for (int i = 0; i < Inputs; i++)
        {
            string text = mutator.Make();
            Checked<T> read = parse(text);
            if (read.Try(out T? value))
            {
                accepted++;
                judge(text, value);
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

    /// <summary>Without the "2" of a hump and the like: letters directly before a digit keep it from being a decimal.</summary>
    private static string Relevant(string text) => Hump().Replace(text, " ");

    private static bool Same(PropertyInfo[] parts, object one, object other) =>
        Array.TrueForAll(parts, p => Equals(p.GetValue(one), p.GetValue(other)));

    private static PropertyInfo[] Parts<T>() =>
        [.. typeof(T).GetProperties().Where(p => p.Name != nameof(TyreDesignation.Typed) && p.GetIndexParameters().Length == 0)];

    [GeneratedRegex("E?H2", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Hump();
}
