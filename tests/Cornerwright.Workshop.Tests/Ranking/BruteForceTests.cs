using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Ranking;
using Judge = Cornerwright.Workshop.Judging.Judge;

namespace Cornerwright.Workshop.Tests.Ranking;

/// <summary>The search against judging every combination in full: nothing pruned, nothing bounded, nothing set aside.</summary>
public class BruteForceTests
{
    // Springs that hang loose, bind, or hold; wheels that touch the arch, or not by a hair.
    public static TheoryData<string> Searches => new(All.Keys);

    private static readonly Dictionary<string, Wishes> All = new()
    {
        ["front"] = new Wishes
        {
            Axle = AxlePlace.Front, StartingBuild = "gravel-3", Listed = 500, TopMounts = ["m-ball"], Dampers = ["d-front"],
                Perches = ["p-front"],
            Springs = ["f-8-220", "f-6-250", "f-350-10", "f-helper", "f-tender"], Wheels = ["w-gravel", "w-gravel-40"],
            Tyres = ["t-gravel-65", "t-gravel-55"], Spacers = ["sp-5"],
        },
        ["rear"] = new Wishes
        {
            Axle = AxlePlace.Rear, StartingBuild = "gravel-2", Listed = 500, Wheels = ["w-gravel", "w-gravel-40", "w-winter"],
                Tyres = ["t-gravel-55", "t-winter"], Spacers = ["sp-5"],
        },
        ["wished"] = new Wishes
        {
            Axle = AxlePlace.Front, StartingBuild = "gravel-3", Listed = 500, Height = Spaces.Millimetres("420 mm"),
                LeastGap = Spaces.Millimetres("6 mm"), Budget = 1700,
            FrequencyLow = Garage.Readings.Reading.Of("1.5 Hz", Garage.Quantities.Dimension.Frequency),
            FrequencyHigh = Garage.Readings.Reading.Of("1.86 Hz", Garage.Quantities.Dimension.Frequency),
            Helper = HelperWish.With, Prefer = Preference.Softest, Dampers = ["d-front"], TopMounts = ["m-ball"], Perches = ["p-front"],
            Wheels = ["w-now", "w-gravel-40"], Tyres = ["t-now", "t-gravel-55"], Spacers = ["sp-5"],
        },
    };

    [Theory]
    [MemberData(nameof(Searches))]
    public void The_search_holds_and_orders_what_judging_everything_does(string name)
    {
        // With what a road asks for nothing that the demo's shelf can make of the rear holds; the order is to be seen among those that do.
        var (car, wishes) = (name == "rear" ? DemoCar.Read() with { Allowances = Allowances.None } : DemoCar.Read(), All[name]);
        var space = Spaces.Of(car, wishes);
        var judge = new ChoiceJudge(space);
        var expected = new List<(RankKey Key, Weighed Weighed, string Parts)>();
        var sets = new Dictionary<int, WheelSet>();
        long all = 0;
        foreach (var (s, w, choice) in Combinations(space))
        {
            all++;
            StaticSheet left = new(), right = new();
            space.Left.Evaluate(space.Stacks[s.Stack], space.Perches[s.Perch], space.LeftStations[space.StationOf(s)], left,
                toTheEnd: true);
            space.Right.Evaluate(space.Stacks[s.Stack], space.Perches[s.Perch], space.RightStations[space.StationOf(s)], right,
                toTheEnd: true);
            var build = space.Make(s, w, left.Perch, right.Perch);
            bool holds = Holds(car, space, build, out double frequency, out double miss);

            // The search's own full judgement must agree with the judge on this combination.
            var verdict = judge.Judge(build);
            decimal cost = space.CostOf(s) + space.CostOf(w);
            Assert.True(holds == verdict.Holds, $"{Words(space, s, w)}: judge says {holds}, search {string.Join(", ", verdict.Broken)}");
            if (holds)
            {
                // What is known of a pair before it is judged bounds what the judge says of it.
                var set = sets.TryGetValue(choice.WheelSet, out var known) ? known
                    : sets[choice.WheelSet] = WheelSet.Of(space, choice.WheelSet);
                double alone = judge.WithoutWheels(space.Make(s, new WheelChoice(-1, -1, -1), left.Perch, right.Perch)).Bound,
                    bound = set.Apart ? alone * set.Bound : Math.Min(alone, set.Bound);
                Assert.True(verdict.Probability <= bound + 1e-9, $"{Words(space, s, w)}: {verdict.Probability} above its bound {bound}");
            }

            if (holds && cost <= (wishes.Budget ?? decimal.MaxValue))
            {
                double rounded = Math.Round(miss, 4);
                var key = new RankKey(0, RankKey.DoubtOf(verdict.Probability), RankKey.PreferenceOf(wishes.Prefer, cost, rounded,
                    frequency), cost, rounded, Math.Round(frequency, 3), choice.Suspension, choice.WheelSet);
                var weighed = new Weighed(cost, RankKey.DoubtOf(verdict.Probability), (int)Math.Round(miss * 1000),
                    (int)Math.Round(frequency / 0.05));
                expected.Add((key, weighed, Words(space, s, w)));
            }
        }

        var found = Spaces.Found(car, wishes);
        Assert.Equal(all, found.Combinations);
        Assert.InRange(expected.Count, 3, all - 3);
        Assert.Equal(expected.OrderBy(e => e.Key).Select(e => e.Parts), found.Listed.Select(Words));
        Assert.Equal(expected.Count, found.Held);
        Assert.Equal(all, found.Held + found.SetAside + found.LeftOut + found.Refused.Sum(r => r.Count));

        // The front by its definition: every combination that no other covers, one of each kind.
        var front = expected.Where(e => !expected.Any(o => o.Weighed != e.Weighed && o.Weighed.Covers(e.Weighed))).Select(e => e.Weighed)
            .Distinct().Count();
        Assert.Equal(front, found.Front.Count);
    }

