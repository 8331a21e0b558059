using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Following;

/// <summary>A corner's motion from its hardpoints, at one place of rack and plate.</summary>
/// <remarks>
/// Travel and lateral shift are those of the linkage's travel point (make it the hub face: <see cref="KnuckleLinkage"/>). Keeps the last
/// pose, so one instance belongs to one thread; a linkage may be shared by many. Source: docs/theory/hardpoints.md §8.
/// </remarks>
public sealed class HardpointMotion : CornerMotion
{
    private const int SteersKept = 8, FollowersKept = 6;
    private const double SameSteer = 1e-9;        // rad: far below what any gauge tells apart

    private readonly KnuckleFollower follower;
    private readonly double rack;
    private readonly double plate;
    private readonly double springMore;
    private readonly double damperMore;
    private readonly double[] steersKnown = new double[SteersKept], racksKnown = new double[SteersKept];
    private int known;
    private List<KnuckleFollower>? steered;
    private KnuckleFollower? steering;
    private ChebyshevCurve? springCurve, damperCurve;

    /// <param name="linkage">Of a left or a right corner.</param>
    /// <param name="rack">m along +Y.</param>
    /// <param name="plate">m along the plate's direction.</param>
    /// <param name="springMore">m, added to the spring's length: what a tape measured beyond the distance of its two points.</param>
    /// <param name="damperMore">Likewise for the damper.</param>
    /// <exception cref="ArgumentException">
    /// A number is not finite, or at the reference state the linkage is locked or loose: where its points come from a user,
    /// <see cref="Create"/> says so instead.
    /// </exception>
    public HardpointMotion(KnuckleLinkage linkage, double rack = 0, double plate = 0, double springMore = 0, double damperMore = 0)
        : this(new KnuckleFollower(linkage), rack, plate, springMore, damperMore)
    {
    }

    private HardpointMotion(KnuckleFollower follower, double rack, double plate, double springMore, double damperMore)
    {
        Require.Finite(rack);
        Require.Finite(plate);
        Require.Finite(springMore);
        Require.Finite(damperMore);
        this.follower = follower;
        (this.rack, this.plate, this.springMore, this.damperMore) = (rack, plate, springMore, damperMore);
    }

    /// <summary>The motion of points that a user measured.</summary>
    /// <param name="corner">Of a left or a right corner.</param>
    /// <param name="flaw">Null, or why there is no motion.</param>
    /// <param name="travelPointOutboard">As <see cref="KnuckleLinkage"/> takes it, m.</param>
    /// <param name="plate">m along the plate's direction.</param>
    /// <param name="springMore">m, as the constructor takes it.</param>
    /// <param name="damperMore">Likewise.</param>
    /// <returns>Null where <paramref name="flaw"/> says why.</returns>
    /// <exception cref="ArgumentException">The ties do not take five freedoms, or a number is not finite: our own bug.</exception>
    /// <remarks>Source: docs/theory/hardpoints.md §2, §8.</remarks>
    public static HardpointMotion? Create(
        CornerLinkage corner, out LinkageFlaw? flaw, double travelPointOutboard = 0, double plate = 0, double springMore = 0,
        double damperMore = 0) =>
        KnuckleLinkage.Create(corner, out flaw, travelPointOutboard) is { } linkage && KnuckleFollower.Create(linkage, out flaw) is { } held
            ? new(held, 0, plate, springMore, damperMore) : null;

    /// <summary>
    /// Solves stations once at a few travels, after which they are read from a polynomial within that range: for a
    /// judge that asks them a hundred times. Nothing changes where the linkage does not reach both ends.
    /// </summary>
    /// <param name="least">m.</param>
    /// <param name="most">m, above <paramref name="least"/>.</param>
    /// <remarks>
    /// Twelve samples over 0.26 m leave below 1e-9 m and 1e-7 of ratio on linkages of usual sizes
    /// (HardpointMotionTests). Source: docs/theory/hardpoints.md §8.
    /// </remarks>
    public void SampleStations(double least, double most)
    {
        const int Samples = 12;
        Require.Positive(most - least);
        KnuckleLinkage linkage = follower.Linkage;
        bool alike = Equals(linkage.Corner.Spring, linkage.Corner.Damper) && springMore == damperMore;
        double[] at = ChebyshevCurve.Points(least, most, Samples);
        Span<double> spring = stackalloc double[Samples], damper = stackalloc double[Samples];
        for (int i = 0; i < Samples; i++)
        {
            if (follower.MoveTo(at[i], rack, plate) != Reach.Reached)
            {
                return;
            }

            var still = new MovingKnuckle(follower.Pose, default, default);
            bool read = true;
            spring[i] = linkage.Spring is { } s ? Length(s, still, springMore, ref read) : 0;
            damper[i] = alike ? spring[i] : linkage.Damper is { } d ? Length(d, still, damperMore, ref read) : 0;
            if (!read)
            {
                return;
            }
        }

        springCurve = linkage.Spring is null ? null : ChebyshevCurve.Through(least, most, spring);
        damperCurve = linkage.Damper is null ? null : alike ? springCurve : ChebyshevCurve.Through(least, most, damper);
    }

