using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Storage;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Web.Benches;

/// <summary>
/// One person's bench: the car that lies on it, the build in hand, what can be undone, what is saved, what is judged.
/// Knows nothing of pages. Everything it shows is read from one immutable state, which edits, saves and merges change one
/// after another; its members may be called, and its event may come, from any thread.
/// </summary>
public sealed class Workbench : IAsyncDisposable
{
    /// <summary>Long enough that a dragged slider saves once, short enough that nobody waits for it.</summary>
    public static readonly TimeSpan QuietBeforeSaving = TimeSpan.FromMilliseconds(400);

    private readonly OneWriter<BenchState> _bench;
    private readonly Keeper _keeper;
    private readonly PacedJudging _judging;
    private readonly ITimer _quiet;

    /// <param name="store">Where cars are kept; what it has acknowledged is on the disk.</param>
    /// <param name="time">Measures the quiet before a save, and the rest of a drag.</param>
    /// <param name="judge">With cures.</param>
    /// <param name="quick">Without; null to judge wholly at every step of a drag.</param>
    /// <param name="off">Where calls to the store run; null for the thread pool.</param>
    public Workbench(IGarageStore store, TimeProvider time, JudgeBuild judge, QuickJudge? quick = null, OffRender? off = null)
    {
        ArgumentNullException.ThrowIfNull(time);
        _judging = new PacedJudging(judge, quick, time);
        _bench = new OneWriter<BenchState>(BenchState.Bare, Follow, () => Changed?.Invoke());
        _keeper = new Keeper(store, _bench, off ?? Task.Run);
        _quiet = time.CreateTimer(_ => _ = SaveNow(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        _judging.Judged += _ => Changed?.Invoke();
    }

    /// <summary>Something that a page shows has changed; perhaps on a pool thread.</summary>
    public event Action? Changed;

    /// <summary>The car on the bench; null before the first was opened.</summary>
    public Car? Car => Now.Car;

    /// <summary>The stored state that the bench's changes stand on; null for none.</summary>
    public RevisionMark? Mark => Now.Keeping.Mark;

    /// <summary>Number of the revision that the bench's changes stand on; 0 for none.</summary>
    public int Revision => Mark?.Number ?? 0;

    public string BuildId => Now.BuildId;

    /// <summary>The build in hand; null when the car has none.</summary>
    public Build? Build => Now is var now ? now.Car?.Build(now.BuildId) : null;

    public SavedState Saved => Now.Saved;

    /// <summary>Why the last save failed; empty if it did not.</summary>
    public string SaveFailure => Now.Keeping.Failure;

    /// <summary>The other person's version while <see cref="Saved"/> is <see cref="SavedState.Conflict"/>.</summary>
    public StoredCar? Theirs => Now.Keeping.Theirs;

    /// <summary>Entries that were opened and are not complete: they stay here, and are kept once they are. As of the last save.</summary>
    public IReadOnlyList<OpenEntry> NotYetKept => Now.Keeping.Open;

    public bool CanUndo => Now.History.CanUndo;
    public bool CanRedo => Now.History.CanRedo;
    public string UndoWords => Now.History.UndoWords;
    public string RedoWords => Now.History.RedoWords;

    /// <summary>Texts that could not be read yet, by the path of their field: they stay until they are mended or cleared.</summary>
    public IReadOnlyDictionary<string, string> Drafts => Now.Drafts;

    private BenchState Now => _bench.Now;

    /// <summary>Puts a car on the bench; what was not saved of the one before is saved first.</summary>
    /// <returns>False when there is no such car.</returns>
    public Task<bool> Open(string carId) => Car?.Id == carId ? Task.FromResult(true) : _keeper.Open(carId);

    /// <summary>Takes the car off the bench; what was not saved is saved first.</summary>
    public Task Close() => _keeper.Close();

    /// <summary>Takes a build in hand; the first one when there is none of that name.</summary>
    public void Select(string? buildId) => _bench.Write(s => s.Select(buildId));

    /// <summary>Replaces the car by what <paramref name="change"/> makes of it.</summary>
    /// <param name="words">What was done, as the undo button says it: "Perch height, front left".</param>
    /// <param name="change">From the present car to the new one; the same object means no change.</param>
    /// <param name="drag">Changes in a row with the same key undo as one; null for a change that stands alone.</param>
    /// <returns>True if anything changed.</returns>
    public bool Apply(string words, Func<Car, Car> change, string? drag = null) => _bench.Write(s => s.Apply(words, change, drag));

    /// <summary>The slider was let go: the next drag is a step of its own.</summary>
    public void EndDrag()
    {
        _bench.Write(s => s.EndDrag());
        _judging.Settle();
    }

    public void Undo() => _bench.Write(s => s.Undo());

    public void Redo() => _bench.Write(s => s.Redo());

    /// <summary>
    /// The newest judgement known of a build; null until the first is there. Asking for it sets the work going when the car
    /// has changed since, and <see cref="Changed"/> tells when it is done.
    /// </summary>
    public Judgement? JudgementOf(string buildId) => _judging.Of(buildId);

    /// <summary>
    /// True when nothing better is to come than this judgement of the car as it is; during a drag the cures are still owed.
    /// </summary>
    public bool IsWhole(Judgement? judgement) => _judging.IsWhole(judgement);

    /// <summary>Why a build could not be judged; empty if it could.</summary>
    public string JudgeFailureOf(string buildId) => _judging.FailureOf(buildId);

    /// <summary>Done when nothing waits to be judged.</summary>
    public Task Judged() => _judging.Settled();

    /// <summary>Keeps a text that cannot be read yet, or forgets it when it is null.</summary>
    public void Draft(string path, string? text) =>
        _bench.Write(s => (text is null ? s.Drafts.Remove(path) : s.Drafts.SetItem(path, text)) is var drafts
            && ReferenceEquals(drafts, s.Drafts) ? s : s with { Drafts = drafts });

    /// <summary>What is being made on a form of its own and goes into the car when it is whole; null for nothing.</summary>
    /// <param name="path">Where it will stand: "parts/wheels".</param>
    public object? InMaking(string path) => Now.Making.GetValueOrDefault(path);

    /// <summary>Keeps what is being made, or forgets it when it is null.</summary>
    public void Make(string path, object? thing) =>
        _bench.Write(s => s with { Making = thing is null ? s.Making.Remove(path) : s.Making.SetItem(path, thing) });

    /// <summary>Saves without waiting for a quiet moment.</summary>
    /// <param name="label">Words for this revision; empty for the working state.</param>
    public Task SaveNow(string label = "")
    {
        _quiet.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        return _keeper.Save(label);
    }

    /// <summary>Conflict: mine goes on top; theirs stays in the history.</summary>
    public Task KeepMine() => _keeper.KeepMine();

    /// <summary>Conflict: theirs goes on the bench; mine is kept as a revision beneath it, and undo brings it back.</summary>
    public Task TakeTheirs() => _keeper.TakeTheirs();

    /// <summary>Takes up what others wrote into the log since this bench last looked.</summary>
    public Task LookAtLog() => _keeper.Look();

    public async ValueTask DisposeAsync()
    {
        await _quiet.DisposeAsync().ConfigureAwait(false);
        await _keeper.PutAway().ConfigureAwait(false);
        _judging.Dispose();
    }

    /// <summary>After each step, in their order: judges what is new, and waits for quiet to save it.</summary>
    private void Follow(BenchState before, BenchState after)
    {
        if (!ReferenceEquals(before.Car, after.Car))
        {
            _judging.Show(after.Car, after.BuildId, after.Dragged);
        }

        if (after.Saved == SavedState.Waiting && (before.Saved != SavedState.Waiting || !ReferenceEquals(before.Car, after.Car)))
        {
            _quiet.Change(QuietBeforeSaving, Timeout.InfiniteTimeSpan);
        }
    }
}
