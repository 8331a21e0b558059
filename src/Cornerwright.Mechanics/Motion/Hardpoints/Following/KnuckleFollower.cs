using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Following;

/// <summary>Follows a linkage from pose to pose: Newton from where the last answer was, on the branch of the reference state.</summary>
/// <remarks>
/// Keeps the last pose, so one instance belongs to one thread; nothing is allocated after construction. Positive rack is along +Y on either
/// side of the car. The answer does not depend on the way to it beyond 1e-12 m, except where the reachable poses are in parts.
/// Source: docs/theory/hardpoints.md §3.
/// </remarks>
public sealed class KnuckleFollower
{
    private const int NewtonLimit = 12;
    private const int SubstepLimit = 400;
    private const double LargestTurn = 0.25;         // rad or m/0.4 a substep: the tangent stays a fair guess
    private const double LargestCorrection = 0.4;    // of the predicted step: more means another branch may have been caught
    private const double Done = 1e-13;               // rad and m: what is still missing, estimated from the last two steps
    private const double ChordBelow = 1e-4;          // rad and m: below it the factored Jacobian still contracts by 1e-3 or better
    private const double CertainPivot = 0.05;        // below it the sign of the determinant is looked at again at the answer
    private const double LeastHold = 1e-9;           // of a pivot of the conditions at rest, 1 or m: below it they are not five
    private const double MuchLoad = 0.5;             // of the largest: ties that carry less only follow from those that carry more
    private const double LeastStep = 1e-6;           // m: the substep at which following gives up

    private readonly KnuckleLinkage linkage;
    private readonly ConditionValues values;
    private readonly int branch;
    private KnucklePose pose;
    private LinkagePlace place;
    private bool ready;                              // the values' factor belongs to the pose, to the accuracy of a guess
    private bool exact;                              // to rounding

    /// <exception cref="ArgumentException">
    /// At the reference state itself the linkage is locked or loose, so no branch belongs to it: where its points come from a user,
    /// <see cref="Create"/> says so instead.
    /// </exception>
    public KnuckleFollower(KnuckleLinkage linkage)
        : this(linkage, out LinkageFlaw? flaw)
    {
        if (flaw is not null)
        {
            throw new ArgumentException(flaw.ToString(), nameof(linkage));
        }
    }

    private KnuckleFollower(KnuckleLinkage linkage, out LinkageFlaw? flaw)
    {
        this.linkage = linkage;
        values = new(linkage);
        pose = KnucklePose.At(linkage.Origin);
        values.Evaluate(pose, default);
        branch = values.Factor(out double leastPivot);
        flaw = branch != 0 && leastPivot > LeastHold ? null : NotHeld();
        ready = exact = true;
    }

    /// <summary>A follower of a linkage whose points a user measured.</summary>
    /// <param name="linkage">To be followed.</param>
    /// <param name="flaw">Null, or which points leave the knuckle locked or loose at the reference state.</param>
    /// <returns>Null where <paramref name="flaw"/> says why.</returns>
    /// <remarks>Source: docs/theory/hardpoints.md §3.</remarks>
    public static KnuckleFollower? Create(KnuckleLinkage linkage, out LinkageFlaw? flaw)
    {
        ArgumentNullException.ThrowIfNull(linkage);
        var follower = new KnuckleFollower(linkage, out flaw);
        return flaw is null ? follower : null;
    }

    /// <summary>What is followed.</summary>
    public KnuckleLinkage Linkage => linkage;

    /// <summary>The last pose reached, in the frame of a left wheel.</summary>
    public KnucklePose Pose => pose;

    /// <summary>Travel, rack and plate of the last pose reached.</summary>
    public LinkagePlace Place => place;

    /// <summary>Goes to a travel, rack and plate, all in m.</summary>
    /// <returns>Reached; or why not, and then the pose is the furthest one reached on the straight way from the reference state.</returns>
    /// <remarks>
    /// Source: docs/theory/hardpoints.md §3 (Newton with continuation, e.g. Allgower and Georg, Numerical
    /// Continuation Methods, 1990, ch. 2).
    /// </remarks>
    public Reach MoveTo(double travel, double rack = 0, double plate = 0)
    {
        var goal = new LinkagePlace(travel, rack, plate);
        if (!goal.IsFinite)
        {
            return Reach.NotFinite;
        }

        if (goal == place || Follow(goal))
        {
            return Reach.Reached;
        }

        Restart();
        return Follow(goal) ? Reach.Reached : Reach.LinkageCannotClose;
    }

    /// <summary>Goes from the last pose straight towards a place, m, as far as the linkage lets it.</summary>
    /// <returns>True when it got there; else the pose is the furthest one, to 1e-6 m.</returns>
    /// <remarks>Source: docs/theory/hardpoints.md §3.</remarks>
    public bool GoTowards(in LinkagePlace goal) => goal.IsFinite && (goal == place || Follow(goal));

    /// <summary>Why a place cannot be reached; null when it can be.</summary>
    /// <param name="goal">m, finite.</param>
    /// <remarks>Source: docs/theory/hardpoints.md §3.</remarks>
    public CannotReach? Explain(in LinkagePlace goal)
    {
        if (!goal.IsFinite)
        {
            throw new ArgumentOutOfRangeException(nameof(goal), goal, "Finite.");
        }

        return MoveTo(goal.Travel, goal.Rack, goal.Plate) == Reach.Reached ? null : WhatStops(goal);
    }

