namespace Cornerwright.Mechanics.Numerics;

/// <summary>How far from 0 something holds without a break.</summary>
/// <remarks>
/// Marches in even steps towards a limit and halves the first step that fails. A gap narrower than a step can be missed; what is found is
/// a place where it holds, less than the accuracy before one where it does not. Source: bisection.
/// </remarks>
internal static class LastGood
{
    private const int MostHalvings = 60;

    /// <summary>The last place on the way from 0 at which it holds.</summary>
    /// <param name="holds">Asked outward from 0; at 0 itself it is taken to hold.</param>
    /// <param name="limit">Where to stop looking, either sign.</param>
    /// <param name="steps">On the way there, at least 1.</param>
    /// <param name="accuracy">In the unit of the limit, above 0.</param>
    public static double Before(Func<double, bool> holds, double limit, int steps, double accuracy)
    {
        double good = 0;
        for (int i = 1; i <= steps; i++)
        {
            double bad = limit * i / steps;
            if (holds(bad))
            {
                good = bad;
                continue;
            }

            for (int k = 0; k < MostHalvings && Math.Abs(bad - good) > accuracy; k++)
            {
                double middle = 0.5 * (good + bad);
                (good, bad) = holds(middle) ? (middle, bad) : (good, middle);
            }

            break;
        }

        return good;
    }
}
