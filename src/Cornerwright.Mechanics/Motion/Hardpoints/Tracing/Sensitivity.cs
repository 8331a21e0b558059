using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Tracing;

/// <summary>How much one joint matters at one pose: derivatives by its three coordinates (body frame), as vectors.</summary>
/// <param name="Joint">Place in the linkage's list.</param>
/// <param name="Camber">rad/m.</param>
/// <param name="Toe">rad/m.</param>
/// <param name="Outboard">m/m, of the wheel centre.</param>
/// <param name="SpringLength">m/m.</param>
/// <param name="DamperLength">m/m.</param>
/// <param name="SpringRatio">1/m, of the spring's motion ratio (positive when bump shortens it).</param>
/// <param name="DamperRatio">1/m, of the damper's motion ratio.</param>
public readonly record struct JointSensitivity(
    int Joint, Vec3 Camber, Vec3 Toe, Vec3 Outboard, Vec3 SpringLength, Vec3 DamperLength, Vec3 SpringRatio, Vec3 DamperRatio);

/// <summary>Which quantity a joint is asked about.</summary>
public enum TraceQuantity
{
    Camber = 0,
    Toe,
    Outboard,
    SpringLength,
    DamperLength,
    SpringRatio,
    DamperRatio,
}

/// <summary>How much of a quantity's doubt one coordinate of a joint carries.</summary>
/// <param name="Joint">Name of the joint.</param>
/// <param name="Axis">'X', 'Y' or 'Z' of the body frame.</param>
/// <param name="Deviation">
/// Root mean square over the poses asked, in the quantity's unit, of what the coordinate's doubt does to it.
/// </param>
/// <param name="Share">Of the quantity's variance, 0 to 1; all shares together are 1.</param>
public readonly record struct JointShare(string Joint, char Axis, double Deviation, double Share);

/// <summary>Which hardpoint matters.</summary>
/// <remarks>
/// Implicit differentiation of the ties: c(q, p) = 0 gives dq/dp = -(∂c/∂q)⁻¹ ∂c/∂p, and the readings follow. Motion ratios need the mixed
/// derivative by travel and coordinate; it is a quarter of the difference of second derivatives along their sum and difference.
/// Source: docs/theory/fit.md §2.
/// </remarks>
public static class Sensitivity
{
    /// <summary>Derivatives by every coordinate of every joint at one pose. Source: docs/theory/fit.md §2.</summary>
    /// <param name="linkage">At the reference state.</param>
    /// <param name="travel">m, bump positive.</param>
    /// <param name="rack">m along +Y.</param>
    /// <param name="plate">m along the plate's direction.</param>
    /// <param name="joints">One for each joint, in order; empty unless the answer is Reached.</param>
    /// <returns>LinkageCannotClose or NotFinite where the pose cannot be reached.</returns>
    public static Reach At(CornerLinkage linkage, double travel, double rack, double plate, out IReadOnlyList<JointSensitivity> joints)
    {
        joints = [];
        Reach why = LinkageTrace.Pose(linkage, travel, rack, plate, out PoseNumbers<double> q);
        if (why != Reach.Reached)
        {
            return why;
        }

        var all = new JointSensitivity[linkage.Joints.Count];
        Span<double> x = stackalloc double[Quantities], y = stackalloc double[Quantities], z = stackalloc double[Quantities];
        for (int i = 0; i < all.Length; i++)
        {
            if (!By(linkage, q, i, 0, (travel, rack, plate), x) || !By(linkage, q, i, 1, (travel, rack, plate), y)
                || !By(linkage, q, i, 2, (travel, rack, plate), z))
            {
                return Reach.LinkageCannotClose;
            }

            all[i] = new(
                i, new(x[0], y[0], z[0]), new(x[1], y[1], z[1]), new(x[2], y[2], z[2]), new(x[3], y[3], z[3]), new(x[4], y[4], z[4]),
                new(x[5], y[5], z[5]), new(x[6], y[6], z[6]));
        }

        joints = all;
        return why;
    }

