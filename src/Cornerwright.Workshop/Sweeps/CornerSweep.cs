using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Steering;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Linkages;

namespace Cornerwright.Workshop.Sweeps;

/// <summary>A corner through travel, steering and plate: what its geometry says at every pose, or why the pose cannot be.</summary>
public static class CornerSweep
{
    /// <summary>Every pose of a grid at one corner, plate by plate, in it steering by steering, in it travel by travel.</summary>
    /// <param name="car">The car.</param>
    /// <param name="build">Whose parts and settings count.</param>
    /// <param name="place">Which corner.</param>
    /// <param name="grid">At most <see cref="SweepGrid.MostPoses"/> poses.</param>
    /// <param name="wishes">What else is asked.</param>
    public static Checked<IReadOnlyList<SweepRow>> Of(Car car, Build build, CornerPlace place, SweepGrid grid, SweepWishes wishes)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(build);
        ArgumentNullException.ThrowIfNull(grid);
        ArgumentNullException.ThrowIfNull(wishes);
        if (grid.Poses > SweepGrid.MostPoses)
        {
            return Wrong("sweep", $"{grid.Poses} poses at a corner", $"at most {SweepGrid.MostPoses}", "Take fewer or longer steps.");
        }

        car = wishes.ByHardpoints ? ByHardpoints(car, place) : car;
        var rows = new List<SweepRow>((int)grid.Poses);
        IReadOnlyList<double> slides = grid.Slides.Count > 0 ? grid.Slides : [build.At(place).Slide?.Si ?? 0];
        foreach (double slide in slides)
        {
            var set = Set(Set(build, place, slide), place.OtherSide(), slide);
            var problem = car.At(place).Motion.Level == MotionLevel.Hardpoints
                && !(LinkageOf.TableOf(car, place) is { } table && HardpointNeeds.IsAxle(table.Kind))
                ? Hardpoints(rows, car, set, place, slide, grid, wishes) : Otherwise(rows, car, set, place, slide, grid);
            if (problem.Count > 0)
            {
                return Checked<IReadOnlyList<SweepRow>>.Wrong(problem);
            }
        }

