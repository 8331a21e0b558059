using System.Globalization;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Weighing;
using Xunit.Abstractions;

namespace Cornerwright.Workshop.Tests.Drawing;

/// <summary>
/// Pairs of corners that differ in one way, of which it is known which one must not look better: more lock, more travel, a larger tyre,
/// more doubt, a reading lost. CORNERWRIGHT_PAIRS=10000 for the long run (docs/clearance-runs.md).
/// </summary>
public sealed class WorseNeverBetterTests(ITestOutputHelper output)
{
    private const int Seed = 20261203;

    [Fact]
    public void What_can_only_harm_makes_no_clearance_better()
    {
        int pairs = int.Parse(Environment.GetEnvironmentVariable("CORNERWRIGHT_PAIRS") ?? "300", CultureInfo.InvariantCulture);
        int seed = int.Parse(Environment.GetEnvironmentVariable("CORNERWRIGHT_SEED") ?? Seed.ToString(CultureInfo.InvariantCulture),
            CultureInfo.InvariantCulture);
        var draw = new RandomDraw(seed);
        var wrong = new List<string>();
        var counts = new Dictionary<string, (int Pairs, int Wrong)>();
        int compared = 0;

        // What few corners have is tried more often.
        Pair[] often = [.. Pair.All, .. Pair.All.Where(a => a.Rare), .. Pair.All.Where(a => a.Rare), .. Pair.All.Where(a => a.Rare)];
        for (int p = 0; p < pairs;)
        {
            var drawn = draw.NextAimed();
            var result = drawn.Result();
            var before = DrawnCorner.Clearances(result);
            for (int k = 0; k < 6 && p < pairs; k++)
            {
                var pair = often[draw.Index(often.Length)];
                if (pair.Change(drawn, draw) is not { } changed)
                {
                    continue;
                }

                var there = changed.Result();
                double drawnIn = pair.Follows == Follows.NeverBetter ? DrawsIn(result, there) : 0;
                var flaws = Flaws(pair.Follows, before, DrawnCorner.Clearances(there), drawnIn, ref compared);
                wrong.AddRange(flaws.Select(f => $"{pair.Name} | {drawn.Kind} | {changed.Note} | pair {p}: {f}"));
                var (n, w) = counts.GetValueOrDefault(pair.Name);
                counts[pair.Name] = (n + 1, w + (flaws.Count > 0 ? 1 : 0));
                p++;
            }
        }

        foreach (var (name, (n, w)) in counts.OrderBy(c => c.Key, StringComparer.Ordinal))
        {
            output.WriteLine($"{name}: {n} pairs, {w} wrong");
        }

        output.WriteLine($"seed {seed}: {pairs} pairs, {compared} clearances compared");
        Assert.True(wrong.Count == 0, $"seed {seed}: {wrong.Count}\n" + string.Join('\n', wrong.Take(2000)));
        Assert.True(compared > 3 * pairs, $"{compared} compared");
    }

    /// <summary>
    /// How far the tyre and rim of the one stand out of those of the other, m. Of two tyres of one width the taller one is not the larger
    /// one everywhere: its widest place stands further out, and the wall below that draws in, with whatever was near it there. And of its
    /// own height a thing then stands lower, where tyre and wheel give less.
    /// </summary>
    private static double DrawsIn(CornerResult one, CornerResult other)
    {
        var (tyre, rim) = one.Numbers.Clearance.Sections(one.Numbers.Read, forBody: false);
        var (tyreThere, rimThere) = other.Numbers.Clearance.Sections(other.Numbers.Read, forBody: false);
        if (!tyre.IsSound || !tyreThere.IsSound || tyre == tyreThere)
        {
            return 0;
        }

        var there = WheelShape.Of(tyreThere, rimThere, 12);
        double taller = Math.Max(0, tyreThere.CrownRadius - tyre.CrownRadius), gives = one.Plan.Allowed.Top + one.Plan.Allowed.In;
        double onWheel = 2.3 * one.Plan.Allowed.OnWheel * taller / tyre.SectionHeight;
        double stands = WheelShape.Of(tyre, rim, 12).Corners.SelectMany(c => c)
            .Max(p => Math.Max(0, there.SignedDistance(p.A, p.R, out _, out _, out _)));
        return stands + (gives * taller / tyre.CrownRadius) + onWheel;
    }

    // A chance below one half is of something that fails: there more doubt makes it larger. What stands in for a reading that was lost may
    // lie on its better side, within its own doubt; it must not make anything hold.
    private static List<string> Flaws(Follows follows, IReadOnlyDictionary<string, Finding> before,
        IReadOnlyDictionary<string, Finding> after, double drawnIn, ref int compared)
    {
        const double SearchError = 1e-4, DeepError = 2e-3, Chance = 0.004, StoodIn = 0.1;
        var flaws = new List<string>();
        foreach (var (check, was) in before)
        {
            if (!after.TryGetValue(check, out var now))
            {
                continue;
            }

            compared++;

            // By how much more than 20 mm the tyre overlaps is known less finely: the distance has ridges inside it.
            double searched = was.Value?.Si < -0.02 ? DeepError : SearchError;
            double p = was.Probability ?? 0, q = now.Probability ?? 0;
            string? flaw = follows switch
            {
                Follows.NeverBetter when was.Value is { } a && now.Value is { } b && b.Si > a.Si + searched + drawnIn => "gap grows",
                Follows.NeverBetter when was.Value is { } a && now.Value is { } b && b.Si <= a.Si + SearchError
                    && q > Math.Max(p, 0.5) + Chance => "surer",
                Follows.NeverSurer when p > 0.5 && q > p + Chance => "surer",
                Follows.NeverSurer when was.Value is { } a && now.Value is { } b && Math.Abs(b.Si - a.Si) > searched => "moved",
                Follows.Same when was.Verdict != now.Verdict || Math.Abs(p - q) > 1e-4
                    || Math.Abs((was.Value?.Si ?? 0) - (now.Value?.Si ?? 0)) > 1e-6 => "changed",
                Follows.LessKnown when was.Verdict == Verdict.Unknown && now.Verdict != Verdict.Unknown => "known",
                Follows.LessKnown when now.Verdict == Verdict.Holds && was.Verdict != Verdict.Holds => "holds",
                Follows.LessKnown when p > 0.5 && q > p + StoodIn => "surer",
                _ => null,
            };
            if (flaw is not null)
            {
                flaws.Add(string.Create(CultureInfo.InvariantCulture, $"{check} {flaw}: {Told(was)} before, {Told(now)} now"));
            }
        }

        return flaws;
    }

    private static string Told(Finding f) => f.Value is null ? $"{f.Verdict}: {f.Sentence}" : string.Create(CultureInfo.InvariantCulture,
        $"{f.Verdict} {1000 * f.Value.Value.Si:0.000} ± {1000 * f.Doubt!.Value.Si:0.00} of {1000 * f.Low!.Value.Si:0.#} mm "
        + $"{f.Probability:0.0000} {f.Worst?.Words}{(f.FirstOrderEnough ? "" : " bent")}");
}
