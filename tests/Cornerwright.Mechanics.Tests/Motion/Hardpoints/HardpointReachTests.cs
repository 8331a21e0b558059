using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

/// <summary>A linkage that cannot follow says how far it came and what stops it.</summary>
public sealed class HardpointReachTests
{
    private static Vec3 Mm(double x, double y, double z) => InventedCorners.Mm(x, y, z);

    // Two parallel arms of 300 mm with their ball joints straight above each other and level at rest: the balls go round circles of 300 mm,
    // and the wheel with them. So it goes 300 mm up and down, where the arms stand upright, and the arms are what stops it.
    [Fact]
    public void Level_parallel_arms_reach_as_far_as_they_are_long()
    {
        LinkageRange range = LinkageRange.OfTravel(new KnuckleLinkage(ParallelArms()), limit: 0.5)!;
        Assert.Equal(0.3, range.Most, 1e-5);
        Assert.Equal(-0.3, range.Least, 1e-5);
        Assert.NotNull(range.StopsMost);
        Assert.Contains("ball", range.StopsMost.Tie, StringComparison.Ordinal);

        // Arms and knuckle all in one line: from here the knuckle could go on crossed, as another linkage, so no length is missing.
        Assert.Equal(0, range.StopsMost.Missing);
        Assert.Equal(range.Most, range.StopsMost.Reached.Travel);
    }

    // A tie rod 320 mm long that stands across the car at rest and steers an arm of 120 mm: pulled inward until rod and steering
    // arm are in one line it can go no further. Law of cosines in the plane seen from above.
    [Fact]
    public void A_tie_rod_locks_where_it_lines_up_with_its_arm()
    {
        var linkage = new KnuckleLinkage(ParallelArms());
        LinkageRange range = LinkageRange.OfRack(linkage, limit: 0.4)!;

        // Seen from above: kingpin at x = 0, y = 700; tie rod inner at x = -120, y = 380 + rack; rod 320; arm 120.
        // Farthest inner joint from the kingpin: 120² + (320 - rack)² = (320 + 120)².
        double inward = 0.32 - Math.Sqrt((0.44 * 0.44) - (0.12 * 0.12));
        Assert.Equal(inward, range.Least, 1e-5);
        Assert.Equal("tie rod inner - tie rod outer", range.StopsLeast!.Tie);
        Assert.True(range.StopsLeast.Missing > 0);
    }

    [Fact]
    public void What_can_be_reached_needs_no_reason()
    {
        var follower = new KnuckleFollower(new KnuckleLinkage(ParallelArms()));
        Assert.Null(follower.Explain(new(0.1, 0.02, 0)));
        CannotReach? why = follower.Explain(new(0.5, 0, 0));
        Assert.Equal(0.3, why!.Reached.Travel, 1e-5);
        Assert.Throws<ArgumentOutOfRangeException>(() => follower.Explain(new(double.NaN, 0, 0)));
    }

    [Fact]
    public void Loose_or_locked_at_rest_is_refused()
    {
        // The tie rod's outer joint on the kingpin's line: nothing holds the steering.
        CornerLinkage loose = ParallelArms();
        loose = loose.WithJointsAt([.. loose.Joints.Select(j => j.Name == "tie rod outer" ? Mm(0, 700, 300) : j.At)]);
        var thrown = Assert.Throws<ArgumentException>(() => new KnuckleFollower(new KnuckleLinkage(loose)));
        Assert.Contains("locked or loose", thrown.Message, StringComparison.Ordinal);

        CornerLinkage short1 = ParallelArms() with { Ties = [.. ParallelArms().Ties.Take(4)] };
        Assert.Contains(
            "five are wanted", Assert.Throws<ArgumentException>(() => new KnuckleLinkage(short1)).Message, StringComparison.Ordinal);
    }

    // Our own bug, not the user's: his table was checked before. The joint is named.
    [Fact]
    public void What_is_not_finite_is_refused()
    {
        CornerLinkage strut = InventedCorners.Strut();
        CornerLinkage[] wrong =
        [
            strut.WithJointsAt([.. strut.Joints.Select((j, i) => i == 4 ? new Vec3(double.NaN, 0, 0) : j.At)]),
            strut with { Camber = double.NaN }, strut with { TyreRadius = 0 },
            strut with { PlateDirection = new(0, double.PositiveInfinity, 0) },
            strut with { Spring = new LinkageStation.OnStrut(3, 4, double.NaN) },
        ];
        foreach (CornerLinkage corner in wrong)
        {
            Assert.ThrowsAny<ArgumentException>(() => new KnuckleLinkage(corner));
        }

        Assert.Contains(
            "strut low", Assert.ThrowsAny<ArgumentException>(() => new KnuckleLinkage(wrong[0])).Message, StringComparison.Ordinal);
        Assert.ThrowsAny<ArgumentException>(() => new HardpointMotion(new KnuckleLinkage(strut), double.NaN));
    }

    internal static CornerLinkage ParallelArms() => new(
        [
            new("lower front", Mm(100, 400, 200)), new("lower rear", Mm(-100, 400, 200)), new("lower ball", Mm(0, 700, 200)),
            new("upper front", Mm(100, 400, 450)), new("upper rear", Mm(-100, 400, 450)), new("upper ball", Mm(0, 700, 450)),
            new("tie rod inner", Mm(-120, 380, 300)), new("tie rod outer", Mm(-120, 700, 300)),
        ],
        [new LinkageTie.Rod(0, 2), new LinkageTie.Rod(1, 2), new LinkageTie.Rod(3, 5), new LinkageTie.Rod(4, 5),
        new LinkageTie.Rod(6, 7, true)],
        Mm(0, 760, 320), 0, 0, 0.32);
}
