using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Log;
using Cornerwright.Storage;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Jobs;

namespace Cornerwright.Web.Tests.Benches;

/// <summary>One bench, one store, one order of events; after each event whatever must hold is looked at.</summary>
internal sealed class OneOrder
{
    public const string JobId = "the-job";

    private readonly IGarageStore _store;
    private readonly string _id;
    private readonly ManualTime _time;
    private readonly HeldCalls _calls = new();
    private readonly Workbench _bench;
    private readonly List<string> _acknowledgedTicks = [];

    /// <summary>Edits that the bench has called saved and that nobody has undone or chosen against since.</summary>
    private readonly HashSet<string> _acknowledgedEdits = [];

    /// <summary>Edits on the bench, saved or not, that nobody has undone.</summary>
    private readonly HashSet<string> _made = [];

    private readonly List<string> _done = [];
    private readonly List<Task> _asked = [];
    private readonly Dictionary<string, Car> _read = [];
    private bool _otherSaved, _theirsChosen;

    public OneOrder(IGarageStore store, string id, ManualTime time)
    {
        // Nothing may leave the test's thread: what waits for an answer goes on where the answer comes.
        SynchronizationContext.SetSynchronizationContext(null);
        (_store, _id, _time) = (store, id, time);
        store.Save(new Car
        {
            Id = id, Name = "as it was", Builds = [new Build { Id = "now", Name = "Now" }],
                Log = new CarLog { Jobs = [new Job { Id = JobId, Name = "The job" }] },
        }, null);
        _bench = new Workbench(store, time, OneGarage.Unjudged, off: _calls.Off);
        var opened = _bench.Open(id);
        Drain();
        Assert.True(opened.Result);
    }

    public Workbench Bench => _bench;

    private Car Head => Read(Texts.First());

    /// <summary>Of every revision, the latest first.</summary>
    private IEnumerable<string> Texts => _store.Revisions(_id).Select(r => _store.Text(_id, r.Number)!);

    /// <summary>Each with the letter by which an order is told.</summary>
    public void Run(IReadOnlyList<string> order)
    {
        foreach (string step in order)
        {
            _done.Add(step);
            Do(step);
            if (step.StartsWith("edit", StringComparison.Ordinal) || step.StartsWith("write", StringComparison.Ordinal))
            {
                _made.UnionWith(EditsOf(_bench.Car!));
            }

            Look();
        }

        _done.Add("then all is quiet");
        for (int i = 0; i < 4; i++)
        {
            Drain();
            _time.Pass(Workbench.QuietBeforeSaving);
        }

        Drain();
        Look();
        Must(_asked.All(t => t.IsCompletedSuccessfully), "something that was asked for failed or never ended");
    }

    /// <summary>Lets the bench go on until it asks nothing more.</summary>
    public void Drain()
    {
        for (int i = 0; !_calls.Idle; i++)
        {
            Must(i < 100, "it asks its store for ever");
            _calls.Commit();
            _calls.Return();
        }
    }

    /// <summary>Every revision, the latest first.</summary>
    public IEnumerable<Car> Everything() => Texts.Select(Read);

    public void Must(bool holds, string words)
    {
        if (!holds)
        {
            Assert.Fail($"{string.Join(", ", _done)}: {words}. Bench: {_bench.Saved}, {Told(_bench.Car)}. Store: {Told(Head)}.");
        }
    }

    /// <summary>
    /// At the end, with nothing left to choose: once the bench has looked at the log, all is saved, and bench and store are alike.
    /// </summary>
    public void EndsWhole()
    {
        _ = _bench.LookAtLog();
        Drain();
        Must(_bench.Saved == SavedState.Saved, "it never came to rest");
        bool behind = _otherSaved && _bench.Mark != _store.Load(_id).Value.Mark && Texts.Contains(CarFile.Write(_bench.Car!));
        Must(behind || CarFile.Write(_bench.Car!) == CarFile.Write(Head), "bench and store differ at the end");
    }

