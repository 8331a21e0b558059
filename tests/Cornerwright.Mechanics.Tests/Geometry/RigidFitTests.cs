using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Tests.Geometry;

public class RigidFitTests
{
    private const int Seed = 20260921;

    [Fact]
    public void Exact_pairs_give_the_transform_back_to_rounding()
    {
        var random = new Random(Seed);
        for (int run = 0; run < 500; run++)
        {
            var truth = RandomTransform(random);
            Vec3[] from = Points(random, random.Next(3, 12), 0.5);
            Vec3[] to = [.. from.Select(p => truth.Apply(p))];
            var fit = RigidFit.Fit(from, to, 0.001);
            if (fit.Why == RigidFitStop.OnALine)
            {
                continue;
            }

            Assert.Equal(RigidFitStop.Fitted, fit.Why);
            Assert.Equal(1, fit.Scale, 9);
            Assert.All(fit.Residuals, r => Assert.InRange(r, 0, 1e-12));
            Vec3 far = new(3, -2, 1);
            Assert.True((fit.Transform.Apply(far) - truth.Apply(far)).Length < 1e-9, $"seed {Seed}, run {run}");
        }
    }

    /// <summary>The second way: no small turn or shift away from the answer lowers the sum of squares.</summary>
    [Fact]
    public void Nothing_near_the_answer_is_better()
    {
        var random = new Random(Seed + 1);
        for (int run = 0; run < 200; run++)
        {
            var truth = RandomTransform(random);
            Vec3[] from = Points(random, random.Next(3, 9), 0.5);
            Vec3[] to = [.. from.Select(p => truth.Apply(p) + Noise(random, 0.002))];
            var fit = RigidFit.Fit(from, to, 0.002);
            if (fit.Why != RigidFitStop.Fitted || fit.Outliers.Count > 0)
            {
                continue;
            }

            double best = Square(fit.Transform, from, to);
            for (int k = 0; k < 60; k++)
            {
                double size = Math.Pow(10, -6 + (4 * random.NextDouble()));
                var nudge = RigidTransform.From(1, size * Gauss(random), size * Gauss(random), size * Gauss(random), Noise(random, size));
                Assert.True(Square(fit.Transform.Then(nudge), from, to) >= best - 1e-15, $"seed {Seed + 1}, run {run}");
            }
        }
    }

    [Fact]
    public void One_wrong_pair_is_named_and_left_out()
    {
        var random = new Random(Seed + 2);
        int named = 0;
        const int Runs = 200;
        for (int run = 0; run < Runs; run++)
        {
            var truth = RandomTransform(random);
            Vec3[] from = Points(random, 6, 0.4);
            Vec3[] to = [.. from.Select(p => truth.Apply(p) + Noise(random, 0.001))];
            int wrong = random.Next(6);
            to[wrong] += Direction(random) * (0.03 + (0.1 * random.NextDouble()));
            var fit = RigidFit.Fit(from, to, 0.001);
            named += fit.Outliers.Count == 1 && fit.Outliers[0] == wrong ? 1 : 0;
        }

        Assert.InRange(named, Runs * 95 / 100, Runs);
    }

    [Fact]
    public void Points_on_a_line_too_few_and_mirrored_ones_are_refused_and_flat_ones_are_taken()
    {
        Vec3[] line = [new(0, 0, 0), new(0.2, 0.001, 0), new(0.5, 0, 0.001), new(0.9, 0, 0)];
        Assert.Equal(RigidFitStop.OnALine, RigidFit.Fit(line, line, 0.001).Why);
        Assert.Equal(RigidFitStop.TooFew, RigidFit.Fit(line.AsSpan(0, 2), line.AsSpan(0, 2), 0.001).Why);
        Vec3[] nan = [new(0, 0, 0), new(double.NaN, 0, 0), new(0, 1, 0)];
        Assert.Equal(RigidFitStop.TooFew, RigidFit.Fit(nan, nan, 0.001).Why);

        Vec3[] body = [new(0, 0, 0), new(0.5, 0, 0), new(0, 0.4, 0), new(0, 0, 0.3), new(0.2, 0.3, 0.4)];
        Vec3[] mirrored = [.. body.Select(p => new Vec3(p.X, -p.Y, p.Z))];
        Assert.Equal(RigidFitStop.Mirrored, RigidFit.Fit(body, mirrored, 0.001).Why);

        // A flat figure is its own mirror image: turned over, it fits.
        Vec3[] flat = [new(0, 0, 0), new(0.5, 0, 0), new(0, 0.4, 0), new(0.3, 0.3, 0)];
        var turned = RigidFit.Fit(flat, [.. flat.Select(p => new Vec3(p.X, -p.Y, p.Z))], 0.001);
        Assert.Equal(RigidFitStop.Fitted, turned.Why);
        Assert.All(turned.Residuals, r => Assert.InRange(r, 0, 1e-12));
    }

