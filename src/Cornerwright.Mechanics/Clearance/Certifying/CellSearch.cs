using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Clearance.Certifying;

/// <summary>One certification at work: the best pose so far, and the cells that are still open.</summary>
/// <remarks>Source: docs/theory/certified-clearance.md §5.</remarks>
internal sealed class CellSearch
{
    /// <summary>
    /// Differences are taken over this share of a cell's extent: small enough to cost little, large enough to stay above rounding.
    /// </summary>
    private const double SlopeShare = 0.125;

    /// <summary>A cell this small a share of the box along every way, in which no pose was found, is left out.</summary>
    private const double SmallestShare = 1.0 / 128;

    /// <summary>Of half a piece's smaller side. Deeper than this depths are level, and no cell would ever be shown.</summary>
    private const double DeepShare = 0.8;

    private readonly WheelShape shape;
    private readonly IReadOnlyList<ClearanceObstacle> obstacles;
    private readonly IPoseField field;
    private readonly PoseBox box;
    private readonly IReadOnlyList<(PosePlace Place, WheelPose Pose)> seeds;
    private readonly double tolerance;
    private readonly int mostCells;
    private readonly double deepEnough;
    private readonly Func<bool>? stop;
    private readonly int[] nearest;
    private readonly double[] excess;
    private readonly Stack<PoseCell> open = new();
    private PoseBends bends = null!;
    private double upper;
    private PosePlace bestPlace;
    private WheelPose bestPose;
    private Clearing bestClearing;
    private int bestObstacle = -1;
    private int cells;
    private int unreached;
    private int worstFirst;
    private bool anyPose;

    public CellSearch(
        WheelShape shape, IReadOnlyList<ClearanceObstacle> obstacles, PoseRange range, CertifyingTask task, Func<bool>? stop)
    {
        (this.shape, this.obstacles, field, box, seeds, this.stop) = (shape, obstacles, range.Field, range.Box, range.Seeds, stop);
        (mostCells, deepEnough) = (task.MostCells, task.DeepEnough);
        nearest = new int[obstacles.Count];
        Array.Fill(nearest, -1);
        excess = [.. obstacles.Select(o => o.Excess)];
        tolerance = task.Tolerance - excess.Max();
        if (!(tolerance >= 0.5 * CertifyingTask.LeastTolerance))
        {
            throw new ArgumentException("The tolerance is finer than the obstacles are given.", nameof(task));
        }

        upper = task.UpTo;
        Limit = task.UpTo;
    }

    private double Limit { get; }

    private enum CellState
    {
        Shown,
        Open,
        Outside,
        Unreached,
        BendsTooSmall,
    }

    /// <summary>The whole search with given bounds on the motion's bend; null when a pose contradicted them.</summary>
    public CertifiedGap? Run(PoseBends assumed)
    {
        bends = assumed;
        (cells, unreached) = (0, 0);
        open.Clear();
        OfKnuckle();
        Seed();
        open.Push(new(box.Least, box.Most));
        while (open.Count > 0)
        {
            if (stop?.Invoke() == true)
            {
                return Answer(double.NegativeInfinity, CertifyingStop.Cancelled);
            }

            if (IsDeep())
            {
                return Answer(-Enumerable.Range(0, shape.Pieces).Max(shape.MostDepth), CertifyingStop.DeepOverlap);
            }

            if (++cells > mostCells)
            {
                return anyPose ? OutOfCells() : Answer(double.PositiveInfinity, CertifyingStop.Unreachable);
            }

            PoseCell cell = open.Pop();
            CellState state = Look(cell, out int cut);
            if (state == CellState.BendsTooSmall)
            {
                return null;
            }

            if (state == CellState.Open || (state == CellState.Unreached && !IsSmallest(cell, out cut)))
            {
                var (low, high) = cell.Halved(cut);
                open.Push(low);
                open.Push(high);
            }
            else if (state == CellState.Unreached)
            {
                unreached++;
            }
        }

        return !anyPose ? Answer(double.PositiveInfinity, CertifyingStop.Unreachable)
            : bestObstacle < 0 ? Answer(Limit - tolerance, CertifyingStop.ClearByLimit)
            : Answer(upper - tolerance, CertifyingStop.Closed);
    }

    private bool IsDeep() =>
        bestObstacle >= 0 && -upper > Math.Min(deepEnough, DeepShare * shape.MostDepth(bestClearing.Part));

    public CertifiedGap Answer(double lower, CertifyingStop why)
    {
        double most = bestObstacle < 0 ? double.PositiveInfinity : upper + excess[bestObstacle];
        return new(lower, most, bestPlace, bestPose, bestClearing, bestObstacle, why, cells, unreached);
    }

