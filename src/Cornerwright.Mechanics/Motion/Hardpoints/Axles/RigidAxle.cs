using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Axles;

/// <summary>A rigid axle on rods, asked by the travel of both wheels.</summary>
/// <remarks>
/// Both wheel centres' heights are prescribed; where across and along the car the axle stands, its yaw and its pitch follow from the rods:
/// exactly from four, from more by weighted least squares of their length changes, because bushings give. Every pose is reached from the
/// reference state in steps, so the answer does not depend on what was asked before. Rates are exact derivatives.
/// Source: docs/theory/rigid-axles.md.
/// </remarks>
public sealed class RigidAxle
{
    /// <summary>Largest length change, m, of a rod that counts as kept where the rods are as many as the free numbers: rounding.</summary>
    private const double LengthKept = 1e-9;

    private readonly RigidAxlePoints points;
    private readonly RigidAxleSolver heightsGiven;
    private readonly RigidAxleSolver? meanGiven;
    private readonly PoseNumbers<double> reference;
    private readonly double track;
    private readonly AxleEnd left;
    private readonly AxleEnd right;

    /// <exception cref="ArgumentException">
    /// Fewer than 4 rods, a rod without stiffness, a number that is not finite; or points that make no axle: where they come from a user,
    /// <see cref="Create"/> says so instead.
    /// </exception>
    public RigidAxle(RigidAxlePoints points)
    {
        this.points = points;
        points.Left.Check();
        points.Right.Check();
        Require.Positive(points.BushingGive);
        Vec3 line = points.Left.WheelCentre - points.Right.WheelCentre;
        if (points.Rods.Count < 4)
        {
            throw new ArgumentException("A rigid axle needs at least 4 rods.", nameof(points));
        }

        foreach (AxleRod rod in points.Rods)
        {
            Require.Positive(rod.Stiffness);
            Require.Finite((rod.OnAxle - rod.OnBody).LengthSquared, rod.Name);
        }

        if (FlawOf(points) is { } flaw)
        {
            throw new ArgumentException(flaw.ToString(), nameof(points));
        }

        track = line.Length;
        Vec3 centre = 0.5 * (points.Left.WheelCentre + points.Right.WheelCentre);
        reference[PoseNumber.X] = centre.X;
        reference[PoseNumber.Y] = centre.Y;
        reference[PoseNumber.Z] = centre.Z;
        reference[PoseNumber.Yaw] = Math.Atan2(-line.X, line.Y);
        reference[PoseNumber.Roll] = Math.Asin(line.Z / track);
        var (x, y) = (Direction(Vec3.UnitX), Direction(Vec3.UnitY));
        Vec3 z = x.Cross(y);
        Vec3 Turned(Vec3 v) => new(x.Dot(v), y.Dot(v), z.Dot(v));
        Vec3 OnAxle(Vec3 p) => Turned(p - centre);

        heightsGiven = RigidAxleSolver.For(points.Rods, OnAxle, rollFree: false);
        meanGiven = points.Rods.Count >= 5 ? RigidAxleSolver.For(points.Rods, OnAxle, rollFree: true) : null;
        left = AxleEnd.For(points.Left, 1, OnAxle, Turned);
        right = AxleEnd.For(points.Right, -1, OnAxle, Turned);
    }

    /// <summary>The axle of points that a user measured.</summary>
    /// <param name="points">Finite, with at least 4 rods.</param>
    /// <param name="flaw">Null, or why they make no axle.</param>
    /// <returns>Null where <paramref name="flaw"/> says why.</returns>
    /// <exception cref="ArgumentException">Fewer than 4 rods, or a number that is not finite: our own bug.</exception>
    /// <remarks>Source: docs/theory/rigid-axles.md §1.</remarks>
    public static RigidAxle? Create(RigidAxlePoints points, out LinkageFlaw? flaw)
    {
        ArgumentNullException.ThrowIfNull(points);
        flaw = FlawOf(points);
        return flaw is null ? new(points) : null;
    }

