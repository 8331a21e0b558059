using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Differences;
using Cornerwright.Garage.Log;
using Cornerwright.Storage;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Web.Benches;

/// <summary>Whether what is seen is also kept.</summary>
public enum SavedState
{
    Saved,

    /// <summary>Changed; the save waits for a quiet moment.</summary>
    Waiting,
    Saving,

    /// <summary>Somebody else saved in between: both versions are at hand, nothing is lost.</summary>
    Conflict,

    /// <summary>The database did not answer; the next change, or a press on the mark, tries again.</summary>
    Failed,
}

/// <summary>
/// One person's bench: the car that lies on it, the build in hand, what can be undone, what is saved, what is judged.
/// Knows nothing of pages. All members are called from one circuit; events may come from a pool thread.
/// </summary>
public sealed class Workbench : IAsyncDisposable
{
    /// <summary>Long enough that a dragged slider saves once, short enough that nobody waits for it.</summary>
    public static readonly TimeSpan QuietBeforeSaving = TimeSpan.FromMilliseconds(400);

    /// <summary>Logs taken up in one save; more in a row means that somebody ticks faster than a database saves.</summary>
    private const int MostMerges = 5;

    private readonly IGarageStore _store;
    private readonly TimeProvider _time;
    private readonly EditHistory<Car> _history = new();
    private readonly PacedJudging _judging;
    private readonly string _session = Guid.NewGuid().ToString("N");
    private readonly SemaphoreSlim _saving = new(1, 1);
    private readonly Dictionary<string, string> _drafts = new(StringComparer.Ordinal);
    private ITimer? _quiet;
    private Car? _kept;
    private Car? _keptFrom;
    private readonly Dictionary<string, object> _making = new(StringComparer.Ordinal);

    public Workbench(IGarageStore store, TimeProvider time, JudgeBuild judge, QuickJudge? quick = null)
    {
        (_store, _time, _judging) = (store, time, new PacedJudging(judge, quick, time));
        _judging.Judged += _ => Changed?.Invoke();
    }

    /// <summary>Something that a page shows has changed; perhaps on a pool thread.</summary>
    public event Action? Changed;

    /// <summary>The car on the bench; null before the first was opened.</summary>
    public Car? Car { get; private set; }

    /// <summary>The stored state that the bench's changes stand on; null for none.</summary>
    public RevisionMark? Mark { get; private set; }

    /// <summary>Number of the revision that the bench's changes stand on; 0 for none.</summary>
    public int Revision => Mark?.Number ?? 0;

    public string BuildId { get; private set; } = "";

    /// <summary>The build in hand; null when the car has none.</summary>
    public Build? Build => Car?.Build(BuildId);

    public SavedState Saved { get; private set; } = SavedState.Saved;

    /// <summary>Why the last save failed; empty if it did not.</summary>
    public string SaveFailure { get; private set; } = "";

    /// <summary>The other person's version while <see cref="Saved"/> is <see cref="SavedState.Conflict"/>.</summary>
    public StoredCar? Theirs { get; private set; }

    /// <summary>Entries that were opened and are not complete: they stay here, and are kept once they are. As of the last save.</summary>
    public IReadOnlyList<OpenEntry> NotYetKept { get; private set; } = [];

    public bool CanUndo => _history.CanUndo;
    public bool CanRedo => _history.CanRedo;
    public string UndoWords => _history.UndoWords;
    public string RedoWords => _history.RedoWords;

    /// <summary>Texts that could not be read yet, by the path of their field: they stay until they are mended or cleared.</summary>
    public IReadOnlyDictionary<string, string> Drafts => _drafts;

    /// <returns>False when there is no such car.</returns>
    public async Task<bool> Open(string carId)
    {
        if (Car?.Id == carId)
        {
            return true;
        }

        await SaveNow();
        var found = await Task.Run(() => _store.Load(carId));
        if (!found.Try(out var stored))
        {
            return false;
        }

        Lay(stored);
        return true;
    }

    /// <summary>Takes the car off the bench; what was not saved is saved first.</summary>
    public async Task Close()
    {
        await SaveNow();
        (Car, Mark, _kept, _keptFrom, Saved, Theirs, SaveFailure, BuildId) = (null, null, null, null, SavedState.Saved, null, "", "");
        Forget();
        _judging.Show(null);
        Changed?.Invoke();
    }

