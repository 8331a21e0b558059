using BenchmarkDotNet.Attributes;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Bench;

/// <summary>
/// Judging one build of the demo car: all four corners, every check, travel sweeps and first-order doubt included, on one core.
/// The goal is below 1 ms for the verdicts, since a slider judges anew while it is dragged.
/// </summary>
public class JudgeBench
{
    private Car _car = new();

    /// <summary>gravel-1 fails in many places and so has many cures to solve; gravel-3 holds.</summary>
    [Params("gravel-1", "gravel-3")]
    public string Build { get; set; } = "";

    [GlobalSetup]
    public void Setup()
    {
        _car = DemoCar.Read();
        if (Judge.Build(_car, Build, JudgeOptions.FindingsOnly).Findings.Count == 0)
        {
            throw new InvalidOperationException("Nothing was judged: the bench would measure nothing.");
        }
    }

    [Benchmark(Baseline = true)]
    public Judgement Verdicts() => Judge.Build(_car, Build, JudgeOptions.FindingsOnly);

    [Benchmark]
    public Judgement VerdictsAndPictures() => Judge.Build(_car, Build, new JudgeOptions(Cures: false, Pictures: true));

    [Benchmark]
    public Judgement Everything() => Judge.Build(_car, Build);
}
