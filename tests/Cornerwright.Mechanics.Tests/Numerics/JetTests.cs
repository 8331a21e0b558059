using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Tests.Numerics;

/// <summary>Arithmetic that carries derivatives, against derivatives by hand.</summary>
public class JetTests
{
    private static readonly Jet X = new(1.7, 1, 0);

    public static TheoryData<string> Names => ["sum", "difference", "product", "scaled", "shifted", "inverse", "root", "mixed"];

    [Theory]
    [MemberData(nameof(Names))]
    public void Derivatives_by_hand(string name)
    {
        double x = X.V;
        Jet square = X * X;
        var (found, v, d, dd) = name switch
        {
            "sum" => (square + X, (x * x) + x, (2 * x) + 1, 2),
            "difference" => (square - X, (x * x) - x, (2 * x) - 1, 2),
            "product" => (square * X, x * x * x, 3 * x * x, 6 * x),
            "scaled" => (square * -3, -3 * x * x, -6 * x, -6),
            "shifted" => (square + 0.5, (x * x) + 0.5, 2 * x, 2),
            "inverse" => (square.Inverse(), 1 / (x * x), -2 / (x * x * x), 6 / (x * x * x * x)),
            "root" => (X.Sqrt(), Math.Sqrt(x), 0.5 / Math.Sqrt(x), -0.25 / (x * Math.Sqrt(x))),
            _ => ((square + 1).Sqrt().Inverse(), 1 / Math.Sqrt((x * x) + 1), -x * Math.Pow((x * x) + 1, -1.5),
                (((2 * x * x) - 1) * Math.Pow((x * x) + 1, -2.5))),
        };
        Assert.Equal(v, found.V, 1e-14);
        Assert.Equal(d, found.D, 1e-14);
        Assert.Equal(dd, found.DD, 1e-13);
    }
}
