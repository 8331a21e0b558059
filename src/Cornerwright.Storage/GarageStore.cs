using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Storage.Rows;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Cornerwright.Storage;

/// <summary>The store on SQLite. Every call is one transaction on a connection of its own.</summary>
public sealed class GarageStore(GarageDatabase database, TimeProvider clock, AutosaveRule rule) : IGarageStore
{
    /// <summary>A label is read in a list, in one row.</summary>
    public const int LongestLabel = 100;

    private readonly Saving _saving = new(clock, rule);

    public IReadOnlyList<CarCard> ListCars() =>
        [.. Cards(binned: false).OrderBy(x => x.Name, StringComparer.OrdinalIgnoreCase).ThenBy(x => x.Id, StringComparer.Ordinal)];

    public IReadOnlyList<CarCard> ListBin() => [.. Cards(binned: true).OrderByDescending(x => x.BinnedAt)];

    public Checked<StoredCar> Load(string carId)
    {
        using var context = database.CreateDbContext();
        var car = context.Cars.Find(carId);
        return car is { BinnedAt: null }
            ? ReadRevision(context, carId, car.Head)
            : Checked<StoredCar>.Wrong(NoCar(carId, binned: car is not null));
    }

    public Checked<StoredCar> Load(string carId, int revision)
    {
        using var context = database.CreateDbContext();
        return ReadRevision(context, carId, revision);
    }

    public string? Text(string carId, int revision)
    {
        using var context = database.CreateDbContext();
        return Find(context, carId, revision) is { Document: { } document } ? PackedDocument.Unpack(document) : null;
    }

    public SaveResult Save(Car car, RevisionMark? expected, string? label = null) =>
        Run(context => _saving.Save(context, car, expected, session: null, label), LabelProblem(label));

    public SaveResult Autosave(Car car, RevisionMark? expected, string session)
    {
        ArgumentException.ThrowIfNullOrEmpty(session);
        return Run(context => _saving.Save(context, car, expected, session, label: null), null);
    }

    public bool Label(string carId, int revision, string? label)
    {
        if (LabelProblem(label) is not null)
        {
            return false;
        }

        using var context = database.CreateDbContext();
        using var transaction = context.Database.BeginTransaction();
        if (context.Revisions.Find(carId, revision) is not { } row)
        {
            return false;
        }

        row.Label = Saving.Cleaned(label);
        row.Open = false;
        context.SaveChanges();
        transaction.Commit();
        return true;
    }

    public IReadOnlyList<Revision> Revisions(string carId)
    {
        using var context = database.CreateDbContext();
        return Lines(context.Revisions.Where(x => x.CarId == carId));
    }

    public IReadOnlyList<Revision> RevisionsOfBuild(string carId, string buildId)
    {
        using var context = database.CreateDbContext();
        var numbers = context.ChangedBuilds.Where(x => x.CarId == carId && x.BuildId == buildId).Select(x => x.Number);
        return Lines(context.Revisions.Where(x => x.CarId == carId && numbers.Contains(x.Number)));
    }

    public bool Delete(string carId) => SetBinned(carId, clock.GetUtcNow());

    public bool Restore(string carId) => SetBinned(carId, null);

    public Problem? Backup(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        try
        {
            if (File.Exists(path))
            {
                return new Problem("backup file", path, "a file that is not there yet", "Choose another name, or move the old file away.");
            }

            Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
            using var context = database.CreateDbContext();
            context.Database.ExecuteSql($"VACUUM INTO {path}");
            return null;
        }
        catch (Exception error) when (
            error is SqliteException or IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return new Problem("backup file", path, "a place that can be written, with room for the whole database",
                "Choose another place. " + error.Message);
        }
    }

    internal static Checked<StoredCar> ReadRevision(GarageContext context, string carId, int number)
    {
        if (Find(context, carId, number) is not { Document: { } document } row)
        {
            return Checked<StoredCar>.Wrong(new Problem("revision", FormattableString.Invariant($"{carId} {number}"),
                "one of the car's revisions", "Choose one from its list."));
        }

        var car = CarFile.ReadKept(PackedDocument.Unpack(document));
        return car.Ok
            ? Checked<StoredCar>.From(new StoredCar(car.Value, new RevisionMark(row.Number, row.Fold)))
            : Checked<StoredCar>.Wrong(car.Problems);
    }

    private static RevisionRow? Find(GarageContext context, string carId, int number) =>
        context.Revisions.AsNoTracking().Include(x => x.Document).SingleOrDefault(x => x.CarId == carId && x.Number == number);

    private static Problem NoCar(string carId, bool binned) => binned
        ? new Problem("car", carId, "a car on the list", "It is in the bin: take it out first.")
        : new Problem("car", carId, "a car on the list", "Choose one from the list, or make a new one.");

    private static Problem? LabelProblem(string? label) => label is { Length: > LongestLabel }
        ? new Problem("label", string.Concat(label.AsSpan(0, LongestLabel), "…"), $"at most {LongestLabel} characters", "Shorten it.")
        : null;

    private static List<Revision> Lines(IQueryable<RevisionRow> rows) =>
        [.. rows.AsNoTracking().OrderByDescending(x => x.Number).AsEnumerable().Select(x => new Revision(
            new RevisionMark(x.Number, x.Fold), x.Parent, x.SavedAt, x.Changes, x.Label, x.Session is not null, x.Open))];

    private SaveResult Run(Func<GarageContext, SaveResult> save, Problem? first)
    {
        if (first is not null)
        {
            return new SaveResult.Refused([first]);
        }

        // BEGIN IMMEDIATE: the check of what is expected and the write are one step for everybody else.
        using var context = database.CreateDbContext();
        using var transaction = context.Database.BeginTransaction();
        var result = save(context);
        transaction.Commit();
        return result;
    }

    private List<CarCard> Cards(bool binned)
    {
        using var context = database.CreateDbContext();
        var cards = from car in context.Cars
                    where (car.BinnedAt != null) == binned
                    join revision in context.Revisions on new { car.Id, car.Head } equals new { Id = revision.CarId,
                        Head = revision.Number }
                    select new CarCard(car.Id, car.Name, car.Head, revision.SavedAt, car.BinnedAt);
        return [.. cards];
    }

    private bool SetBinned(string carId, DateTimeOffset? at)
    {
        using var context = database.CreateDbContext();
        using var transaction = context.Database.BeginTransaction();
        if (context.Cars.Find(carId) is not { } car || (car.BinnedAt is null) == (at is null))
        {
            return false;
        }

        car.BinnedAt = at;
        context.SaveChanges();
        transaction.Commit();
        return true;
    }
}
