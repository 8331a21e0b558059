using Cornerwright.Mechanics.Doubt;
using Cornerwright.Mechanics.Numerics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;

namespace Cornerwright.Mechanics.Tests.Doubt;

/// <summary>Least squares with priors, against the textbook's other form and against readings left out by hand.</summary>
public sealed class PosteriorTests
{
    private const int Seed = 616;

    // Two normal readings of one thing: weights are inverse variances. Source: Tarantola (2005), §1.4; GUM supplement usage.
    [Fact]
    public void One_parameter_read_once_is_the_weighted_mean()
    {
        var posterior = Posterior.Of([0], [new Observation(3, 2, [1])])!;
        Assert.Equal(3 * 1 / (1 + 4.0), posterior.Shifts[0], 1e-12);
        Assert.Equal(Math.Sqrt(4 / 5.0), posterior.Left(0), 1e-12);
        Assert.Equal(3 / Math.Sqrt(5), posterior.Deleted[0], 1e-12);
    }

    // (Hᵀ R⁻¹ H + 1)⁻¹ by MathNet: the same covariance by the other formula. Source: Tarantola (2005), eq. 3.38.
    [Fact]
    public void Shifts_and_covariance_agree_with_the_information_form()
    {
        var random = new Random(Seed);
        for (int n = 0; n < 100; n++)
        {
            int parameters = random.Next(1, 12), count = random.Next(1, 9);
            var observations = Draw(random, parameters, count);
            double[] at = [.. Enumerable.Range(0, parameters).Select(_ => random.NextDouble() - 0.5)];
            Matrix<double> h = DenseMatrix.Create(count, parameters, (i, p) => observations[i].Slopes[p] / observations[i].Sigma);
            Vector<double> r = DenseVector.Create(count, i => observations[i].Residual / observations[i].Sigma);
            var covariance = ((h.Transpose() * h) + DenseMatrix.CreateIdentity(parameters)).Inverse();
            var shifts = covariance * h.Transpose() * (r + (h * DenseVector.OfArray(at)));
            var posterior = Posterior.Of(at, observations)!;
            double[] vector = [.. Enumerable.Range(0, parameters).Select(_ => random.NextDouble() - 0.5)];
            double variance = DenseVector.OfArray(vector) * (covariance * DenseVector.OfArray(vector));
            posterior.Narrow(vector);
            Assert.Equal(variance, vector.Sum(x => x * x), 1e-9);
            for (int p = 0; p < parameters; p++)
            {
                Assert.Equal(shifts[p], posterior.Shifts[p], 1e-9);
                Assert.Equal(Math.Sqrt(covariance[p, p]), posterior.Left(p), 1e-9);
            }
        }
    }

    // Leave an observation out, expect it from the others: the difference over its own standard deviation.
    [Fact]
    public void Deleted_residuals_are_those_of_leaving_the_reading_out()
    {
        var random = new Random(Seed + 1);
        var observations = Draw(random, 5, 7);
        double[] at = new double[5];
        var all = Posterior.Of(at, observations)!;
        for (int i = 0; i < observations.Count; i++)
        {
            var others = Posterior.Of(at, [.. observations.Where((_, j) => j != i)])!;
            double[] slopes = [.. observations[i].Slopes];
            double expected = Enumerable.Range(0, 5).Sum(p => slopes[p] * others.Shifts[p]);
            others.Narrow(slopes);
            double sigma = Math.Sqrt(slopes.Sum(x => x * x) + (observations[i].Sigma * observations[i].Sigma));
            Assert.Equal((observations[i].Residual - expected) / sigma, all.Deleted[i], 1e-9);
        }
    }

    [Fact]
    public void Eigenvalues_are_MathNets()
    {
        var random = new Random(Seed + 2);
        Matrix<double> g = DenseMatrix.Create(9, 9, (_, _) => random.NextDouble() - 0.5);
        var a = g * g.Transpose();
        var (values, q) = SymmetricEigen.Of(a.ToArray());
        Assert.Equal(
            a.Evd(Symmetricity.Symmetric).EigenValues.Select(v => v.Real).Order(), values.Order(), (x, y) => Math.Abs(x - y) < 1e-10);
        var vectors = DenseMatrix.OfArray(q);
        Assert.True((vectors * DenseMatrix.OfDiagonalArray(values) * vectors.Transpose() - a).L2Norm() < 1e-10);
    }

    private static List<Observation> Draw(Random random, int parameters, int count) =>
        [.. Enumerable.Range(0, count).Select(
            _ => new Observation(
                random.NextDouble() - 0.5, 0.1 + random.NextDouble(),
                [.. Enumerable.Range(0, parameters).Select(_ => random.NextDouble() - 0.5)]))];
}