    /// <summary>What follows the wheel has one gap for all poses.</summary>
    private void OfKnuckle()
    {
        WheelPose own = new(default, Vec3.UnitX);
        for (int i = 0; i < obstacles.Count; i++)
        {
            int start = -1;
            if (obstacles[i].Frame == ObstacleFrame.Knuckle
                && ScanClearing.TryBelow(obstacles[i].Tree, shape, own, ref start, out Clearing clearing, upper))
            {
                PosePlace place = new(Math.Min(box.Middle.Travel, box.AllowedBump(box.Middle.Steer)), box.Middle.Steer, box.Middle.Third);
                if (field.TryPose(place, out WheelPose pose))
                {
                    // Seen from its own pose, 12 and 3 o'clock of what is in S already have changed places.
                    Clearing there = clearing with { OnWheel = Changed(clearing.OnWheel), OnObstacle = Changed(clearing.OnObstacle) };
                    (upper, bestObstacle, bestClearing, bestPlace, bestPose, anyPose) = (clearing.Gap, i, there, place, pose, true);
                }
            }
        }

        static Vec3 Changed(in Vec3 p) => new(p.X, p.Z, p.Y);
    }

    /// <summary>Real poses over the whole box, then downhill from the best: most of the proof is then against the final value.</summary>
    private void Seed()
    {
        foreach (var (place, pose) in seeds)
        {
            anyPose = true;
            for (int i = 0; i < obstacles.Count; i++)
            {
                TryOne(i, place, pose);
            }
        }

        // Only worth it where the lowest of the samples is a place of its own.
        for (double step = 1.0 / 12; bestObstacle >= 0 && step > 1e-4; step *= 0.5)
        {
            for (int round = 0; round < 8; round++)
            {
                double before = upper;
                for (int way = 0; way < 3; way++)
                {
                    double width = step * (box.Most[way] - box.Least[way]);
                    if (width > 0 && obstacles[bestObstacle].Frame == ObstacleFrame.Body)
                    {
                        PosePlace centre = bestPlace;
                        Try(centre.With(way, Math.Min(box.Most[way], centre[way] + width)));
                        Try(centre.With(way, Math.Max(box.Least[way], centre[way] - width)));
                    }
                }

                if (!(upper < before - 1e-7))
                {
                    break;
                }
            }
        }
    }

    private void Try(PosePlace place)
    {
        place = place with { Travel = Math.Min(place.Travel, box.AllowedBump(place.Steer)) };
        if (place.Travel >= box.Least.Travel && field.TryPose(place, out WheelPose pose))
        {
            anyPose = true;
            for (int i = 0; i < obstacles.Count; i++)
            {
                TryOne(i, place, pose);
            }
        }
    }

    private void TryOne(int i, in PosePlace place, in WheelPose pose)
    {
        if (obstacles[i].Frame == ObstacleFrame.Body
            && ScanClearing.TryBelow(obstacles[i].Tree, shape, pose, ref nearest[i], out Clearing clearing, upper))
        {
            (upper, bestObstacle, bestClearing, bestPlace, bestPose) = (clearing.Gap, i, clearing, place, pose);
        }
    }

    private CellState Look(in PoseCell cell, out int cut)
    {
        Span<double> extents = stackalloc double[3];
        CellState state = TryMotion(cell, extents, out CellMotion motion);
        cut = WidestWay(cell);
        if (state != CellState.Open)
        {
            return state;
        }

        anyPose = true;
        for (int attempt = 0; attempt < 3; attempt++)
        {
            var proof = new CellProof(shape, motion, upper - tolerance);
            int failed = FirstFailing(ref proof);
            if (failed < 0)
            {
                return CellState.Shown;
            }

            // A nearer pose lowers what is to be shown, and the same cell may do after all.
            double before = upper;
            TryOne(failed, motion.Origin, motion.Pose);
            cut = proof.WayToCut(bends, extents);
            if (!(upper < before))
            {
                break;
            }
        }

        return CellState.Open;
    }

    /// <summary>The obstacle that the cell is not shown to clear, the one that failed last first; -1 for none.</summary>
    private int FirstFailing(ref CellProof proof)
    {
        for (int n = 0; n < obstacles.Count; n++)
        {
            int i = (worstFirst + n) % obstacles.Count;
            if (obstacles[i].Frame == ObstacleFrame.Body && !proof.Holds(obstacles[i].Tree))
            {
                worstFirst = i;
                return i;
            }
        }

        return -1;
    }