    /// <summary>Whose doubt makes a quantity doubtful over some travels, largest share first. Source: docs/theory/fit.md §2.</summary>
    /// <param name="linkage">At the reference state.</param>
    /// <param name="deviations">Standard deviation of each joint's coordinates, m, at least 0, in the joints' order.</param>
    /// <param name="travels">m; poses that cannot be reached are left out.</param>
    /// <param name="quantity">What is asked about.</param>
    /// <returns>Empty when no pose can be reached or nothing is in doubt.</returns>
    public static IReadOnlyList<JointShare> Shares(
        CornerLinkage linkage, IReadOnlyList<Vec3> deviations, IReadOnlyList<double> travels, TraceQuantity quantity)
    {
        if (deviations.Count != linkage.Joints.Count)
        {
            throw new ArgumentException($"{linkage.Joints.Count} joints, {deviations.Count} deviations.", nameof(deviations));
        }

        double[] variance = new double[3 * deviations.Count];
        int reached = 0;
        foreach (double travel in travels)
        {
            if (At(linkage, travel, 0, 0, out IReadOnlyList<JointSensitivity> joints) != Reach.Reached)
            {
                continue;
            }

            reached++;
            for (int i = 0; i < deviations.Count; i++)
            {
                Vec3 s = Pick(joints[i], quantity), d = deviations[i];
                variance[3 * i] += s.X * s.X * d.X * d.X;
                variance[(3 * i) + 1] += s.Y * s.Y * d.Y * d.Y;
                variance[(3 * i) + 2] += s.Z * s.Z * d.Z * d.Z;
            }
        }

        double total = variance.Sum();
        return !(total > 0) || !double.IsFinite(total)
            ? []
            : [.. variance.Select((v, k) => new JointShare(linkage.Joints[k / 3].Name, "XYZ"[k % 3], Math.Sqrt(v / reached), v / total))
                .Where(share => share.Share > 0).OrderByDescending(share => share.Share)];
    }

    /// <summary>One quantity of a joint's sensitivities. Source: selection.</summary>
    public static Vec3 Pick(in JointSensitivity joint, TraceQuantity quantity) => quantity switch
    {
        TraceQuantity.Camber => joint.Camber,
        TraceQuantity.Toe => joint.Toe,
        TraceQuantity.Outboard => joint.Outboard,
        TraceQuantity.SpringLength => joint.SpringLength,
        TraceQuantity.DamperLength => joint.DamperLength,
        TraceQuantity.SpringRatio => joint.SpringRatio,
        _ => joint.DamperRatio,
    };

    private const int Quantities = 7;

    private static bool By(
        CornerLinkage linkage, in PoseNumbers<double> q, int joint, int axis, (double Travel, double Rack, double Plate) at,
        Span<double> rates)
    {
        // Travel and coordinate together, then travel against coordinate.
        if (!Moving(linkage, q, joint, axis, at, 1, out TraceJets plus) || !Moving(linkage, q, joint, axis, at, -1, out TraceJets minus))
        {
            return false;
        }

        rates[0] = 0.5 * (plus.Camber.D - minus.Camber.D);
        rates[1] = 0.5 * (plus.Toe.D - minus.Toe.D);
        rates[2] = 0.5 * (plus.Outboard.D - minus.Outboard.D);
        rates[3] = 0.5 * (plus.Spring.D - minus.Spring.D);
        rates[4] = 0.5 * (plus.Damper.D - minus.Damper.D);
        rates[5] = -0.25 * (plus.Spring.DD - minus.Spring.DD);
        rates[6] = -0.25 * (plus.Damper.DD - minus.Damper.DD);
        return true;
    }

    private static bool Moving(
        CornerLinkage linkage, in PoseNumbers<double> q, int joint, int axis, (double Travel, double Rack, double Plate) at, double rate,
        out TraceJets readings)
    {
        JetPoint3[] joints = LinkageSystem.Still(linkage);
        joints[joint] = Pushed(joints[joint], axis, rate);
        return LinkageTrace.Along(
            linkage, joints, q, new(at.Travel, 1, 0), new(at.Rack, 0, 0), new(at.Plate, 0, 0), default, default, out readings);
    }

    internal static JetPoint3 Pushed(in JetPoint3 p, int axis, double rate) => axis switch
    {
        0 => p with { X = p.X with { D = rate } },
        1 => p with { Y = p.Y with { D = rate } },
        _ => p with { Z = p.Z with { D = rate } },
    };
}
