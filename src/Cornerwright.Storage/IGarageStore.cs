using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Storage;

/// <summary>Keeps every car with all its revisions. Safe to use from several threads and by several processes at once.</summary>
public interface IGarageStore
{
    /// <summary>By name, then id.</summary>
    IReadOnlyList<CarCard> ListCars();

    /// <summary>What was put in the bin, last first.</summary>
    IReadOnlyList<CarCard> ListBin();

    /// <summary>The latest state; or why there is none.</summary>
    Checked<StoredCar> Load(string carId);

    /// <summary>The car as it was in a revision; also of a car in the bin.</summary>
    Checked<StoredCar> Load(string carId, int revision);

    /// <summary>The document of a revision, byte for byte as it was stored; null if there is none.</summary>
    string? Text(string carId, int revision);

    /// <summary>Saves on purpose: a revision of its own, unless nothing changed.</summary>
    /// <param name="car">Must read back: an inconsistent car is refused with its problems.</param>
    /// <param name="expected">The mark that came with the car, or with its last save; null for a new car.</param>
    /// <param name="label">A name for the revision; null for none.</param>
    SaveResult Save(Car car, RevisionMark? expected, string? label = null);

    /// <summary>Saves while somebody works: on the disk at once; passing values of the same field become one revision.</summary>
    /// <param name="car">Must read back: an inconsistent car is refused with its problems.</param>
    /// <param name="expected">The mark that came with the car, or with its last save; null for a new car.</param>
    /// <param name="session">Who works: folding never crosses sessions.</param>
    SaveResult Autosave(Car car, RevisionMark? expected, string session);

    /// <summary>Names a revision, which also closes it; null takes the name away. False if there is no such revision.</summary>
    bool Label(string carId, int revision, string? label);

    /// <summary>Latest first.</summary>
    IReadOnlyList<Revision> Revisions(string carId);

    /// <summary>Only those in which that build changed, latest first.</summary>
    IReadOnlyList<Revision> RevisionsOfBuild(string carId, string buildId);

    /// <summary>Puts a car in the bin, whole. False if it is not on the list.</summary>
    bool Delete(string carId);

    /// <summary>Takes a car out of the bin. False if it is not there.</summary>
    bool Restore(string carId);

    /// <summary>A copy of the whole database in one new file, while others go on saving. Null, or why not.</summary>
    Problem? Backup(string path);
}
