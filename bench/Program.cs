using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;

namespace Cornerwright.Bench;

/// <summary>Runs the benches named on the command line; bench/README.md says how.</summary>
public static class Program
{
    public static void Main(string[] args)
    {
        // One core, so that figures mean the same on machines with many.
        var oneCore = Job.Default.WithId("one core");
        if (OperatingSystem.IsLinux() || OperatingSystem.IsWindows())
        {
            oneCore = oneCore.WithAffinity(1);
        }

        var config = DefaultConfig.Instance.AddJob(oneCore).AddDiagnoser(MemoryDiagnoser.Default);
        BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args, config);
    }
}
