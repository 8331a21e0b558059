using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Problems;
using Cornerwright.Workshop.Ranking;
using Cornerwright.Workshop.Scanning;

namespace Cornerwright.Web.Components.Ranking;

/// <summary>
/// One person's search: begun, stopped, gone on with, whatever page is looked at meanwhile. Works on pool threads; <see cref="Changed"/>
/// comes from one, a few times a second.
/// </summary>
public sealed class SearchRun(Func<Car, ScanShelf> scans) : IDisposable
{
    private const int TellEveryMs = 150;

    private readonly Lock _gate = new();
    private readonly Dictionary<string, string> _taken = new(StringComparer.Ordinal);
    private CancellationTokenSource? _stop;
    private BuildSearch? _search;
    private long _told;

    public event Action? Changed;

    /// <summary>The car as it was when the search began; null before the first.</summary>
    public Car? Car { get; private set; }

    public Wishes? Wishes { get; private set; }

    public bool Running { get; private set; }

    public SearchProgress Progress { get; private set; }

    /// <summary>What was found up to the last stop; null before.</summary>
    public RankingResult? Result { get; private set; }

    /// <summary>Why the search could not begin.</summary>
    public IReadOnlyList<Problem> Problems { get; private set; } = [];

    /// <summary>A search was stopped and can go on.</summary>
    public bool CanGoOn => !Running && _search is { Done: false };

    /// <summary>Done when nothing runs.</summary>
    public Task Working { get; private set; } = Task.CompletedTask;

    /// <summary>Begins anew; what ran before is given up.</summary>
    public void Begin(Car car, Wishes wishes)
    {
        Stop();
        (Car, Wishes, Result, Problems, _search) = (car, wishes, null, [], null);
        _taken.Clear();
        Progress = new SearchProgress(0, "parts laid out", 0, 0);
        Work(() => BuildSearch.Prepare(car, wishes, scans(car)));
    }

    public void Stop() => _stop?.Cancel();

    public void GoOn()
    {
        if (CanGoOn && _search is { } search)
        {
            Work(() => Checked<BuildSearch>.From(search));
        }
    }

    /// <summary>The id under which a build of this search became one of the car's; null if it did not.</summary>
    public string? TakenAs(string key) => _taken.GetValueOrDefault(key);

    public void Take(string key, string buildId) => _taken[key] = buildId;

    public void Dispose()
    {
        Stop();
        GC.SuppressFinalize(this);
    }

    private void Work(Func<Checked<BuildSearch>> prepare)
    {
        var stop = new CancellationTokenSource();
        (_stop, Running) = (stop, true);
        var before = Working;
        Working = Task.Run(async () =>
        {
            await before;
            Search(prepare, stop);
        });
        Changed?.Invoke();
    }

    private void Search(Func<Checked<BuildSearch>> prepare, CancellationTokenSource stop)
    {
        try
        {
            var prepared = prepare();
            if (prepared.Try(out var search))
            {
                // One core stays free for whoever else asks something of this machine.
                search.Run(stop.Token, new Told(this, stop), Math.Max(1, Environment.ProcessorCount - 1));
            }

            Settle(stop, prepared.Problems, search, search?.Result());
        }
        catch (Exception error)
        {
            Settle(stop, [new Problem("search", "", "a search that ends", "This is a fault of the program: " + error.Message)], null, null);
        }
    }

    // A search that was given up for another one says nothing any more.
    private void Settle(CancellationTokenSource mine, IReadOnlyList<Problem> problems, BuildSearch? search, RankingResult? result)
    {
        lock (_gate)
        {
            if (_stop == mine)
            {
                (_search, Problems, Result, Running) = (search, problems, result, false);
                Progress = search?.Progress ?? Progress;
            }
        }

        Changed?.Invoke();
    }

    private sealed class Told(SearchRun run, CancellationTokenSource mine) : IProgress<SearchProgress>
    {
        public void Report(SearchProgress value)
        {
            if (run._stop == mine && Environment.TickCount64 - run._told >= TellEveryMs)
            {
                (run.Progress, run._told) = (value, Environment.TickCount64);
                run.Changed?.Invoke();
            }
        }
    }
}