    /// <summary>A pose of the cell that the limit allows, straight-line changes round it, and a check of what they may miss.</summary>
    private CellState TryMotion(in PoseCell cell, Span<double> extents, out CellMotion motion)
    {
        motion = default;
        var (bump, steer) = box.MostAllowedBump(cell.Low.Steer, cell.High.Steer);
        if (bump < cell.Low.Travel)
        {
            return CellState.Outside;
        }

        double top = Math.Min(cell.High.Travel, bump);
        PosePlace middle =
            new(0.5 * (cell.Low.Travel + top), 0.5 * (cell.Low.Steer + cell.High.Steer), 0.5 * (cell.Low.Third + cell.High.Third));
        if (box.AllowedBump(middle.Steer) < middle.Travel)
        {
            middle = middle with { Steer = steer, Travel = 0.5 * (cell.Low.Travel + Math.Min(cell.High.Travel, bump)) };
        }

        if (!TryOrigin(cell, top, ref middle, out WheelPose pose))
        {
            return CellState.Unreached;
        }

        Span<double> steps = stackalloc double[3];
        Span<PoseChange> changes = stackalloc PoseChange[3];
        for (int way = 0; way < 3; way++)
        {
            double high = way == 0 ? top : cell.High[way];
            extents[way] = Math.Max(high - middle[way], middle[way] - cell.Low[way]);
            steps[way] = SlopeShare * extents[way];
            changes[way] = extents[way] > 0 ? Change(middle, pose, way, steps[way], extents[way]) : default;
        }

        var (hubRest, spindleRest) = bends.Rest(extents, steps);
        motion = new(middle, pose, changes[0], changes[1], changes[2], hubRest, spindleRest);
        return Contradicted(cell, top, motion, extents) ? CellState.BendsTooSmall : CellState.Open;
    }

    /// <summary>The middle, or else a corner that can be reached and is allowed.</summary>
    private bool TryOrigin(in PoseCell cell, double top, ref PosePlace place, out WheelPose pose)
    {
        if (field.TryPose(place, out pose))
        {
            return true;
        }

        for (int corner = 0; corner < 8; corner++)
        {
            PosePlace at = CornerOf(cell, top, corner);
            if (box.AllowedBump(at.Steer) >= at.Travel && field.TryPose(at, out pose))
            {
                place = at;
                return true;
            }
        }

        return false;
    }

    private static PosePlace CornerOf(in PoseCell cell, double top, int corner) => new(
        (corner & 1) == 0 ? cell.Low.Travel : top,
        (corner & 2) == 0 ? cell.Low.Steer : cell.High.Steer,
        (corner & 4) == 0 ? cell.Low.Third : cell.High.Third);

    /// <summary>
    /// Central differences where both sides can be reached, else one-sided: either is within half a bend times the step of the slope.
    /// </summary>
    private PoseChange Change(in PosePlace at, in WheelPose pose, int way, double step, double extent)
    {
        bool up = field.TryPose(at.With(way, at[way] + step), out WheelPose high),
            down = field.TryPose(at.With(way, at[way] - step), out WheelPose low);
        (high, low) = (up ? high : pose, down ? low : pose);
        double scale = extent / (step * ((up ? 1 : 0) + (down ? 1 : 0)));
        return up || down ? new((high.HubFace - low.HubFace) * scale, (high.Spindle - low.Spindle) * scale) : default;
    }

    /// <summary>Looks at one corner of the cell, another each time, whether it is where the straight lines and the rest allow.</summary>
    private bool Contradicted(in PoseCell cell, double top, in CellMotion motion, ReadOnlySpan<double> extents)
    {
        PosePlace at = CornerOf(cell, top, cells & 7);
        if (!field.TryPose(at, out WheelPose pose))
        {
            return false;
        }

        Vec3 hub = motion.Pose.HubFace, spindle = motion.Pose.Spindle;
        for (int way = 0; way < 3; way++)
        {
            double share = extents[way] > 0 ? (at[way] - motion.Origin[way]) / extents[way] : 0;
            hub += motion[way].Hub * share;
            spindle += motion[way].Spindle * share;
        }

        return !((pose.HubFace - hub).Length <= motion.HubRest) || !((pose.Spindle - spindle).Length <= motion.SpindleRest);
    }

    private int WidestWay(in PoseCell cell)
    {
        int widest = 0;
        double most = -1;
        for (int way = 0; way < 3; way++)
        {
            double width = box.Most[way] - box.Least[way], share = width > 0 ? (cell.High[way] - cell.Low[way]) / width : 0;
            (widest, most) = share > most ? (way, share) : (widest, most);
        }

        return widest;
    }

    private bool IsSmallest(in PoseCell cell, out int cut)
    {
        cut = WidestWay(cell);
        double width = box.Most[cut] - box.Least[cut];
        return !(width > 0) || cell.High[cut] - cell.Low[cut] <= SmallestShare * width;
    }

    /// <summary>The limit of cells was met: what can be shown of those still open, with ever more leave.</summary>
    private CertifiedGap OutOfCells()
    {
        double lower = upper - tolerance;
        Span<double> extents = stackalloc double[3];
        foreach (PoseCell cell in open)
        {
            CellState state = TryMotion(cell, extents, out CellMotion motion);
            if (state == CellState.Outside)
            {
                continue;
            }

            bool shown = false;
            for (int k = 0; k < 16 && !shown && state == CellState.Open; k++)
            {
                double threshold = Math.Min(lower, upper - (tolerance * Math.Pow(2, k)));
                var proof = new CellProof(shape, motion, threshold);
                shown = FirstFailing(ref proof) < 0;
                lower = shown ? threshold : lower;
            }

            if (!shown)
            {
                return Answer(double.NegativeInfinity, CertifyingStop.CellLimit);
            }
        }

        return Answer(lower, CertifyingStop.CellLimit);
    }
}
