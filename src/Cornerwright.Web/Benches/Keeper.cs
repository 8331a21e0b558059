using Cornerwright.Storage;

namespace Cornerwright.Web.Benches;

/// <summary>Carries the state of a bench to the store and what the store says back, one dealing after another.</summary>
/// <param name="store">What it has acknowledged is on the disk.</param>
/// <param name="bench">The state; only its steps change it.</param>
/// <param name="off">Where calls to the store run.</param>
public sealed class Keeper(IGarageStore store, OneWriter<BenchState> bench, OffRender off)
{
    /// <summary>Logs taken up in one save; more in a row means that somebody ticks faster than a database saves.</summary>
    private const int MostRounds = 5;

    private readonly StoreLane _lane = new(off);
    private readonly string _session = Guid.NewGuid().ToString("N");

    /// <summary>Cars that were taken off the bench with something that could not be kept then, by id. Touched in the lane only.</summary>
    private readonly Dictionary<string, BenchState> _left = new(StringComparer.Ordinal);

    /// <returns>False when there is no such car.</returns>
    public async Task<bool> Open(string carId)
    {
        bool found = false;
        await _lane.Run(async () => found = await Lay(carId).ConfigureAwait(false)).ConfigureAwait(false);
        return found;
    }

    public Task Save(string label) => _lane.Run(() => SaveRounds(bench, label));

    /// <summary>Saves, and clears the bench.</summary>
    public Task Close() => _lane.Run(async () =>
    {
        await SaveRounds(bench, "").ConfigureAwait(false);
        bench.Write(_ => BenchState.Bare);
    });

    /// <summary>Takes up what others wrote into the log since this bench last looked.</summary>
    public Task Look() => _lane.Run(async () =>
    {
        if (bench.Now.Car is { } car && (await _lane.Ask(() => store.Load(car.Id)).ConfigureAwait(false)).Try(out var latest))
        {
            bench.Write(s => SaveSteps.Looked(s, latest));
        }
    });

    /// <summary>Conflict: mine goes on top; theirs stays in the history.</summary>
    public Task KeepMine() => _lane.Run(async () =>
    {
        bench.Write(SaveSteps.MineOnTop);
        await SaveRounds(bench, "").ConfigureAwait(false);
    });

    /// <summary>Conflict: theirs goes on the bench; mine is kept as a revision beneath it, and undo brings it back.</summary>
    public Task TakeTheirs() => _lane.Run(() => SetAside(bench, "Set aside when another change was taken"));

    /// <summary>
    /// The bench is put away for good: what is not saved is saved, here and of cars that were left with more than could be
    /// kept; what nobody has chosen about is kept beneath the other version.
    /// </summary>
    public Task PutAway() => _lane.Run(async () =>
    {
        foreach (var state in (BenchState[])[bench.Now, .. _left.Values])
        {
            var one = new OneWriter<BenchState>(state, (_, _) => { }, () => { });
            await SaveRounds(one, "").ConfigureAwait(false);
            for (int round = 0; one.Now.Saved == SavedState.Conflict && round <= MostRounds; round++)
            {
                await SetAside(one, "Set aside when the page was closed").ConfigureAwait(false);
            }
        }
    });

    private async Task SetAside(OneWriter<BenchState> state, string label)
    {
        bool again = true;
        while (again)
        {
            // Mine is on top until theirs is put over it: no tick may be missing from it.
            state.Write(SaveSteps.LogsTogether);
            if (state.Now is not { Car: { } mine, Keeping.Theirs: { } theirs })
            {
                break;
            }

            var attempt = SaveAttempt.Of(mine, theirs.Mark, label);
            var answer = await _lane.Ask(() => attempt.Send(store, _session)).ConfigureAwait(false);
            state.Write(s =>
            {
                (s, again) = SaveSteps.Aside(s, attempt, answer);
                return s;
            });
        }

        await SaveRounds(state, "").ConfigureAwait(false);
    }

    private async Task SaveRounds(OneWriter<BenchState> state, string label)
    {
        bool again = true;
        for (int round = 0; again && round <= MostRounds; round++)
        {
            SaveAttempt? attempt = null;
            state.Write(s =>
            {
                (s, attempt) = SaveSteps.Begin(s, label);
                return s;
            });
            if (attempt is not { } sent)
            {
                return;
            }

            var answer = await _lane.Ask(() => sent.Send(store, _session)).ConfigureAwait(false);
            bool last = round == MostRounds;
            state.Write(s =>
            {
                (s, again) = SaveSteps.Done(s, sent, answer, last);
                return s;
            });
        }
    }

    private async Task<bool> Lay(string carId)
    {
        // An edit of the car that is being left may come while its save is under way: then that is saved too.
        for (int round = 0; ; round++)
        {
            if (bench.Now.Car?.Id == carId)
            {
                return true;
            }

            await SaveRounds(bench, "").ConfigureAwait(false);
            if (!(await _lane.Ask(() => store.Load(carId)).ConfigureAwait(false)).Try(out var stored))
            {
                return false;
            }

            BenchState? left = null;
            var back = _left.GetValueOrDefault(carId);
            bool last = round == MostRounds;
            bench.Write(s =>
            {
                left = s;
                return s.Saved == SavedState.Waiting && !last ? s : Found(stored, back, s.BuildId);
            });
            if (bench.Now.Car?.Id == carId)
            {
                _left.Remove(carId);
                if (left is { HoldsMore: true, Car: { } car })
                {
                    _left[car.Id] = left;
                }

                return true;
            }
        }
    }

    /// <summary>The car as it is stored, or as it was left if that holds more.</summary>
    private static BenchState Found(StoredCar stored, BenchState? left, string buildId) =>
        left is null ? BenchState.Of(stored, buildId)
        : left.Keeping.Mark == stored.Mark || left.Saved == SavedState.Conflict ? left
        : SaveSteps.Looked(left, stored) is var looked && !ReferenceEquals(looked, left) ? looked
        : left.Saved == SavedState.Saved ? BenchState.Of(stored, left.BuildId) : left;
}
