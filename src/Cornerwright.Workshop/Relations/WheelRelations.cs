using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Designations;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Fitted;
using Kinds = Cornerwright.Workshop.Relations.RelationCatalogue;

namespace Cornerwright.Workshop.Relations;

/// <summary>A wheel beside its own designation, a hub beside itself.</summary>
internal static class WheelRelations
{
    /// <summary>Flange and lip beyond the bead seat, m. Common practice, no source.</summary>
    private const double Lip = 0.012;

    public static void Look(RelationBook book, Wheel wheel)
    {
        if (!RimDesignation.Parse(wheel.Designation, "").Try(out var rim))
        {
            return;
        }

        string path = "parts/wheels/" + wheel.Id;
        var size = Designation(wheel);
        var barrel = Num.Of(path + "/barrelRadius", "barrel radius", wheel.BarrelRadius);
        double inside = (rim.NominalDiameter / 2) - barrel.Si;
        book.Add(Kinds.BarrelRoom, path, inside, new(0.003, 0.012, 0.05, 0.12),
            () => $"The barrel of \"{wheel.Name}\" lies {Say.Mm(inside, 0)} inside a {Say.Mm(rim.NominalDiameter, 0)} bead seat; 12 to 50 "
                + $"mm are usual.",
            barrel, size);
        if (rim.Offset is { } offset)
        {
            double low = -0.075 - ((rim.Width - RimCodes.Width(8)) / 2), high = 0.062;
            book.Add(Kinds.OffsetRange, path, offset, new(low - 0.05, Math.Min(low + 0.045, -0.02), high, 0.12),
                () => FormattableString.Invariant($"An offset of {rim.OffsetMm:0.#} mm on a {rim.WidthCode:0.#} inch rim ")
                    + "is seldom seen.", size);
            var room = Num.Of(path + "/spokeRoom", "spoke room", wheel.SpokeRoom);
            double lip = (rim.Width / 2) + Lip - offset;
            book.Add(Kinds.SpokeRim, path, room.Si - lip, new(-0.12, -0.033, 0.008, 0.06),
                () => $"The spokes' back of \"{wheel.Name}\" stands {room.Typed} beyond the mounting face, the rim's outer lip "
                    + $"{Say.Mm(lip, 0)}.",
                room, size);
        }
    }

    /// <summary>A hub's numbers beside each other.</summary>
    public static void LookAtHub(RelationBook book, AxlePlace axle, Hub hub)
    {
        string path = axle.Words() + "/hub";
        var (circle, spigot) = (Circle(axle, hub), Spigot(axle, hub));
        var thread = Num.Of(path + "/thread", "thread diameter", hub.Thread);
        var pitch = Num.Of(path + "/threadPitch", "thread pitch", hub.ThreadPitch);
        var engaged = Num.Of(path + "/engagedNow", "thread engaged now", hub.EngagedNow);
        book.Add(Kinds.CircleHub, path, spigot.Si / circle.Si, new(0.3, 0.45, 0.75, 0.9),
            () => $"A {spigot.Typed} spigot inside a {circle.Typed} bolt circle is seldom seen on a car.", circle, spigot);
        book.Add(Kinds.ThreadHub, path + "/threadPitch", pitch.Si / thread.Si, new(0.05, 0.075, 0.16, 0.3),
            () => $"A wheel bolt of {thread.Typed} with {pitch.Typed} of pitch is no usual thread.", thread, pitch);
        book.Add(Kinds.ThreadHub, path + "/engagedNow", engaged.Si / thread.Si, new(0.2, 0.75, 2.2, 5),
            () => FormattableString.Invariant($"The {axle.Words()} wheel bolts engage {engaged.Si / thread.Si:0.0} times their thread's ")
                + "diameter; about one to two are usual.", thread, engaged);
    }

    /// <summary>Both hubs of a car.</summary>
    public static void LookAtHubs(RelationBook book, Axle front, Axle rear)
    {
        Alike(book, "circle", Circle(AxlePlace.Front, front.Hub), Circle(AxlePlace.Rear, rear.Hub), 0.0006);
        Alike(book, "spigot", Spigot(AxlePlace.Front, front.Hub), Spigot(AxlePlace.Rear, rear.Hub), 0.012);
        Alike(book, "thread", Num.Of("front/hub/thread", "front thread", front.Hub.Thread),
            Num.Of("rear/hub/thread", "rear thread", rear.Hub.Thread), 0.0021);
        Alike(book, "pitch", Num.Of("front/hub/threadPitch", "front pitch", front.Hub.ThreadPitch),
            Num.Of("rear/hub/threadPitch", "rear pitch", rear.Hub.ThreadPitch), 0.00026);
        Alike(book, "engaged", Num.Of("front/hub/engagedNow", "front thread engaged", front.Hub.EngagedNow),
            Num.Of("rear/hub/engagedNow", "rear thread engaged", rear.Hub.EngagedNow), 0.006);
    }