    private double Length(StationPath path, in MovingKnuckle still, double more, ref bool read)
    {
        read &= path.Length(still, follower.TopShift, out Jet length);
        return length.V + more;
    }

    /// <inheritdoc/>
    public override Reach WheelAt(double travel, out WheelMotionState wheel)
    {
        Reach reach = follower.MoveTo(travel, rack, plate);
        if (reach != Reach.Reached)
        {
            wheel = default;
            return reach;
        }

        KnuckleLinkage linkage = follower.Linkage;
        KnucklePose pose = follower.Pose;
        var disc = new DiscMotion(pose.Turned(linkage.Spindle), linkage.TyreRadius);
        wheel = new(disc.Camber, disc.Toe, pose.Origin.Y - linkage.Origin.Y);
        return Reach.Reached;
    }

    /// <inheritdoc/>
    public override Reach StationAt(double travel, Station station, out StationState state)
    {
        if ((station == Station.Spring ? springCurve : damperCurve) is { } curve && travel >= curve.Start && travel <= curve.End)
        {
            var (length, slope, bend) = curve.At(travel);
            state = new(length, -slope, -bend);
            return Reach.Reached;
        }

        state = default;
        if ((station == Station.Spring ? follower.Linkage.Spring : follower.Linkage.Damper) is not { } path)
        {
            return Reach.NotGiven;
        }

        Reach reach = follower.MoveTo(travel, rack, plate);
        if (reach != Reach.Reached)
        {
            return reach;
        }

        if (!follower.RatesByTravel(out KnuckleTwist first, out KnuckleTwist second)
            || WheelGeometry.StationOf(path, new MovingKnuckle(follower.Pose, first, second), follower.TopShift) is not { } found)
        {
            return Reach.LinkageCannotClose;
        }

        state = found with { Length = found.Length + (station == Station.Spring ? springMore : damperMore) };
        return Reach.Reached;
    }

    /// <summary>The wheel at a travel with the rack elsewhere than this motion's own place, left and right.</summary>
    /// <param name="travel">m, bump positive.</param>
    /// <param name="rackThere">m along +Y.</param>
    /// <param name="pose">Hub face from its place at the reference state, and spindle, both in B; only if Reached.</param>
    /// <remarks>Bump steer and the steering axis are those of the linkage itself. Source: docs/theory/hardpoints.md §8.</remarks>
    public Reach PoseAt(double travel, double rackThere, out WheelPose pose)
    {
        KnuckleFollower there = At(rackThere);
        Reach reach = there.MoveTo(travel, rackThere, plate);
        KnuckleLinkage linkage = there.Linkage;
        pose = reach != Reach.Reached ? default : new(
            linkage.Inward(there.Pose.Origin - linkage.Origin), linkage.Inward(there.Pose.Turned(linkage.Spindle)));
        return reach;
    }

    /// <summary>Where a point that is fixed to the knuckle is, at a travel with the rack elsewhere.</summary>
    /// <param name="travel">m, bump positive.</param>
    /// <param name="rackThere">m along +Y.</param>
    /// <param name="inSpindle">The point in S (a, 12, 3) as the knuckle stands at the reference state, m.</param>
    /// <param name="there">In B, from the place of the hub's face at the reference state, m; only if Reached.</param>
    /// <remarks>The knuckle's whole turn, about its own spindle too. Source: docs/theory/hardpoints.md §1, §8.</remarks>
    public Reach PointAt(double travel, double rackThere, in Vec3 inSpindle, out Vec3 there)
    {
        KnuckleFollower moved = At(rackThere);
        Reach reach = moved.MoveTo(travel, rackThere, plate);
        KnuckleLinkage linkage = moved.Linkage;
        var rest = SpindleFrame.Of(new WheelPose(default, linkage.Inward(linkage.Spindle)));
        there = reach != Reach.Reached ? default
            : linkage.Inward(moved.Pose.Point(linkage.Inward(rest.ToBody(inSpindle))) - linkage.Origin);
        return reach;
    }

    // Poses are asked at a few places of the rack in turn: one follower each stays near its next pose, where a single
    // one would go to and fro.
    private KnuckleFollower At(double rackThere)
    {
        if (rackThere == rack)
        {
            return follower;
        }

        steered ??= new(FollowersKept);
        foreach (KnuckleFollower one in steered)
        {
            if (one.Place.Rack == rackThere)
            {
                return one;
            }
        }

        if (steered.Count < FollowersKept)
        {
            steered.Add(new(follower.Linkage));
            return steered[^1];
        }

        return steered[^1];
    }

