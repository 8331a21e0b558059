using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Pictures;
using Cornerwright.Workshop.Scanning;
using Cornerwright.Workshop.Surroundings;

namespace Cornerwright.Workshop.Clearances;

/// <summary>
/// One corner of one build with everything near its wheel, solved once and then asked pose by pose, as somebody moves it. Numbers are those
/// of the judge at the best estimate. Not to be asked from two threads at once.
/// </summary>
public sealed class CornerClearance
{
    private const int ArcPoints = 12;

    /// <summary>m: so narrow that both ends, rounded outward to a tenth of a millimetre, are mostly one tenth apart.</summary>
    private const double Tolerance = 4e-5;

    private readonly CornerReader _n;
    private readonly CornerPoses _poses;
    private readonly PlacedScan[] _scans;
    private readonly int[] _nearest;
    private readonly NearThing[] _things;   // items of the plan, then scans
    private readonly WheelShape? _toBody, _toKnuckle;

    private CornerClearance(CornerPlan plan, IEnumerable<PlacedScan> scans)
    {
        var solved = new SolvedCorner(plan);
        _n = solved.Read;
        _scans = [.. scans];
        _nearest = [.. _scans.Select(_ => -1)];
        _poses = new CornerPoses(_n);
        _things = [];
        Box = new(default, default);
        Missing = [.. plan.Clearance.Missing.Select(m => m.Label)];
        if (Missing.Count > 0)
        {
            return;
        }

        solved.Solve();
        var (tyre, rim) = _n.Corner.Clearance.Sections(_n, forBody: true);
        var (upright, _) = _n.Corner.Clearance.Sections(_n, forBody: false);
        if (!tyre.IsSound || !upright.IsSound || !rim.IsSound || !plan.WheelNow!.Tyre(_n.X, 0, 0).IsSound
            || !plan.WheelNow.Rim(_n.X).IsSound)
        {
            Missing = ["a tyre and a rim whose sizes go together"];
            return;
        }

        (_toBody, _toKnuckle) = (WheelShape.Of(tyre, rim, ArcPoints), WheelShape.Of(upright, rim, ArcPoints));
        Box = CornerPoses.Box(_n);
        var limits = plan.Limits;
        double body = Say.Limit(limits.TyreToBody), knuckle = Say.Limit(limits.TyreToKnuckle), metal = Say.Limit(limits.RimToAnything);
        _things =
        [
            .. plan.Clearance.Items.Select(i => new NearThing(i.Id, i.Name, i.AttachedTo == AttachedTo.Body,
                i.Link is not null ? NearKind.Link : i.Piece is null ? NearKind.Tape : NearKind.Strut,
                i.AttachedTo == AttachedTo.Body ? body : knuckle, metal)),
            .. _scans.Select(s => new NearThing("scan-" + s.Scan.Id, s.Scan.Name, s.Scan.AttachedTo == AttachedTo.Body, NearKind.Scan,
                s.Scan.AttachedTo == AttachedTo.Body ? body : knuckle, metal)),
        ];
    }

    /// <summary>What keeps clearances from being computed, in words; nothing else may be asked while there is any.</summary>
    public IReadOnlyList<string> Missing { get; }

    /// <summary>
    /// What keeps gaps to the body from being known at lock, in words: while there is any, nothing that is said of steering is known.
    /// </summary>
    public IReadOnlyList<string> MissingAtLock => [.. _n.Plan.Clearance.MissingAtLock.Select(m => m.Label)];

    public CornerPlace Place => _n.Plan.Place;

    /// <summary>Every travel and steer that counts, with the user's limit on bump at lock.</summary>
    public PoseBox Box { get; }

    public bool Steers => Box.Most.Steer > Box.Least.Steer;

    public IReadOnlyList<NearThing> Things => _things;

    /// <summary>The placed scans at this corner.</summary>
    public IReadOnlyList<PlacedScan> Scans => _scans;

    /// <summary>Where each load case rides, m of travel; those alone that are known.</summary>
    public IReadOnlyList<(string Name, double Travel)> Rides =>
        [.. _n.Plan.Loads.Select((l, i) => (l.Case.Name, _n.Ride[i])).Where(r => double.IsFinite(r.Item2))];

    /// <summary>Diameter code of the build's rim; null where its wheel does not say it.</summary>
    public double? RimCode => _n.Plan.Parts.Rim?.DiameterCode;

    internal CornerReader Numbers => _n;

