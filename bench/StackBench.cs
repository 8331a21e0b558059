using BenchmarkDotNet.Attributes;
using Cornerwright.Mechanics.Springs;
using MathNet.Numerics.RootFinding;

namespace Cornerwright.Bench;

/// <summary>
/// Force of a stack in a given space: our closed form against a bracketed root (Brent) of the same length function, the way one
/// would solve it with a general library. Both are asked for the same spaces in one run.
/// </summary>
public class StackBench
{
    private const int Spaces = 64;
    private const double Accuracy = 1e-12;

    private StackElement[] _stack = [];
    private double[] _spaces = [];

    /// <summary>Main and helper; or helper, tender, progressive main and two sheets.</summary>
    [Params("main + helper", "five pieces")]
    public string Pieces { get; set; } = "";

    [GlobalSetup]
    public void Setup()
    {
        var main = StackElement.Linear(0.200, 0.085, 80_000);
        var helper = StackElement.Linear(0.060, 0.018, 3_000);
        var tender = StackElement.Linear(0.080, 0.030, 40_000);
        var curve = SpringCurve.Through([0.01, 0.03, 0.06, 0.10], [500, 1_700, 4_000, 8_500]);
        _stack = Pieces == "main + helper"
            ? [main, helper]
            : [StackElement.Rigid(0.002), StackElement.Progressive(0.200, 0.085, curve), StackElement.Rigid(0.004), tender, helper];
        double free = SpringStack.FreeLength(_stack), solid = SpringStack.SolidLength(_stack);
        _spaces = [.. Enumerable.Range(1, Spaces).Select(i => solid + ((free - solid) * i / (Spaces + 1.0)))];
        foreach (double space in _spaces)
        {
            double ours = SpringStack.ForceAt(_stack, space).Force, theirs = ByRoot(space);
            if (!(Math.Abs(ours - theirs) <= 1e-6 * Math.Max(1, ours)))
            {
                throw new InvalidOperationException($"The two ways differ in a space of {space} m: {ours} N and {theirs} N.");
            }
        }
    }

    [Benchmark(OperationsPerInvoke = Spaces)]
    public double ClosedForm()
    {
        double sum = 0;
        foreach (double space in _spaces)
        {
            sum += SpringStack.ForceAt(_stack, space).Force;
        }

        return sum;
    }

    [Benchmark(Baseline = true, OperationsPerInvoke = Spaces)]
    public double BracketedRoot()
    {
        double sum = 0;
        foreach (double space in _spaces)
        {
            sum += ByRoot(space);
        }

        return sum;
    }

    private double ByRoot(double space) =>
        Brent.FindRoot(force => SpringStack.LengthAt(_stack, force) - space, 0, SpringStack.BindForce(_stack), Accuracy, 200);
}
