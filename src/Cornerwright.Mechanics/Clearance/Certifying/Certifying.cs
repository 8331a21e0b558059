namespace Cornerwright.Mechanics.Clearance.Certifying;

/// <summary>What a certification is asked.</summary>
/// <param name="Tolerance">Greatest width of the interval, m, at least <see cref="LeastTolerance"/>.</param>
/// <param name="UpTo">
/// m: a least gap of at least this need not be found: it is only shown that none is below this less the tolerance.
/// Makes the answer quick where there is plenty.
/// </param>
/// <param name="DeepEnough">m: an overlap this deep, or nearly as deep as the part of the wheel goes, is not narrowed down further.</param>
/// <param name="MostCells">Where to give up.</param>
/// <remarks>Source: docs/theory/certified-clearance.md §5.</remarks>
public sealed record CertifyingTask(
    double Tolerance = 1e-4, double UpTo = double.PositiveInfinity, double DeepEnough = 0.02, int MostCells = 200_000)
{
    /// <summary>m: below it the single precision of the bounds would never close.</summary>
    public const double LeastTolerance = 2e-5;
}

/// <summary>The least gap over a box of poses with a proof that nothing smaller was missed.</summary>
/// <remarks>
/// Poses are sampled and the best followed downhill: the upper bound is a real pose. Then the box is cut until every
/// cell is shown to hold nothing nearer than that less the tolerance, or a nearer pose is met. Source: docs/theory/certified-clearance.md.
/// </remarks>
public static class Certifying
{
    /// <summary>The least gap of a wheel over a box of poses.</summary>
    /// <param name="shape">The wheel.</param>
    /// <param name="obstacles">At least one; they prune each other, so ask for all that share one wanted gap at once.</param>
    /// <param name="poses">Where the wheel goes. Not shared with another thread meanwhile.</param>
    /// <param name="box">Travel, steer and third way.</param>
    /// <param name="task">Tolerance and limits; null for a tenth of a millimetre.</param>
    /// <param name="stop">Asked now and then; true stops it, and the answer says so.</param>
    /// <exception cref="ArgumentException">An unsound box, no obstacle, or a tolerance below the least: a caller's bug.</exception>
    /// <remarks>Source: docs/theory/certified-clearance.md §3 to §5.</remarks>
    public static CertifiedGap Least(
        WheelShape shape, IReadOnlyList<ClearanceObstacle> obstacles, IPoseField poses, PoseBox box, CertifyingTask? task = null,
        Func<bool>? stop = null) =>
        Least(shape, obstacles, PoseRange.Measure(poses, box), task, stop);

    /// <summary>The least gap of a wheel over a range of poses that was measured before.</summary>
    /// <param name="shape">The wheel.</param>
    /// <param name="obstacles">At least one.</param>
    /// <param name="range">Where the wheel goes, over what. Not shared with another thread meanwhile.</param>
    /// <param name="task">Tolerance and limits; null for a tenth of a millimetre.</param>
    /// <param name="stop">Asked now and then; true stops it, and the answer says so.</param>
    /// <exception cref="ArgumentException">No obstacle, or a tolerance below the least: a caller's bug.</exception>
    /// <remarks>Source: docs/theory/certified-clearance.md §3 to §5.</remarks>
    public static CertifiedGap Least(
        WheelShape shape, IReadOnlyList<ClearanceObstacle> obstacles, PoseRange range, CertifyingTask? task = null, Func<bool>? stop = null)
    {
        ArgumentNullException.ThrowIfNull(shape);
        ArgumentNullException.ThrowIfNull(obstacles);
        ArgumentNullException.ThrowIfNull(range);
        task ??= new();
        if (obstacles.Count == 0)
        {
            throw new ArgumentException("At least one obstacle.", nameof(obstacles));
        }

        if (!(task.Tolerance >= CertifyingTask.LeastTolerance) || !double.IsFinite(task.Tolerance) || double.IsNaN(task.UpTo)
            || !(task.DeepEnough >= 0)
            || task.MostCells < 1)
        {
            throw new ArgumentException(
                "A tolerance of at least 0.02 mm, a limit, a depth of at least 0 and a number of cells.", nameof(task));
        }

        var search = new CellSearch(shape, obstacles, range, task, stop);
        for (int attempt = 0; attempt < 8; attempt++)
        {
            if (search.Run(range.Bends) is { } answer)
            {
                return answer;
            }

            range.Bends = range.Bends.Doubled();
        }

        return search.Answer(double.NegativeInfinity, CertifyingStop.NotSmooth);
    }
}