    /// <summary>Compiles and solves a corner.</summary>
    /// <param name="car">The car.</param>
    /// <param name="build">The build, which need not be among the car's own.</param>
    /// <param name="place">The corner.</param>
    /// <param name="scans">The points of the car's scans; null where there are none at hand.</param>
    public static CornerClearance Of(Car car, Build build, CornerPlace place, ScanShelf? scans = null)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(build);
        return new(CornerPlan.Compile(car, build, place, CarLearning.InUse(car)), scans?.At(place) ?? []);
    }

    /// <summary>True where the axle carries both wheels, so that the other one's travel counts.</summary>
    public bool Paired => _n.Plan.Other is not null;

    /// <summary>The wheel's pose at a travel (m) and steer (rad, left positive); false where it cannot be.</summary>
    /// <param name="travel">m.</param>
    /// <param name="steer">rad.</param>
    /// <param name="pose">The pose.</param>
    /// <param name="other">Travel of the axle's other wheel where one axle carries both, m; null for the same travel.</param>
    public bool TryPose(double travel, double steer, out WheelPose pose, double? other = null) =>
        _poses.TryPose(new(travel, steer, other ?? travel), out pose);

    /// <summary>The gap to everything at a pose, what has the least in hand first; empty where the wheel cannot be there.</summary>
    /// <param name="travel">m.</param>
    /// <param name="steer">rad.</param>
    /// <param name="other">As in <see cref="TryPose"/>.</param>
    public IReadOnlyList<PoseGap> At(double travel, double steer, double? other = null)
    {
        if (_toBody is null || !TryPose(travel, steer, out WheelPose pose, other))
        {
            return [];
        }

        var gaps = new List<PoseGap>();
        int items = _things.Length - _scans.Length;
        for (int i = 0; i < items; i++)
        {
            var clearing = _n.Corner.Clearance.At(_n, i, new(travel, steer, other ?? travel));
            if (double.IsFinite(clearing.Gap))
            {
                gaps.Add(new(_things[i], clearing.Gap, clearing.Part, clearing.OnWheel, clearing.OnObstacle));
            }
        }

        for (int i = 0; i < _scans.Length; i++)
        {
            gaps.Add(OfScan(i, items + i, pose, travel, steer));
        }

        return [.. gaps.OrderBy(g => g.InHand)];
    }

    /// <summary>The least gap to anything of the body over the whole box, proved. Null where nothing of the body is near.</summary>
    public LeastGap? Least(CancellationToken cancel = default)
    {
        var (obstacles, things) = (new List<ClearanceObstacle>(), new List<NearThing>());
        double bound = 0;
        for (int i = 0; i < _things.Length && _toBody is not null; i++)
        {
            int scan = i - (_things.Length - _scans.Length);
            if (_things[i].OnBody && _things[i].Kind != NearKind.Link
                && (scan >= 0 || double.IsFinite(_n.Corner.Clearance.Worst[i].Clearing.Gap)))
            {
                things.Add(_things[i]);
                obstacles.Add(scan >= 0 ? ScanObstacles.Of(_scans[scan]) : OfTape(_n.Corner.Clearance.PointsOf(i)));
                bound = scan >= 0 ? Math.Max(bound, _scans[scan].Bound) : bound;
            }
        }

        if (obstacles.Count == 0)
        {
            return LeastOfLink();
        }

        var found = Least(obstacles, _poses, double.PositiveInfinity, cancel);
        NearThing? nearest = found.Obstacle < 0 ? null : things[found.Obstacle];
        for (int i = 0; i < things.Count; i++)
        {
            // Under the loads that bring the wheel nearer to this thing; no further than it has to be shown.
            foreach (var load in LoadsOf(things[i]))
            {
                var there = Least([obstacles[i]], new CornerPoses(_n, load), found.Upper, cancel);
                if (there.Obstacle == 0 && there.Why != CertifyingStop.ClearByLimit && there.Lower < found.Lower)
                {
                    (found, nearest) = (there, things[i]);
                }
            }
        }

        LeastGap? body = nearest is null ? null : new(found.Lower - bound, found.Upper - bound, found.Place, nearest, found.Why);
        return LeastOfLink() is { } link && !(body?.Lower <= link.Lower) ? link : body;
    }

    // Its ends move with the wheel, so that it is not one obstacle over a box of poses: searched as the verdict searches it, not proved.
    private LeastGap? LeastOfLink()
    {
        const double Searched = 1e-4;
        int i = Array.FindIndex(_things, t => t.Kind == NearKind.Link);
        if (i < 0 || !double.IsFinite(_n.Corner.Clearance.Worst[i].Clearing.Gap))
        {
            return null;
        }

        var worst = _n.Corner.Clearance.Worst[i];
        var (range, others) = (_n.Swept(), _n.SweptOther());
        return new(worst.Clearing.Gap - Searched, worst.Clearing.Gap, new(range.Droop + (worst.Share * (range.Bump - range.Droop)),
            worst.Steer, others.Droop + (worst.Other * (others.Bump - others.Droop))), _things[i], CertifyingStop.CellLimit);
    }

    private CertifiedGap Least(IReadOnlyList<ClearanceObstacle> obstacles, CornerPoses poses, double upTo, CancellationToken cancel) =>
        Certifying.Least(_toBody!, obstacles, poses, Box, new(Tolerance, upTo, MostCells: 20_000), () => cancel.IsCancellationRequested);

    private IEnumerable<ThingPlaces> LoadsOf(NearThing thing)
    {
        int item = Array.IndexOf(_things, thing);
        return item < _things.Length - _scans.Length
            ? _n.Corner.Clearance.StatesOf(item).Where(s => s.Sway is not null).Select(s => s.Places)
            : _n.Corner.Clearance.AllRound().Select(l => l.Places);
    }

    /// <summary>The drop link at a pose, in S, m; null where there is none or the wheel cannot be there.</summary>
    public CylinderObstacle? Link(double travel, double steer, double? other = null)
    {
        int i = Array.FindIndex(_things, t => t.Kind == NearKind.Link);
        return i >= 0 && _n.Corner.Clearance.LinkAt(_n, i, new(travel, steer, other ?? travel)) is { IsSound: true } link ? link : null;
    }

    /// <summary>The strut's pieces at a travel, in S (a, 12, 3), m.</summary>
    public IReadOnlyList<CylinderObstacle> Strut(double travel) =>
        [.. _n.Corner.Clearance.Strut(_n, travel).Select(s => s.Cylinder).Where(c => c.IsSound)];

    /// <summary>What gap readings fix, as lines: of the body in B, of the knuckle in S.</summary>
    public IReadOnlyList<(NearThing Thing, Vec3[] Points)> Lines() =>
        [.. Enumerable.Range(0, _things.Length - _scans.Length)
            .Where(i => _things[i].Kind == NearKind.Tape && double.IsFinite(_n.Corner.Clearance.Worst[i].Clearing.Gap))
            .Select(i => (_things[i], _n.Corner.Clearance.PointsOf(i).ToArray()))];

    /// <summary>
    /// Tyre and rim, present (dashed in pictures) and proposed, and the tyre with the growth and lean that the limits ask for.
    /// </summary>
    public IReadOnlyList<SectionOutline> Outlines()
    {
        var (plan, x) = (_n.Plan, _n.X);
        TyreSection bare = plan.Wheel!.Tyre(x, 0, 0), grown = _n.Corner.Clearance.Sections(_n, forBody: true).Tyre;
        return
        [
            PictureMaker.Tyre("tyre now", plan.PartsNow!.Tyre!.Name, plan.WheelNow!.Tyre(x, 0, 0)),
            PictureMaker.Rim("rim now", plan.PartsNow.Wheel!.Name, plan.WheelNow.Rim(x)),
            .. grown != bare ? new[] { PictureMaker.Tyre("room", "with growth and lean", grown) } : [],
            PictureMaker.Tyre("tyre", plan.Parts.Tyre!.Name, bare),
            PictureMaker.Rim("rim", plan.Parts.Wheel!.Name, plan.Wheel.Rim(x)),
        ];
    }

    private PoseGap OfScan(int scan, int thing, in WheelPose pose, double travel, double steer)
    {
        if (_things[thing].OnBody)
        {
            var tree = ScanObstacles.Of(_scans[scan]).Tree;
            ScanClearing.TryBelow(tree, _toBody!, pose, ref _nearest[scan], out Clearing c);
            foreach (ThingPlaces load in LoadsOf(_things[thing]))
            {
                WheelPose there = pose with { HubFace = pose.HubFace + load.Moved(travel, steer) };
                c = ScanClearing.TryBelow(tree, _toBody!, there, ref _nearest[scan], out Clearing nearer, c.Gap) ? nearer : c;
            }

            return new(_things[thing], c.Gap - _scans[scan].Bound, c.Part, c.OnWheel, c.OnObstacle);
        }

        // Its points are in S already; seen from this pose 12 and 3 change places.
        ScanClearing.TryBelow(ScanObstacles.Of(_scans[scan]).Tree, _toKnuckle!, new WheelPose(default, Vec3.UnitX), ref _nearest[scan],
            out Clearing own);
        return new(_things[thing], own.Gap - _scans[scan].Bound, own.Part, Swapped(own.OnWheel), Swapped(own.OnObstacle));
    }

    private static Vec3 Swapped(in Vec3 p) => new(p.X, p.Z, p.Y);

    private static ClearanceObstacle OfTape(ReadOnlySpan<Vec3> points) =>
        points.Length == 1 ? ClearanceObstacle.OfPoints(points) : ClearanceObstacle.OfBar(points, 0);
}
