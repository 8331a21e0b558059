using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Linkages;

namespace Cornerwright.Workshop.Tests.Linkages;

/// <summary>
/// The demo's front corners have both: readings with a tape, and the hardpoints of the invented linkage that was read. Whatever is found
/// at the one level must be found at the other, within the doubts that the levels state themselves.
/// </summary>
public sealed class LevelsAgreeTests
{
    /// <summary>
    /// Two standard deviations of the two doubts together. They share most readings, so agreement is better than chance would have it.
    /// </summary>
    private const double MostSigmas = 2;

    private static readonly Car Tape = DemoCar.Read();

    private static readonly Car Hardpoints = Tape
        .With(CornerPlace.FrontLeft, ByHardpoints(Tape.FrontLeft))
        .With(CornerPlace.FrontRight, ByHardpoints(Tape.FrontRight));

    [Fact]
    public void The_tape_read_this_linkage()
    {
        var linkage = LinkageOf.Corner(Tape, CornerPlace.FrontLeft).Value;
        var motion = new HardpointMotion(linkage.Ready());
        Assert.Equal(Reach.Reached, motion.GeometryAt(0, out WheelGeometry at));
        Assert.Equal(Reach.Reached, motion.WheelAt(0.001, out WheelMotionState up));
        var (m, steering) = (Tape.FrontLeft.Motion, Tape.FrontLeft.Steering!);
        Within(m.SpringRatio!, at.Spring!.Value.MotionRatio);
        Within(m.SpringRatioChange!, at.Spring.Value.MotionRatioSlope);
        Within(m.CamberGain!, at.CamberByTravel);
        Within(m.OutboardPerTravel!, up.LateralShift / 0.001);
        Within(Tape.FrontLeft.SpringAxisLength!, at.Spring.Value.Length);
        Within(steering.Kingpin!, at.Steering.Inclination);
        Within(steering.Caster!, at.Steering.Caster);
        Within(steering.HubOffset!, at.Steering.KingpinOffset + linkage.HubFaceOutboard);
    }

    [Fact]
    public void Every_finding_of_the_front_agrees_within_the_levels_own_doubt() => AllAgree(Tape.Builds, 60);

    /// <summary>
    /// Seen: with 20 mm of slide the car rode 7.7 mm lower and its liner was 7 mm nearer by the hardpoints, and by the tape nothing moved
    /// but camber, with chance 1.
    /// </summary>
    [Theory]
    [InlineData("20 mm", "0 deg")]
    [InlineData("-15 mm", "0 deg")]
    [InlineData("0 mm", "-1.5 deg")]
    [InlineData("10 mm", "1 deg")]
    public void A_slid_mount_and_a_turned_clamp_do_the_same_at_both_levels(string slide, string clamp)
    {
        var build = Tape.Build(Demo.Holding)!;
        Build Set(Build b, CornerPlace place) => b.With(place, b.At(place) with
        {
            Slide = Garage.Readings.Reading.Of(slide, Dimension.Length),
            ClampCamber = Garage.Readings.Reading.Of(clamp, Dimension.Angle),
        });
        AllAgree([Set(Set(build, CornerPlace.FrontLeft), CornerPlace.FrontRight)], 15);
    }

    [Fact]
    public void Twenty_millimetres_of_slide_lower_the_car_at_both_levels()
    {
        foreach (var car in new[] { Tape, Hardpoints })
        {
            double Height(string slide)
            {
                var build = car.Build(Demo.Holding)!;
                var front = build.FrontLeft with { Slide = Garage.Readings.Reading.Of(slide, Dimension.Length) };
                return Judge.Build(car, build with { FrontLeft = front }, JudgeOptions.FindingsOnly).Findings
                    .Single(f => f.Key == "front-left/ride-height").Value!.Value.Si;
            }

            Assert.InRange(Height("0 mm") - Height("20 mm"), 0.006, 0.009);
        }
    }