    /// <summary>Takes a build in hand; the first one when there is none of that name.</summary>
    public void Select(string? buildId)
    {
        string found = Car?.Build(buildId ?? "")?.Id ?? Car?.Build(BuildId)?.Id ?? Car?.Builds.FirstOrDefault()?.Id ?? "";
        if (found != BuildId)
        {
            BuildId = found;
            Changed?.Invoke();
        }
    }

    /// <summary>Replaces the car by what <paramref name="change"/> makes of it.</summary>
    /// <param name="words">What was done, as the undo button says it: "Perch height, front left".</param>
    /// <param name="change">From the present car to the new one; the same object means no change.</param>
    /// <param name="drag">Changes in a row with the same key undo as one; null for a change that stands alone.</param>
    /// <returns>True if anything changed.</returns>
    public bool Apply(string words, Func<Car, Car> change, string? drag = null)
    {
        ArgumentNullException.ThrowIfNull(change);
        if (Car is not { } before)
        {
            return false;
        }

        var after = change(before);
        if (ReferenceEquals(after, before))
        {
            return false;
        }

        _history.Note(before, words, drag);
        Become(after, drag is not null);
        return true;
    }

    /// <summary>The slider was let go: the next drag is a step of its own.</summary>
    public void EndDrag()
    {
        _history.EndDrag();
        _judging.Settle();
    }

    public void Undo()
    {
        if (Car is { } now && _history.Undo(now) is { } before)
        {
            Become(before);
        }
    }

    public void Redo()
    {
        if (Car is { } now && _history.Redo(now) is { } after)
        {
            Become(after);
        }
    }

    /// <summary>
    /// The newest judgement known of a build; null until the first is there. Asking for it sets the work going when the car
    /// has changed since, and <see cref="Changed"/> tells when it is done.
    /// </summary>
    public Judgement? JudgementOf(string buildId) => _judging.Of(buildId);

    /// <summary>True when nothing better is to come than this judgement of the car as it is; during a drag the cures are still owed.</summary>
    public bool IsWhole(Judgement? judgement) => _judging.IsWhole(judgement);

    /// <summary>Why a build could not be judged; empty if it could.</summary>
    public string JudgeFailureOf(string buildId) => _judging.FailureOf(buildId);

    /// <summary>Done when nothing waits to be judged.</summary>
    public Task Judged() => _judging.Settled();

    /// <summary>Keeps a text that cannot be read yet, or forgets it when it is null.</summary>
    public void Draft(string path, string? text)
    {
        if (text is null)
        {
            _drafts.Remove(path);
        }
        else
        {
            _drafts[path] = text;
        }
    }

    /// <summary>What is being made on a form of its own and goes into the car when it is whole; null for nothing.</summary>
    /// <param name="path">Where it will stand: "parts/wheels".</param>
    public object? InMaking(string path) => _making.GetValueOrDefault(path);

    /// <summary>Keeps what is being made, or forgets it when it is null.</summary>
    public void Make(string path, object? thing)
    {
        if (thing is null)
        {
            _making.Remove(path);
        }
        else
        {
            _making[path] = thing;
        }
    }

    /// <summary>Saves without waiting for a quiet moment.</summary>
    /// <param name="label">Words for this revision; empty for the working state.</param>
    public async Task SaveNow(string label = "")
    {
        _quiet?.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        await _saving.WaitAsync();
        try
        {
            await SaveCore(label);
        }
        finally
        {
            _saving.Release();
        }

        Changed?.Invoke();
    }

    /// <summary>Conflict: mine goes on top; theirs stays in the history.</summary>
    public async Task KeepMine()
    {
        if (Theirs is { } theirs)
        {
            (Mark, Theirs, Saved) = (theirs.Mark, null, SavedState.Waiting);
            await SaveNow();
        }
    }

    /// <summary>Conflict: theirs goes on the bench; mine is kept as a revision beneath it, and undo brings it back.</summary>
    public async Task TakeTheirs()
    {
        if (Theirs is not { } theirs || Car is not { } mine)
        {
            return;
        }

        var aside = await Task.Run(() => _store.Save(OpenEntries.Split(mine).Kept, theirs.Mark, "Set aside when another change was taken"));
        if (aside.Mark is { } mark)
        {
            (Mark, Theirs, _kept, _keptFrom, Saved) = (mark, null, OpenEntries.Split(mine).Kept, mine, SavedState.Waiting);
            _history.Note(mine, "Take the other change", null);
            Become(theirs.Car);
            await SaveNow();
        }
        else if (aside is SaveResult.Conflict third)
        {
            // A third save came in between: look again.
            Theirs = third.Latest;
            Changed?.Invoke();
        }
    }

