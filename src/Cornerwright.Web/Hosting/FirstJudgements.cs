using Cornerwright.Garage.Files;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Web.Hosting;

/// <summary>
/// Judges the demo car over and over for a short while after the start, on a thread that yields to everything else. The
/// run-time compiles code well only after it has run often; without this the first judgements of a drag take some ten times
/// as long as later ones (27 ms against 3 ms on two shared cores).
/// </summary>
public sealed class FirstJudgements : IHostedService, IDisposable
{
    /// <summary>Two rounds of thirty calls bring a method to its last form; a few more for what is called rarely.</summary>
    private const int Rounds = 90;

    private static readonly TimeSpan Breath = TimeSpan.FromMilliseconds(15);
    private readonly CancellationTokenSource _stop = new();

    public Task StartAsync(CancellationToken cancellationToken)
    {
        var thread = new Thread(Run) { IsBackground = true, Priority = ThreadPriority.BelowNormal, Name = "first judgements" };
        thread.Start();
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken)
    {
        _stop.Cancel();
        return Task.CompletedTask;
    }

    public void Dispose() => _stop.Dispose();

    private void Run()
    {
        var car = DemoCar.Read();
        var stop = _stop.Token;
        for (int i = 0; i < Rounds && !stop.WaitHandle.WaitOne(Breath); i++)
        {
            Judge.Build(car, car.Builds[i % car.Builds.Count].Id, new JudgeOptions(Cures: i % 3 == 0, Pictures: true));
        }
    }
}