    /// <summary>Where the rack has to be for the wheel to be steered by an angle from straight ahead, at the reference height.</summary>
    /// <param name="steer">rad, positive to the left.</param>
    /// <param name="rackThere">m along +Y; only if Reached.</param>
    /// <returns>NotGiven when no rack moves this wheel; LinkageCannotClose when it cannot be steered so far.</returns>
    /// <remarks>Newton with the exact rate of toe by rack, from the last angle asked. Source: docs/theory/steering.md §1.</remarks>
    public Reach RackFor(double steer, out double rackThere)
    {
        for (int i = 0; i < known; i++)
        {
            if (Math.Abs(steersKnown[i] - steer) <= SameSteer)
            {
                rackThere = racksKnown[i];
                return Reach.Reached;
            }
        }

        Reach reach = double.IsFinite(steer) ? FindRack(steer, out rackThere) : NotFinite(out rackThere);
        if (reach == Reach.Reached)
        {
            int at = known < SteersKept ? known++ : SteersKept - 1;
            (steersKnown[at], racksKnown[at]) = (steer, rackThere);
        }

        return reach;
    }

    /// <summary>
    /// How far the wheel is steered at the reference height with the rack somewhere, rad, positive to the left; null
    /// when it cannot be there.
    /// </summary>
    /// <param name="rackThere">m along +Y.</param>
    /// <remarks>Source: docs/theory/steering.md §1.</remarks>
    public double? SteerAt(double rackThere) =>
        Toe(rack, out double straight, out _) == Reach.Reached && Toe(rackThere, out double toe, out _) == Reach.Reached
            ? -follower.Linkage.Side * (toe - straight) : null;

    private static Reach NotFinite(out double rackThere)
    {
        rackThere = 0;
        return Reach.NotFinite;
    }

    private Reach FindRack(double steer, out double rackThere)
    {
        const int Limit = 40;
        const double Done = 1e-12, LongestStep = 0.03;
        rackThere = 0;
        Reach reach = Toe(rack, out double straight, out double rate);
        if (reach != Reach.Reached || Math.Abs(rate) < 1e-9)
        {
            return reach != Reach.Reached ? reach : Reach.NotGiven;
        }

        // Toe-in turns a left wheel to the right and a right one to the left.
        double wanted = straight - (follower.Linkage.Side * steer), toe = straight, at = rack;
        for (int i = 0; i < known; i++)
        {
            // An angle asked before on the same side is nearer than straight ahead.
            if (steersKnown[i] * steer > 0 && Toe(racksKnown[i], out double toeKnown, out double rateKnown) == Reach.Reached
                && rateKnown * rate > 0
                && Math.Abs(wanted - toeKnown) < Math.Abs(wanted - toe))
            {
                (at, toe, rate) = (racksKnown[i], toeKnown, rateKnown);
            }
        }

        for (int i = 0; i < Limit; i++)
        {
            double step = (wanted - toe) / rate;
            if (Math.Abs(wanted - toe) <= Done)
            {
                rackThere = at;
                return Reach.Reached;
            }

            double next = at + Math.Clamp(step, -LongestStep, LongestStep);
            if (Toe(next, out double toeNext, out double rateNext) != Reach.Reached || !(rateNext * rate > 0))
            {
                return Reach.LinkageCannotClose;
            }

            (at, toe, rate) = (next, toeNext, rateNext);
        }

        return Reach.LinkageCannotClose;
    }

    private Reach Toe(double rackThere, out double toe, out double byRack)
    {
        (toe, byRack) = (0, 0);
        steering ??= new(follower.Linkage);
        Reach reach = steering.MoveTo(0, rackThere, plate);
        if (reach != Reach.Reached)
        {
            return reach;
        }

        if (!steering.Rates(out KnuckleRates rates))
        {
            return Reach.LinkageCannotClose;
        }

        KnuckleLinkage linkage = steering.Linkage;
        var disc = new DiscMotion(steering.Pose.Turned(linkage.Spindle), linkage.TyreRadius);
        toe = disc.Toe;
        byRack = disc.AngleRates(rates.ByRack.Turn).Toe;
        return Reach.Reached;
    }

    /// <summary>Everything the wheel's geometry says at a travel, m.</summary>
    /// <returns>Why; <paramref name="wheel"/> holds numbers only if it is Reached.</returns>
    /// <remarks>Source: docs/theory/hardpoints.md §4 to §7.</remarks>
    public Reach GeometryAt(double travel, out WheelGeometry wheel) => GeometryAt(travel, rack, out wheel);

    /// <summary>The same with the rack elsewhere, m along +Y. Source: docs/theory/hardpoints.md §4 to §7.</summary>
    public Reach GeometryAt(double travel, double rackThere, out WheelGeometry wheel)
    {
        wheel = default;
        Reach reach = follower.MoveTo(travel, rackThere, plate);
        if (reach != Reach.Reached)
        {
            return reach;
        }

        if (!WheelGeometry.TryRead(follower, out wheel))
        {
            return Reach.LinkageCannotClose;
        }

        wheel = wheel with { Spring = More(wheel.Spring, springMore), Damper = More(wheel.Damper, damperMore) };
        return Reach.Reached;
    }

    /// <summary>Why a pose cannot be reached; null when it can be.</summary>
    /// <param name="travel">m, finite.</param>
    /// <param name="rackThere">m along +Y, finite.</param>
    /// <remarks>Source: docs/theory/hardpoints.md §3.</remarks>
    public CannotReach? Explain(double travel, double rackThere) => follower.Explain(new(travel, rackThere, plate));

    private static StationState? More(StationState? state, double more) => state is { } s ? s with { Length = s.Length + more } : null;
}
