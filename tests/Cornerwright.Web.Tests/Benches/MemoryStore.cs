using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Storage;

namespace Cornerwright.Web.Tests.Benches;

/// <summary>
/// A store of one car that takes no time: texts in order, the same answers as the real one, and faults on request. It folds nothing.
/// </summary>
internal sealed class MemoryStore : IGarageStore
{
    private readonly List<string> _texts = [];

    /// <summary>What goes wrong with the next autosave of a bench.</summary>
    public Fault Next { get; set; }

    public IReadOnlyList<string> Texts => _texts;

    public Checked<StoredCar> Load(string carId) => Checked<StoredCar>.From(Latest);

    public Checked<StoredCar> Load(string carId, int revision) =>
        Checked<StoredCar>.From(new(CarFile.Read(_texts[revision - 1]).Value, new(revision, 0)));

    public string? Text(string carId, int revision) => _texts[revision - 1];

    public SaveResult Save(Car car, RevisionMark? expected, string? label = null) => Keep(car, expected);

    /// <summary>Faults are for people at a bench; a phone tries for itself.</summary>
    public SaveResult Autosave(Car car, RevisionMark? expected, string session)
    {
        if (session.StartsWith("job ", StringComparison.Ordinal))
        {
            return Keep(car, expected);
        }

        var fault = Next;
        Next = Fault.None;
        if (fault == Fault.BeforeKeeping)
        {
            throw new IOException("The disk is full.");
        }

        var result = Keep(car, expected);
        return fault == Fault.AfterKeeping ? throw new IOException("The answer was lost.") : result;
    }

    public IReadOnlyList<Revision> Revisions(string carId) =>
        [.. _texts.Select((_, i) => new Revision(new(i + 1, 0), i == 0 ? null : i, DateTimeOffset.UnixEpoch, "", null, false, false))
            .Reverse()];

    public IReadOnlyList<CarCard> ListCars() => throw new NotSupportedException();
    public IReadOnlyList<CarCard> ListBin() => throw new NotSupportedException();
    public bool Label(string carId, int revision, string? label) => throw new NotSupportedException();
    public IReadOnlyList<Revision> RevisionsOfBuild(string carId, string buildId) => throw new NotSupportedException();
    public bool Delete(string carId) => throw new NotSupportedException();
    public bool Restore(string carId) => throw new NotSupportedException();
    public Problem? Backup(string path) => throw new NotSupportedException();

    private StoredCar Latest => new(CarFile.Read(_texts[^1]).Value, new(_texts.Count, 0));

    private SaveResult Keep(Car car, RevisionMark? expected)
    {
        string text = CarFile.Write(car);
        if (_texts.Count > 0 && text == _texts[^1])
        {
            return new SaveResult.Unchanged(Latest.Mark);
        }

        if (_texts.Count > 0 && expected != Latest.Mark)
        {
            return new SaveResult.Conflict(Latest);
        }

        _texts.Add(text);
        return new SaveResult.Kept(Latest.Mark);
    }

    public enum Fault
    {
        None,
        BeforeKeeping,
        AfterKeeping,
    }
}
