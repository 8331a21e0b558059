using Cornerwright.Garage.Cars;
using Cornerwright.Storage;

namespace Cornerwright.Web.Benches;

/// <summary>One try to keep a car.</summary>
/// <param name="OnBench">The car on the bench that is to be kept.</param>
/// <param name="Kept">The same without the entries that are not complete: what the store is given.</param>
/// <param name="Open">Those entries.</param>
/// <param name="Mark">The stored state it is put on top of.</param>
/// <param name="Label">Words for a revision of its own; empty for the working state.</param>
public sealed record SaveAttempt(Car OnBench, Car Kept, IReadOnlyList<OpenEntry> Open, RevisionMark? Mark, string Label)
{
    public static SaveAttempt Of(Car onBench, RevisionMark? mark, string label)
    {
        var (kept, open) = OpenEntries.Split(onBench);
        return new SaveAttempt(onBench, kept, open, mark, label);
    }

    /// <param name="store">When it returns, what it kept is on the disk.</param>
    /// <param name="session">Who works: folding never crosses sessions.</param>
    public SaveAnswer Send(IGarageStore store, string session)
    {
        ArgumentNullException.ThrowIfNull(store);
        try
        {
            return new SaveAnswer(Label.Length > 0 ? store.Save(Kept, Mark, Label) : store.Autosave(Kept, Mark, session), "");
        }
        catch (Exception error)
        {
            // Disk full, file locked, network gone: the change stays on the bench and the mark says so.
            return new SaveAnswer(null, error.Message);
        }
    }
}

/// <summary>What became of a try.</summary>
/// <param name="Result">Null where the store gave no answer: it may have kept it or not.</param>
/// <param name="Failure">Why there is no answer.</param>
public sealed record SaveAnswer(SaveResult? Result, string Failure);
