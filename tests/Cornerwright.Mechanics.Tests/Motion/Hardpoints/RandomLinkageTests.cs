using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using Xunit.Abstractions;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

/// <summary>
/// Ten thousand corners with every joint moved by up to 60 mm: each pose is met or refused with a reason, and no sweep leaps.
/// </summary>
public sealed class RandomLinkageTests(ITestOutputHelper output)
{
    private const int Linkages = 10_000;
    private const int Seed = 20261125;
    private const double Met = 1e-10;            // m: what may be missed of a condition at a pose called reached

    [Fact]
    public void Solves_or_says_why_and_never_leaps()
    {
        output.WriteLine($"seed {Seed}");
        var random = new Random(Seed);
        int reached = 0, refused = 0, loose = 0;
        for (int i = 0; i < Linkages; i++)
        {
            KnuckleFollower? follower = Follower(random, i);
            if (follower is null)
            {
                loose++;
                continue;
            }

            double rack = (random.NextDouble() - 0.5) * 0.2, plate = i % 5 == 0 ? random.NextDouble() * 0.03 : 0;
            for (int way = -1; way <= 1; way += 2)
            {
                Sweep(follower, way, rack, plate, i % 61 == 0, ref reached, ref refused, $"linkage {i}");
            }
        }

        output.WriteLine($"{reached} poses, {refused} refusals, {loose} loose at rest");
        Assert.True(reached > 10 * Linkages, $"{reached} poses only: the sweep shows little");
        Assert.True(refused > 100, $"{refused} refusals only: the sweep does not try the limits");
        Assert.True(loose < Linkages / 20, $"{loose} loose");
    }

    private static KnuckleFollower? Follower(Random random, int i)
    {
        Vec3 Moved(Vec3 p) => p + (new Vec3(random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() - 0.5) * 0.12);
        CornerLinkage corner = (i % 5) switch
        {
            0 => InventedCorners.Strut(Moved),
            1 => InventedCorners.StrutOnTwoLinks(Moved),
            2 => InventedCorners.Wishbones(Moved),
            3 => InventedCorners.FiveLinks(Moved),
            _ => InventedCorners.TrailingArm(Moved),
        };
        try
        {
            return new(new KnuckleLinkage(corner, 0.04));
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    /// <summary>
    /// Travel from 0 to 250 mm one way, 25 mm apart; each pose is reached from the one before, and again straight from rest.
    /// </summary>
    private static void Sweep(
        KnuckleFollower follower, int way, double rack, double plate, bool always, ref int reached, ref int refused, string label)
    {
        if (follower.MoveTo(0, rack, plate) != Reach.Reached)
        {
            Said(follower, new(0, rack, plate), label);
            refused++;
            return;
        }

        for (int k = 1; k <= 10; k++)
        {
            KnucklePose before = follower.Pose;
            LinkagePlace goal = new(way * 0.025 * k, rack, plate);
            if (!follower.GoTowards(goal))
            {
                refused++;
                CheckPose(follower, label);
                Said(follower, goal, label);
                return;
            }

            reached++;
            CheckPose(follower, label);
            CheckNoLeap(follower, before, goal, always, label);
        }
    }

    private static void Said(KnuckleFollower follower, in LinkagePlace goal, string label)
    {
        if (follower.Explain(goal) is not { } why)
        {
            return;   // reached on the straight way from rest
        }

        Assert.True(double.IsFinite(why.Missing) && why.Tie.Length > 0, $"{label}: {why}");
        Assert.True(double.IsFinite(why.Reached.Travel) && double.IsFinite(why.Reached.Rack), $"{label}: {why}");
    }

    /// <summary>Every tie looked at again without the solver's own sums; no number is other than finite.</summary>
    private static void CheckPose(KnuckleFollower follower, string label)
    {
        KnuckleLinkage linkage = follower.Linkage;
        CornerLinkage corner = linkage.Corner;
        KnucklePose pose = follower.Pose;
        LinkagePlace at = follower.Place;
        Vec3 spindle = pose.Turned(linkage.Spindle), rest = linkage.Origin;
        Assert.True(Math.Abs(spindle.LengthSquared - 1) < 1e-12, $"{label}: turn is no rotation");
        Assert.Equal(at.Travel, pose.Origin.Z - rest.Z, 1e-15);
        foreach (LinkageTie tie in corner.Ties)
        {
            double missed;
            Vec3 Now(int joint) => pose.Point(corner.Joints[joint].At - rest);
            switch (tie)
            {
                case LinkageTie.Rod rod:
                    Vec3 inner = corner.Joints[rod.Body].At + new Vec3(0, rod.Steers ? at.Rack : 0, 0);
                    missed = (Now(rod.Knuckle) - inner).Length - (corner.Joints[rod.Knuckle].At - corner.Joints[rod.Body].At).Length;
                    break;
                case LinkageTie.Strut strut:
                    Vec3 top0 = corner.Joints[strut.Top].At, top = top0;
                    top = corner.PlateDirection.Length > 0 ? top + (corner.PlateDirection.Unit() * at.Plate) : top;
                    missed = pose.Turned((top0 - corner.Joints[strut.Low].At).Unit()).Cross(top - Now(strut.Low)).Length;
                    break;
                default:
                    var hinge = (LinkageTie.Hinge)tie;
                    missed = (Now(hinge.First) - corner.Joints[hinge.First].At).Length
                        + (Now(hinge.Second) - corner.Joints[hinge.Second].At).Length;
                    break;
            }

            Assert.True(Math.Abs(missed) <= Met, $"{label}: {tie} is missed by {missed:g3} m at {at}");
        }
    }

    /// <summary>
    /// The way is walked again in a hundred small steps: the same end, no small step longer than the tangent allows, and the determinant's
    /// sign kept is checked by the follower itself.
    /// </summary>
    private static void CheckNoLeap(KnuckleFollower follower, in KnucklePose before, in LinkagePlace goal, bool always, string label)
    {
        KnucklePose end = follower.Pose;
        if (Apart(before, end) < 0.2 && !always)
        {
            return;   // as 25 mm of travel do, without a dead centre near; of these some are walked too
        }

        // Back and forth by small steps must come to the same pose.
        LinkagePlace start = goal with { Travel = goal.Travel - (Math.Sign(goal.Travel) * 0.025) };
        for (int k = 1; k <= 100; k++)
        {
            Assert.True(
                follower.GoTowards(goal with { Travel = goal.Travel + ((start.Travel - goal.Travel) * k / 100) }), $"{label}: no way back");
        }

        Assert.True(Apart(before, follower.Pose) < 1e-9, $"{label}: the way back ends {Apart(before, follower.Pose):g3} away near {goal}");
        Assert.True(follower.GoTowards(goal), $"{label}: no way forth");
        Assert.True(Apart(end, follower.Pose) < 1e-9, $"{label}: the way forth ends elsewhere near {goal}");
    }

    private static double Apart(in KnucklePose a, in KnucklePose b)
    {
        double dot = (a.TurnW * b.TurnW) + (a.TurnX * b.TurnX) + (a.TurnY * b.TurnY) + (a.TurnZ * b.TurnZ), sign = dot < 0 ? -1 : 1;
        double w = a.TurnW - (sign * b.TurnW), x = a.TurnX - (sign * b.TurnX), y = a.TurnY - (sign * b.TurnY),
            z = a.TurnZ - (sign * b.TurnZ);
        return (2 * Math.Sqrt((w * w) + (x * x) + (y * y) + (z * z))) + (a.Origin - b.Origin).Length;
    }
}
