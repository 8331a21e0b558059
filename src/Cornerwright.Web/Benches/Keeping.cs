using System.Collections.Immutable;
using Cornerwright.Garage.Cars;
using Cornerwright.Storage;

namespace Cornerwright.Web.Benches;

/// <summary>What of the car on a bench is kept, and what became of the last try to keep it. Immutable.</summary>
public sealed record Keeping
{
    /// <summary>The stored state that the bench's changes stand on; null for none.</summary>
    public RevisionMark? Mark { get; init; }

    /// <summary>The car of that state, as the store has it.</summary>
    public Car? Stored { get; init; }

    /// <summary>The car on the bench that it was stored from; null where the bench's car is known to differ.</summary>
    public Car? From { get; init; }

    /// <summary>The car on the bench that is on its way to the store now; null for none.</summary>
    public Car? UnderWay { get; init; }

    /// <summary>Entries that were left out as not complete when it was stored.</summary>
    public IReadOnlyList<OpenEntry> Open { get; init; } = [];

    /// <summary>Saves that ended without an answer: the store may have kept any of them.</summary>
    public ImmutableList<SaveAttempt> Unanswered { get; init; } = [];

    /// <summary>The other person's version while there is a conflict.</summary>
    public StoredCar? Theirs { get; init; }

    /// <summary>Why the last save failed; empty if it did not.</summary>
    public string Failure { get; init; } = "";

    /// <summary>As it came from the store.</summary>
    public static Keeping Of(StoredCar stored)
    {
        ArgumentNullException.ThrowIfNull(stored);
        return new Keeping { Mark = stored.Mark, Stored = stored.Car, From = stored.Car };
    }

    /// <summary>What may be said of that car: "saved" only of the one that the store has confirmed.</summary>
    public SavedState Of(Car? car) =>
        Theirs is not null ? SavedState.Conflict
        : Failure.Length > 0 ? SavedState.Failed
        : UnderWay is not null ? SavedState.Saving
        : car is null || ReferenceEquals(car, From) ? SavedState.Saved
        : SavedState.Waiting;
}
