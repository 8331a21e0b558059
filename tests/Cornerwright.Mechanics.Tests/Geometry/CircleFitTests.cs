using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Tests.Geometry;

public class CircleFitTests
{
    private const int Seed = 20260922;

    // Source: W. Gander, G. H. Golub, R. Strebel, "Least-squares fitting of circles and ellipses", BIT 34 (1994), section 1 and 3:
    // six points, the geometric solution centre (4.7398, 2.9835), radius 4.7142. Points and solution from memory; that they
    // belong together is what this test shows. Half of the last printed digit.
    [Fact]
    public void Six_published_points_give_the_published_circle()
    {
        Vec3[] points = [new(1, 7, 0), new(2, 6, 0), new(5, 8, 0), new(7, 7, 0), new(9, 5, 0), new(3, 7, 0)];
        var fit = CircleFit.Fit(points, 1);
        Assert.Equal(CircleFitStop.Fitted, fit.Why);
        Assert.Equal(4.7398, fit.Centre.X, 5e-5);
        Assert.Equal(2.9835, fit.Centre.Y, 5e-5);
        Assert.Equal(4.7142, fit.Radius, 5e-5);
    }

    [Fact]
    public void Exact_points_give_the_circle_back_wherever_it_stands()
    {
        var random = new Random(Seed);
        for (int run = 0; run < 300; run++)
        {
            var place = RigidFitTests.RandomTransform(random);
            double radius = 0.05 + (0.3 * random.NextDouble());
            int count = random.Next(3, 12);
            Vec3[] points = [
                .. Enumerable.Range(0, count).Select(
                    i => place.Apply(On(radius, 2 * Math.PI * (i + (0.5 * random.NextDouble())) / count)))];
            var fit = CircleFit.Fit(points, 0.001);
            Assert.Equal(CircleFitStop.Fitted, fit.Why);
            Assert.True((fit.Centre - place.Shift).Length < 1e-9, $"seed {Seed}, run {run}");
            Assert.Equal(radius, fit.Radius, 9);
            Assert.Equal(1, Math.Abs(fit.Axis.Dot(place.Turn(Vec3.UnitZ))), 9);
        }
    }

    [Fact]
    public void A_wrong_point_is_named_and_left_out()
    {
        var random = new Random(Seed + 1);
        int named = 0;
        const int Runs = 200;
        for (int run = 0; run < Runs; run++)
        {
            Vec3[] points = [.. Enumerable.Range(0, 9).Select(i => On(0.22, 2 * Math.PI * i / 9) + RigidFitTests.Noise(random, 0.001))];
            int wrong = random.Next(9);
            points[wrong] += RigidFitTests.Direction(random) * 0.03;
            var fit = CircleFit.Fit(points, 0.001);
            named += fit.Outliers.Count == 1 && fit.Outliers[0] == wrong ? 1 : 0;
        }

        // A point pushed along the rim stays on the circle and harms nothing, so not every push can be seen.
        Assert.InRange(named, Runs * 80 / 100, Runs);
    }

    [Fact]
    public void The_stated_doubt_is_the_drawn_one()
    {
        var random = new Random(Seed + 2);
        double[] angles = [0.1, 0.6, 1.0, 1.9, 2.4, 2.8];   // not quite half of the circle
        Vec3[] truth = [.. angles.Select(a => On(0.22, a))];
        const double Sigma = 0.001;
        const int Draws = 4000;
        double xx = 0, xy = 0, yy = 0;
        for (int k = 0; k < Draws; k++)
        {
            var fit = CircleFit.Fit([.. truth.Select(p => p + RigidFitTests.Noise(random, Sigma))], Sigma);
            (xx, xy, yy) = (xx + (fit.Centre.X * fit.Centre.X), xy + (fit.Centre.X * fit.Centre.Y), yy + (fit.Centre.Y * fit.Centre.Y));
        }

        double worst = Math.Sqrt((((xx + yy) / 2) + Math.Sqrt((((xx - yy) / 2) * ((xx - yy) / 2)) + (xy * xy))) / Draws);
        Assert.InRange(worst / CircleFit.Fit(truth, Sigma).CentreDeviation, 0.93, 1.07);
    }

    [Fact]
    public void What_is_no_circle_is_refused()
    {
        Assert.Equal(CircleFitStop.TooFew, CircleFit.Fit([On(1, 0), On(1, 1)], 0.001).Why);
        Assert.Equal(CircleFitStop.OnALine, CircleFit.Fit([new(0, 0, 0), new(1, 0, 0), new(2, 0.001, 0), new(3, 0, 0)], 0.001).Why);
        Assert.Equal(CircleFitStop.OnALine, CircleFit.Fit([default, default, default], 0.001).Why);
        Assert.Equal(CircleFitStop.TooFew, CircleFit.Fit([On(1, 0), On(1, 1), new(double.NaN, 0, 0)], 0.001).Why);
    }

    private static Vec3 On(double radius, double angle) => new(radius * Math.Cos(angle), radius * Math.Sin(angle), 0);
}
