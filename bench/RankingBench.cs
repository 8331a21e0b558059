using System.Globalization;
using System.Diagnostics;
using BenchmarkDotNet.Attributes;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Workshop.Ranking;

namespace Cornerwright.Bench;

/// <summary>
/// The quick evaluation of a corner at tape level: collar solved, every check of springs, seats, travel and damper worked out
/// to the end. The goal is below 1 µs on one core and no allocation.
/// </summary>
public class StaticCornerBench
{
    private const int Choices = 1024;

    private readonly StaticSheet _sheet = new();
    private SearchSpace _space = null!;
    private SuspensionChoice[] _choices = [];

    [GlobalSetup]
    public void Setup()
    {
        var car = InventedCatalogue.Make();
        var wishes = InventedCatalogue.WishesOf(car);
        _space = new SearchSpace(car, wishes, car.Build(wishes.StartingBuild)!, PartsPool.Of(car, wishes));
        var random = new Random(3);
        _choices = [.. Enumerable.Range(0, Choices).Select(_ =>
            _space.ChoiceOf(random.Next(_space.Stacks.Length), random.Next(_space.Perches.Length), random.Next(_space.StationsCount)))];
        if (Whole() == 0 || UntilBroken() == Choices)
        {
            throw new InvalidOperationException("All choices hold, or none: the bench would measure one path only.");
        }
    }

    /// <summary>Every check to the end, whatever breaks.</summary>
    [Benchmark(OperationsPerInvoke = Choices)]
    public int Whole() => Count(toTheEnd: true);

    /// <summary>As the search does it: up to the first check that does not hold.</summary>
    [Benchmark(OperationsPerInvoke = Choices)]
    public int UntilBroken() => Count(toTheEnd: false);

    /// <summary>Evaluations a second of processor time on one thread: what other work on the machine disturbs least.</summary>
    public static double PerSecond(bool toTheEnd)
    {
        const int Rounds = 3000, WarmUp = 300;
        var bench = new StaticCornerBench();
        bench.Setup();
        for (int i = 0; i < WarmUp; i++)
        {
            bench.Count(toTheEnd);
        }

        var process = Process.GetCurrentProcess();
        var before = process.TotalProcessorTime;
        for (int i = 0; i < Rounds; i++)
        {
            bench.Count(toTheEnd);
        }

        process.Refresh();
        return (double)Rounds * Choices / (process.TotalProcessorTime - before).TotalSeconds;
    }

    private int Count(bool toTheEnd)
    {
        int holds = 0;
        foreach (ref readonly var choice in _choices.AsSpan())
        {
            holds += _space.Left.Evaluate(_space.Stacks[choice.Stack], _space.Perches[choice.Perch],
                _space.LeftStations[_space.StationOf(choice)], _sheet, toTheEnd) ? 1 : 0;
        }

        return holds;
    }
}

/// <summary>
/// A catalogue of two million combinations ranked from nothing, once, with what is found; not a repeated bench: `-- ranking`.
/// </summary>
public static class RankingRun
{
    public static void Run(int threads)
    {
        var car = InventedCatalogue.Make();
        var wishes = InventedCatalogue.WishesOf(car);
        var watch = Stopwatch.StartNew();
        var process = Process.GetCurrentProcess();
        var before = process.TotalProcessorTime;
        var search = BuildSearch.Prepare(car, wishes).Value;
        string stage = "";
        search.Run(CancellationToken.None, new Told(p =>
        {
            if (p.Words != stage)
            {
                stage = p.Words;
                Console.WriteLine($"{watch.Elapsed.TotalSeconds,7:0.00} s  {stage}");
            }
        }), threads);
        process.Refresh();
        var used = process.TotalProcessorTime - before;
        var result = search.Result();
        Console.WriteLine($"{result.Combinations} combinations in "
            + $"{watch.Elapsed.TotalSeconds:0.0} s, {used.TotalSeconds:0.0} s of processor time, {threads} threads");
        Console.WriteLine($"judged in full {result.JudgedInFull}, held {result.Held}, set aside "
            + $"{result.SetAside}, left out {result.LeftOut}, front {result.Front.Count}");
        foreach (var refused in result.Refused)
        {
            Console.WriteLine($"{refused.Count,10}  {refused.Title}");
        }

        foreach (var build in result.Listed.Take(5))
        {
            Console.WriteLine($"{build.Rank,3}  {build.Probability:0.000}  {build.Cost,6}  {build.Frequency}  "
                + $"{build.Bounds} {build.Tightest}  {string.Join(' ', build.Parts.Select(p => p.Id))}");
        }

        double toTheEnd = StaticCornerBench.PerSecond(toTheEnd: true) / 1e6;
        double untilOneBreaks = StaticCornerBench.PerSecond(toTheEnd: false) / 1e6;
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"quick evaluations: {toTheEnd:0.00} million a second of processor time to the end, "
            + $"{untilOneBreaks:0.00} million until a check breaks"));
    }

    private sealed class Told(Action<SearchProgress> act) : IProgress<SearchProgress>
    {
        public void Report(SearchProgress value) => act(value);
    }
}