    // NaN is no flaw of the points but ours: it goes on to where it is refused.
    private static LinkageFlaw? FlawOf(RigidAxlePoints points)
    {
        if (points.Left.WheelCentre.Y - points.Right.WheelCentre.Y <= 0)
        {
            return new(LinkageFault.WheelsSwapped, ["left wheel centre", "right wheel centre"]);
        }

        AxleRod? none = points.Rods.FirstOrDefault(rod => (rod.OnAxle - rod.OnBody).Length <= LinkageFlaw.LeastApart);
        return none is null ? null : new(LinkageFault.PointsTogether, [$"{none.Name} at the body", $"{none.Name} at the axle"]);
    }

    /// <summary>The points this axle was made from. Source: as given.</summary>
    public RigidAxlePoints Points => points;

    /// <summary>The axle where both wheel centres' travels are prescribed. Source: docs/theory/rigid-axles.md §2.</summary>
    /// <param name="travelLeft">Of the left wheel centre, m, bump positive.</param>
    /// <param name="travelRight">Of the right wheel centre, m, bump positive.</param>
    /// <returns>
    /// Why is NotFinite, or LinkageCannotClose when the travels differ by more than the axle is long, no pose was found, or a rod would
    /// have to change by more than its bushings give: then the worst rod is named.
    /// </returns>
    public RigidAxleState At(double travelLeft, double travelRight)
    {
        double heave = 0.5 * (travelLeft + travelRight);
        Reach why = MoveTo(travelLeft, travelRight, out PoseNumbers<double> q);
        return why == Reach.Reached ? Answer(heightsGiven, q, heave) : Unreached(why, heave);
    }

    /// <summary>Where one wheel is, without rates: much cheaper than <see cref="At"/>. Source: docs/theory/rigid-axles.md §2.</summary>
    /// <param name="travelLeft">As in <see cref="At"/>.</param>
    /// <param name="travelRight">Likewise.</param>
    /// <param name="isLeft">Which wheel is asked for.</param>
    /// <param name="centre">In the body frame, m.</param>
    /// <param name="spindle">Length 1, to the street side.</param>
    /// <returns>As <see cref="At"/>.</returns>
    public Reach WheelAt(double travelLeft, double travelRight, bool isLeft, out Vec3 centre, out Vec3 spindle)
    {
        (centre, spindle) = (default, default);
        Reach why = MoveTo(travelLeft, travelRight, out PoseNumbers<double> q);
        if (why != Reach.Reached)
        {
            return why;
        }

        Span<double> changes = heightsGiven.Rods <= 16 ? stackalloc double[heightsGiven.Rods] : new double[heightsGiven.Rods];
        heightsGiven.Changes(q, changes);
        foreach (double change in changes)
        {
            if (!(Math.Abs(change) <= Allowed(heightsGiven)))
            {
                return Reach.LinkageCannotClose;
            }
        }

        (centre, spindle) = (isLeft ? left : right).Place(new PoseFrame(PoseNewton.Still(q)));
        return Reach.Reached;
    }

    private Reach MoveTo(double travelLeft, double travelRight, out PoseNumbers<double> q)
    {
        q = reference;
        double sine = Math.Sin(reference[PoseNumber.Roll]) + ((travelLeft - travelRight) / track);
        if (!double.IsFinite(travelLeft) || !double.IsFinite(travelRight))
        {
            return Reach.NotFinite;
        }

        double z = reference[PoseNumber.Z] + (0.5 * (travelLeft + travelRight));
        return Math.Abs(sine) < 1
            && heightsGiven.MoveTo(ref q, z, Math.Asin(sine), Math.Max(Math.Abs(travelLeft), Math.Abs(travelRight)))
            ? Reach.Reached : Reach.LinkageCannotClose;
    }

    private double Allowed(RigidAxleSolver solver) => solver.Rods == solver.FreeNumbers ? LengthKept : points.BushingGive;

    /// <summary>
    /// The axle where only the mean travel is prescribed and the rods alone decide the roll, as if nothing else held it level. With five
    /// rods all lengths are kept.
    /// Source: docs/theory/rigid-axles.md §2.
    /// </summary>
    /// <param name="heave">Mean travel, m, bump positive.</param>
    /// <param name="keepBranch">
    /// False: any pose that keeps the lengths will do, even if the axle could get there only by taking a rod off. Linkages that are nearly
    /// symmetric fold within their travel in this sense; bushings, which this method leaves out, carry them across.
    /// </param>
    /// <returns>As <see cref="At"/>; LinkageCannotClose with fewer than 5 rods, which leave the roll open.</returns>
    public RigidAxleState AtMean(double heave, bool keepBranch = true)
    {
        if (!double.IsFinite(heave))
        {
            return Unreached(Reach.NotFinite, heave);
        }

        PoseNumbers<double> q = reference;
        return meanGiven is not null && meanGiven.MoveTo(ref q, reference[PoseNumber.Z] + heave, 0, Math.Abs(heave), keepBranch)
            ? Answer(meanGiven, q, heave)
            : Unreached(Reach.LinkageCannotClose, heave);
    }

