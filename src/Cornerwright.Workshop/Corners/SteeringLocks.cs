using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <summary>How far a wheel is steered either way with the rack at its stops, rad, each at least 0.</summary>
/// <param name="Left">To the left.</param>
/// <param name="Right">To the right.</param>
/// <param name="Note">What keeps the wheel from the lock that was read, in words; empty where nothing does.</param>
internal sealed record SteeringLocks(double Left, double Right, string Note = "")
{
    /// <summary>True where the wheel does not reach on the inside of the turn what was read there: then nothing is known at lock.</summary>
    public bool Short { get; init; }

    /// <summary>
    /// Where a rack moves the wheel: it goes as far either way, to its own stop or, where nobody measured that, to where the wheel on the
    /// inside of the turn has the lock that was read. Null where neither is known or can be reached.
    /// </summary>
    /// <remarks>
    /// A lock is read on the inside of a turn; what the same rack does to the wheel on the outside is the linkage's affair, less by
    /// Ackermann, more against it.
    /// </remarks>
    public static SteeringLocks? Of(CornerPlan plan, SteeringAxis? steering)
    {
        if (plan.Motion.MakeNow(plan.Inputs.Best()) is not HardpointMotion motion)
        {
            return null;
        }

        // The inside of a turn is to its own side.
        double own = plan.Place.IsLeft() ? 1 : -1;
        if (steering?.RackTravel is { } travel)
        {
            const double Little = 0.001;
            double toOwnSide = own * (motion.SteerAt(Little) ?? 0) > 0 ? 1 : -1;
            return At(motion, own, toOwnSide * travel.Si, $"{new Measure(travel.Si, Units.Millimetre, 1).Text} that it goes");
        }

        if (steering?.Lock is not { } angle)
        {
            return null;
        }

        string read = new Measure(angle.Si, Units.Degree, 1).Text;
        if (motion.RackFor(own * angle.Si, out double inside) == Reach.Reached)
        {
            return At(motion, own, inside, $"lock of {read}");
        }

        return motion.RackFor(-own * angle.Si, out _) == Reach.Reached
            ? new(0, 0, $"the hardpoints reach the lock of {read} on the outside of the turn alone: nothing at lock is judged")
            {
                Short = true,
            }
            : null;
    }

    // With the rack so far for a turn to the wheel's own side, and as far the other way, or as far as the linkage lets it.
    private static SteeringLocks? At(HardpointMotion motion, double own, double rack, string stop)
    {
        bool innerThere = motion.SteerAt(rack) is not null, outerThere = motion.SteerAt(-rack) is not null;
        double inside = Math.Max(0, own * Steered(motion, rack)), outside = Math.Max(0, -own * Steered(motion, -rack));
        if (!(inside > 0) && !(outside > 0))
        {
            return null;
        }

        string note = innerThere && outerThere ? ""
            : $"the hardpoints end the steering before the rack is at the {stop}: the wheel is judged to "
            + $"{Degrees(inside)} on the inside of the turn, {Degrees(outside)} on the outside";
        return own > 0 ? new(inside, outside, note) : new(outside, inside, note);
    }

    // How far it is steered with the rack there, or as far toward it as the linkage goes.
    private static double Steered(HardpointMotion motion, double rack)
    {
        const int Halvings = 20;
        if (motion.SteerAt(rack) is { } there)
        {
            return there;
        }

        double good = 0, bad = 1;
        for (int k = 0; k < Halvings; k++)
        {
            double middle = 0.5 * (good + bad);
            (good, bad) = motion.SteerAt(middle * rack) is null ? (good, middle) : (middle, bad);
        }

        return motion.SteerAt(good * rack) ?? 0;
    }

    private static string Degrees(double angle) => new Measure(angle, Units.Degree, 1).Text;
}
