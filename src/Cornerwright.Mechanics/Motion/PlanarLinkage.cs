using Cornerwright.Mechanics.Numerics;


namespace Cornerwright.Mechanics.Motion;

/// <summary>A planar linkage of one freedom, driven by the turn of its lower arm and asked by wheel travel.</summary>
/// <remarks>
/// The pose is a closed form of the arm's turn; the turn that gives the asked travel is found by Halley's iteration from the
/// reference state, never past a dead centre, so the branch of the reference state is kept. Derivatives by travel are exact:
/// dQ/dz = Q'/z', d²Q/dz² = (Q'' - dQ/dz z'')/z'². Source: docs/theory/motion.md §3.
/// </remarks>
public abstract class PlanarLinkage : CornerMotion
{
    private const int IterationLimit = 40;
    private const double LargestTurn = 0.25;          // rad a step; keeps the iteration near the branch it started on
    private const double TravelTolerance = 1e-13;     // m; near rounding of lengths of 0.5 m
    private const double LeastGain = 1e-4;            // m/rad of arm turn; below it the arm is at a dead centre

    private readonly double camber;
    private readonly double toe;
    private readonly double toeGain;

    private protected PlanarLinkage(double camber, double toe, double toeGain) =>
        (this.camber, this.toe, this.toeGain) = (camber, toe, toeGain);

    /// <summary>A pose with its derivatives by the arm's turn. Closure is the square root that vanishes where the linkage folds.</summary>
    private protected readonly record struct Pose(
        JetTurn Arm, JetPoint LowerBall, JetPoint UpperBall, JetTurn Knuckle, JetPoint Hub, Jet Length, Jet Closure);

    private protected abstract bool PoseAt(double armTurn, out Pose pose);

    private protected abstract bool LengthAt(in Pose pose, Station station, out Jet length);

    /// <inheritdoc/>
    /// <remarks>Source: docs/theory/motion.md §3.</remarks>
    public sealed override Reach WheelAt(double travel, out WheelMotionState wheel)
    {
        Reach reach = Solve(travel, out Pose pose);
        // A turn from outboard towards up carries the wheel's top inward: less camber.
        wheel = reach == Reach.Reached
            ? new(camber - pose.Knuckle.Angle, toe + (toeGain * travel), pose.Hub.Outboard.V)
            : default;
        return reach;
    }

    /// <inheritdoc/>
    /// <remarks>Source: docs/theory/motion.md §3.</remarks>
    public sealed override Reach StationAt(double travel, Station station, out StationState state)
    {
        state = default;
        Reach reach = Solve(travel, out Pose pose);
        if (reach != Reach.Reached)
        {
            return reach;
        }

        if (!LengthAt(pose, station, out Jet length))
        {
            return Reach.NotGiven;
        }

        // Chain rule from the arm's turn to travel.
        Jet z = pose.Hub.Up;
        double slope = length.D / z.D;
        double curve = (length.DD - (slope * z.DD)) / (z.D * z.D);
        state = new(length.V, -slope, -curve);
        return Reach.Reached;
    }

    /// <summary>
    /// True when a quantity's change between two poses is that of its mean slope to 5 %: a smooth branch over 0.25 rad errs by about
    /// 0.5 %; a leap over a dead centre, where the height folds back, by far more.
    /// </summary>
    private static bool Continues(Jet from, Jet to, double step)
    {
        double expected = 0.5 * step * (from.D + to.D);
        double room = 0.05 * 0.5 * Math.Abs(step) * (Math.Abs(from.D) + Math.Abs(to.D));
        return Math.Abs(to.V - from.V - expected) <= room + 1e-12;
    }

    /// <summary>
    /// True when the closure, continued from here by its own series, stays clear of zero and is what the next pose has. Where the linkage
    /// folds it runs straight through zero, while a square root comes back up: that is the other branch.
    /// </summary>
    private static bool StaysOpen(Jet from, double to, double step)
    {
        double expected = from.V + (step * (from.D + (0.5 * step * from.DD)));
        return expected > 0.1 * from.V && Math.Abs(to - expected) <= 0.2 * from.V;
    }

    private Reach Solve(double travel, out Pose pose)
    {
        pose = default;
        if (!double.IsFinite(travel))
        {
            return Reach.NotFinite;
        }

        double turn = 0;
        if (!PoseAt(0, out Pose here) || !(Math.Abs(here.Hub.Up.D) > LeastGain))
        {
            return Reach.LinkageCannotClose;
        }

        // Halley's step, halved while it leaves the branch.
        double direction = Math.Sign(here.Hub.Up.D);
        for (int i = 0; i < IterationLimit; i++)
        {
            double miss = here.Hub.Up.V - travel;
            if (Math.Abs(miss) <= TravelTolerance)
            {
                pose = here;
                return Reach.Reached;
            }

            Jet z = here.Hub.Up;
            double newton = -miss / z.D;
            double denominator = 1 + (0.5 * newton * z.DD / z.D);
            double step = Math.Clamp(newton / (denominator > 0.5 ? denominator : 1), -LargestTurn, LargestTurn);
            bool kept = false;
            for (int halving = 0; halving < 12 && !kept; halving++, step *= 0.5)
            {
                kept = PoseAt(turn + step, out Pose next)
                    && direction * next.Hub.Up.D > LeastGain
                    && Continues(here.Hub.Up, next.Hub.Up, step)
                    && StaysOpen(here.Closure, next.Closure.V, step);
                if (kept)
                {
                    turn += step;
                    here = next;
                }
            }

            if (!kept || (Math.Abs(step) < 1e-17))
            {
                break;
            }
        }

        // Rounding may hold the miss just above the tolerance: 1e-11 m is still far below any reading.
        pose = here;
        return Math.Abs(here.Hub.Up.V - travel) < 1e-11 ? Reach.Reached : Reach.LinkageCannotClose;
    }
}