    private Vec3 Direction(in Vec3 onAxle)
    {
        PoseNumbers<Jet> still = default;
        for (int i = 0; i < 6; i++)
        {
            still[i] = new(reference[i], 0, 0);
        }

        return new PoseFrame(still).Turned(onAxle).V;
    }

    private static RigidAxleState Unreached(Reach why, double heave, double[]? changes = null, string worst = "") =>
        new(why, default, heave, 0, 0, 0, changes ?? [], worst, 0, 0, 0, 0, default, 0, 0, null, null);

    private RigidAxleState Answer(RigidAxleSolver solver, in PoseNumbers<double> q, double heave)
    {
        double[] changes = new double[solver.Rods];
        solver.Changes(q, changes);
        int worst = 0;
        for (int i = 1; i < changes.Length; i++)
        {
            worst = Math.Abs(changes[i]) > Math.Abs(changes[worst]) ? i : worst;
        }

        string name = points.Rods[worst].Name;
        if (!(Math.Abs(changes[worst]) <= Allowed(solver)))
        {
            return Unreached(Reach.LinkageCannotClose, heave, changes, name);
        }

        // Rates are those of prescribed heights: both up, left up and right down, left alone, right alone.
        bool smooth = Moving(q, 1, 1, out PoseNumbers<Jet> inHeave) & Moving(q, 1, -1, out PoseNumbers<Jet> inRoll)
            & Moving(q, 1, 0, out PoseNumbers<Jet> leftAlone) & Moving(q, 0, 1, out PoseNumbers<Jet> rightAlone);
        return smooth
            ? State(heave, inHeave, inRoll, new(leftAlone), new(rightAlone), changes, name)
            : Unreached(Reach.LinkageCannotClose, heave, changes, name);
    }

    /// <summary>
    /// The axle's numbers while the wheels travel at the given rates; the roll's sine grows by their difference over the track.
    /// </summary>
    private bool Moving(in PoseNumbers<double> q, double leftRate, double rightRate, out PoseNumbers<Jet> moving)
    {
        double turn = (leftRate - rightRate) / (track * Math.Cos(q[PoseNumber.Roll]));
        Jet height = new(q[PoseNumber.Z], 0.5 * (leftRate + rightRate), 0);
        return heightsGiven.Derivatives(q, height, new(q[PoseNumber.Roll], turn, turn * turn * Math.Tan(q[PoseNumber.Roll])), out moving);
    }

    private RigidAxleState State(
        double heave, in PoseNumbers<Jet> inHeave, in PoseNumbers<Jet> inRoll, in PoseFrame leftAlone, in PoseFrame rightAlone,
        double[] changes, string worst)
    {
        PoseFrame up = new(inHeave), over = new(inRoll);
        AxleWheelState leftState = left.At(up, over, leftAlone), rightState = right.At(up, over, rightAlone);
        var (leftPath, rightPath) = (left.Contact(over), right.Contact(over));
        Vec3 centre = up.Origin.V;

        Vec3 normals = RollCentre.WhereNormalsMeet(leftPath.V, leftPath.D, rightPath.V, rightPath.D) with { X = centre.X };
        double still = centre.Z + (over.Origin.D.Y / over.AngularVelocity().X);
        return new(
            Reach.Reached, centre, heave, inHeave[PoseNumber.Roll].V, inHeave[PoseNumber.Yaw].V, inHeave[PoseNumber.Pitch].V, changes,
            worst,
            inHeave[PoseNumber.Yaw].D, inRoll[PoseNumber.Yaw].D / inRoll[PoseNumber.Roll].D,
            0.5 * (leftState.CentreRecession + rightState.CentreRecession),
            0.5 * (leftState.ContactRecession + rightState.ContactRecession),
            normals, still,
            still - (0.5 * (leftPath.V.Z + rightPath.V.Z)), leftState, rightState);
    }
}
