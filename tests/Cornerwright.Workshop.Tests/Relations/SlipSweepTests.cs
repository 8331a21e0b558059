using System.Globalization;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Relations;
using Xunit.Abstractions;

namespace Cornerwright.Workshop.Tests.Relations;

/// <summary>
/// Every number of a car mistyped in the ways in which numbers are mistyped. What neither the file's rules nor a relation notices, and
/// makes any check look better, is a slip that reassures: the share of these is held, and docs/theory/relations.md explains each.
/// </summary>
public class SlipSweepTests(ITestOutputHelper output)
{
    private const double MostLeft = 0.02;

    private static readonly (string Name, double Factor)[] Slips =
        [("sign", -1), ("times 10", 10), ("by 10", 0.1), ("times 25.4", 25.4), ("by 25.4", 1 / 25.4), ("doubled", 2), ("halved", 0.5)];

    [Fact]
    public void The_demo() => Sweep(DemoCar.Read(), _ => true);

    [Fact]
    public void A_strut_seen_from_the_front()
    {
        var car = DemoCar.Read();
        Sweep(car.With(CornerPlace.FrontLeft, OnStrut(car.FrontLeft)).With(CornerPlace.FrontRight, OnStrut(car.FrontRight)),
            OfFrontCorners);
    }

    [Fact]
    public void A_car_on_hardpoints()
    {
        var car = DemoCar.Read();
        Sweep(car.With(CornerPlace.FrontLeft, OnPoints(car.FrontLeft)).With(CornerPlace.FrontRight, OnPoints(car.FrontRight)),
            OfFrontCorners);
    }

    private void Sweep(Car car, Func<string, bool> part)
    {
        var all = EveryReading.Of(car);
        var open = CarRelations.Of(car).Found.Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        var before = new Dictionary<string, IReadOnlyList<Finding>>(StringComparer.Ordinal);
        var left = new List<string>();
        int tried = 0, silent = 0;
        for (int i = 0; i < all.Count; i++)
        {
            var (path, field, reading) = all[i];
            if (!part(path) || reading.Si == 0)
            {
                continue;
            }

            foreach (var (name, slipped) in Slipped(car, all, i))
            {
                tried++;
                if (slipped is null || Consistency.Check(slipped).Count > 0 || CarRelations.Of(slipped).Found.Any(r =>
                    !open.Contains(r.Id)))
                {
                    continue;
                }

                silent++;
                string build = BuildOf(car, path);
                if (!before.TryGetValue(build, out var was))
                {
                    before[build] = was = Judge.Build(car, build, JudgeOptions.FindingsOnly).Findings;
                }

                if (Better(was, Judge.Build(slipped, build, JudgeOptions.FindingsOnly).Findings) is { } gain)
                {
                    left.Add($"{path}, {name}: {gain}");
                }
            }
        }

        output.WriteLine(FormattableString.Invariant(
            $"{tried} slips, {silent} in silence, {left.Count} of them make a check look better: {(double)left.Count / tried:P2}"));
        output.WriteLine(string.Join('\n', left));
        Assert.True(tried > 300, $"only {tried} slips were tried");
        Assert.True(left.Count < MostLeft * tried,
            FormattableString.Invariant($"{left.Count} of {tried} slips reassure:\n{string.Join('\n', left)}"));
        string page = RelationTests.Page("relations.md");
        Assert.DoesNotContain(left.Select(Kind), k => !page.Contains($"| {k} |", StringComparison.Ordinal));
    }

    /// <summary>A number of the car with each slip; null where the field's range refuses it.</summary>
    private static IEnumerable<(string Name, Car? Car)> Slipped(Car car, IReadOnlyList<(string Path, FieldShape Field,
        Reading Reading)> all, int index)
    {
        var (path, field, reading) = all[index];
        foreach (var (name, factor) in Slips)
        {
            var slip = reading with { Value = Quantity.Of(reading.Value.Number * factor, reading.Value.Unit) };
            yield return (name, field.RangeProblem(path, slip) is null ? CarPath.With(car, path, slip) : null);
        }

        if (EveryReading.Neighbour(all, index) is { } other && CarPath.Find(car, other) is { Reading: { } there, Field: var neighbour }
            && Math.Abs(there.Si - reading.Si) > 1e-9 && field.RangeProblem(path, there) is null && neighbour.RangeProblem(other,
                reading) is null)
        {
            yield return ("exchanged with its neighbour", CarPath.With(CarPath.With(car, path, there)!, other, reading)!);
        }
    }

    /// <summary>What looks better: a better verdict, a check that is gone, or a margin that grew by more than its told doubt.</summary>
    private static string? Better(IReadOnlyList<Finding> before, IReadOnlyList<Finding> after)
    {
        var now = after.ToDictionary(f => f.Key, StringComparer.Ordinal);
        foreach (var was in before)
        {
            if (!now.TryGetValue(was.Key, out var found))
            {
                return $"{was.Key} is gone";
            }

            if (found.Verdict > was.Verdict && found.Verdict == Verdict.Holds)
            {
                return $"{was.Key} {was.Verdict} now holds";
            }

            if (found.Margin is { } margin && was.Margin is { } old && margin.Si - old.Si > Math.Max(was.Doubt?.Si ?? 0,
                1e-3 * Math.Abs(old.Si)) + 1e-9)
            {
                return $"{was.Key} {old} now {margin}";
            }
        }

        return null;
    }

    // The build whose verdict a number bears on.
    private static string BuildOf(Car car, string path)
    {
        string[] steps = path.Split('/');
        return steps[0] == "builds" ? steps[1]
            : steps[0] == "parts" && car.Builds.Select(b => b.Id).OrderBy(id => id == "gravel-3" ? 0 : 1)
                .FirstOrDefault(id => Uses(car, id, steps[2])) is { } user ? user : "gravel-3";
    }

    private static bool Uses(Car car, string build, string part) => Places.Corners.Select(car.Build(build)!.At)
        .Any(c => c.Stack.Contains(part) || new[] { c.Wheel, c.Tyre, c.Spacer, c.Perch, c.TopMount, c.Damper, c.BumpStop, c.AntiRollBar,
            c.BarLink }
            .Contains(part));

    // "parts/dampers/rodClosed" of "parts/dampers/d-now/rodClosed, halved: ...": what the page explains.
    private static string Kind(string slip)
    {
        string[] steps = slip[..slip.IndexOf(',', StringComparison.Ordinal)].Split('/');
        return steps[0] == "parts" ? $"{steps[1]}/{steps[^1]}" : steps[^1];
    }

    private static bool OfFrontCorners(string path) => path.StartsWith("frontLeft/", StringComparison.Ordinal)
        || path.StartsWith("frontRight/", StringComparison.Ordinal) || path.StartsWith("front/", StringComparison.Ordinal);

    private static Corner OnPoints(Corner corner) => corner with { Motion = corner.Motion with { Level = MotionLevel.Hardpoints } };

    private static Corner OnStrut(Corner corner) => corner with
    {
        Motion = corner.Motion with
        {
            Level = MotionLevel.PlanarStrut, LowerInner = Point(393, -82), LowerOuter = Point(51, -115), StrutTop = Point(237, 608.5),
        },
    };

    private static FrontPoint Point(double inboard, double above) => new() { Inboard = Tape(inboard), Above = Tape(above) };

    private static Reading Tape(double mm) =>
        Reading.Of(FormattableString.Invariant($"{mm} mm"), Dimension.Length, "1.5 mm", ReadingSource.Tape);
}