    private void Do(string step)
    {
        switch (step)
        {
            case "edit the name":
                _bench.Apply("Name", car => car with { Name = "edited" });
                break;
            case "edit the build":
                _bench.Apply("Build", car => car.With(car.Builds[0] with { Name = "Edited" }));
                break;
            case "write into the log":
                _bench.Apply("Log", car =>
                    car with { Log = car.Log with { Entries = [.. car.Log.Entries, new LogEntry { Id = "mine" }] } });
                break;
            case "undo":
                _bench.Undo();
                _acknowledgedEdits.IntersectWith(EditsOf(_bench.Car!));
                _made.IntersectWith(EditsOf(_bench.Car!));
                break;
            case "quiet":
                _time.Pass(Workbench.QuietBeforeSaving);
                break;
            case "store keeps":
                _calls.Commit();
                break;
            case "answer comes":
                _calls.Return();
                break;
            case "look":
                _asked.Add(_bench.LookAtLog());
                break;
            case "mine on top":
                _asked.Add(_bench.KeepMine());
                break;
            case "theirs on top":
                _asked.Add(_bench.TakeTheirs());
                _theirsChosen = true;
                break;
            case "another saves":
                var there = _store.Load(_id).Value;
                Assert.NotNull(_store.Save(there.Car with { Currency = "other" }, there.Mark, null).Mark);
                _otherSaved = true;
                break;
            case "disk full":
                ((MemoryStore)_store).Next = MemoryStore.Fault.BeforeKeeping;
                break;
            case "answer gets lost":
                ((MemoryStore)_store).Next = MemoryStore.Fault.AfterKeeping;
                break;
            default:
                Tick(step);
                break;
        }
    }

    private void Tick(string id)
    {
        var tick = new Tick { Id = id, Step = id, At = TickMerge.Moment(DateTimeOffset.UnixEpoch) };
        Assert.True(TickKeeping.Keep(_store, _id, JobId, [tick]).Ok);
        _acknowledgedTicks.Add(id);
    }

    private void Look()
    {
        Must(!_calls.Overlapped, "it asked its store before the last answer came");
        var head = Head;
        Must(_acknowledgedTicks.All(head.Log.Job(JobId)!.Ticks.Select(t => t.Id).Contains), "a tick that was acknowledged is gone");
        if (_bench.Saved == SavedState.Saved)
        {
            string seen = CarFile.Write(_bench.Car!);
            Must(Texts.Contains(seen), "it says saved of something that is not kept");
            _acknowledgedEdits.UnionWith(EditsOf(_bench.Car!));
        }

        Must(_theirsChosen || _made.IsSubsetOf(EditsOf(_bench.Car!)), "an edit that was on the bench is gone from it");

        // Where another session changed more than the log somebody chooses, and what was not chosen stays in the history.
        Must(_otherSaved ? Everything().Any(car => _acknowledgedEdits.IsSubsetOf(EditsOf(car)))
            : _acknowledgedEdits.IsSubsetOf(EditsOf(head)), "an edit that was acknowledged is gone");
        Must(!_otherSaved || Everything().Any(car => car.Currency == "other"), "what another session saved is gone");
    }

    private Car Read(string text)
    {
        if (!_read.TryGetValue(text, out var car))
        {
            _read[text] = car = CarFile.Read(text).Value;
        }

        return car;
    }

    private static IEnumerable<string> EditsOf(Car car) =>
        new[] { car.Name == "edited" ? "name" : "", car.Builds[0].Name == "Edited" ? "build" : "", car.Log.Entries.Any(e =>
            e.Id == "mine") ? "log" : "" }.Where(e => e.Length > 0);

    private static string Told(Car? car) => car is null ? "no car"
        : $"edits {string.Join("+", EditsOf(car))}, ticks {string.Join("+", car.Log.Job(JobId)!.Ticks.Select(t => t.Id))}";
}
