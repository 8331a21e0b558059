using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Tracing;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

/// <summary>Implicit derivatives by joints against finite differences of solved poses.</summary>
public class SensitivityTests
{
    [Theory]
    [InlineData("M1", 0.05, 0.02)]
    [InlineData("M3", -0.04, -0.02)]
    [InlineData("W1", -0.06, 0.03)]
    [InlineData("W3", 0.03, 0)]
    [InlineData("F1", 0.05, -0.03)]
    [InlineData("S1", -0.05, 0)]
    public void Every_coordinate_of_every_joint(string id, double travel, double rack)
    {
        const double H = 1e-5;
        CornerLinkage linkage = TracedCorners.Linkage(id);
        double plate = id == "M3" ? 0.01 : 0;
        Assert.Equal(Reach.Reached, Sensitivity.At(linkage, travel, rack, plate, out IReadOnlyList<JointSensitivity> all));
        Assert.Equal(linkage.Joints.Count, all.Count);
        double largest = 0;
        for (int i = 0; i < all.Count; i++)
        {
            Vec3[] axes = [Vec3.UnitX, Vec3.UnitY, Vec3.UnitZ];
            foreach (Vec3 axis in axes)
            {
                TraceState up = Pushed(i, H * axis), down = Pushed(i, -H * axis);
                double Slope(Func<TraceState, double> read) => (read(up) - read(down)) / (2 * H);
                void Same(double difference, Vec3 exact, string what)
                {
                    double ours = exact.Dot(axis);
                    largest = Math.Max(largest, Math.Abs(ours));
                    Assert.True(
                        Math.Abs(difference - ours) <= 2e-6 * Math.Max(1, Math.Abs(ours)),
                        $"{id}, {linkage.Joints[i].Name}, {what} along {axis}: {ours} for {difference}");
                }

                Same(Slope(s => s.Camber), all[i].Camber, "camber");
                Same(Slope(s => s.Toe), all[i].Toe, "toe");
                Same(Slope(s => s.Outboard), all[i].Outboard, "outboard");
                Same(Slope(s => s.Spring.Length), all[i].SpringLength, "spring length");
                Same(Slope(s => s.Damper.Length), all[i].DamperLength, "damper length");
                Same(Slope(s => s.Spring.MotionRatio), all[i].SpringRatio, "spring ratio");
                Same(Slope(s => s.Damper.MotionRatio), all[i].DamperRatio, "damper ratio");
            }
        }

        Assert.True(largest > 0.1, "Nothing mattered: the comparison compared zeros.");
        Assert.Equal(Reach.LinkageCannotClose, Sensitivity.At(linkage, 2, 0, 0, out IReadOnlyList<JointSensitivity> none));
        Assert.Empty(none);

        TraceState Pushed(int joint, Vec3 by) =>
            LinkageTrace.At(linkage.WithJointsAt([.. linkage.Joints.Select((j, k) => k == joint ? j.At + by : j.At)]), travel, rack, plate);
    }

    [Fact]
    public void The_doubtful_joint_comes_first()
    {
        CornerLinkage linkage = TracedCorners.Linkage("W1");
        Vec3[] deviations = [.. linkage.Joints.Select(joint => (joint.Name == "upper ball" ? 0.005 : 0.0005) * new Vec3(1, 1, 1))];
        double[] travels = [-0.06, -0.03, 0.03, 0.06, 5];
        IReadOnlyList<JointShare> shares = Sensitivity.Shares(linkage, deviations, travels, TraceQuantity.Camber);
        Assert.Equal("upper ball", shares[0].Joint);
        Assert.Equal(1, shares.Sum(share => share.Share), 1e-12);
        Assert.All(shares, share => Assert.InRange(share.Share, 0, 1));
        Assert.True(shares[0].Deviation > 1e-4);

        // The spring's own ends do not move the wheel.
        Assert.DoesNotContain(shares, share => share.Joint.StartsWith("spring", StringComparison.Ordinal));
        Assert.Contains(Sensitivity.Shares(linkage, deviations, travels, TraceQuantity.SpringRatio), share => share.Joint == "spring foot");
        Assert.Empty(Sensitivity.Shares(linkage, deviations, [5], TraceQuantity.Camber));
        Assert.Throws<ArgumentException>(() => Sensitivity.Shares(linkage, [], travels, TraceQuantity.Camber));
    }
}
