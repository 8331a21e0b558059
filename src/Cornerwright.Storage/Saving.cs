using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Differences;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Cornerwright.Storage;

/// <summary>One save inside the caller's transaction: nothing to do, a new revision, a fold, a conflict or a refusal.</summary>
internal sealed class Saving(TimeProvider clock, AutosaveRule rule)
{
    public SaveResult Save(GarageContext context, Car car, RevisionMark? expected, string? session, string? label)
    {
        ArgumentNullException.ThrowIfNull(car);
        string text = CarFile.Write(car);
        var readBack = CarFile.Read(text);
        if (!readBack.Ok)
        {
            return new SaveResult.Refused(readBack.Problems);
        }

        var known = context.Cars.Find(car.Id);
        if (known is null)
        {
            return Begin(context, readBack.Value, text, expected, session, label);
        }

        if (known.BinnedAt is not null)
        {
            return new SaveResult.Refused([new Problem("id", car.Id, "an id that no car in the bin has",
                "Take that car out of the bin, or give this one another id.")]);
        }

        var head = context.Revisions.Find(car.Id, known.Head)!;
        string hash = PackedDocument.HashOf(text);
        if (head.DocumentHash == hash)
        {
            return KeepHead(context, head, session, label);
        }

        var latest = GarageStore.ReadRevision(context, car.Id, known.Head);
        if (expected != new RevisionMark(head.Number, head.Fold))
        {
            return latest.Ok ? new SaveResult.Conflict(latest.Value) : new SaveResult.Refused(latest.Problems);
        }

        known.Name = car.Name;
        return latest.Ok && session is not null && Folds(context, head, latest.Value.Car, readBack.Value, session) is { } changes
            ? Fold(context, head, text, hash, changes)
            : Append(context, known, head, latest, readBack.Value, text, hash, session, label);
    }

    public static string? Cleaned(string? label) => string.IsNullOrWhiteSpace(label) ? null : label.Trim();

    private SaveResult Begin(GarageContext context, Car car, string text, RevisionMark? expected, string? session, string? label)
    {
        if (expected is not null)
        {
            return new SaveResult.Refused([new Problem("id", car.Id, "the id of a car on the list", "Save it as a new car.")]);
        }

        context.Cars.Add(new CarRow { Id = car.Id, Name = car.Name, Head = 1 });
        Add(context, car.Id, 1, parent: null, text, PackedDocument.HashOf(text), "New car", session, label);
        AddBuilds(context, car.Id, 1, car.Builds.Select(x => x.Id));
        context.SaveChanges();
        return session is null ? new SaveResult.Saved(new(1, 0)) : new SaveResult.Kept(new(1, 0));
    }

    /// <summary>The same document again: a save on purpose closes and perhaps labels it, so that it stays as it is.</summary>
    private static SaveResult KeepHead(GarageContext context, RevisionRow head, string? session, string? label)
    {
        if (session is null && head.Open)
        {
            head.Open = false;
        }

        if (Cleaned(label) is { } name)
        {
            (head.Label, head.Open) = (name, false);
        }

        context.SaveChanges();
        return new SaveResult.Unchanged(new(head.Number, head.Fold));
    }

    /// <summary>
    /// Null if this autosave has to be a revision of its own; otherwise all changes against the head's parent.
    /// It folds only if it touches no place that the head itself had not touched: what vanishes are passing values.
    /// </summary>
    private List<FieldChange>? Folds(GarageContext context, RevisionRow head, Car before, Car after, string session)
    {
        var now = clock.GetUtcNow();
        if (!head.Open || head.Session != session || head.Label is not null || head.Parent is not { } parentNumber)
        {
            return null;
        }

        if (!GarageStore.ReadRevision(context, head.CarId, parentNumber).Try(out var parent))
        {
            return null;
        }

        var (earlier, latest) = (CarDifference.Between(parent.Car, before), CarDifference.Between(before, after));
        if (earlier.Concat(latest).All(IsTick))
        {
            return now >= head.SavedAt && now - head.OpenedAt <= rule.JobSpan ? [.. CarDifference.Between(parent.Car, after)] : null;
        }

        bool inTime = now >= head.SavedAt && now - head.SavedAt <= rule.Pause && now - head.OpenedAt <= rule.Span;
        var touched = earlier.Select(x => x.Address).ToHashSet(StringComparer.Ordinal);
        return inTime && latest.All(x => touched.Contains(x.Address)) ? [.. CarDifference.Between(parent.Car, after)] : null;
    }

    /// <summary>A tick of a job that came; ticks are never changed, so nothing is lost between two of them.</summary>
    private static bool IsTick(FieldChange change) =>
        change.Kind == ChangeKind.Added && change.Address.Split('/') is ["log", "jobs", _, "ticks", _];

    private SaveResult.Kept Fold(GarageContext context, RevisionRow head, string text, string hash, List<FieldChange> changes)
    {
        string old = head.DocumentHash;
        AddDocument(context, text, hash);
        head.DocumentHash = hash;
        head.Fold++;
        head.SavedAt = clock.GetUtcNow();
        head.Changes = ChangeSentence.Of(changes);
        context.ChangedBuilds.Where(x => x.CarId == head.CarId && x.Number == head.Number).ExecuteDelete();
        AddBuilds(context, head.CarId, head.Number, BuildIds(changes));
        context.SaveChanges();
        if (!context.Revisions.Any(x => x.DocumentHash == old))
        {
            context.Documents.Where(x => x.Hash == old).ExecuteDelete();
        }

        return new SaveResult.Kept(new(head.Number, head.Fold));
    }

    private SaveResult Append(
        GarageContext context, CarRow known, RevisionRow head, Checked<StoredCar> latest, Car car, string text, string hash,
        string? session, string? label)
    {
        int number = head.Number + 1;
        string changes = "Mended: the revision before could not be read";
        IEnumerable<string> builds = car.Builds.Select(x => x.Id);
        if (latest.Ok)
        {
            var differences = CarDifference.Between(latest.Value.Car, car);
            (changes, builds) = (ChangeSentence.Of(differences), BuildIds(differences));
        }

        head.Open = false;
        known.Head = number;
        Add(context, car.Id, number, head.Number, text, hash, changes, session, label);
        AddBuilds(context, car.Id, number, builds);
        context.SaveChanges();
        return session is null ? new SaveResult.Saved(new(number, 0)) : new SaveResult.Kept(new(number, 0));
    }

    private void Add(
        GarageContext context, string carId, int number, int? parent, string text, string hash, string changes, string? session,
        string? label)
    {
        AddDocument(context, text, hash);
        var now = clock.GetUtcNow();
        context.Revisions.Add(new RevisionRow
        {
            CarId = carId,
            Number = number,
            Parent = parent,
            OpenedAt = now,
            SavedAt = now,
            Changes = changes,
            Label = Cleaned(label),
            Session = session,
            Open = session is not null,
            DocumentHash = hash,
        });
    }

    private static void AddDocument(GarageContext context, string text, string hash)
    {
        if (!context.Documents.Any(x => x.Hash == hash))
        {
            context.Documents.Add(PackedDocument.Pack(text, hash));
        }
    }

    private static IEnumerable<string> BuildIds(IEnumerable<FieldChange> changes) =>
        changes.Select(x => x.BuildId).OfType<string>().Distinct(StringComparer.Ordinal);

    private static void AddBuilds(GarageContext context, string carId, int number, IEnumerable<string> buildIds) =>
        context.ChangedBuilds.AddRange(buildIds.Select(x => new ChangedBuildRow { CarId = carId, Number = number, BuildId = x }));
}
