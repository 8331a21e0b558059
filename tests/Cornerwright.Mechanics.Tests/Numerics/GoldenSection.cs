namespace Cornerwright.Mechanics.Tests.Numerics;

/// <summary>A function of one variable; implement it on a struct or ref struct so that a search allocates nothing.</summary>
public interface IFunctionOfOne
{
    /// <summary>The value at <paramref name="x"/>. Source: the implementer's.</summary>
    double At(double x);
}

/// <summary>Where a function that first falls and then rises is least.</summary>
/// <remarks>
/// One value a step, and the bracket shrinks by 0.618 each time. A value that is NaN counts as larger than any other. Of a function with
/// two valleys it finds one. Rounding limits the place to about √ε of the bracket's scale, where values no longer differ.
/// Source: J. Kiefer, "Sequential minimax search for a maximum", Proc. Amer. Math. Soc. 4 (1953) 502.
/// </remarks>
public static class GoldenSection
{
    /// <summary>(3 - √5)/2: both inner points then serve again in the smaller bracket.</summary>
    private const double Share = 0.38196601125010515;

    /// <summary>Each shrinks the bracket by 0.618; 60 of them by 3e-13.</summary>
    private const int MostSteps = 60;

    /// <summary>Searches a bracket.</summary>
    /// <param name="function">Falls, then rises.</param>
    /// <param name="low">Lower end.</param>
    /// <param name="high">Upper end, above it.</param>
    /// <param name="accuracy">The bracket's width at which to stop, above 0.</param>
    /// <returns>The better of the last two places looked at, and the value there; never an end itself.</returns>
    /// <remarks>Source: Kiefer (1953).</remarks>
    public static (double X, double Value) Least<T>(in T function, double low, double high, double accuracy)
        where T : IFunctionOfOne, allows ref struct
    {
        double a = low + (Share * (high - low)), b = high - (Share * (high - low));
        double fa = function.At(a), fb = function.At(b);
        for (int i = 0; i < MostSteps && high - low > accuracy; i++)
        {
            if (fa < fb || double.IsNaN(fb))
            {
                (high, b, fb) = (b, a, fa);
                a = low + (Share * (high - low));
                fa = function.At(a);
            }
            else
            {
                (low, a, fa) = (a, b, fb);
                b = high - (Share * (high - low));
                fb = function.At(b);
            }
        }

        return fa < fb ? (a, fa) : (b, fb);
    }
}
