using Cornerwright.Garage.Access;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Files;

/// <summary>What one field alone cannot show: ids that must be unique or exist, lengths that must stand in order.</summary>
public static class Consistency
{
    /// <returns>Every problem; empty if the car hangs together.</returns>
    public static IReadOnlyList<Problem> Check(Car car)
    {
        var problems = CheckKept(car);
        problems.AddRange(Places.Corners.SelectMany(corner => NearWheelConsistency.Check(car, corner)));
        return problems;
    }

    /// <summary>Without the rules that a car kept before them may break.</summary>
    internal static List<Problem> CheckKept(Car car)
    {
        ArgumentNullException.ThrowIfNull(car);
        var problems = new List<Problem>();
        Unique(problems, "load cases", car.LoadCases.Select(x => x.Id));
        Unique(problems, "builds", car.Builds.Select(x => x.Id));
        problems.AddRange(ScanConsistency.Check(car));
        CheckShelf(problems, car.Parts);
        CheckSetting(problems, car);
        Exists(problems, "measured in load case", car.MeasuredLoadCase, Set(car.LoadCases.Select(x => x.Id)));
        Exists(problems, "measured on build", car.MeasuredBuild, Set(car.Builds.Select(x => x.Id)));
        var shelf = new Ids(car.Parts);
        Unique(problems, "searches", car.Searches.Select(x => x.Id));
        foreach (var wishes in car.Searches)
        {
            CheckWishes(problems, shelf, wishes, car);
        }

        foreach (var corner in Places.Corners)
        {
            Unique(problems, $"{corner.Words()} corner / things near the wheel", car.At(corner).Obstacles.Select(x => x.Id));
            HardpointConsistency.Check(problems, car, corner);
            Rising(problems, $"{corner.Words()} corner / cycled readings / travel", car.At(corner).Motion.Steps.Select(x => x.Travel));
            foreach (var build in car.Builds)
            {
                CheckCorner(problems, shelf, build.At(corner), $"build {build.Id} / {corner.Words()}");
            }
        }

        problems.AddRange(AccessCheck.Problems(car.Access));
        CheckLog(problems, car);
        return problems;
    }

    private static void CheckLog(List<Problem> problems, Car car)
    {
        Unique(problems, "log / entries", car.Log.Entries.Select(x => x.Id));
        Unique(problems, "log / jobs", car.Log.Jobs.Select(x => x.Id));
        Unique(problems, "log / reminders", car.Log.Reminders.Select(x => x.Id));
        foreach (var job in car.Log.Jobs)
        {
            Unique(problems, $"log / job {job.Id} / ticks", job.Ticks.Select(x => x.Id));
        }
    }

    /// <summary>A shelf alone: ids within their kind, designations, lengths in order.</summary>
    public static IReadOnlyList<Problem> Check(PartsShelf shelf)
    {
        ArgumentNullException.ThrowIfNull(shelf);
        var problems = new List<Problem>();
        CheckShelf(problems, shelf);
        return problems;
    }

    private static void CheckSetting(List<Problem> problems, Car car)
    {
        Unique(problems, "readings after the work", car.Occasions.Select(x => x.Id));
        foreach (var wish in car.Wishes)
        {
            Exists(problems, $"settings wanted of {wish.Build} / build", wish.Build, Set(car.Builds.Select(x => x.Id)));
        }

        if (car.Wishes.GroupBy(w => w.Build, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice)
        {
            problems.Add(new Problem("settings wanted / build", twice.Key, "each build once", "Take one of the two out."));
        }

        foreach (var occasion in car.Occasions)
        {
            Exists(problems, $"readings {occasion.Id} / load case", occasion.LoadCase, Set(car.LoadCases.Select(x => x.Id)));
        }
    }

    private static void CheckShelf(List<Problem> problems, PartsShelf shelf)
    {
        foreach (var kind in PartKind.All)
        {
            var sharing = CornerSlot.SharingIds(kind);
            if (sharing[0] == kind)
            {
                string words = sharing.Count > 1 ? string.Join(" and ", sharing.Select(x => x.Name)) : kind.Label.ToLowerInvariant();
                Unique(problems, words, sharing.SelectMany(x => x.On(shelf)).Select(x => x.Id));
            }
        }

        problems.AddRange(PartKind.All.SelectMany(kind =>
            kind.On(shelf).SelectMany(part => part.Contradictions($"{CornerSlot.PartWords(kind)} {part.Id}"))));
    }

    private static void CheckCorner(List<Problem> problems, Ids shelf, CornerBuild corner, string path)
    {
        foreach (var slot in CornerSlot.All.Where(x => x.HoldsParts))
        {
            foreach (string id in slot.Ids(corner))
            {
                Exists(problems, $"{path} / {slot.Words}", id, shelf.Of(slot.Kinds));
            }
        }
    }

    private static void CheckWishes(List<Problem> problems, Ids shelf, Wishes wishes, Car car)
    {
        string path = $"search {wishes.Id}";
        Exists(problems, path + " / starting from", wishes.StartingBuild, Set(car.Builds.Select(x => x.Id)));
        Order(problems, path + " / ride frequency", wishes.FrequencyLow, wishes.FrequencyHigh);
        foreach (var field in RecordShape.Of<Wishes>().Fields.Where(x => x.Kind == FieldKind.TextList))
        {
            var kind = PartKind.ReferredTo(field)[0];
            foreach (string id in (IReadOnlyList<string>)field.Get(wishes)!)
            {
                Exists(problems, $"{path} / {field.Label.ToLowerInvariant()}", id, shelf.Of(CornerSlot.SharingIds(kind)));
            }
        }
    }

    private static void Unique(List<Problem> problems, string path, IEnumerable<string> ids)
    {
        foreach (var twice in ids.GroupBy(x => x, StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            problems.Add(new Problem(path + " / id", twice.Key, "each id once", "Give one of them another id."));
        }
    }

    private static void Exists(List<Problem> problems, string path, string id, HashSet<string> known)
    {
        if (id.Length > 0 && !known.Contains(id))
        {
            problems.Add(
                new Problem(path, id, string.Join(", ", known.Take(20)), "Choose one that is on the shelf, or put this one there."));
        }
    }

    private static void Order(List<Problem> problems, string path, Reading? low, Reading? high) =>
        problems.AddRange(InOrder.Smaller(path, low, high));

    private static void Rising(List<Problem> problems, string path, IEnumerable<Reading?> values) =>
        problems.AddRange(InOrder.Rising(path, values));

    private static HashSet<string> Set(IEnumerable<string> ids) => new(ids, StringComparer.Ordinal);

    /// <summary>The ids of a shelf by kind, gathered once for all builds.</summary>
    private sealed class Ids(PartsShelf shelf)
    {
        private readonly Dictionary<PartKind, HashSet<string>> _known = [];

        /// <summary>Ids of kinds that lie in one slot.</summary>
        public HashSet<string> Of(IReadOnlyList<PartKind> sharing)
        {
            if (!_known.TryGetValue(sharing[0], out var ids))
            {
                ids = Set(sharing.SelectMany(x => x.On(shelf)).Select(x => x.Id));
                _known.Add(sharing[0], ids);
            }

            return ids;
        }
    }
}
