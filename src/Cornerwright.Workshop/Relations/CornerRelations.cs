using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Parts;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Fitted;
using Kinds = Cornerwright.Workshop.Relations.RelationCatalogue;

namespace Cornerwright.Workshop.Relations;

/// <summary>What was read round one wheel, beside the wheel that was on.</summary>
internal static class CornerRelations
{
    private const double Degree = Math.PI / 180;

    /// <summary>"frontLeft": the corner's name in the document.</summary>
    public static string Path(CornerPlace place) => place switch
    {
        CornerPlace.FrontLeft => "frontLeft",
        CornerPlace.FrontRight => "frontRight",
        CornerPlace.RearLeft => "rearLeft",
        _ => "rearRight",
    };

    public static void Look(RelationBook book, CornerPlace place, CornerParts? now)
    {
        var corner = book.Car.At(place);
        var height = Num.Of(Path(place) + "/rideHeight", $"{place.Words()} hub to arch edge", corner.RideHeight);
        var wheel = WheelNow.Of(now);
        if (wheel is { } on)
        {
            book.Add(Kinds.ArchTyre, Path(place), height.Si - on.Radius, new(-0.13, -0.02, 0.16, 0.4),
                () => $"{height.Label} is {height.Typed}, the tyre's radius {Say.Mm(on.Radius, 0)}: the arch edge stands "
                    + $"{Say.Mm(Math.Abs(height.Si - on.Radius), 0)} {(height.Si > on.Radius ? "above" : "below")} the tyre's top.",
                [height, .. on.Ties]);
        }

        LinkLength(book, place, corner.DropLink, now?.Held<BarLink>());
        foreach (var thing in corner.Obstacles)
        {
            for (int i = 0; i < thing.Gaps.Count; i++)
            {
                string at = FormattableString.Invariant($"{Path(place)}/obstacles/{thing.Id}/gaps/{i}");
                if (wheel is { } present)
                {
                    Arch(book, at, thing, thing.Gaps[i], height, present);
                }

                if (i > 0)
                {
                    Line(book, place, thing, i);
                }

                Steered(book, place, at, thing, thing.Gaps[i]);
            }
        }
    }

    private static void LinkLength(RelationBook book, CornerPlace place, DropLinkPlace? link, BarLink? part)
    {
        if (link is not { Outer: { } outer, BarEnd: { } end } || part is null)
        {
            return;
        }

        string path = Path(place) + "/dropLink";
        Num[] Of(string name, string label, HubPoint point) =>
        [
            Num.Of($"{path}/{name}/inboard", label + ", inboard", point.Inboard),
            Num.Of($"{path}/{name}/ahead", label + ", ahead", point.Ahead),
            Num.Of($"{path}/{name}/above", label + ", above", point.Above),
        ];
        Num[] one = Of("outer", "drop link's end at the wheel", outer), other = Of("barEnd", "drop link's end at the bar", end);
        var length = Num.Of($"parts/barLinks/{part.Id}/length", $"length of {part.Name}", part.Length);
        double apart = Math.Sqrt(one.Zip(other).Sum(p => (p.First.Si - p.Second.Si) * (p.First.Si - p.Second.Si)));
        book.Add(Kinds.LinkLength, path, apart - length.Si, Bands.Around(0.012, 0.06),
            () => $"The ends of the {place.Words()} drop link are {Say.Mm(apart, 0)} apart; it is {length.Typed} long.",
            [length, .. one, .. other]);
    }

    /// <summary>Another link on the same bar: an adjustable one levels the bar again, by about the change of ride height.</summary>
    public static void LookAtFitted(RelationBook book, CornerPlace place, CornerParts parts, CornerParts? now)
    {
        if (parts.Held<BarLink>() is { } link && now?.Held<BarLink>() is { } present && link.Id != present.Id)
        {
            var (length, was) = (Num.Of($"parts/barLinks/{link.Id}/length", $"length of {link.Name}", link.Length),
                Num.Of($"parts/barLinks/{present.Id}/length", $"length of {present.Name}", present.Length));
            book.Add(Kinds.LinkLength, $"{Path(place)}/{link.Id}", length.Si - was.Si, Bands.Around(0.06),
                () => $"{link.Name} is {length.Typed} long, the one that is on the {place.Words()} {was.Typed}.", length, was);
        }
    }

