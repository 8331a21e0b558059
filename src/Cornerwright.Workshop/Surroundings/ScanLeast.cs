using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Scanning;

namespace Cornerwright.Workshop.Surroundings;

/// <summary>
/// The least gap between one corner's wheel and one scan over all its poses, certified, and the same place again when a number moves.
/// </summary>
internal sealed class ScanLeast
{
    /// <summary>Points on each arc of the tyre's section, as for everything else the judge clears.</summary>
    private const int ArcPoints = 12;

    /// <summary>More cells than this are not worth waiting for: usual are some hundred.</summary>
    private const int MostCells = 20_000;

    private readonly PlacedScan _scan;
    private readonly Handle _lie;
    private readonly double[] _solid = new double[WheelSolid.BufferLength(ArcPoints)];
    private readonly ReadSet _reads = new();
    private SolvedCorner? _base;
    private double _share, _otherShare, _below, _upTo;
    private Vec3 _place;
    private bool _known;
    private ThingPlaces? _under;   // the load under which it is nearest; null at rest

    /// <summary>How far above what is wanted a changed row is still followed, m.</summary>
    private const double Enough = 0.03;

    /// <param name="scan">Placed at the corner.</param>
    /// <param name="lie">The input that stands for how well it lies, m off where it is thought to be, toward the wheel.</param>
    public ScanLeast(PlacedScan scan, Handle lie) => (_scan, _lie) = (scan, lie);

    public PlacedScan Scan => _scan;

    /// <summary>The last certified answer.</summary>
    public CertifiedGap? Found { get; private set; }

    private ThingPlaces? _loaded;

    private bool OnBody => ScanObstacles.Of(_scan).Frame == ObstacleFrame.Body;

    /// <summary>Certifies the row that everything is compared with.</summary>
    /// <param name="corner">Solved whole.</param>
    /// <param name="limit">The gap wanted, m: rows beside it are only followed some way above it.</param>
    public void Keep(SolvedCorner corner, double limit)
    {
        var n = new CornerReader(corner, _reads);
        (_base, Found) = (corner, At(n));
        _under = _loaded;
        _known = Found is { Obstacle: 0 } && double.IsFinite(Found.Lower);
        if (!_known)
        {
            return;
        }

        // What is stated is the lower end: nothing comes nearer. An overlap too deep to be narrowed down is stated as it was met.
        _below = Below(Found!);
        _upTo = Math.Max(Found!.Upper, limit) + Enough;
        var (droop, bump) = n.Swept();
        var others = n.SweptOther();
        _share = bump > droop ? (Found.Place.Travel - droop) / (bump - droop) : 0;
        _otherShare = others.Bump > others.Droop ? (Found.Place.Third - others.Droop) / (others.Bump - others.Droop) : 0;
        _place = OnBody ? SpindleFrame.Of(Found.Pose).ToBody(Found.Clearing.OnObstacle) : Found.Clearing.OnObstacle;
    }

    /// <summary>
    /// The least gap, m: certified where the numbers were solved whole (up to some way above what is wanted); where they only follow
    /// the row that was kept, the gap at the place and in the state found there.
    /// </summary>
    public double Value(CornerReader n)
    {
        if (!_known)
        {
            return double.NaN;
        }

        n.Note(_reads);
        double gap = ReferenceEquals(n.Corner, _base) ? Found!.Upper - _below : n.Corner.Whole ? Whole(n) : Again(n) - _below;
        return gap - _scan.Bound - n.X[_lie];
    }

    private double Whole(CornerReader n)
    {
        CertifiedGap? gap = At(n, _upTo);
        return gap switch
        {
            null => double.NaN,
            { Why: CertifyingStop.ClearByLimit } => gap.Lower,
            { Obstacle: 0 } when double.IsFinite(gap.Lower) => gap.Upper - Below(gap),
            _ => double.NaN,
        };
    }

    /// <summary>The certified answer for a row that was solved whole.</summary>
    private CertifiedGap? At(CornerReader n, double upTo = double.PositiveInfinity)
    {
        var (tyre, rim) = n.Corner.Clearance.Sections(n, OnBody);
        return tyre.IsSound && rim.IsSound
            ? Least(n, WheelShape.Of(tyre, rim, ArcPoints), upTo) : null;
    }

    // At rest, and under every load, each no further than it could bring the wheel nearer still.
    private CertifiedGap Least(CornerReader n, WheelShape shape, double upTo)
    {
        ClearanceObstacle[] scan = [ScanObstacles.Of(_scan)];
        var box = CornerPoses.Box(n);
        var least = Certifying.Least(shape, scan, new CornerPoses(n), box, new(UpTo: upTo, MostCells: MostCells));
        _loaded = null;
        foreach (var (_, places) in OnBody ? n.Corner.Clearance.AllRound() : [])
        {
            var there = Certifying.Least(shape, scan, new CornerPoses(n, places), box,
                new(UpTo: Math.Min(upTo, least.Upper), MostCells: MostCells));
            if (there.Lower < least.Lower && there.Why != CertifyingStop.ClearByLimit)
            {
                (least, _loaded) = (there, places);
            }
        }

        return least;
    }

    private static double Below(CertifiedGap gap) => gap.Why == CertifyingStop.DeepOverlap ? 0 : gap.Width;

    private double Again(CornerReader n)
    {
        var (tyre, rim) = n.Corner.Clearance.Sections(n, OnBody);
        if (!tyre.IsSound || !rim.IsSound)
        {
            return double.NaN;
        }

        WheelSolid wheel = WheelSolid.Write(tyre, rim, ArcPoints, _solid);
        if (!OnBody)
        {
            return wheel.SignedDistance(_place);
        }

        var (droop, bump) = n.Swept();
        var others = n.SweptOther();
        PosePlace place = new(droop + (_share * (bump - droop)), Found!.Place.Steer,
            others.Droop + (_otherShare * (others.Bump - others.Droop)));
        return (_under ?? n.Corner.Clearance.Places).Pose(n, n.Motion, place, out WheelPose pose)
            ? wheel.SignedDistance(SpindleFrame.Of(pose).ToSpindle(_place))
            : double.NaN;
    }
}
