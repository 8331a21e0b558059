namespace Cornerwright.Mechanics.Clearance;

/// <summary>A gap as a function of wheel travel (m); implement it on a struct or ref struct so that the sweep allocates nothing.</summary>
public interface IGapOfTravel
{
    /// <summary>Gap, m, negative when overlapping, at a travel (m, bump positive). Source: the implementer's.</summary>
    double GapAt(double travel);
}

/// <summary>The least gap over a range of travel.</summary>
/// <param name="Gap">m.</param>
/// <param name="Travel">Where it is, m.</param>
/// <param name="Evaluations">Gaps computed.</param>
/// <param name="LowerBound">No travel in the range has a smaller gap than this, m; minus infinity when no Lipschitz number was given.</param>
/// <param name="Complete">False when a gap was not a number or the limit of evaluations was met: Gap is then the least seen.</param>
/// <remarks>The default has no meaning. Source: docs/theory/clearance.md §8.</remarks>
public readonly record struct SweepLeast(double Gap, double Travel, int Evaluations, double LowerBound, bool Complete);

/// <summary>Least gap over travel by sampling, refining each valley and, if asked, a Lipschitz proof.</summary>
/// <remarks>Source: docs/theory/clearance.md §8; Piyavskii, USSR Comput. Math. Math. Phys. 12 (1972) 57; golden section, Kiefer (1953).</remarks>
public static class TravelSweep
{
    private const int MostSamples = 257;
    private const int EvaluationLimit = 4000;
    private const double GoldenShare = 0.38196601125010515;

    /// <summary>Least gap over [droop, bump].</summary>
    /// <param name="gap">The gap as a function of travel.</param>
    /// <param name="droop">Lower end, m.</param>
    /// <param name="bump">Upper end, m.</param>
    /// <param name="samples">Even samples to start with, 2 to 257; 17 does for smooth motion.</param>
    /// <param name="tolerance">m; the refinement stops when a valley cannot be deeper by more.</param>
    /// <param name="lipschitz">Most change of gap per travel (m/m); 0 for no proof. For a wheel moving straight up it is 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Range, samples or tolerance out of bounds: a caller's bug.</exception>
    /// <remarks>Source: docs/theory/clearance.md §8.</remarks>
    public static SweepLeast Least<T>(ref T gap, double droop, double bump, int samples = 17, double tolerance = 1e-5, double lipschitz = 0)
        where T : IGapOfTravel, allows ref struct
    {
        if (!(bump >= droop) || !double.IsFinite(bump - droop) || samples is < 2 or > MostSamples || !(tolerance > 0) || !(lipschitz >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(droop), "A sweep needs droop up to bump, 2 to 257 samples, a tolerance and a Lipschitz number of at least 0.");
        }

        // Even samples, and the least of them.
        Span<double> f = stackalloc double[samples];
        double h = (bump - droop) / (samples - 1);
        bool complete = true;
        double best = double.PositiveInfinity, at = droop;
        for (int i = 0; i < samples; i++)
        {
            f[i] = gap.GapAt(droop + (i * h));
            complete &= double.IsFinite(f[i]);
            if (f[i] < best)
            {
                (best, at) = (f[i], droop + (i * h));
            }
        }

        int used = samples;
        if (!(h > 0))
        {
            return new(best, at, used, best, complete);
        }

        // Each valley of the samples that could hold the least: a valley's floor is hardly below its lowest sample by more than it rises next to it.
        for (int i = 0; i < samples; i++)
        {
            double left = i > 0 ? f[i - 1] : double.PositiveInfinity, right = i + 1 < samples ? f[i + 1] : double.PositiveInfinity;
            if (f[i] <= left && f[i] <= right)
            {
                double rise = Math.Max(i > 0 ? left - f[i] : 0, i + 1 < samples ? right - f[i] : 0);
                if (f[i] - rise <= best)
                {
                    double low = droop + (Math.Max(i - 1, 0) * h), high = droop + (Math.Min(i + 1, samples - 1) * h);
                    used += Valley(ref gap, low, high, tolerance, ref best, ref at);
                }
            }
        }

        double bound = double.NegativeInfinity;
        if (lipschitz > 0)
        {
            bound = double.PositiveInfinity;
            for (int i = 0; i + 1 < samples; i++)
            {
                complete &= Prove(ref gap, droop + (i * h), f[i], f[i + 1], h, lipschitz, tolerance, ref best, ref at, ref used, ref bound);
            }
        }

        return new(best, at, used, Math.Min(bound, best), complete);
    }

    private static int Valley<T>(ref T gap, double low, double high, double tolerance, ref double best, ref double at)
        where T : IGapOfTravel, allows ref struct
    {
        // Golden section until the bracket is small against the tolerance: gaps change by at most about a travel.
        double x1 = low + (GoldenShare * (high - low)), x2 = high - (GoldenShare * (high - low));
        double f1 = gap.GapAt(x1), f2 = gap.GapAt(x2);
        int used = 2;
        for (int i = 0; i < 60 && high - low > tolerance; i++, used++)
        {
            if (f1 < f2)
            {
                (high, x2, f2) = (x2, x1, f1);
                x1 = low + (GoldenShare * (high - low));
                f1 = gap.GapAt(x1);
            }
            else
            {
                (low, x1, f1) = (x1, x2, f2);
                x2 = high - (GoldenShare * (high - low));
                f2 = gap.GapAt(x2);
            }
        }

        var (x, f) = f1 < f2 ? (x1, f1) : (x2, f2);
        if (f < best)
        {
            (best, at) = (f, x);
        }

        return used;
    }

    private static bool Prove<T>(
        ref T gap, double from, double f0, double f1, double h, double lipschitz, double tolerance,
        ref double best, ref double at, ref int used, ref double bound)
        where T : IGapOfTravel, allows ref struct
    {
        Span<(double From, double F0, double F1, double H)> stack = stackalloc (double, double, double, double)[64];
        int count = 0;
        stack[count++] = (from, f0, f1, h);
        while (count > 0)
        {
            var here = stack[--count];
            double least = 0.5 * (here.F0 + here.F1 - (lipschitz * here.H));
            if (least >= best - tolerance)
            {
                bound = Math.Min(bound, least);
                continue;
            }

            if (used >= EvaluationLimit || count + 2 > stack.Length || !double.IsFinite(least))
            {
                bound = double.IsFinite(least) ? Math.Min(bound, least) : double.NegativeInfinity;
                return false;
            }

            double middle = here.From + (0.5 * here.H);
            double f = gap.GapAt(middle);
            used++;
            if (f < best)
            {
                (best, at) = (f, middle);
            }

            stack[count++] = (here.From, here.F0, f, 0.5 * here.H);
            stack[count++] = (middle, f, here.F1, 0.5 * here.H);
        }

        return true;
    }
}
