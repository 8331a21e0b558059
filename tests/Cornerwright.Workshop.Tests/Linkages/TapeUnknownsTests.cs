using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Linkages;
using Xunit.Abstractions;

namespace Cornerwright.Workshop.Tests.Linkages;

/// <summary>
/// What the tape level takes for granted, against linkages near the invented ones of the independent rows: struts and wishbones whose
/// joints lie up to 25 mm elsewhere. The spans stated must hold most of them: two standard deviations should hold 19 in 20.
/// </summary>
public sealed class TapeUnknownsTests(ITestOutputHelper output)
{
    private const int Seed = 25112026, EachKind = 300;
    private const double Degree = Math.PI / 180;

    [Fact]
    public void The_stated_spans_hold_most_linkages_of_usual_sizes()
    {
        var random = new Random(Seed);
        var bends = new List<double>();
        var camberBends = new List<double>();
        var ratioChanges = new List<double>();
        var fades = new List<double>();
        foreach (string id in (string[])["M1", "M3", "W1"])
        {
            var corner = LinkageOf.Corner(OracleTables.Car(id), CornerPlace.FrontLeft).Value.Linkage;
            for (int n = 0; n < EachKind; n++)
            {
                Vec3 Off() => new Vec3(random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() - 0.5) * 0.05;
                var motion =
                    new HardpointMotion(new KnuckleLinkage(corner.WithJointsAt([.. corner.Joints.Select(j => j.At + Off())]), 0.045));
                if (Read(motion) is not { } read)
                {
                    continue;
                }

                bends.Add(read.Bend);
                camberBends.Add(read.CamberBend);
                fades.Add(read.Fade);
                if (id != "W1")
                {
                    ratioChanges.Add(read.RatioChange);
                }
            }
        }

        Assert.InRange(bends.Count, 0.95 * 3 * EachKind, 3 * EachKind);
        Spans("bend of the path, 1/m", bends, -TapeUnknowns.Arc, 2 * TapeUnknowns.ArcSigma, 0.9);
        Spans("change of the camber gain, rad/m2", camberBends, 0, 2 * TapeUnknowns.CamberBendSigma, 0.9);
        Spans("change of a strut's motion ratio, 1/m", ratioChanges, MotionPlan.RatioChange, 2 * MotionPlan.RatioChangeSigma, 0.9);
        Spans("steer lost per travel at 30 deg, 1/m", fades, ClearancePlan.SteerFadeMiddle, 2 * ClearancePlan.SteerFadeSigma, 0.9);
    }

    private static (double Bend, double CamberBend, double RatioChange, double Fade)? Read(HardpointMotion motion)
    {
        const double Far = 0.06, Steer = 30 * Degree;
        if (motion.WheelAt(Far, out var up) != Reach.Reached || motion.WheelAt(-Far, out var down) != Reach.Reached
            || motion.WheelAt(0, out var at) != Reach.Reached
            || motion.StationAt(0, Station.Spring, out var spring) != Reach.Reached
            || motion.RackFor(Steer, out double rack) != Reach.Reached
            || motion.PoseAt(Far, rack, out var high) != Reach.Reached || motion.PoseAt(-Far, rack, out var low) != Reach.Reached)
        {
            return null;
        }

        double Second(double a, double b, double c) => (a + c - (2 * b)) / (Far * Far);
        double SteerOf(Vec3 spindle) => Math.Atan2(-spindle.X, spindle.Y);
        double bumpSteer = -(up.Toe - down.Toe), fade = -(SteerOf(high.Spindle) - SteerOf(low.Spindle) - bumpSteer) / (2 * Far * Steer);
        return (Second(down.LateralShift, at.LateralShift, up.LateralShift), Second(down.Camber, at.Camber, up.Camber),
            spring.MotionRatioSlope, fade);
    }

    private void Spans(string what, List<double> values, double middle, double span, double least)
    {
        values.Sort();
        double inside = values.Count(v => Math.Abs(v - middle) <= span) / (double)values.Count;
        string said = string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"{what}: {middle - span:0.00} to {middle + span:0.00} holds {inside:0.000} of {values.Count}, "
            + $"5 % to 95 %: {values[values.Count / 20]:0.00} to {values[values.Count * 19 / 20]:0.00} (seed {Seed})");
        output.WriteLine(said);
        Assert.True(inside >= least, said);
    }
}
