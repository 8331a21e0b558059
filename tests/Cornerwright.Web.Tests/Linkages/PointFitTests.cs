using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Fit;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Web.Components.Linkages;
using Cornerwright.Workshop.Linkages;

namespace Cornerwright.Web.Tests.Linkages;

public class PointFitTests
{
    private static readonly double[] Travels = [-0.06, -0.04, -0.02, 0.02, 0.04, 0.06];

    /// <summary>The demo car with readings of a wheel whose ball joint really sits 1.5 mm higher than the table says.</summary>
    internal static Car Cycled()
    {
        var truth = LinkageCars.Present.Points;
        int ball = truth.Joints.ToList().FindIndex(j => j.Field.PropertyName == nameof(HardpointTable.LowerBall));
        var linkage =
            truth.Linkage.WithJointsAt([.. truth.Linkage.Joints.Select((j, i) => i == ball ? j.At + new Vec3(0, 0, 0.0015) : j.At)]);
        var motion = new HardpointMotion(new KnuckleLinkage(linkage, truth.HubFaceOutboard));
        CycledStep Step(double travel)
        {
            Assert.Equal(Reach.Reached, motion.GeometryAt(travel, out var wheel));
            static Reading Angle(double rad) => new(Quantity.Of(Math.Round(rad * 180 / Math.PI, 3), Units.Degree),
                new Tolerance(Quantity.Of(0.03, Units.Degree), ToleranceKind.TwoSigma), ReadingSource.Gauge);
            return new CycledStep
            {
                Travel = new(Quantity.Of(travel * 1000, Units.Millimetre),
                    new Tolerance(Quantity.Of(0.2, Units.Millimetre), ToleranceKind.TwoSigma), ReadingSource.Tape),
                Camber = Angle(wheel.Camber),
                Toe = Angle(wheel.Toe),
            };
        }

        var car = LinkageCars.Car;
        return car.With(CornerPlace.FrontLeft,
            car.FrontLeft with { Motion = car.FrontLeft.Motion with { Steps = [.. Travels.Select(Step)] } });
    }

    [Fact]
    public void Points_go_within_their_tolerance_to_where_the_readings_want_them()
    {
        var car = Cycled();
        var fit = PointFit.Of(car.FrontLeft, LinkageCars.Present.Points);
        Assert.Equal(FitStop.Converged, fit.Result.Why);
        Assert.Equal(2 * Travels.Length, fit.Readings.Count);
        double before = fit.Result.Readings.Sum(r => r.Before * r.Before), after = fit.Result.Readings.Sum(r => r.After * r.After);
        Assert.True(after < 0.05 * before, $"{before} to {after}");
        Assert.All(fit.Result.Joints, j =>
            Assert.True(Math.Max(Math.Abs(j.Moved.X), Math.Max(Math.Abs(j.Moved.Y), Math.Abs(j.Moved.Z))) <= 0.002 + 1e-12));

        // What is taken is what was shown, to a hundredth of a millimetre, and never with more doubt than before.
        var taken = fit.Take(LinkageCars.Table);
        for (int i = 0; i < fit.Result.Joints.Count; i++)
        {
            var field = fit.Points.Joints[i].Field;
            var (old, now) = ((BodyPoint)field.Get(LinkageCars.Table)!, (BodyPoint)field.Get(taken)!);
            Assert.Equal(fit.Result.Joints[i].Moved.Z, now.Z!.Si - old.Z!.Si, 0.0000101);
            Assert.True(now.Z.StandardDeviation <= old.Z.StandardDeviation + 1e-12);
        }

        // And the linkage of the taken table follows the readings.
        var again = PointFit.Of(car.FrontLeft,
            LinkageOf.Corner(car.With(CornerPlace.FrontLeft, car.FrontLeft with { Hardpoints = taken }), CornerPlace.FrontLeft).Value);
        Assert.True(again.Result.Readings.Sum(r => r.Before * r.Before) < 0.06 * before);
    }

    [Fact]
    public void Without_readings_or_tolerances_it_says_so()
    {
        var none = PointFit.Of(LinkageCars.Car.FrontLeft, LinkageCars.Present.Points);
        Assert.False(none.Fitted);
        Assert.Contains("no cycled reading", none.Words, StringComparison.Ordinal);
        var sure =
            LinkageCars.Present.Points with { Joints = [.. LinkageCars.Present.Points.Joints.Select(j => j with { Deviation = default })] };
        Assert.Contains("none may move", PointFit.Of(Cycled().FrontLeft, sure).Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_length_counts_by_its_change_from_the_reference_height()
    {
        var car = LinkageCars.Car;
        var corner = car.FrontLeft with
        {
            SpringAxisLength = Reading.Of("520 mm", Dimension.Length, "1 mm", ReadingSource.Tape),
            Motion = new WheelMotion { Steps = [new CycledStep { Travel = Reading.Of("20 mm", Dimension.Length, "0.5 mm",
                ReadingSource.Tape), SpringLength = Reading.Of("500.5 mm", Dimension.Length, "0.5 mm", ReadingSource.Tape) }] },
        };
        var reading = Assert.Single(PointFit.ReadingsOf(corner, LinkageCars.Present.Points));
        var spring = new LinkageMover(LinkageCars.Present).WheelAt(0, 0, 0)!.Value.Spring;
        Assert.Equal(spring!.Value.Length - 0.0195, reading.Reading.Value, 1e-12);

        // Doubt of 0.25 mm of its own, and of 0.25 mm of travel times a motion ratio near one.
        Assert.InRange(reading.Reading.Deviation, 0.25e-3 * 1.3, 0.25e-3 * 1.5);
    }

    // The promise "would be known to" is kept by a table in which that coordinate is measured so.
    [Fact]
    public void Measuring_one_coordinate_better_gives_what_the_list_promises()
    {
        var points = LinkageCars.Present.Points;
        double[] travels = [-0.05, -0.02, 0.03, 0.06];
        var doubts = QuantityDoubt.Of(points, travels);
        Assert.Equal(["camber", "toe", "motion ratio of the spring"], doubts.Select(d => d.Title));
        foreach (var doubt in doubts)
        {
            Assert.Equal(doubt.Worst.OrderByDescending(w => w.Share), doubt.Worst);
            var worst = doubt.Worst[0];
            var better = points with
            {
                Joints = [.. points.Joints.Select(j => j.Field.PropertyName != worst.Property ? j : j with
                {
                    Deviation = worst.Words[^1] switch
                    {
                        'X' => j.Deviation with { X = worst.Aim / 2 },
                        'Y' => j.Deviation with { Y = worst.Aim / 2 },
                        _ => j.Deviation with { Z = worst.Aim / 2 },
                    },
                })],
            };
            double whole = QuantityDoubt.Of(better, travels).Single(d => d.Title == doubt.Title).Whole;
            Assert.Equal(worst.Left, whole, 1e-9);
            Assert.True(whole < doubt.Whole);
        }
    }
}