    // Straight up, the wheel's radius and the gap make the height of what is there: the arch edge, or what lies above it.
    private static void Arch(RelationBook book, string at, Obstacle thing, Gap gap, Num height, in WheelNow on)
    {
        bool up = gap.Direction == GapDirection.Radial && Math.Min(Math.Abs(gap.Clock - 12), Math.Abs(gap.Clock)) < 0.6;
        if (!up || thing.AttachedTo != AttachedTo.Body || Math.Abs(gap.Travel?.Si ?? 0) > 1e-6 || on.RadiusAt(gap.From) is not { } from)
        {
            return;
        }

        var read = Num.Of(at + "/distance", $"gap to the {thing.Name}", gap.Distance);
        bool outer = gap.From is GapFrom.OuterShoulder or GapFrom.OuterSidewall or GapFrom.RimOuterLip;
        double place = from + read.Si;
        book.Add(Kinds.ArchHeight, at, place - height.Si, outer ? new(-0.12, -0.018, 0.018, 0.12) : new(-0.15, -0.03, 0.12, 0.35),
            () => $"The {thing.Name} stands {Say.Mm(place, 0)} above the hub by its gap of {read.Typed}; {height.Label} is {height.Typed}.",
            [read, height, .. on.Ties]);
    }

    private static void Line(RelationBook book, CornerPlace place, Obstacle thing, int i)
    {
        var (before, gap) = (thing.Gaps[i - 1], thing.Gaps[i]);
        if (before.From != gap.From || before.Direction != gap.Direction || before.Steer?.Si != gap.Steer?.Si)
        {
            return;
        }

        string path = $"{Path(place)}/obstacles/{thing.Id}/gaps";
        var (one, other) = (Num.Of(FormattableString.Invariant($"{path}/{i - 1}/distance"), "gap", before.Distance),
            Num.Of(FormattableString.Invariant($"{path}/{i}/distance"), "next gap", gap.Distance));
        double fine = Math.Max(0.012, 0.3 * Math.Max(one.Si, other.Si));
        book.Add(Kinds.GapLine, FormattableString.Invariant($"{path}/{i}"), other.Si - one.Si, Bands.Around(fine),
            () => $"Gaps to the {thing.Name}, {place.Words()}: {one.Typed} and beside it {other.Typed}.", one, other);
    }

    private static void Steered(RelationBook book, CornerPlace place, string at, Obstacle thing, Gap gap)
    {
        if (gap.Steer is not { } reading || reading.Si == 0)
        {
            return;
        }

        var steer = Num.Of(at + "/steer", "steered when read", reading);
        var wheelLock = Num.Of(Path(place) + "/steering/lock", "lock", book.Car.At(place).Steering?.Lock);
        book.Add(Kinds.GapSteer, at + "/lock", Math.Abs(steer.Si) - wheelLock.Si, new(-2, -2, 2.5 * Degree, 10 * Degree),
            () => $"The gap to the {thing.Name} was read steered {steer.Typed}; the lock is {wheelLock.Typed}.", steer, wheelLock);

        // Steered left, what is ahead of the axle goes left: the gap that matters is the one that closes.
        double ahead = -Math.Sin(gap.Clock * Math.PI / 6) * (place.IsLeft() ? 1 : -1), inboard = place.IsLeft() ? -1 : 1;
        double way = gap.From is GapFrom.InnerShoulder or GapFrom.InnerSidewall or GapFrom.RimInnerLip ? inboard
            : gap.From is GapFrom.OuterShoulder or GapFrom.OuterSidewall or GapFrom.RimOuterLip ? -inboard : 0;
        if (thing.AttachedTo == AttachedTo.Body && Math.Abs(ahead) > 0.3 && way != 0)
        {
            book.Add(Kinds.GapSteer, at + "/way", way * ahead * Math.Sign(steer.Si), Bands.Asked(0, 1),
                () => $"The gap to the {thing.Name} was read with the wheel steered {steer.Typed}, away from it.", steer);
        }
    }
}