    [Theory]
    [MemberData(nameof(Searches))]
    public void A_short_list_is_the_head_of_the_long_one(string name)
    {
        var car = DemoCar.Read();
        var whole = Spaces.Found(car, All[name]);
        var head = Spaces.Found(car, All[name] with { Listed = 3 });
        Assert.Equal(whole.Listed.Take(3).Select(Words), head.Listed.Select(Words));
        Assert.Equal(whole.Front.Select(Words), head.Front.Select(Words));
        Assert.True(head.JudgedInFull <= whole.JudgedInFull);
        Assert.Equal(head.Combinations, head.Held + head.SetAside + head.LeftOut + head.Refused.Sum(r => r.Count));
    }

    [Fact]
    public void Threads_and_pauses_change_nothing()
    {
        var (car, wishes) = (DemoCar.Read(), All["front"] with { Listed = 12 });
        string expected = Text(Spaces.Found(car, wishes, threads: 1));
        foreach (int threads in new[] { 2, 7 })
        {
            Assert.Equal(expected, Text(Spaces.Found(car, wishes, threads)));
        }

        // Stopped after every single batch, and gone on.
        var search = BuildSearch.Prepare(car, wishes).Value;
        int pauses = 0;
        while (!search.Done && pauses < 10_000)
        {
            using var stop = new CancellationTokenSource();
            search.Run(stop.Token, new StopAtOnce(stop));
            pauses++;
        }

        Assert.True(pauses > 5, $"{pauses} pauses");
        Assert.Equal(expected, Text(search.Result()));
    }

    private static bool Holds(Car car, SearchSpace space, Build build, out double frequency, out double miss)
    {
        var judged = Judge.Build(car, build, JudgeOptions.FindingsOnly);
        var (left, right) = (space.Axle.Left(), space.Axle.Right());
        bool mine = judged.Findings.Where(f => f.Corner is null ? f.Axle is null || f.Axle == space.Axle
            : f.Corner == left || f.Corner == right).All(f => f.Verdict != Verdict.Fails);
        double[] frequencies =
            [.. judged.Figures.Where(f => f.Name == "ride-frequency" && (f.Corner == left || f.Corner == right)).Select(f => f.Value.Si)];
        double[] heights = [.. judged.Figures.Where(f => f.Name == "height-change" && (f.Corner == left || f.Corner == right))
            .OrderBy(f => f.Corner).Select(f => f.Value.Si)];
        bool known = frequencies.Length == 2 && heights.Length == 2;
        frequency = known ? (frequencies[0] + frequencies[1]) / 2 : double.NaN;
        miss = known ? Math.Max(Miss(left, heights[0]), Miss(right, heights[1])) : double.NaN;
        return mine && known && frequencies.All(f => f >= space.Frequency.Low && f <= space.Frequency.High);

        double Miss(CornerPlace place, double change) => Math.Abs(car.At(place).RideHeight!.Si + change - space.HeightTarget);
    }

    private static IEnumerable<(SuspensionChoice, WheelChoice, (int Suspension, int WheelSet) Order)> Combinations(SearchSpace space)
    {
        int suspension = 0;
        for (int stack = 0; stack < space.Stacks.Length; stack++)
        {
            for (int perch = 0; perch < space.Perches.Length; perch++)
            {
                for (int station = 0; station < space.StationsCount; station++, suspension++)
                {
                    for (int w = 0; w < space.Pool.WheelSets; w++)
                    {
                        yield return (space.ChoiceOf(stack, perch, station), space.WheelSetOf(w), (suspension, w));
                    }
                }
            }
        }
    }

    private static string Words(SearchSpace space, in SuspensionChoice s, in WheelChoice w) =>
        string.Join(' ', space.PartsOf(s, w).Select(p => p.Id));

    private static string Words(RankedBuild build) => string.Join(' ', build.Parts.Select(p => p.Id));

    private static string Text(RankingResult result) => string.Join('\n',
        result.Listed.Concat(result.Front).Select(b =>
            $"{b.Rank} {Words(b)} {b.Probability:R} {b.Bounds} {b.Cost} {b.Frequency} {b.HeightMiss} {b.Tightest} {b.PerchHeight}")
            .Concat(result.NearMisses.Select(m =>
                $"{string.Join(' ', m.Parts.Select(p => p.Id))} {m.Check} {m.ShortBy} {string.Join('|', m.Cures.Select(c => c.Sentence))}"))
            .Concat(result.Refused.Select(r => $"{r.Title} {r.Count}"))
            .Append($"{result.Held} {result.SetAside} {result.JudgedInFull}"));

    private sealed class StopAtOnce(CancellationTokenSource stop) : IProgress<SearchProgress>
    {
        public void Report(SearchProgress value) => stop.Cancel();
    }
}
