using System.Globalization;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Comparing;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Ranking;
using Cornerwright.Workshop.Tests.Ranking;
using Xunit.Abstractions;
using Judge = Cornerwright.Workshop.Judging.Judge;

namespace Cornerwright.Workshop.Tests.Drawing;

/// <summary>
/// Whoever is asked how near something comes to the wheel says the same: verdict, page of clearances, map, widest wheel, ranking,
/// compare. On corners drawn at random; CORNERWRIGHT_CORNERS=1000 for the long run (docs/clearance-runs.md).
/// </summary>
public sealed class OneLeastGapTests(ITestOutputHelper output)
{
    private const int Seed = 20261204;
    private const double Agreed = 5e-5;

    /// <summary>Deeper than this the tyre's overlap has ridges, and is known less finely, m.</summary>
    private const double Deep = -0.02, DeepError = 5e-4;

    /// <summary>To this the room for other wheels is closed, m, and its other end counts.</summary>
    private const double Closed = 2.5e-4;

    private readonly Dictionary<string, (int Compared, double Above, double Below)> _off = [];
    private readonly List<string> _wrong = [];

    [Fact]
    public void Everybody_states_the_same_least_gap()
    {
        int corners = int.Parse(Environment.GetEnvironmentVariable("CORNERWRIGHT_CORNERS") ?? "25", CultureInfo.InvariantCulture);
        var draw = new RandomDraw(Seed);
        for (int c = 0; c < corners; c++)
        {
            Ask(draw.NextAimed(), c);
        }

        foreach (var (who, (compared, above, below)) in _off)
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{who}: {compared} compared, above by at most {1e6 * above:0} um, below by {1e6 * below:0} um"));
        }

        Assert.True(_wrong.Count == 0, $"seed {Seed}: {_wrong.Count}\n" + string.Join('\n', _wrong.Take(300)));
        Assert.True(_off.Count == 7 && _off.Values.All(o => o.Compared > corners / 5), string.Join(", ", _off));
    }

    private void Ask(DrawnCorner drawn, int number)
    {
        var judged = Judge.Build(drawn.Car, drawn.Build, JudgeOptions.FindingsOnly);
        var told = judged.Findings.Where(f => f.Corner == drawn.Place && f.Value is not null
            && f.Check.StartsWith("clear-", StringComparison.Ordinal)).ToDictionary(f => f.Check);
        var corner = CornerClearance.Of(drawn.Car, drawn.Build, drawn.Place);
        var body = told.Where(f => corner.Things.Any(t => t.OnBody && "clear-" + t.Id == f.Key)).Select(f => f.Value).ToList();
        string where = $"{drawn.Kind} corner {number}";
        if (body.Count > 0 && corner.Least() is { } least)
        {
            var nearest = body.MinBy(f => f.Value!.Value.Si)!;
            double gap = nearest.Value!.Value.Si;
            Compare("page, proved", where, gap, least.Lower, least.Upper);
            AtWorst(drawn, nearest, corner, where);
        }

        // The ranking's own judge, and two builds beside each other.
        var wishes = new Wishes { Axle = drawn.Place.Axle(), StartingBuild = drawn.BuildId, Listed = 5 };
        var (left, right) = new ChoiceJudge(Spaces.Of(drawn.Car, wishes)).AtBest(drawn.Build);
        var ranked = drawn.Place.IsLeft() ? left : right;
        var compare = BuildComparison.Between(Judge.Build(drawn.Car, drawn.Car.MeasuredBuild, JudgeOptions.FindingsOnly), judged);
        foreach (var (check, f) in told)
        {
            double gap = f.Value!.Value.Si;
            Compare("ranking", where, ranked.Value(ranked.Find(check)), gap, gap);
            Compare("compare", where, compare.Findings.Single(p => p.Key == f.Key).Right!.Value!.Value.Si, gap, gap);
        }

        Widest(drawn, told.Values, where);
    }

    // The page at the pose that the verdict names; and the map, of which that pose is made one.
    private void AtWorst(DrawnCorner drawn, Finding nearest, CornerClearance corner, string where)
    {
        double gap = nearest.Value!.Value.Si;
        var (travel, steer) = (nearest.Worst!.Travel!.Value, nearest.Worst.Steer ?? 0);
        var there = corner.At(travel, steer, nearest.Worst.OtherTravel).Single(g => "clear-" + g.Thing.Id == nearest.Check);
        Compare("page, at the pose", where, there.Gap, gap, gap);
        var map = ClearanceMap.Of(drawn.Car, drawn.Build, drawn.Place, null, 15, 9);
        double lowest = map.Poses.Where(p => double.IsFinite(p.Gap)).Min(p => p.Gap);
        Compare("map, never below", where, Math.Max(lowest, gap), lowest, double.PositiveInfinity);
    }

    // The room for other wheels, asked with the build's own: what is in hand of everything, tyre and rim each by its own limit.
    private void Widest(DrawnCorner drawn, IEnumerable<Finding> told, string where)
    {
        var numbers = new SolvedCorner(CornerPlan.Compile(drawn.Car, drawn.Build, drawn.Place, null));
        numbers.Solve();
        var (n, wheel) = (numbers.Read, numbers.Plan.Wheel);
        if (wheel is null || !told.Any())
        {
            return;
        }

        double inHand = told.Min(f => f.Margin!.Value.Si);
        double room = new WheelRoom(n, []).InHand(wheel.Tyre(n.X, 0, 0), wheel.Rim(n.X), 0.2);
        if (double.IsFinite(room))
        {
            // Its windows are closed to 0.2 mm, on the safe side; where a wheel just fits or just does not, it must say the same.
            Compare("widest", where, inHand, room, Math.Abs(inHand) < Closed ? room + Closed : double.PositiveInfinity);
            bool alike = Math.Abs(inHand) < Agreed || inHand >= 0 == room >= -Agreed;
            Compare("widest, fits or not", where, alike ? 0 : inHand, 0, 0);
        }
    }

    private void Compare(string who, string where, double told, double low, double high)
    {
        double allowed = told < Deep ? DeepError : Agreed, above = told - high, below = low - told;
        var (compared, most, least) = _off.GetValueOrDefault(who);
        bool deep = told < Deep;
        _off[who] = (compared + 1, deep ? most : Math.Max(most, above), deep ? least : Math.Max(least, below));
        if (!(above <= allowed && below <= allowed))
        {
            _wrong.Add(string.Create(CultureInfo.InvariantCulture,
                $"{who}, {where}: {1000 * told:0.000} mm, of {1000 * low:0.000} to {1000 * high:0.000}"));
        }
    }
}
