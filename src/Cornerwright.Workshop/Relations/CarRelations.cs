using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;
using Cornerwright.Workshop.Fitted;

namespace Cornerwright.Workshop.Relations;

/// <summary>What of a car does not go together.</summary>
/// <param name="Found">Worst first: what cannot be, what surprises; of each, what is not confirmed first.</param>
/// <param name="Looked">How many relations were looked at.</param>
public sealed record CarRelations(IReadOnlyList<Relation> Found, int Looked)
{
    public static CarRelations None { get; } = new([], 0);

    /// <summary>"numbers do not fit together in 2 places"; empty where all go together or are confirmed.</summary>
    public string OpenWords => Open.Count() switch
    {
        0 => "",
        1 => "numbers do not fit together in 1 place",
        var n => FormattableString.Invariant($"numbers do not fit together in {n} places"),
    };

    /// <summary>What nobody has confirmed.</summary>
    public IEnumerable<Relation> Open => Found.Where(r => !r.IsConfirmed);

    /// <summary>True where numbers contradict each other so that no build can be said to hold.</summary>
    public bool Contradicts => Found.Any(r => r is { Band: Band.CannotBe, IsConfirmed: false });

    /// <summary>The whole document: every part on the shelf and every build.</summary>
    public static CarRelations Of(Car car)
    {
        ArgumentNullException.ThrowIfNull(car);
        return Look(car, car.Builds, _ => true);
    }

    /// <summary>What bears on one build: the car, what this build and the present one are made of, and their settings.</summary>
    public static CarRelations Of(Car car, Build build)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(build);
        IReadOnlyList<Build> builds = car.Build(car.MeasuredBuild) is { } now && now.Id != build.Id ? [now, build] : [build];
        var used = new HashSet<Part>(ReferenceEqualityComparer.Instance);
        foreach (var corner in builds.SelectMany(b => Places.Corners.Select(b.At)))
        {
            var parts = CornerParts.Of(car.Parts, corner);
            used.UnionWith(parts.Stack);
            used.UnionWith(new Part?[] { parts.Wheel, parts.Tyre, parts.Spacer, parts.Perch, parts.TopMount, parts.Damper, parts.BumpStop,
                parts.AntiRollBar, car.Parts.BarLinks.FirstOrDefault(l => l.Id == corner.BarLink) }.OfType<Part>());
        }

        return Look(car, builds, used.Contains);
    }

    private static CarRelations Look(Car car, IReadOnlyList<Build> builds, Func<Part, bool> used)
    {
        var book = new RelationBook(car);
        Shelf(book, used);
        UsualRanges.Look(book, car with { Parts = new(), Builds = [], Scans = [], Occasions = [], Wishes = [], Searches = [],
            Log = new(), Access = new() }, "");
        LoadRelations.Look(book);
        AxleRelations.Look(book);
        WheelRelations.LookAtHubs(book, car.Front, car.Rear);
        BuildRelations.LookAtLimits(book, "limits", car.Limits);
        var now = car.Build(car.MeasuredBuild);
        foreach (var axle in new[] { AxlePlace.Front, AxlePlace.Rear })
        {
            WheelRelations.LookAtHub(book, axle, car.At(axle).Hub);
            SideRelations.Look(book, axle);
        }

        foreach (var place in Places.Corners)
        {
            var on = now is null ? null : CornerParts.Of(car.Parts, now.At(place));
            CornerRelations.Look(book, place, on);
            CycledRelations.Look(book, place);
            PointRelations.Look(book, place, on);
            if (on is not null)
            {
                WheelRelations.LookAtCaliper(book, place, on);
            }

            foreach (var build in builds)
            {
                Fitted(book, place, build, on, build.Id == car.MeasuredBuild);
            }
        }

        foreach (var build in builds)
        {
            BuildRelations.Look(book, build);
        }

        return new([.. book.Found.OrderBy(r => r.IsConfirmed).ThenByDescending(r => r.Band).ThenBy(r => r.Id, StringComparer.Ordinal)],
            book.Looked);
    }

    private static void Fitted(RelationBook book, CornerPlace place, Build build, CornerParts? now, bool present)
    {
        var parts = CornerParts.Of(book.Car.Parts, build.At(place));
        UsualRanges.Look(book, build.At(place), $"builds/{build.Id}/{CornerRelations.Path(place)}");
        WheelRelations.LookAtFitted(book, place, build, parts, now);
        StationRelations.Look(book, place, build, parts, present);
        CornerRelations.LookAtFitted(book, place, parts, now);
    }

    private static void Shelf(RelationBook book, Func<Part, bool> used)
    {
        foreach (var kind in RecordShape.Of<PartsShelf>().Fields)
        {
            foreach (var part in ((IEnumerable<Part>)kind.Get(book.Car.Parts)!).Where(used))
            {
                UsualRanges.Look(book, part, $"parts/{kind.Name}/{part.Id}");
                NameRelations.Look(book, part, kind.Name);
                switch (part)
                {
                    case Spring spring: SpringRelations.Look(book, spring); break;
                    case Wheel wheel: WheelRelations.Look(book, wheel); break;
                    case Tyre tyre: TyreRelations.Look(book, tyre); break;
                    case Perch perch: PartRelations.Look(book, perch); break;
                    case TopMount mount: PartRelations.Look(book, mount); break;
                    case Damper damper: PartRelations.Look(book, damper); break;
                    case BumpStop stop: PartRelations.Look(book, stop); break;
                    case AntiRollBar bar: PartRelations.Look(book, bar); break;
                }
            }
        }
    }
}