    /// <summary>A wheel of a build on its hub and caliper, and beside the present wheel.</summary>
    public static void LookAtFitted(RelationBook book, CornerPlace place, Build build, CornerParts parts, CornerParts? now)
    {
        if (parts.Wheel is not { } wheel || parts.Rim is not { } rim)
        {
            return;
        }

        var (car, path, at) = (book.Car, "parts/wheels/" + wheel.Id, $"{place.Words().Replace(' ', '-')}/{wheel.Id}");
        var hub = car.At(place.Axle()).Hub;
        var spigot = Spigot(place.Axle(), hub);
        var bore = wheel.CentreBore is null && rim.CentreBoreMm is { } stamped
            ? Designation(wheel) with { Si = stamped / 1000 } : Num.Of(path + "/centreBore", "centre bore", wheel.CentreBore);
        book.Add(Kinds.BoreSpigot, at, bore.Si - spigot.Si, new(-0.02, -0.0006, 0.015, 0.04),
            () => $"The bore of \"{wheel.Name}\" is {Say.Mm(bore.Si, 2)}, the {place.Axle().Words()} hub's spigot {spigot.Typed}.", bore,
                spigot);
        if (now?.Rim?.Offset is { } offsetNow && rim.Offset is { } offset && now.Wheel!.Id != wheel.Id)
        {
            double moved = offsetNow - offset + Thick(parts) - Thick(now);
            book.Add(Kinds.OffsetNow, at + "/" + build.Id, moved, new(-0.08, -0.02, 0.035, 0.12),
                () => $"\"{wheel.Name}\" stands {Say.Mm(Math.Abs(moved), 0)} further {(moved > 0 ? "out" : "in")} than the present wheel.",
                Tied(parts, now));
        }

        int heaviest = Heaviest(book, place);
        if (heaviest >= 0)
        {
            var load = LoadRelations.Of(car.LoadCases[heaviest], place);
            var rating = Num.Of(path + "/loadRating", "load rating", wheel.LoadRating);
            book.Add(Kinds.RatingLoad, at, rating.Si / load.Si, new(0.3, 1, 2.7, 8),
                () => FormattableString.Invariant($"\"{wheel.Name}\" is rated for {rating.Si / load.Si:0.0} times ")
                    + $"the {load.Typed} that it carries.",
                rating, load);
        }
    }

    /// <summary>The wheel that is on the car clears its caliper: somebody drove it there.</summary>
    public static void LookAtCaliper(RelationBook book, CornerPlace place, CornerParts now)
    {
        if (now.Wheel is not { } wheel)
        {
            return;
        }

        var (corner, path, at) = (book.Car.At(place), "parts/wheels/" + wheel.Id, CornerRelations.Path(place));
        var radius = Num.Of(at + "/calliperRadius", "caliper radius", corner.CalliperRadius);
        var barrel = Num.Of(path + "/barrelRadius", "barrel radius", wheel.BarrelRadius);
        book.Add(Kinds.CaliperRoom, at + "/calliperRadius", barrel.Si - radius.Si, new(-0.002, 0, 0.05, 0.15),
            () => $"The caliper reaches {radius.Typed} from the hub's centre; the wheel that is on has {barrel.Typed} there.", radius,
                barrel);
        var proud = Num.Of(at + "/calliperProud", "caliper beyond the hub face", corner.CalliperProud);
        var room = Num.Of(path + "/spokeRoom", "spoke room", wheel.SpokeRoom);
        double left = room.Si + Thick(now) - proud.Si;
        book.Add(Kinds.CaliperRoom, at + "/calliperProud", left, new(-0.002, 0, 0.045, 0.12),
            () => $"The caliper stands {proud.Typed} beyond the hub face; the wheel that is on leaves {Say.Mm(room.Si + Thick(now), 0)}.",
            proud, room);
    }

    private static Num[] Tied(CornerParts parts, CornerParts now) =>
        [.. new[] { Designation(parts.Wheel!), Designation(now.Wheel!) }.Concat(new[] { parts, now }
            .Where(p => p.Spacer is not null).Select(p => Num.Of($"parts/spacers/{p.Spacer!.Id}/thickness", "spacer",
                p.Spacer.Thickness)))];

    private static int Heaviest(RelationBook book, CornerPlace place)
    {
        int best = -1;
        for (int i = 0; i < book.Car.LoadCases.Count; i++)
        {
            if (book.Car.LoadCases[i].At(place) is { } load && (best < 0 || load.Si > book.Car.LoadCases[best].At(place)!.Si))
            {
                best = i;
            }
        }

        return best;
    }

    private static void Alike(RelationBook book, string what, Num front, Num rear, double fine) =>
        book.Add(Kinds.HubsAlike, what, front.Si - rear.Si, Bands.Around(fine),
            () => $"{front} and {rear} differ; one car's hubs seldom do.", front, rear);

    internal static double Thick(CornerParts parts) => parts.Spacer?.Thickness?.Si ?? 0;

    internal static Num Designation(Wheel wheel) => new($"parts/wheels/{wheel.Id}/designation", "rim designation", wheel.Designation, 0);

    private static Num Circle(AxlePlace axle, Hub hub) => Num.Of(axle.Words() + "/hub/boltCircle", $"{axle.Words()} bolt circle",
        hub.BoltCircle);

    private static Num Spigot(AxlePlace axle, Hub hub) => Num.Of(axle.Words() + "/hub/centring", $"{axle.Words()} hub spigot",
        hub.Centring);
}
