using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Scanning;
using Cornerwright.Workshop.Surroundings;

namespace Cornerwright.Workshop.Clearances;

/// <summary>One pose of a map.</summary>
/// <param name="Travel">m.</param>
/// <param name="Steer">rad, left positive.</param>
/// <param name="Gap">Least gap to anything of the body, scans and tape, m; not a number
/// where the limit on bump forbids the pose or the linkage cannot reach it.</param>
/// <param name="Clock">Where on the wheel, hours.</param>
/// <param name="Thing">What it is nearest to.</param>
/// <param name="Other">Travel of the axle's other wheel at which it is so near, m; null where each wheel moves for itself.</param>
public readonly record struct MapPose(double Travel, double Steer, double Gap, double Clock, string Thing, double? Other = null);

/// <summary>
/// Gaps over travel and steer, for the picture: exact at each pose, nothing said between them (for that see the verdict).
/// </summary>
/// <param name="Missing">What keeps it from being drawn, in words.</param>
/// <param name="Travels">m, ascending.</param>
/// <param name="Steers">rad, ascending.</param>
/// <param name="Poses">By steer, then travel.</param>
/// <param name="Wanted">The gap wanted between tyre and body, m.</param>
public sealed record ClearanceMap(
    IReadOnlyList<string> Missing, IReadOnlyList<double> Travels, IReadOnlyList<double> Steers, IReadOnlyList<MapPose> Poses, double Wanted)
{
    private const int ArcPoints = 12;

    /// <summary>Works out a map.</summary>
    /// <param name="car">The car.</param>
    /// <param name="build">The build.</param>
    /// <param name="place">The corner.</param>
    /// <param name="scans">The points of the car's scans; null where there are none at hand.</param>
    /// <param name="travels">Columns, at least 2.</param>
    /// <param name="steers">Rows, at least 2; one where the wheel does not steer.</param>
    public static ClearanceMap Of(Car car, Build build, CornerPlace place, ScanShelf? scans = null, int travels = 41, int steers = 31)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(build);
        ArgumentOutOfRangeException.ThrowIfLessThan(travels, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(steers, 2);
        var plan = CornerPlan.Compile(car, build, place, CarLearning.InUse(car));
        if (plan.Clearance.Missing.Count > 0)
        {
            return new([.. plan.Clearance.Missing.Select(m => m.Label)], [], [], [], 0);
        }

        var solved = new SolvedCorner(plan);
        solved.Solve();
        var n = solved.Read;
        var (tyre, rim) = n.Corner.Clearance.Sections(n, forBody: true);
        if (!tyre.IsSound || !rim.IsSound)
        {
            return new(["a tyre and a rim whose sizes go together"], [], [], [], 0);
        }

        var things = Things(n, [.. scans?.At(place) ?? []]);
        if (things.Count == 0 && !plan.Clearance.Items.Any(i => i.Link is not null && i.Missing.Count == 0))
        {
            return new(["something of the body near the wheel: a gap reading or a scan"], [], [], [], 0);
        }

        PoseBox box = CornerPoses.Box(n);
        double[] z = Even(box.Least.Travel, box.Most.Travel, travels);
        double[] s = box.Most.Steer > box.Least.Steer ? Even(box.Least.Steer, box.Most.Steer, steers) : [box.Least.Steer];
        var (shape, poses, list) = (WheelShape.Of(tyre, rim, ArcPoints), new CornerPoses(n), new List<MapPose>(z.Length * s.Length));
        int[] nearest = [.. things.Select(_ => -1)];
        foreach (double steer in s)
        {
            double allowed = box.AllowedBump(steer) + 1e-9;
            foreach (double travel in z)
            {
                list.Add(travel <= allowed ? Nearest(things, n, nearest, shape, poses, box, travel, steer) : Nowhere(travel, steer));
            }
        }

        return new([], z, s, list, Say.Limit(plan.Limits.TyreToBody));
    }

    private static MapPose Nowhere(double travel, double steer) => new(travel, steer, double.NaN, double.NaN, "");

    // Of the other wheel's travels the one at which this wheel comes nearest: at both ends, between them, and with both alike.
    private static MapPose Nearest(List<MapThing> things, CornerReader n, int[] nearest, WheelShape shape,
        CornerPoses poses, PoseBox box, double travel, double steer)
    {
        double least = box.Least.Third, most = box.Most.Third;
        bool paired = most > least;
        double[] others = paired ? [.. Even(least, most, 5), Math.Clamp(travel, least, most)] : [least];
        MapPose best = Nowhere(travel, steer);
        foreach (double other in others)
        {
            if (poses.TryPose(new(travel, steer, other), out WheelPose pose))
            {
                MapPose here = Link(n, At(things, nearest, shape, pose, travel, steer), other);
                best = !(here.Gap >= best.Gap) ? here with { Other = paired ? other : null } : best;
            }
        }

        return best;
    }

    private static MapPose At(List<MapThing> things, int[] nearest, WheelShape shape, in WheelPose pose,
        double travel, double steer)
    {
        var best = new MapPose(travel, steer, double.PositiveInfinity, double.NaN, "");
        for (int i = 0; i < things.Count; i++)
        {
            foreach (ThingPlaces? load in things[i].Loads)
            {
                WheelPose there = load is null ? pose : pose with { HubFace = pose.HubFace + load.Moved(travel, steer) };
                if (ScanClearing.TryBelow(things[i].Tree, shape, there, ref nearest[i], out Clearing c, best.Gap + things[i].Bound))
                {
                    best = best with { Gap = c.Gap - things[i].Bound, Clock = c.ClockHours, Thing = things[i].Name };
                }
            }
        }

        return best;
    }

    // The drop link, whose ends move with the wheel.
    private static MapPose Link(CornerReader n, in MapPose body, double other)
    {
        var items = n.Plan.Clearance.Items;
        for (int i = 0; i < items.Count; i++)
        {
            var clearing = items[i].Link is null ? ClearanceNumbers.Unknown
                : n.Corner.Clearance.At(n, i, new(body.Travel, body.Steer, n.Plan.Other is null ? body.Travel : other));
            if (clearing.Gap < body.Gap)
            {
                return body with { Gap = clearing.Gap, Clock = clearing.ClockHours, Thing = items[i].Name };
            }
        }

        return body;
    }

    /// <param name="Loads">Loads under which the wheel counts against it; null for the wheel at rest.</param>
    private sealed record MapThing(string Name, BoundTree Tree, double Bound, IReadOnlyList<ThingPlaces?> Loads);

    private static List<MapThing> Things(CornerReader n, PlacedScan[] scans)
    {
        IReadOnlyList<ThingPlaces?> round = [null, .. n.Corner.Clearance.AllRound().Select(l => l.Places)];
        return
        [
            .. n.Corner.Clearance.BodyThings().Select(t => new MapThing(t.Item.Name, t.Obstacle.Tree, 0,
                [.. t.States.Select(s => s.Sway is null ? null : s.Places)])),
            .. scans.Where(s => s.Scan.AttachedTo == AttachedTo.Body)
                .Select(s => new MapThing(s.Scan.Name, ScanObstacles.Of(s).Tree, s.Bound, round)),
        ];
    }

    private static double[] Even(double low, double high, int count) =>
        [.. Enumerable.Range(0, count).Select(i => i == count - 1 ? high : low + ((high - low) * i / (count - 1)))];
}
