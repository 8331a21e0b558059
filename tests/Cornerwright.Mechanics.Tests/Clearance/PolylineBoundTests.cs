using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Tests.Motion;

namespace Cornerwright.Mechanics.Tests.Clearance;

/// <summary>
/// What a search may skip must be proved: lines long and short, across a shoulder and along the tread, some of them in the wheel. A fixed
/// allowance of 5 mm stood for the proof before; a segment of 0.19 m lay 9 mm nearer than its looked-at points.
/// </summary>
public sealed class PolylineBoundTests
{
    private const int Seed = 20261203, Lines = 4000;

    [Fact]
    public void No_point_of_a_line_lies_below_the_bound_and_the_bound_is_near()
    {
        var random = new Random(Seed);
        double off = 0;
        int inside = 0;
        for (int run = 0; run < Lines; run++)
        {
            WheelSolid wheel = Wheel(random);
            Vec3[] line = Line(random);
            double gap = PolylineClearing.Of(wheel, line).Gap;
            double least = PolylineClearing.AtLeast(wheel, line, double.PositiveInfinity, out double found);
            Assert.True(least <= gap + 1e-9 && gap <= found + 1e-9, $"line {run}: {least}, {gap}, {found}");
            for (int k = 0; k <= 200; k++)
            {
                Vec3 p = line.Length == 1 ? line[0] : At(line, k / 200.0);
                Assert.True(wheel.SignedDistance(p) >= least - 1e-9, $"line {run}: a point at {wheel.SignedDistance(p)}, bound {least}");
            }

            inside += gap < 0 ? 1 : 0;
            off = Math.Max(off, gap > 0 && gap < 0.03 && line.Length > 1 ? gap - least : 0);
        }

        Assert.True(inside > 200, $"{inside} reach into the wheel");
        Assert.InRange(off, 1e-4, 0.08);
    }

    [Fact]
    public void With_a_bound_the_answer_is_the_same_or_the_bound()
    {
        var random = new Random(Seed + 1);
        int below = 0;
        for (int run = 0; run < Lines; run++)
        {
            WheelSolid wheel = Wheel(random);
            Vec3[] line = Line(random);
            double gap = PolylineClearing.Of(wheel, line).Gap, bound = gap + (0.02 * (random.NextDouble() - 0.5));
            bool isBelow = PolylineClearing.TryBelow(wheel, line, bound, out Clearing least);
            Assert.Equal(gap < bound, isBelow);
            below += isBelow ? 1 : 0;
            Assert.True(!isBelow || Math.Abs(least.Gap - gap) < 2e-7, $"line {run}: {least.Gap} for {gap}");
            double cut = PolylineClearing.AtLeast(wheel, line, bound, out _);
            Assert.True(cut <= bound && cut <= Math.Min(gap, bound) + 1e-9, $"line {run}: {cut}, gap {gap}, bound {bound}");
        }

        Assert.InRange(below, Lines / 4, 3 * Lines / 4);
    }

    private static WheelSolid Wheel(Random random)
    {
        var (tyre, rim) = RandomCorner.Wheel(random);
        return WheelSolid.Write(tyre, rim, 12, new double[WheelSolid.BufferLength(12)]);
    }

    private static Vec3[] Line(Random random)
    {
        double clock = random.Between(0, 12), a = random.Between(-0.25, 0.15), r = random.Between(0.15, 0.45);
        return [.. Enumerable.Range(0, 1 + random.Next(4)).Select(_ => Clock.PointAt(
            a + random.Between(-0.05, 0.05), r + random.Between(-0.05, 0.05), clock + random.Between(-1.5, 1.5)))];
    }

    private static Vec3 At(Vec3[] line, double share)
    {
        double along = share * (line.Length - 1);
        int segment = Math.Min((int)along, line.Length - 2);
        return line[segment] + ((line[segment + 1] - line[segment]) * (along - segment));
    }
}
