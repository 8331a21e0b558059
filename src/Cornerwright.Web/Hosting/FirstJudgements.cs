using Cornerwright.Garage.Files;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Web.Hosting;

/// <summary>
/// Judges the demo car over and over for a short while after the start, on a thread that yields to everything else. The
/// run-time compiles code well only after it has run often; without this the first judgements of a drag take some ten times
/// as long as later ones (27 ms against 3 ms on two shared cores).
/// </summary>
public sealed class FirstJudgements : IHostedService
{
    /// <summary>Two rounds of thirty calls bring a method to its last form; a few more for what is called rarely.</summary>
    private const int Rounds = 90;

    private static readonly TimeSpan Breath = TimeSpan.FromMilliseconds(15);

    // A flag and nothing that can be disposed: the thread may outlive its host by one judgement.
    private volatile bool _stop;

    public Task StartAsync(CancellationToken cancellationToken)
    {
        var thread = new Thread(Run) { IsBackground = true, Priority = ThreadPriority.BelowNormal, Name = "first judgements" };
        thread.Start();
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken)
    {
        _stop = true;
        return Task.CompletedTask;
    }

    private void Run()
    {
        var car = DemoCar.Read();
        for (int i = 0; i < Rounds && !_stop; i++)
        {
            Thread.Sleep(Breath);
            Judge.Build(car, car.Builds[i % car.Builds.Count].Id, new JudgeOptions(Cures: i % 3 == 0, Pictures: true));
        }
    }
}
