using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;

namespace Cornerwright.Bench;

/// <summary>Runs the benches named on the command line; bench/README.md says how.</summary>
public static class Program
{
    public static int Main(string[] args)
    {
        if (args is ["peer", ..])
        {
            return PeerDistance.Run(args);
        }

        if (args is ["ranking", ..])
        {
            RankingRun.Run(args.Length > 1 && int.TryParse(args[1], out int threads) ? threads : 2);
            return 0;
        }

        var config = DefaultConfig.Instance.AddDiagnoser(MemoryDiagnoser.Default);
        if (!args.Contains("--job"))
        {
            config = config.AddJob(OnOneCore(Job.Default));
        }

        BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args, config);
        return 0;
    }

    // So that figures mean the same on machines with many cores.
    private static Job OnOneCore(Job job) =>
        OperatingSystem.IsLinux() || OperatingSystem.IsWindows() ? job.WithId("one core").WithAffinity(1) : job;
}