    /// <summary>The pose is the furthest one on the way to the goal: what gives way if it is forced a little further?</summary>
    internal CannotReach WhatStops(in LinkagePlace goal)
    {
        double left = goal.DistanceTo(place);
        LinkagePlace forced = left > CannotReach.Forced ? place.Towards(goal, CannotReach.Forced / left) : goal;
        var (tie, missing) = ForcedPose.LargestMiss(linkage, pose, forced);
        return new(place, linkage.NameOf(tie), tie, missing);
    }

    /// <summary>The ties that hold one movement twice: those that can carry a load with nothing pulling at the knuckle.</summary>
    private LinkageFlaw NotHeld()
    {
        Span<double> loads = stackalloc double[KnuckleLinkage.Conditions];
        values.Evaluate(pose, default);
        values.LoadsAtDeadCentre(new FiveEquations(), loads);
        var names = new List<string>();
        for (int i = 0; i < loads.Length; i++)
        {
            string name = linkage.NameOf(linkage.All[i].Tie);
            if (Math.Abs(loads[i]) >= MuchLoad && !names.Contains(name))
            {
                names.Add(name);
            }
        }

        return new(LinkageFault.LockedOrLoose, names);
    }

    /// <summary>Back to the reference state. Source: definition.</summary>
    public void Restart()
    {
        (pose, place, ready, exact) = (KnucklePose.At(linkage.Origin), default, false, false);
    }

    /// <summary>Exact rates at the last pose reached.</summary>
    /// <returns>False at a dead centre.</returns>
    /// <remarks>Source: docs/theory/hardpoints.md §4.</remarks>
    public bool Rates(out KnuckleRates rates)
    {
        if (!exact && !Refresh())
        {
            rates = default;
            return false;
        }

        KnuckleTwist travel = values.ByTravel();
        rates = new(travel, values.ByTravelTwice(travel), values.ByRack(), values.ByPlate());
        return true;
    }

    /// <summary>Exact rates by travel alone.</summary>
    internal bool RatesByTravel(out KnuckleTwist first, out KnuckleTwist second)
    {
        first = second = default;
        if (!exact && !Refresh())
        {
            return false;
        }

        first = values.ByTravel();
        second = values.ByTravelTwice(first);
        return true;
    }

    /// <summary>How far the strut's top has been carried, m, in the frame of a left wheel.</summary>
    internal Vec3 TopShift => linkage.Plate * place.Plate;

    private bool Refresh()
    {
        values.Evaluate(pose, place);
        ready = exact = values.Factor(out _) == branch;
        return exact;
    }

    /// <summary>Substeps towards the goal, halved where they fail and doubled where they succeed.</summary>
    private bool Follow(in LinkagePlace goal)
    {
        LinkagePlace start = place;
        double distance = goal.DistanceTo(start), done = 0, step = 1;
        for (int i = 0; i < SubstepLimit; i++)
        {
            bool last = done + step >= 1;
            LinkagePlace next = last ? goal : start.Towards(goal, done + step);
            if (Step(next))
            {
                if (last)
                {
                    return true;
                }

                done += step;
                step *= 2;
                continue;
            }

            ready = exact = false;
            step = 0.5 * Math.Min(step, 1 - done);
            if (!(step * distance > LeastStep))
            {
                return false;
            }
        }

        return false;
    }

    /// <summary>One step: guess along the tangent, correct by Newton, refuse what may be another branch.</summary>
    private bool Step(in LinkagePlace next)
    {
        if (!ready && !Refresh())
        {
            return false;
        }

        // Guess: the tangent at the last pose.
        Span<double> x = values.Work;
        double rise = next.Travel - place.Travel;
        values.Tangent(rise, next.Rack - place.Rack, next.Plate - place.Plate, x);
        double predicted = Size(x) + Math.Abs(rise);
        if (!(predicted <= LargestTurn))
        {
            return false;
        }

        double z = linkage.Origin.Z + next.Travel;
        Vec3 o = pose.Origin;
        KnucklePose now = pose.MovedBy(x[0], x[1], x[2], new(o.X + x[3], o.Y + x[4], z));
        double allowed = (LargestCorrection * predicted) + 1e-9, corrected = 0, before = double.MaxValue, first = 1;
        bool factored = false;
        double leastPivot = 0;
        for (int i = 0; i < NewtonLimit; i++)
        {
            values.Evaluate(now, next, jacobianToo: !factored);
            if (!factored && values.Factor(out leastPivot) != branch)
            {
                return false;
            }

            values.Correction(x);
            double size = Size(x);
            corrected += size;
            if (!(corrected <= allowed))
            {
                return false;
            }

            o = now.Origin;
            now = now.MovedBy(x[0], x[1], x[2], new(o.X + x[3], o.Y + x[4], z));
            double contraction = Math.Max(factored ? size / before : 0, 20 * (factored ? first : size));
            bool fresh = !factored;
            (before, first) = (size, fresh ? size : first);
            if (size * Math.Min(1, contraction) <= Done)
            {
                if (leastPivot > CertainPivot)
                {
                    (pose, place, ready, exact) = (now, next, true, false);
                    return true;
                }

                // Near a dead centre the sign counts at the answer itself.
                values.Evaluate(now, next);
                if (values.Factor(out _) != branch)
                {
                    return false;
                }

                (pose, place, ready, exact) = (now, next, true, true);
                return true;
            }

            factored = size <= ChordBelow;
        }

        return false;
    }

    private static double Size(ReadOnlySpan<double> x) =>
        Math.Sqrt((x[0] * x[0]) + (x[1] * x[1]) + (x[2] * x[2]) + (6.25 * ((x[3] * x[3]) + (x[4] * x[4]))));
}