    private static void AllAgree(IEnumerable<Build> builds, int least)
    {
        var apart = new List<string>();
        int compared = 0;
        foreach (var build in builds)
        {
            var exact = Judge.Build(Hardpoints, build, JudgeOptions.FindingsOnly).Findings.ToDictionary(f => f.Key);
            foreach (var tape in Judge.Build(Tape, build, JudgeOptions.FindingsOnly).Findings.Where(f => f.Margin is not null))
            {
                var other = exact[tape.Key];
                if (tape.Value!.Value.Si == other.Value!.Value.Si)
                {
                    continue;
                }

                compared++;
                double doubts = Math.Sqrt(Square(tape.Doubt!.Value.Si) + Square(other.Doubt!.Value.Si)) / 2;
                double off = Math.Abs(tape.Margin!.Value.Si - other.Margin!.Value.Si);
                if (!(off <= MostSigmas * doubts))
                {
                    apart.Add($"{build.Id} {tape.Key}: {tape.Value.Value.Text} by tape, {other.Value.Value.Text} by hardpoints, "
                        + $"{off / doubts:0.0} sigma");
                }
            }
        }

        Assert.InRange(compared, least, 1000);
        Assert.True(apart.Count == 0, string.Join("\n", apart));
    }

    [Fact]
    public void No_verdict_turns_from_failing_to_holding_or_back()
    {
        foreach (var build in Tape.Builds)
        {
            var exact = Judge.Build(Hardpoints, build.Id, JudgeOptions.FindingsOnly).Findings.ToDictionary(f => f.Key);
            foreach (var tape in Judge.Build(Tape, build.Id, JudgeOptions.FindingsOnly).Findings)
            {
                var pair = (tape.Verdict, exact[tape.Key].Verdict);
                Assert.False(pair is (Verdict.Fails, Verdict.Holds) or (Verdict.Holds, Verdict.Fails), $"{build.Id} {tape.Key}: {pair}");
            }
        }
    }

    [Fact]
    public void A_coordinate_can_be_what_a_finding_hangs_on()
    {
        var coarse = Hardpoints.With(CornerPlace.FrontLeft, Hardpoints.FrontLeft with
        {
            Hardpoints = Coarser(Hardpoints.FrontLeft.Hardpoints!, t =>
                t.LowerFrontInner!, (t, p) => t with { LowerFrontInner = p,
                    LowerRearInner = t.LowerRearInner! with { Z = t.LowerRearInner.Z! with { Tolerance = p.Z!.Tolerance } } }),
        });
        var finding = Judge.Build(coarse, Demo.Holding, JudgeOptions.FindingsOnly).Findings.Single(f =>
            f.Key == "front-left/clear-arch-lip");
        Assert.True(finding.Deciding.Any(d => d.Path.StartsWith("frontLeft/hardpoints/lower", StringComparison.Ordinal)),
            string.Join("; ", finding.Deciding));
    }

    [Fact]
    public void One_corner_on_hardpoints_beside_one_on_tape_is_judged_as_each_alone()
    {
        var mixed = Tape.With(CornerPlace.FrontRight, ByHardpoints(Tape.FrontRight));
        var judged = Judge.Build(mixed, Demo.Holding, JudgeOptions.FindingsOnly).Findings;
        foreach (
            var (side, car) in new[] { (CornerPlace.FrontLeft, Tape), (CornerPlace.FrontRight, Hardpoints), (CornerPlace.RearLeft, Tape) })
        {
            var alone = Judge.Build(car, Demo.Holding, JudgeOptions.FindingsOnly).Findings.Where(f => f.Corner == side)
                .Select(f => f.Sentence);
            Assert.Equal(alone, judged.Where(f => f.Corner == side).Select(f => f.Sentence));
        }

        Assert.All(judged, f => Assert.NotEqual(Verdict.Unknown, f.Verdict));
    }

    private static Corner ByHardpoints(Corner corner) => corner with { Motion = corner.Motion with { Level = MotionLevel.Hardpoints } };

    private static HardpointTable Coarser(HardpointTable table, Func<HardpointTable, BodyPoint> of,
        Func<HardpointTable, BodyPoint, HardpointTable> put)
    {
        var coarse = new Garage.Readings.Tolerance(QuantityText.ParseTolerance("20 mm", Dimension.Length, "tolerance").Value,
            Garage.Readings.ToleranceKind.TwoSigma);
        var p = of(table);
        return put(table, new BodyPoint { X = p.X! with { Tolerance = coarse }, Y = p.Y! with { Tolerance = coarse },
            Z = p.Z! with { Tolerance = coarse } });
    }

    private static void Within(Garage.Readings.Reading reading, double truth) =>
        Assert.True(Math.Abs(reading.Si - truth) <= 2 * reading.StandardDeviation, $"{reading.Typed}: the linkage has {truth}");

    private static double Square(double x) => x * x;
}
