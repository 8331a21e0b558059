using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Differences;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Log;
using Cornerwright.Storage;

namespace Cornerwright.Web.Benches;

/// <summary>
/// The steps of saving, as functions from the state of a bench to the next. Between two of them the store works, and the
/// person goes on: every step starts from the state as it is then, never from the one that was sent.
/// </summary>
public static class SaveSteps
{
    /// <summary>More saves without an answer in a row than this, and the oldest is forgotten.</summary>
    private const int MostUnanswered = 16;

    /// <summary>The car is on its way; no attempt where there is nothing to save, or two versions wait for a choice.</summary>
    public static (BenchState State, SaveAttempt? Attempt) Begin(BenchState state, string label)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(label);
        if (state.Car is not { } car || state.Keeping.Theirs is not null)
        {
            return (state, null);
        }

        var keeping = state.Keeping with { Failure = "", UnderWay = null };
        if (ReferenceEquals(car, keeping.From) && label.Length == 0)
        {
            // Undone back to what is stored: there is nothing to write.
            return (keeping == state.Keeping ? state : state with { Keeping = keeping }, null);
        }

        return (state with { Keeping = keeping with { UnderWay = car } }, SaveAttempt.Of(car, keeping.Mark, label));
    }

    /// <summary>The answer came.</summary>
    /// <param name="state">As it is now: perhaps edited, undone or redone since the attempt began.</param>
    /// <param name="attempt">What was sent.</param>
    /// <param name="answer">What the store said.</param>
    /// <param name="last">Nothing more is tried now, whatever came.</param>
    /// <returns>Again: logs were put together, and the car must be sent once more.</returns>
    public static (BenchState State, bool Again) Done(BenchState state, SaveAttempt attempt, SaveAnswer answer, bool last)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(attempt);
        ArgumentNullException.ThrowIfNull(answer);
        var ended = state.Keeping with { UnderWay = null };
        BenchState With(Keeping keeping) => state with { Keeping = keeping };
        return answer.Result switch
        {
            null => (With(Unanswered(ended, attempt, answer.Failure)), false),
            SaveResult.Refused refused => (With(ended with { Failure = string.Join("\n", refused.Problems) }), false),

            // A phone ticked a job, or somebody wrote into the log: that and this go together.
            SaveResult.Conflict conflict when Common(ended, conflict.Latest) is { } common =>
                (WithLog(With(common with { UnderWay = last ? null : state.Car }), conflict.Latest), !last),
            SaveResult.Conflict conflict => (With(ended with { Theirs = conflict.Latest, Unanswered = [] }), false),
            { Mark: { } mark } => (With(Kept(ended, attempt, mark)), false),
            _ => throw new InvalidOperationException("A save that was taken has a mark."),
        };
    }

    /// <summary>Takes up what others wrote into the log: it counts beside what is here, and undo does not take it back.</summary>
    public static BenchState WithLog(BenchState state, StoredCar theirs)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(theirs);
        var common = state.Keeping.Stored!.Log;
        Car Merged(Car car) =>
            car with { Log = ReferenceEquals(car.Log, common) ? theirs.Car.Log : LogMerge.Merge(common, car.Log, theirs.Car.Log) };
        var car = Merged(state.Car!);
        return state with
        {
            Car = car,
            Dragged = false,
            History = state.History.Map(Merged),
            Keeping = state.Keeping with { Mark = theirs.Mark, Stored = theirs.Car,
                From = SameDocument(OpenEntries.Split(car).Kept, theirs.Car) ? car : null },
        };
    }

    /// <summary>
    /// The newest state of the store, looked at while nothing is on its way: its log is taken up if nothing else differs.
    /// </summary>
    public static BenchState Looked(BenchState state, StoredCar latest)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(latest);
        return state.Car?.Id == latest.Car.Id && state.Keeping is { Theirs: null, Stored: { } stored } keeping
            && keeping.Mark != latest.Mark && CarDifference.IsOfLogAlone(stored, latest.Car)
            ? WithLog(state, latest)
            : state;
    }

    /// <summary>Conflict: whichever is chosen, both logs count; nobody is asked about a tick.</summary>
    public static BenchState LogsTogether(BenchState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return state.Keeping.Theirs is { } theirs ? WithLog(state, theirs) : state;
    }

    /// <summary>Conflict: mine goes on top of theirs.</summary>
    public static BenchState MineOnTop(BenchState state) =>
        LogsTogether(state) is { Keeping: { Theirs: not null } keeping } merged
            ? merged with { Keeping = keeping with { Theirs = null, Failure = "" } } : state;

    /// <summary>Conflict: mine was sent to be kept beneath theirs; if it is, theirs goes on the bench, and undo brings mine back.</summary>
    /// <returns>Again: it was edited meanwhile, and that must be kept too; or theirs has grown.</returns>
    public static (BenchState State, bool Again) Aside(BenchState state, SaveAttempt attempt, SaveAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(attempt);
        ArgumentNullException.ThrowIfNull(answer);
        if (state is not { Car: { } mine, Keeping: { Theirs: { } theirs } keeping })
        {
            return (state, false);
        }

        switch (answer.Result)
        {
            case null:
                return (state with { Keeping = Unanswered(keeping, attempt, answer.Failure) }, false);
            case SaveResult.Conflict third:
                // A third save came in between: look again, unless it only wrote into the log.
                return (state with { Keeping = keeping with { Theirs = third.Latest } },
                    CarDifference.IsOfLogAlone(theirs.Car, third.Latest.Car));
            case { Mark: { } mark } when !ReferenceEquals(mine, attempt.OnBench):
                return (state with { Keeping = keeping with { Theirs = theirs with { Mark = mark } } }, true);
            default:
                // Mine could not be read back and is not in the store: then undo alone has it.
                var above = theirs with { Mark = answer.Result.Mark ?? theirs.Mark };
                var merged = MineOnTop(state with { Keeping = keeping with { Theirs = above } });
                var history = merged.History.Note(merged.Car!, "Take the other change", null);
                return ((merged with { History = history, Keeping = merged.Keeping with { Open = [] } })
                    .Become(theirs.Car with { Log = merged.Car!.Log }), false);
        }
    }

    private static Keeping Kept(Keeping keeping, SaveAttempt attempt, RevisionMark mark) => keeping with
    {
        Mark = mark, Stored = attempt.Kept, From = attempt.OnBench, Open = attempt.Open, Failure = "", Unanswered = [],
    };

    private static Keeping Unanswered(Keeping keeping, SaveAttempt attempt, string failure) => keeping with
    {
        Failure = failure,
        Unanswered = [.. keeping.Unanswered.TakeLast(MostUnanswered - 1), attempt],
    };

    /// <summary>
    /// What is kept, put on the state that both sides stand on, if nothing but the log differs: what the bench knows to be stored, or
    /// what a save without an answer stored after all. Null where more differs.
    /// </summary>
    private static Keeping? Common(Keeping keeping, StoredCar latest) =>
        keeping.Unanswered.LastOrDefault(a => CarDifference.IsOfLogAlone(a.Kept, latest.Car)) is { } attempt
            ? Kept(keeping, attempt, latest.Mark)
        : CarDifference.IsOfLogAlone(keeping.Stored!, latest.Car) ? keeping with { Unanswered = [] }
        : null;

    private static bool SameDocument(Car a, Car b) => CarFile.Write(a) == CarFile.Write(b);
}
