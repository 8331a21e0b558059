using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Scanning;
using Cornerwright.Workshop.Surroundings;

namespace Cornerwright.Workshop.Clearances;

/// <summary>Everything round one corner's wheel, tape and scans together, asked with wheels that need not exist yet.</summary>
internal sealed class WheelRoom
{
    private const int ArcPoints = 12;
    private const int MostCells = 5_000, MostCellsToDecide = 20_000;

    /// <summary>m: windows and pictures need no more, but where it is this that decides.</summary>
    private const double Tolerance = 2e-4, ToleranceToDecide = 4e-5;

    private readonly List<ClearanceObstacle> _body = [], _knuckle = [], _met = [];
    private readonly List<(PoseRange Range, List<ClearanceObstacle> Obstacles)> _loads = [];
    private readonly PoseRange _range;
    private readonly double _toBody, _toKnuckle, _rim, _growth, _lean, _bound;

    /// <param name="n">Solved whole.</param>
    /// <param name="scans">Those at the corner.</param>
    public WheelRoom(CornerReader n, IReadOnlyList<PlacedScan> scans)
    {
        var limits = n.Plan.Limits;
        (_toBody, _toKnuckle, _rim) = (Say.Limit(limits.TyreToBody), Say.Limit(limits.TyreToKnuckle), Say.Limit(limits.RimToAnything));
        (_growth, _lean) = (n.Plan.Allowed.Growth, n.Plan.Allowed.Lean);
        _range = PoseRange.Measure(new CornerPoses(n), CornerPoses.Box(n));
        foreach (var (item, obstacle) in n.Corner.Clearance.Things(n))
        {
            (item.AttachedTo == AttachedTo.Body ? _body : _knuckle).Add(obstacle);
        }

        foreach (PlacedScan scan in scans)
        {
            ClearanceObstacle obstacle = ScanObstacles.Of(scan);
            (obstacle.Frame == ObstacleFrame.Body ? _body : _knuckle).Add(obstacle);
            _bound = Math.Max(_bound, scan.Bound);
        }

        // The tyre leans on its wheel toward what moves with it; the rim does not.
        _met.AddRange(_knuckle);
        _met.AddRange(n.Corner.Clearance.Leaning());
        AddLoads(n, scans);
    }

    /// <summary>How many things stand round the wheel.</summary>
    public int Things => _body.Count + _knuckle.Count;

    /// <summary>
    /// The least gap in hand over all poses, m: negative where a wanted gap is not kept. Changes by at most as much as the wheel moves
    /// sideways or grows. Not looked for above <paramref name="enough"/>.
    /// </summary>
    /// <param name="tyre">As the tyre is; growth and lean are added here.</param>
    /// <param name="rim">The rim.</param>
    /// <param name="enough">m.</param>
    public double InHand(in TyreSection tyre, in RimSection rim, double enough)
    {
        TyreSection grown = tyre with { Growth = _growth };
        TyreSection leaning = grown with { SectionWidth = grown.SectionWidth + (2 * _lean), TreadWidth = grown.TreadWidth + (2 * _lean) };
        if (!leaning.IsSound || !grown.IsSound || !rim.IsSound)
        {
            return double.NaN;
        }

        double least = InHand(WheelShape.Of(leaning, default, ArcPoints), _body, _toBody, enough);
        least = Math.Min(least, InHand(WheelShape.Of(grown, default, ArcPoints), _met, _toKnuckle, enough));
        var corners = new ProfilePoint[RimProfile.PointCount];
        RimProfile.Write(rim, corners);
        WheelShape bare = WheelShape.Of([new WheelOutline(WheelPart.RimBarrel, corners)]);
        return Math.Min(least, Math.Min(InHand(bare, _body, _rim, enough), InHand(bare, _knuckle, _rim, enough)));
    }

    /// <summary>The same for a thin ring round the spindle at a place of the half-plane, as if it were tyre.</summary>
    public double InHand(ProfilePoint ring, double enough)
    {
        const double Half = 5e-5;
        WheelShape shape = WheelShape.Of(
            [new WheelOutline(WheelPart.Tyre, [new(ring.A - Half, ring.R - Half), new(ring.A + Half, ring.R - Half),
                new(ring.A + Half, ring.R + Half), new(ring.A - Half, ring.R + Half)])]);
        return Math.Min(InHand(shape, _body, _toBody, enough), InHand(shape, _met, _toKnuckle, enough));
    }

    // The wheel under each load, among the things that it then comes nearer to.
    private void AddLoads(CornerReader n, IReadOnlyList<PlacedScan> scans)
    {
        var box = CornerPoses.Box(n);
        foreach (var (_, obstacle, states) in n.Corner.Clearance.BodyThings())
        {
            _loads.AddRange(states.Where(s => s.Sway is not null)
                .Select(s => (PoseRange.Measure(new CornerPoses(n, s.Places), box), new List<ClearanceObstacle> { obstacle })));
        }

        List<ClearanceObstacle> scanned = [.. scans.Select(ScanObstacles.Of).Where(o => o.Frame == ObstacleFrame.Body)];
        if (scanned.Count > 0)
        {
            _loads.AddRange(n.Corner.Clearance.AllRound().Select(l => (PoseRange.Measure(new CornerPoses(n, l.Places), box), scanned)));
        }
    }

    private double InHand(WheelShape shape, List<ClearanceObstacle> obstacles, double wanted, double enough)
    {
        double least = InHand(shape, obstacles, _range, wanted, enough);
        foreach (var (range, nearer) in ReferenceEquals(obstacles, _body) ? _loads : [])
        {
            double there = InHand(shape, nearer, range, wanted, Math.Min(enough, least));
            least = double.IsNaN(there) ? there : Math.Min(least, there);
        }

        return least;
    }

    private double InHand(WheelShape shape, List<ClearanceObstacle> obstacles, PoseRange range, double wanted, double enough)
    {
        if (obstacles.Count == 0)
        {
            return enough;
        }

        // Clear by the limit is clear to the limit less the tolerance: that much more is asked, or every load looked at would cost it.
        var gap = Certifying.Least(shape, obstacles, range, new(Tolerance, wanted + _bound + enough + Tolerance, MostCells: MostCells));
        if (gap.Why == CertifyingStop.ClearByLimit)
        {
            return enough;
        }

        // Neither clear nor too near within what was looked at: as finely as the judge looks.
        if (gap.Lower < wanted + _bound && gap.Upper >= wanted + _bound)
        {
            gap = Certifying.Least(shape, obstacles, range,
                new(ToleranceToDecide, wanted + _bound + enough + Tolerance, MostCells: MostCellsToDecide));
        }

        double least = gap.Why == CertifyingStop.DeepOverlap ? gap.Upper : gap.Lower;
        return double.IsNegativeInfinity(least) || gap.Why == CertifyingStop.Unreachable ? double.NaN : least - wanted - _bound;
    }
}
