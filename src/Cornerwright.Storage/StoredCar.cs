using Cornerwright.Garage.Cars;

namespace Cornerwright.Storage;

/// <summary>A car from the database with the mark to hand back when it is saved.</summary>
public sealed record StoredCar(Car Car, RevisionMark Mark);

/// <summary>A line of the list of cars, or of the bin.</summary>
/// <param name="Id">Of the car.</param>
/// <param name="Name">As in the latest revision.</param>
/// <param name="Latest">Number of the latest revision.</param>
/// <param name="SavedAt">UTC.</param>
/// <param name="BinnedAt">UTC; null on the list.</param>
public sealed record CarCard(string Id, string Name, int Latest, DateTimeOffset SavedAt, DateTimeOffset? BinnedAt);

/// <summary>A line of a car's history.</summary>
/// <param name="Mark">Number and folds.</param>
/// <param name="Parent">Number of the revision it came from; null for the first.</param>
/// <param name="SavedAt">UTC.</param>
/// <param name="Changes">What changed against the parent, one line.</param>
/// <param name="Label">The name somebody gave it; null if none.</param>
/// <param name="Autosaved">It was saved while working and not on purpose.</param>
/// <param name="Open">Further autosaves of the same session may still be folded into it.</param>
public sealed record Revision(RevisionMark Mark, int? Parent, DateTimeOffset SavedAt, string Changes, string? Label,
    bool Autosaved, bool Open)
{
    public int Number => Mark.Number;
}