        return Checked<IReadOnlyList<SweepRow>>.From(rows);
    }

    /// <summary>The corner's motion in a build by its hardpoints, with its wheel; travel is that of the hub's face.</summary>
    public static Checked<HardpointMotion> MotionOf(Car car, Build build, CornerPlace place)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(build);
        var found = LinkageOf.Corner(car, place, build);
        if (!found.Ok)
        {
            return Checked<HardpointMotion>.Wrong(found.Problems);
        }

        var (points, corner) = (found.Value, car.At(place));
        double clamp = Clamp(build, place) - (car.Build(car.MeasuredBuild) is { } now ? Clamp(now, place) : 0);
        double More(LinkageStation? station, double? length) =>
            station is not null && length is { } l ? l - points.Linkage.LengthAtRest(station) : 0;
        double? damper = car.At(place.Axle()).Layout == SpringLayout.Coilover ? corner.SpringAxisLength?.Si : corner.DamperAxisLength?.Si;
        return StrutSetting.Create(points.Linkage, points.Plate, clamp, out _, points.HubFaceOutboard) is { } set
            && HardpointMotion.Create(
                set.Linkage, out _, points.HubFaceOutboard, set.Plate, More(points.Linkage.Spring, corner.SpringAxisLength?.Si),
                More(points.Linkage.Damper, damper)) is { } motion
            ? Checked<HardpointMotion>.From(motion)
            : Checked<HardpointMotion>.Wrong(new Problem(
                $"{place.Words()} corner / plate and clamp", "a setting at which the linkage locks", "a smaller change",
                "Set plate and clamp nearer to how they were measured."));
    }

    private static IReadOnlyList<Problem> Hardpoints(
        List<SweepRow> rows, Car car, Build build, CornerPlace place, double slide, SweepGrid grid, SweepWishes wishes)
    {
        var found = MotionOf(car, build, place);
        if (!found.Ok)
        {
            return found.Problems;
        }

        var motion = found.Value;
        bool steered = car.At(place.Axle()).Steered;
        var other = steered && MotionOf(car, build, place.OtherSide()) is { Ok: true, Value: var across } ? across : null;
        foreach (double steering in grid.Steering)
        {
            double rack = steering;
            Reach there = grid.ByAngle && steering != 0 ? motion.RackFor(steering, out rack) : Reach.Reached;
            foreach (double travel in grid.Travels)
            {
                rows.Add(there != Reach.Reached
                    ? Unreached(place, travel, null, slide,
                        there == Reach.NotGiven ? "no rack steers this wheel" : "the linkage cannot be steered so far")
                    : At(motion, other, car, place, travel, rack, slide, steered, wishes));
            }
        }

        return [];
    }

    private static SweepRow At(
        HardpointMotion motion, HardpointMotion? other, Car car, CornerPlace place, double travel, double rack, double slide, bool steered,
        SweepWishes wishes)
    {
        Reach reach = motion.GeometryAt(travel, rack, out WheelGeometry wheel);
        if (reach != Reach.Reached)
        {
            return Unreached(place, travel, steered ? rack : null, slide,
                motion.Explain(travel, rack) is { } stop ? Words(stop) : "out of the linkage's reach");
        }

        motion.PoseAt(travel, rack, out var pose);
        int side = place.IsLeft() ? 1 : -1;
        bool front = place.Axle() == AxlePlace.Front;
        double? wheelbase = car.Wheelbase?.Si, height = wishes.CentreOfGravity;
        double share = front ? wishes.FrontBraking : 1 - wishes.FrontBraking;
        double straight = motion.WheelAt(0, out var rest) == Reach.Reached ? rest.Toe : wheel.Toe;
        double steer = -side * (wheel.Toe - straight);
        AckermannReading? ackermann = null;
        if (other is not null && wheelbase is { } w && car.At(place.Axle()).Track?.Si is { } track
            && other.GeometryAt(travel, rack, out WheelGeometry across) == Reach.Reached)
        {
            double here = -side * wheel.Toe, there = side * across.Toe;
            ackermann = SteeringAckermann.Read(side > 0 ? here : there, side > 0 ? there : here, w, track);
        }

        return new(
            place, travel, steered ? rack : null, slide, "", new(wheel.Camber, wheel.Toe, side * pose.HubFace.Y), wheel.Spring,
            wheel.Damper,
            wheel.Bar?.EndRatio ?? car.At(place).Motion.BarRatio?.Si, wheel, steer,
            wheelbase is { } b && height is { } h ? wheel.AntiBrake(front, share, b, h) : null,
            wheelbase is { } l && height is { } g ? wheel.AntiDrive(front, l, g) : null, ackermann);
    }

    // Tape and cycled levels know travel and plate; no rack moves them.
    private static IReadOnlyList<Problem> Otherwise(List<SweepRow> rows, Car car, Build build, CornerPlace place, double slide,
        SweepGrid grid)
    {
        var plan = CornerPlan.Compile(car, build, place, CarLearning.InUse(car));
        if (plan.Motion.Missing.Count > 0)
        {
            return [.. plan.Motion.Missing.Select(m => new Problem($"{place.Words()} corner / wheel motion", "not known", m.Label,
                "Measure it, or choose another way in which the motion is known."))];
        }

        var motion = plan.Motion.Make(plan.Inputs.Best());
        foreach (double steering in grid.Steering)
        {
            foreach (double travel in grid.Travels)
            {
                Reach reach = motion.WheelAt(travel, out var wheel);
                StationState? Of(Station station) => motion.StationAt(travel, station, out var state).IsUsable() ? state : null;
                rows.Add(steering != 0
                    ? Unreached(place, travel, null, slide, "steering is known only from hardpoints")
                    : reach.IsUsable()
                        ? new(place, travel, null, slide, "", wheel, Of(Station.Spring), Of(Station.Damper),
                            car.At(place).Motion.BarRatio?.Si, null, 0, null, null, null)
                        : Unreached(place, travel, null, slide, Words(reach)));
            }
        }

        return [];
    }

    private static SweepRow Unreached(CornerPlace place, double travel, double? rack, double slide, string why) =>
        new(place, travel, rack, slide, why, null, null, null, null, null, null, null, null, null);

    private static string Words(CannotReach stop)
    {
        string place = $"{Mm(stop.Reached.Travel)} of travel and {Mm(stop.Reached.Rack)} of rack";
        return stop.Missing == 0
            ? $"{stop.Tie} passes its dead centre at {place}"
            : $"{stop.Tie} is too {(stop.Missing > 0 ? "short" : "long")} beyond {place}";
    }

    private static string Words(Reach reach) => reach switch
    {
        Reach.OutsideReadings => "outside the cycled readings",
        Reach.LinkageCannotClose => "the arms cannot close",
        Reach.NotGiven => "camber was not read at the steps",
        _ => "not known",
    };

    private static string Mm(double metres) => new Measure(metres, Units.Millimetre, 1).Text;

    private static double Clamp(Build build, CornerPlace place) => build.At(place).ClampCamber?.Si ?? 0;

    private static Car ByHardpoints(Car car, CornerPlace place)
    {
        foreach (var corner in new[] { place, place.OtherSide() })
        {
            car = car.With(corner, car.At(corner) with { Motion = car.At(corner).Motion with { Level = MotionLevel.Hardpoints } });
        }

        return car;
    }

    private static Build Set(Build build, CornerPlace place, double slide) =>
        (build.At(place).Slide?.Si ?? 0) == slide ? build
            : build.With(place, build.At(place) with { Slide = new(Quantity.Of(slide * 1000, Units.Millimetre), null,
                Garage.Readings.ReadingSource.Setting) });

    private static Checked<IReadOnlyList<SweepRow>> Wrong(string field, string given, string allowed, string cure) =>
        Checked<IReadOnlyList<SweepRow>>.Wrong(new Problem(field, given, allowed, cure));
}
