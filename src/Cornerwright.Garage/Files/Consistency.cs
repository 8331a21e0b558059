using Cornerwright.Garage.Access;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Designations;
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
        Unique(problems, "wheels", shelf.Wheels.Select(x => x.Id));
        Unique(problems, "tyres", shelf.Tyres.Select(x => x.Id));
        Unique(problems, "spacers", shelf.Spacers.Select(x => x.Id));
        Unique(problems, "springs and sheets", shelf.Springs.Select(x => x.Id).Concat(shelf.Sheets.Select(x => x.Id)));
        Unique(problems, "perches", shelf.Perches.Select(x => x.Id));
        Unique(problems, "top mounts", shelf.TopMounts.Select(x => x.Id));
        Unique(problems, "dampers", shelf.Dampers.Select(x => x.Id));
        Unique(problems, "bump stops", shelf.BumpStops.Select(x => x.Id));
        Unique(problems, "anti-roll bars", shelf.AntiRollBars.Select(x => x.Id));
        Unique(problems, "bar links", shelf.BarLinks.Select(x => x.Id));
        foreach (var wheel in shelf.Wheels)
        {
            problems.AddRange(RimDesignation.Parse(wheel.Designation, $"wheel {wheel.Id} / rim designation").Problems);
        }

        foreach (var tyre in shelf.Tyres)
        {
            problems.AddRange(TyreDesignation.Parse(tyre.Designation, $"tyre {tyre.Id} / size").Problems);
            Order(problems, $"tyre {tyre.Id} / narrowest and widest rim", tyre.RimMin, tyre.RimMax);
        }

        foreach (var spring in shelf.Springs)
        {
            Order(problems, $"spring {spring.Id} / solid height and free length", spring.SolidHeight, spring.FreeLength);
            Order(problems, $"spring {spring.Id} / inner and outer diameter", spring.InnerDiameter, spring.OuterDiameter);
            Rising(problems, $"spring {spring.Id} / curve / deflection", spring.Curve.Select(x => x.Deflection));
            Rising(problems, $"spring {spring.Id} / curve / force", spring.Curve.Select(x => x.Force));
        }

        foreach (var damper in shelf.Dampers)
        {
            Order(problems, $"damper {damper.Id} / rod pushed in and pulled out", damper.RodClosed, damper.RodOpen);
            Order(problems, $"damper {damper.Id} / collar thread", damper.ThreadLow, damper.ThreadHigh);
            Order(problems, $"damper {damper.Id} / body height", damper.BodyLow, damper.BodyHigh);
            Order(problems, $"damper {damper.Id} / ride window", damper.WindowLow, damper.WindowHigh);
        }

        foreach (var stop in shelf.BumpStops)
        {
            Order(problems, $"bump stop {stop.Id} / spent and free length", stop.SpentLength, stop.Length);
            Rising(problems, $"bump stop {stop.Id} / curve / squeezed by", stop.Curve.Select(x => x.Deflection));
            Rising(problems, $"bump stop {stop.Id} / curve / force", stop.Curve.Select(x => x.Force));
        }
    }

    private static void CheckCorner(List<Problem> problems, Ids shelf, CornerBuild corner, string path)
    {
        Exists(problems, path + " / wheel", corner.Wheel, shelf.Wheels);
        Exists(problems, path + " / tyre", corner.Tyre, shelf.Tyres);
        Exists(problems, path + " / spacer", corner.Spacer, shelf.Spacers);
        Exists(problems, path + " / perch", corner.Perch, shelf.Perches);
        Exists(problems, path + " / top mount", corner.TopMount, shelf.TopMounts);
        Exists(problems, path + " / damper", corner.Damper, shelf.Dampers);
        Exists(problems, path + " / bump stop", corner.BumpStop, shelf.BumpStops);
        Exists(problems, path + " / anti-roll bar", corner.AntiRollBar, shelf.AntiRollBars);
        Exists(problems, path + " / bar link", corner.BarLink, shelf.BarLinks);
        foreach (string id in corner.Stack)
        {
            Exists(problems, path + " / stack", id, shelf.Stack);
        }
    }

    private static void CheckWishes(List<Problem> problems, Ids shelf, Wishes wishes, Car car)
    {
        string path = $"search {wishes.Id}";
        Exists(problems, path + " / starting from", wishes.StartingBuild, Set(car.Builds.Select(x => x.Id)));
        Order(problems, path + " / ride frequency", wishes.FrequencyLow, wishes.FrequencyHigh);
        foreach (var (ids, kind, known) in new (IReadOnlyList<string>, string, HashSet<string>)[]
        {
            (wishes.Springs, "springs", shelf.Stack), (wishes.Sheets, "sheets", shelf.Stack), (wishes.Perches, "perches", shelf.Perches),
            (wishes.TopMounts, "top mounts", shelf.TopMounts), (wishes.Dampers, "dampers", shelf.Dampers),
            (wishes.BumpStops, "bump stops", shelf.BumpStops),
            (wishes.Wheels, "wheels", shelf.Wheels), (wishes.Tyres, "tyres", shelf.Tyres), (wishes.Spacers, "spacers", shelf.Spacers),
        })
        {
            foreach (string id in ids)
            {
                Exists(problems, $"{path} / {kind}", id, known);
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

    private static void Order(List<Problem> problems, string path, Reading? low, Reading? high)
    {
        if (low is not null && high is not null && !(low.Si < high.Si))
        {
            problems.Add(
                new Problem(path, $"{low.Typed} and {high.Typed}", "the first smaller than the second", "They may have been exchanged."));
        }
    }

    private static void Rising(List<Problem> problems, string path, IEnumerable<Reading?> values)
    {
        double last = double.NegativeInfinity;
        foreach (var value in values)
        {
            if (value is not null && !(value.Si > last))
            {
                problems.Add(
                    new Problem(path, value.Typed, "each larger than the one before", "Sort the rows, or take the double one out."));
            }

            last = value?.Si ?? last;
        }
    }

    private static HashSet<string> Set(IEnumerable<string> ids) => new(ids, StringComparer.Ordinal);

    /// <summary>The ids of a shelf by kind, gathered once for all builds.</summary>
    private sealed class Ids(PartsShelf shelf)
    {
        public HashSet<string> Wheels { get; } = Set(shelf.Wheels.Select(x => x.Id));
        public HashSet<string> Tyres { get; } = Set(shelf.Tyres.Select(x => x.Id));
        public HashSet<string> Spacers { get; } = Set(shelf.Spacers.Select(x => x.Id));
        public HashSet<string> Stack { get; } = Set(shelf.Springs.Select(x => x.Id).Concat(shelf.Sheets.Select(x => x.Id)));
        public HashSet<string> Perches { get; } = Set(shelf.Perches.Select(x => x.Id));
        public HashSet<string> TopMounts { get; } = Set(shelf.TopMounts.Select(x => x.Id));
        public HashSet<string> Dampers { get; } = Set(shelf.Dampers.Select(x => x.Id));
        public HashSet<string> BumpStops { get; } = Set(shelf.BumpStops.Select(x => x.Id));
        public HashSet<string> AntiRollBars { get; } = Set(shelf.AntiRollBars.Select(x => x.Id));
        public HashSet<string> BarLinks { get; } = Set(shelf.BarLinks.Select(x => x.Id));
    }
}
