using Cornerwright.Garage.Cars;

namespace Cornerwright.Web.Benches;

/// <summary>One car of the garage, as its list shows it.</summary>
public sealed record KeptCar(string Id, string Name, string Note, long Revision, DateTimeOffset SavedAt);

/// <summary>A car as it stood at one revision.</summary>
public sealed record KeptVersion(Car Car, long Revision);

/// <summary>One line of a car's history.</summary>
public sealed record KeptRevision(long Number, DateTimeOffset At, string What, string Label, IReadOnlyList<string> Builds);

/// <summary>How a save ended.</summary>
public abstract record KeepResult
{
    private KeepResult()
    {
    }

    /// <summary>The car is kept under this revision, be it new or the one that was there already.</summary>
    public sealed record Kept(long Revision) : KeepResult;

    /// <summary>Somebody else saved in between; nothing was written.</summary>
    public sealed record Conflict(KeptVersion Theirs) : KeepResult;
}

/// <summary>What the pages need of storage. Cars are kept whole; every save that changes anything is a revision.</summary>
public interface ICarKeeper
{
    Task<IReadOnlyList<KeptCar>> List(CancellationToken stop = default);

    /// <returns>The latest version, or the one asked for; null if there is none.</returns>
    Task<KeptVersion?> Load(string carId, long? revision = null, CancellationToken stop = default);

    /// <param name="car">Whole.</param>
    /// <param name="expected">The revision the change started from; 0 for a car that is new.</param>
    /// <param name="label">Words of the user for this revision; empty for the working state.</param>
    /// <param name="stop">Gives up before anything is written.</param>
    Task<KeepResult> Save(Car car, long expected, string label = "", CancellationToken stop = default);

    /// <returns>Newest first.</returns>
    Task<IReadOnlyList<KeptRevision>> Revisions(string carId, CancellationToken stop = default);

    /// <summary>Takes the car out of the garage, recoverably.</summary>
    Task Bin(string carId, CancellationToken stop = default);
}
