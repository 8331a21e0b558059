using System.Globalization;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Weighing;
using Xunit.Abstractions;

namespace Cornerwright.Workshop.Tests.Doubt;

/// <summary>
/// Is the probability that the judge states, by first order, the share of cars that would hold? Every input of a corner is
/// drawn within its tolerance and everything solved again.
/// </summary>
/// <remarks>
/// The whole run, 100,000 draws with a new clearance search in each, all builds and corners, takes about 10 minutes:
/// CORNERWRIGHT_DRAWS=100000 dotnet test -c Release tests/Cornerwright.Workshop.Tests
/// --filter CornerDoubt. Its outcome stands in docs/theory/doubt.md §4.
/// </remarks>
public sealed class CornerDoubtTests(ITestOutputHelper output)
{
    private const int Seed = 20260912;
    private const int FewFollowed = 20_000;
    private const int FewSearched = 1_500;

    private static int Asked => int.TryParse(Environment.GetEnvironmentVariable("CORNERWRIGHT_DRAWS"), NumberStyles.Integer,
        CultureInfo.InvariantCulture, out int asked) ? asked : 0;

    public static TheoryData<string> FirstAndLast => [Demo.FirstIdea, Demo.Holding];

    // The two builds that matter: the first idea, which fails in many ways, and the one that holds. Clearances are read in
    // the worst states of the best estimate; the test below shows what that leaves out.
    [Theory]
    [MemberData(nameof(FirstAndLast))]
    public void Stated_probability_is_the_drawn_share_within_two_points_unless_marked(string build)
    {
        var car = DemoCar.Read();
        foreach (var place in Places.Corners)
        {
            var shares = RandomCorner.Draw(Judged(car, car.Build(build)!, place), build, Math.Max(FewFollowed, Asked), Seed, search: false);
            Assert.NotEmpty(shares);
            Assert.All(shares, s => Assert.True(s.Marked || s.Off <= DrawnShare.Promise, s.ToString()));
        }
    }

    [Fact]
    public void Searched_anew_in_every_draw_the_share_is_the_same()
    {
        bool whole = Asked > FewSearched;
        int draws = Math.Max(FewSearched, Asked);
        var car = DemoCar.Read();
        var wrong = new List<string>();
        int seen = 0;
        foreach (var build in whole ? car.Builds : car.Builds.Where(b => b.Id == Demo.Holding))
        {
            foreach (var place in Places.Corners)
            {
                var corner = Judged(car, build, place);
                var followed = RandomCorner.Draw(corner, build.Id, draws, Seed, search: false);
                var searched = RandomCorner.Draw(corner, build.Id, draws, Seed, search: true);
                Assert.Equal(followed.Count, searched.Count);
                foreach (var (f, s) in followed.Zip(searched))
                {
                    if (s.Marked || s.Off > 0.01)
                    {
                        output.WriteLine(s.ToString());
                    }

                    // The same rows were drawn both times, so the difference is the search's alone.
                    bool same = Math.Abs(f.Drawn - s.Drawn) <= DrawnShare.Promise,
                        promised = s.Off <= DrawnShare.Promise + DrawnShare.Noise(s.Drawn, draws);
                    if (!s.Marked && !(same && promised))
                    {
                        wrong.Add($"followed {f}; searched {s}");
                    }

                    seen++;
                }
            }
        }

        Assert.True(seen >= 4 * 20);
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    // The story: a curve through readings of a cycled wheel 20 to 30 mm apart, each good to a millimetre, left the local motion
    // ratio so doubtful that the ride height bent within its doubt; first order was off by 10 points and partly unmarked.
    // Seven readings are averaged since; the four of this car are too few for that, and the curve goes through them.
    [Fact]
    public void A_wheel_cycled_with_a_coarse_tape_is_off_and_says_so()
    {
        const int draws = 10_000;
        var car = DemoCar.Read();
        var coarse = Demo.WithCoarseCycling(car, CornerPlace.RearLeft, times: 3, first: 1, count: 4);
        var marked = new List<DrawnShare>();
        foreach (var build in coarse.Builds)
        {
            var shares = RandomCorner.Draw(Judged(coarse, build, CornerPlace.RearLeft), build.Id, draws, Seed, search: false);
            marked.AddRange(shares.Where(s => s.Marked));

            // A quarter of what is promised is allowed on top: the expected error is itself an estimate.
            Assert.All(shares, s =>
                Assert.True(s.Marked || s.Off <= 1.25 * DrawnShare.Promise + DrawnShare.Noise(s.Drawn, draws), s.ToString()));
        }

        Assert.Contains(marked, s => s.Off > DrawnShare.Promise);
    }

    [Fact]
    public void Every_check_that_the_demo_marks_is_named_in_the_manual()
    {
        string manual = File.ReadAllText(Path.Combine(Demo.Root, "docs", "theory", "doubt.md"));
        string named = manual[manual.IndexOf("## 5.", StringComparison.Ordinal)..];
        var car = DemoCar.Read();
        int seen = 0;
        foreach (var build in car.Builds)
        {
            foreach (var finding in Judge.Build(car, build, JudgeOptions.FindingsOnly).Findings)
            {
                seen++;
                Assert.True(finding.FirstOrderEnough || named.Contains($"`{finding.Check}`", StringComparison.Ordinal),
                    $"{build.Id} {finding.Key} is marked, but docs/theory/doubt.md §5 does not name it.");
            }
        }

        Assert.True(seen > 100);
    }

    private static CornerResult Judged(Car car, Build build, CornerPlace place) =>
        CornerResult.Of(CornerPlan.Compile(car, build, place, CarLearning.InUse(car)));
}