    public async ValueTask DisposeAsync()
    {
        await SaveNow();
        if (_quiet is not null)
        {
            await _quiet.DisposeAsync();
        }

        _judging.Dispose();
        _saving.Dispose();
    }

    private void Lay(StoredCar stored)
    {
        Forget();
        (Car, Mark, _kept, _keptFrom, Saved, Theirs, SaveFailure) = (stored.Car, stored.Mark, stored.Car, stored.Car, SavedState.Saved, null, "");
        BuildId = Car.Build(BuildId)?.Id ?? Car.Builds.FirstOrDefault()?.Id ?? "";
        _judging.Show(Car, BuildId);
        Changed?.Invoke();
    }

    private void Forget()
    {
        _history.Clear();
        _drafts.Clear();
        _making.Clear();
        NotYetKept = [];
    }

    private void Become(Car car, bool dragged = false)
    {
        Car = car;
        if (car.Build(BuildId) is null)
        {
            BuildId = car.Builds.FirstOrDefault()?.Id ?? "";
        }

        _judging.Show(car, BuildId, dragged);
        if (Saved != SavedState.Conflict)
        {
            Saved = SavedState.Waiting;
            _quiet ??= _time.CreateTimer(_ => _ = SaveNow(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
            _quiet.Change(QuietBeforeSaving, Timeout.InfiniteTimeSpan);
        }

        Changed?.Invoke();
    }

    /// <summary>Takes up what others wrote into the log since this bench last looked, if it has nothing of its own to save.</summary>
    public async Task LookAtLog()
    {
        if (Saved != SavedState.Saved || Car is not { } car || _kept is not { } kept || !ReferenceEquals(car, _keptFrom))
        {
            return;
        }

        var found = await Task.Run(() => _store.Load(car.Id));
        if (found.Try(out var latest) && latest.Mark != Mark && ReferenceEquals(Car, car) && CarDifference.IsOfLogAlone(kept, latest.Car))
        {
            TakeLog(kept.Log, latest);
            _keptFrom = Car;
            Changed?.Invoke();
        }
    }

    private void TakeLog(CarLog common, StoredCar theirs)
    {
        Car Merged(Car car) => car with { Log = LogMerge.Merge(common, car.Log, theirs.Car.Log) };
        Car = Merged(Car!);
        _history.Map(Merged);
        (Mark, _kept) = (theirs.Mark, theirs.Car);
        _judging.Show(Car, BuildId);
    }

    private async Task SaveCore(string label, int tries = MostMerges)
    {
        if (Car is not { } car || Saved == SavedState.Conflict)
        {
            return;
        }

        if (ReferenceEquals(car, _keptFrom) && label.Length == 0)
        {
            // Undone back to what is stored: there is nothing to write.
            (Saved, SaveFailure) = (SavedState.Saved, "");
            return;
        }

        Saved = SavedState.Saving;
        try
        {
            var mark = Mark;
            var (complete, open) = OpenEntries.Split(car);
            var result = await Task.Run(() => label.Length > 0 ? _store.Save(complete, mark, label) : _store.Autosave(complete, mark, _session));
            switch (result)
            {
                case SaveResult.Conflict conflict when _kept is { } kept && CarDifference.IsOfLogAlone(kept, conflict.Latest.Car):
                    // A phone ticked a job, or somebody wrote into the log: that and this go together.
                    TakeLog(kept.Log, conflict.Latest);
                    Saved = SavedState.Waiting;
                    if (tries > 0)
                    {
                        await SaveCore(label, tries - 1);
                    }

                    break;
                case SaveResult.Conflict conflict:
                    (Theirs, Saved) = (conflict.Latest, SavedState.Conflict);
                    break;
                case SaveResult.Refused refused:
                    (Saved, SaveFailure) = (SavedState.Failed, string.Join("\n", refused.Problems));
                    break;
                default:
                    (Mark, _kept, _keptFrom, NotYetKept, SaveFailure) = (result.Mark, complete, car, open, "");
                    Saved = ReferenceEquals(Car, car) ? SavedState.Saved : SavedState.Waiting;
                    break;
            }
        }
        catch (Exception error)
        {
            // Disk full, file locked, network gone: the change stays on the bench and the mark says so.
            (Saved, SaveFailure) = (SavedState.Failed, error.Message);
        }
    }
}
