using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;

namespace Cornerwright.Workshop.Scanning;

/// <summary>A place that readings have fixed: where a gap was read, on the thing it was read to.</summary>
/// <param name="Name">"arch lip at 11 o'clock".</param>
/// <param name="Place">From the corner's hub face on the body's axes, m.</param>
/// <param name="Deviation">Of the reading, m.</param>
public sealed record KnownPlace(string Name, Vec3 Place, double Deviation);

/// <summary>
/// The wheel that was on the car when it was measured: its shape, and where it
/// stands at any travel and steer, from the corner's hub face on the body's axes.
/// </summary>
public sealed class PresentWheel
{
    private const int ArcPoints = 12;

    /// <summary>Street side of the wheel's face, m: caps and spokes may stand out so far. Common practice, no source.</summary>
    private const double FaceReach = 0.06;

    private readonly CornerPlan _plan;
    private readonly CornerReader _numbers;
    private readonly double[] _solid;

    private PresentWheel(CornerPlan plan, CornerReader numbers)
    {
        (_plan, _numbers) = (plan, numbers);
        (Tyre, Rim) = (plan.WheelNow!.Tyre(numbers.X, 0, 0), plan.WheelNow.Rim(numbers.X));
        _solid = new double[WheelSolid.BufferLength(ArcPoints)];
        WheelSolid.Write(Tyre, Rim, ArcPoints, _solid);
    }

    public CornerPlace Corner => _plan.Place;

    public WheelSide Side => _plan.Clearance.Side;

    public TyreSection Tyre { get; }

    public RimSection Rim { get; }

    public WheelSolid Solid => WheelSolid.Written(ArcPoints, _solid);

    /// <summary>Furthest point of the wheel from its hub face, m.</summary>
    public double Reach => Math.Sqrt((Tyre.CrownRadius * Tyre.CrownRadius) + (Furthest * Furthest));

    /// <summary>Along the spindle from the hub face to the edge of the rim's outer lip, m, positive to the street.</summary>
    public double OuterLip => Rim.AxialCentre + (Rim.OverallWidth / 2);

    private double Furthest => Math.Abs(Tyre.AxialCentre) + (Math.Max(Tyre.SectionWidth, Rim.OverallWidth) / 2);

    /// <summary>The wheel of the build on which the car was measured; or what is not known of it yet.</summary>
    public static Checked<PresentWheel> Of(Car car, CornerPlace place)
    {
        ArgumentNullException.ThrowIfNull(car);
        string where = place.Words() + " corner / wheel on the car";
        if (car.Build(car.MeasuredBuild) is not { } build)
        {
            return Checked<PresentWheel>.Wrong(
                new Problem(where, "", "the build on which the car was measured", "Choose it on the car's page."));
        }

        var plan = CornerPlan.Compile(car, build, place, CarLearning.InUse(car));
        if (plan.Clearance.Missing.Count > 0)
        {
            return Checked<PresentWheel>.Wrong([.. plan.Clearance.Missing.Select(m =>
                new Problem(where, "", m.Label, "Fill it in on the corner's page or on the shelf."))]);
        }

        var solved = new SolvedCorner(plan);
        solved.Solve();
        var numbers = solved.Read;
        return plan.WheelNow!.Tyre(numbers.X, 0, 0).IsSound && plan.WheelNow.Rim(numbers.X).IsSound
            ? Checked<PresentWheel>.From(new PresentWheel(plan, numbers))
            : Checked<PresentWheel>.Wrong(new Problem(where, plan.PartsNow!.Tyre!.Name, "a tyre and a rim whose sizes go together",
                "Check the sizes of both on the shelf."));
    }

    /// <summary>Where it stands at a travel (m) and steer (rad, left positive); false where the wheel cannot be there.</summary>
    public bool PoseAt(double travel, double steer, out WheelPose pose) =>
        _numbers.Corner.Clearance.Places.Pose(_numbers, _numbers.MotionNow, travel, steer, out pose);

    /// <summary>
    /// Signed distance of a point in S (a, 12, 3) from the wheel with all that it carries inside its rim, m: what a scan shows of spokes,
    /// hub and cap is its own too.
    /// </summary>
    public double OwnDistance(in Vec3 inSpindle)
    {
        double r = Math.Sqrt((inSpindle.Y * inSpindle.Y) + (inSpindle.Z * inSpindle.Z)), a = inSpindle.X;
        double inner = Rim.AxialCentre - (Rim.OverallWidth / 2), outer = OuterLip + FaceReach;
        double drum = Math.Max(r - Rim.LipRadius, Math.Max(inner - a, a - outer));
        return Math.Min(Solid.SignedDistance(a, r, out _, out _, out _), drum);
    }

    /// <summary>How deep a point in S (a, 12, 3) lies inside the tyre, m; negative outside of it, and inside of the rim.</summary>
    public double DepthInTyre(in Vec3 inSpindle)
    {
        double r = Math.Sqrt((inSpindle.Y * inSpindle.Y) + (inSpindle.Z * inSpindle.Z));
        return Math.Min(-Solid.SignedDistance(inSpindle.X, r, out _, out _, out _), r - Rim.LipRadius);
    }

    /// <summary>What the corner's gap readings fix of the body.</summary>
    public IReadOnlyList<KnownPlace> KnownPlaces()
    {
        var places = new List<KnownPlace>();
        foreach (var obstacle in _plan.Corner.Obstacles.Where(o => o.AttachedTo == AttachedTo.Body))
        {
            foreach (var gap in obstacle.Gaps)
            {
                if (gap.Distance is { } distance && PoseAt(gap.Travel?.Si ?? 0, gap.Steer?.Si ?? 0, out var pose))
                {
                    var reading = new GapReading((WheelFeature)gap.From, Direction(gap.Direction), gap.Clock, distance.Si);
                    places.Add(new KnownPlace(FormattableString.Invariant($"{obstacle.Name} at {gap.Clock:0.#} o'clock"),
                        reading.InBody(Tyre, Rim, pose), distance.StandardDeviation));
                }
            }
        }

        return places;
    }

    private static Mechanics.Clearance.GapDirection Direction(Garage.Chassis.GapDirection direction) => direction switch
    {
        Garage.Chassis.GapDirection.Nearest => Mechanics.Clearance.GapDirection.Nearest,
        Garage.Chassis.GapDirection.Radial => Mechanics.Clearance.GapDirection.Radial,
        Garage.Chassis.GapDirection.Outboard => Mechanics.Clearance.GapDirection.AxialOutboard,
        _ => Mechanics.Clearance.GapDirection.AxialInboard,
    };
}