    [Fact]
    public void A_wrong_unit_shows_in_the_scale()
    {
        Vec3[] inch = [new(0, 0, 0), new(10, 0, 0), new(0, 8, 0), new(0, 3, 9)];
        var fit = RigidFit.Fit([.. inch.Select(p => p * 0.025)], [.. inch.Select(p => p * 0.0254)], 0.001);
        Assert.Equal(0.0254 / 0.025, fit.Scale, 9);
    }

    /// <summary>The stated doubt against what happens: 4,000 fits of the same pairs with drawn errors.</summary>
    [Fact]
    public void The_stated_doubt_is_the_drawn_one()
    {
        var random = new Random(Seed + 3);
        Vec3[] truth = [new(0.4, 0.1, 0.3), new(-0.3, 0.1, 0.35), new(0.1, 0.12, 0.45), new(0.0, -0.2, 0.1), new(0.3, -0.1, -0.2)];
        Vec3 place = new(0, 0, 0.32);
        const double Sigma = 0.002;
        const int Draws = 4000;
        double sum = 0;
        Span<double> covariance = stackalloc double[6];
        double stated = 0;
        for (int k = 0; k < Draws; k++)
        {
            Vec3[] to = [.. truth.Select(p => p + Noise(random, Sigma))];
            var fit = RigidFit.Fit(truth, to, Sigma);
            double off = (fit.Transform.Apply(place) - place).Z;
            sum += off * off;
            if (k == 0)
            {
                // From the true pairs, so that the residual of one draw does not enter.
                RigidFit.Fit(truth, truth, Sigma).CovarianceAt(place, covariance);
                stated = Math.Sqrt(covariance[5]);
            }
        }

        Assert.InRange(Math.Sqrt(sum / Draws) / stated, 0.95, 1.05);
    }

    [Fact]
    public void Turns_agree_with_Rodrigues_and_inverses_and_chains_hold()
    {
        // Source: the second way is Vec3.RotatedAbout (Rodrigues 1840).
        var random = new Random(Seed + 4);
        for (int i = 0; i < 300; i++)
        {
            Vec3 axis = Direction(random), p = Noise(random, 1);
            double angle = (random.NextDouble() - 0.5) * 6;
            var (sin, cos) = Math.SinCos(angle / 2);
            var turn = RigidTransform.From(cos, axis.X * sin, axis.Y * sin, axis.Z * sin, Noise(random, 1));
            Assert.True((turn.Turn(p) - p.RotatedAbout(axis, angle)).Length < 1e-12);
            Assert.True((turn.Inverse().Apply(turn.Apply(p)) - p).Length < 1e-12);
            var other = RandomTransform(random);
            Assert.True((turn.Then(other).Apply(p) - other.Apply(turn.Apply(p))).Length < 1e-12);
            Vec3 x = turn.Turn(Vec3.UnitX), y = turn.Turn(Vec3.UnitY), z = turn.Turn(Vec3.UnitZ);
            var back = RigidTransform.FromAxes(x, y, z);
            Assert.True(
                (back.Turn(x) - Vec3.UnitX).Length + (back.Turn(y) - Vec3.UnitY).Length + (back.Turn(z) - Vec3.UnitZ).Length < 1e-12);
        }
    }

    internal static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    internal static Vec3 Noise(Random random, double sigma) => new(sigma * Gauss(random), sigma * Gauss(random), sigma * Gauss(random));

    internal static Vec3 Direction(Random random) => Noise(random, 1).Unit();

    internal static RigidTransform RandomTransform(Random random) =>
        RigidTransform.From(Gauss(random), Gauss(random), Gauss(random), Gauss(random), Noise(random, 1));

    private static Vec3[] Points(Random random, int count, double size) => [.. Enumerable.Range(0, count).Select(_ => Noise(random, size))];

    private static double Square(RigidTransform t, Vec3[] from, Vec3[] to) =>
        from.Zip(to).Sum(p => (t.Apply(p.First) - p.Second).LengthSquared);
}
