using Cornerwright.Mechanics.Clearance;

namespace Cornerwright.Mechanics.Tests.Clearance;

/// <summary>Measured outlines of any shape, cut into convex pieces.</summary>
public class ConvexSplitTests
{
    [Theory]
    [InlineData(21)]
    [InlineData(22)]
    public void Pieces_are_convex_cover_the_outline_and_keep_its_distances(int seed)
    {
        var random = new Random(seed);
        for (int i = 0; i < 60; i++)
        {
            ProfilePoint[] outline = Star(random, random.Next(3, 40));
            WheelShape shape = WheelShape.Of([new WheelOutline(WheelPart.Spokes, i % 2 == 0 ? outline : [.. outline.Reverse()])]);
            var pieces = shape.Corners.Select(c => c.ToArray()).ToList();
            Assert.Equal(Area(outline), pieces.Sum(Area), 1e-9);
            Assert.All(pieces, p => Assert.True(IsConvex(p), $"seed {seed} outline {i}"));
            Assert.True(pieces.Count <= outline.Length - 2);
            var whole = new ProfilePolygon(outline);
            for (int k = 0; k < 300; k++)
            {
                double a = random.Between(-0.5, 0.5), r = random.Between(0, 0.8);
                double d = whole.SignedDistance(a, r), got = shape.SignedDistance(a, r, out _, out _, out _);
                Assert.True(d > 0 ? Math.Abs(d - got) < 1e-9 : got <= 1e-9 && got >= d - 1e-9, $"seed {seed} outline {i}: {d}, {got}");
            }
        }
    }

    [Fact]
    public void A_solid_disc_bounds_nothing_on_the_spindle()
    {
        WheelShape spokes =
            WheelShape.Of([new WheelOutline(WheelPart.Spokes, [new(0.02, 0), new(0.05, 0), new(0.05, 0.2), new(0.02, 0.2)])]);
        Assert.Equal(-0.015, spokes.SignedDistance(0.035, 0, out _, out double ga, out _), 1e-12);
        Assert.Equal(1, Math.Abs(ga), 1e-12);
        Assert.Equal(0.02, spokes.SignedDistance(0, 0, out _, out _, out _), 1e-12);
    }

    [Fact]
    public void What_is_no_outline_says_why()
    {
        Assert.Equal(OutlineFault.FewerThanThreeCorners, ConvexSplit.WhyNot([new(0, 1), new(1, 1)]));
        Assert.Equal(OutlineFault.NotFinite, ConvexSplit.WhyNot([new(0, 1), new(1, double.NaN), new(1, 2)]));
        Assert.Equal(OutlineFault.BelowTheSpindle, ConvexSplit.WhyNot([new(0, -1), new(1, 1), new(1, 2)]));
        Assert.Equal(OutlineFault.NoArea, ConvexSplit.WhyNot([new(0, 1), new(1, 1), new(2, 1)]));
        Assert.Equal(OutlineFault.NoArea, ConvexSplit.WhyNot([new(0, 1), new(0, 1), new(1, 1)]));
        Assert.Equal(OutlineFault.CrossesItself, ConvexSplit.WhyNot([new(0, 1), new(1, 2), new(1, 1), new(0, 2.5)]));
        Assert.Equal(OutlineFault.TooManyCorners, ConvexSplit.WhyNot(new ProfilePoint[ConvexSplit.MostCorners + 1]));
        Assert.Equal(OutlineFault.None, ConvexSplit.WhyNot([new(0, 1), new(1, 1), new(1, 2), new(0, 2)]));
        ArgumentException e =
            Assert.Throws<ArgumentException>(() => WheelShape.Of([new WheelOutline(WheelPart.Tyre, [new(0, 1), new(1, 1), new(2, 1)])]));
        Assert.Contains("NoArea", e.Message, StringComparison.Ordinal);
    }

    private static ProfilePoint[] Star(Random random, int corners)
    {
        var points = new ProfilePoint[corners];
        for (int i = 0; i < corners; i++)
        {
            double angle = (i + random.Between(0.1, 0.9)) * 2 * Math.PI / corners, length = random.Between(0.05, 0.3);
            points[i] = new(length * Math.Cos(angle), 0.4 + (length * Math.Sin(angle)));
        }

        // Three corners may leave the middle outside and turn the wrong way; any way round is allowed.
        return points;
    }

    private static double Area(ProfilePoint[] c)
    {
        double sum = 0;
        for (int i = 0; i < c.Length; i++)
        {
            ProfilePoint p = c[i], q = c[(i + 1) % c.Length];
            sum += 0.5 * ((p.A * q.R) - (q.A * p.R));
        }

        return Math.Abs(sum);
    }

    private static bool IsConvex(ProfilePoint[] c)
    {
        for (int i = 0; i < c.Length; i++)
        {
            ProfilePoint p = c[i], q = c[(i + 1) % c.Length], s = c[(i + 2) % c.Length];
            if (((q.A - p.A) * (s.R - q.R)) - ((q.R - p.R) * (s.A - q.A)) < -1e-12)
            {
                return false;
            }
        }

        return true;
    }
}
