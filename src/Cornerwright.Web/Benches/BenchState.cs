using System.Collections.Immutable;
using Cornerwright.Garage.Cars;
using Cornerwright.Storage;

namespace Cornerwright.Web.Benches;

/// <summary>Everything on a bench at one moment. Immutable: each change is another state.</summary>
public sealed record BenchState
{
    /// <summary>No car on it.</summary>
    public static BenchState Bare { get; } = new();

    public Car? Car { get; init; }

    /// <summary>The build in hand; empty when the car has none.</summary>
    public string BuildId { get; init; } = "";

    /// <summary>The car is in the middle of a drag.</summary>
    public bool Dragged { get; init; }

    public EditHistory<Car> History { get; init; } = EditHistory<Car>.None;

    public Keeping Keeping { get; init; } = new();

    /// <summary>Texts that could not be read yet, by the path of their field.</summary>
    public ImmutableDictionary<string, string> Drafts { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>What is being made on forms of its own, by the path it will have.</summary>
    public ImmutableDictionary<string, object> Making { get; init; } = ImmutableDictionary<string, object>.Empty;

    public SavedState Saved => Keeping.Of(Car);

    /// <summary>Something would be lost if the car were taken off the bench now.</summary>
    public bool HoldsMore =>
        Car is not null && (Saved != SavedState.Saved || Keeping.Open.Count > 0 || Drafts.Count > 0 || Making.Count > 0);

    /// <summary>A car just taken from the store.</summary>
    /// <param name="stored">As it is there.</param>
    /// <param name="buildId">The build to take in hand, if the car has it.</param>
    public static BenchState Of(StoredCar stored, string buildId)
    {
        ArgumentNullException.ThrowIfNull(stored);
        return (Bare with { BuildId = buildId, Keeping = Keeping.Of(stored) }).Become(stored.Car);
    }

    /// <summary>One step of work; the very state where it changes nothing.</summary>
    public BenchState Apply(string words, Func<Car, Car> change, string? drag)
    {
        ArgumentNullException.ThrowIfNull(change);
        return Car is { } before && change(before) is var after && !ReferenceEquals(after, before)
            ? (this with { History = History.Note(before, words, drag) }).Become(after, drag is not null)
            : this;
    }

    public BenchState Undo() => Car is { } now && History.Undo(now) is { } back
        ? (this with { History = back.History }).Become(back.State) : this;

    public BenchState Redo() => Car is { } now && History.Redo(now) is { } forth
        ? (this with { History = forth.History }).Become(forth.State) : this;

    public BenchState EndDrag() => History.EndDrag() is var ended && !ReferenceEquals(ended, History)
        ? this with { History = ended } : this;

    /// <summary>Takes a build in hand; the one in hand, or the first, when there is none of that name.</summary>
    public BenchState Select(string? buildId) => BuildOr(Car, buildId ?? "") is var found && found != BuildId
        ? this with { BuildId = found } : this;

    /// <summary>Another car in place of the present one, in no undo step of its own.</summary>
    public BenchState Become(Car car, bool dragged = false)
    {
        ArgumentNullException.ThrowIfNull(car);
        return this with { Car = car, Dragged = dragged, BuildId = BuildOr(car, BuildId),
            Keeping = Keeping.Failure.Length > 0 ? Keeping with { Failure = "" } : Keeping };
    }

    private string BuildOr(Car? car, string buildId) =>
        car?.Build(buildId)?.Id ?? car?.Build(BuildId)?.Id ?? car?.Builds.FirstOrDefault()?.Id ?? "";
}
