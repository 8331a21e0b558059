using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Findings;
using Kinds = Cornerwright.Workshop.Relations.RelationCatalogue;

namespace Cornerwright.Workshop.Relations;

/// <summary>Settings of a build side by side, and limits beside the defaults.</summary>
internal static class BuildRelations
{
    /// <summary>By how much the two sides of an axle are usually set apart, SI. Common practice, no source.</summary>
    private static readonly Dictionary<string, double> Sides = new(StringComparer.Ordinal)
    {
        ["perchHeight"] = 0.008, ["bodyHeight"] = 0.008, ["slide"] = 0.004, ["clampCamber"] = 0.6 * Math.PI / 180, ["packer"] = 0.0015,
        ["pressure"] = 12_000,
    };

    /// <summary>Limits that ask less the smaller they are.</summary>
    private static readonly HashSet<string> AtLeast = new(StringComparer.Ordinal)
    {
        "preloadTurns", "helperReserve", "coilRoom", "stopLead", "bumpTravel", "droopTravel", "threadInHand", "tyreToBody", "tyreToKnuckle",
        "rimToAnything", "calliperToWheel", "threadEngagement", "groundClearance", "certainty",
    };

    /// <summary>Limits that ask less the larger they are.</summary>
    private static readonly HashSet<string> AtMost = new(StringComparer.Ordinal)
    {
        "crossoverBand", "stopUse", "damperOffMiddle", "fitTightest", "fitLoosest", "scrubChange", "trackChange", "circumferenceChange",
        "heightBand", "sideDifference", "stressShare",
    };

    public static void Look(RelationBook book, Build build)
    {
        foreach (var (left, right) in new[] { (CornerPlace.FrontLeft, CornerPlace.FrontRight), (CornerPlace.RearLeft,
            CornerPlace.RearRight) })
        {
            foreach (var field in RecordShape.Of<CornerBuild>().Fields.Where(f => Sides.ContainsKey(f.Name)))
            {
                var (one, other) = (Of(build, left, field), Of(build, right, field));
                book.Add(Kinds.Sides, one.Path, one.Si - other.Si, Bands.Around(Sides[field.Name]),
                    () => $"Build \"{build.Name}\": {field.Label.ToLowerInvariant()} is {one.Typed} {left.Words()} and {other.Typed} "
                        + $"{right.Words()}.",
                    one, other);
            }
        }

        var pressure = RecordShape.Of<CornerBuild>().ByName["pressure"];
        var (front, rear) = (Of(build, CornerPlace.FrontLeft, pressure), Of(build, CornerPlace.RearLeft, pressure));
        book.Add(Kinds.Pressures, build.Id, front.Si / rear.Si, new(0.3, 0.7, 1.4, 3),
            () => $"Build \"{build.Name}\" has {front.Typed} in front and {rear.Typed} behind.", front, rear);
        LookAtLimits(book, $"builds/{build.Id}/limits", build.Limits);
    }

    public static void LookAtLimits(RelationBook book, string path, Limits limits)
    {
        foreach (var field in RecordShape.Of<Limits>().Fields)
        {
            if (field.Get(limits) is not Reading reading)
            {
                continue;
            }

            var typed = Num.Of($"{path}/{field.Name}", field.Label.ToLowerInvariant(), reading);
            double usual = (field.Get(Limits.Default) as Reading)?.Si ?? double.NaN;
            var bands = AtLeast.Contains(field.Name) ? new Bands(0, 0.8, 2.75, 1e3)
                : AtMost.Contains(field.Name) ? new Bands(0, 0.1, 2.6, 60) : default;
            if (bands != default && usual > 0)
            {
                book.Add(Kinds.LimitLax, typed.Path, typed.Si / usual, bands,
                    () => $"{field.Label}: {typed.Typed} is set; the default is {((Reading)field.Get(Limits.Default)!).Typed}.", typed);
            }
            else if (field.Name is "tyreGrowth" or "tyreShift")
            {
                book.Add(Kinds.LimitLax, typed.Path, typed.Si, new(-1, 0, 0.012, 0.06), () =>
                    $"{field.Label}: {typed.Typed} is set; 0 to 12 mm are usual.", typed);
            }
        }

        Height(book, path + "/frontHeight", limits.FrontHeight, AxlePlace.Front);
        Height(book, path + "/rearHeight", limits.RearHeight, AxlePlace.Rear);
    }

    private static void Height(RelationBook book, string path, Reading? wanted, AxlePlace axle)
    {
        Car car = book.Car;
        var place = axle == AxlePlace.Front ? CornerPlace.FrontLeft : CornerPlace.RearLeft;
        var (want, now) = (Num.Of(path, $"{axle.Words()} height wanted", wanted),
            Num.Of(CornerRelations.Path(place) + "/rideHeight", $"{place.Words()} height", car.At(place).RideHeight));
        book.Add(Kinds.HeightWanted, path, want.Si - now.Si, Bands.Around(0.075, 0.25),
            () => $"{want.Typed} is wanted at the {axle.Words()} axle, {Say.Mm(Math.Abs(want.Si - now.Si), 0)} "
                + $"{(want.Si > now.Si ? "more" : "less")} than it stands now.", want, now);
    }

    private static Num Of(Build build, CornerPlace place, FieldShape field) =>
        Num.Of($"builds/{build.Id}/{CornerRelations.Path(place)}/{field.Name}", $"{place.Words()} {field.Label.ToLowerInvariant()}",
            field.Get(build.At(place)) as Reading);
}
