using System.Globalization;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Kinds = Cornerwright.Workshop.Relations.RelationCatalogue;

namespace Cornerwright.Workshop.Relations;

/// <summary>Left and right of an axle: the same thing was read twice, on a car that is nearly the same on both sides.</summary>
internal static class SideRelations
{
    private const double Degree = Math.PI / 180;

    public static void Look(RelationBook book, AxlePlace axle)
    {
        var (left, right) = axle == AxlePlace.Front ? (CornerPlace.FrontLeft, CornerPlace.FrontRight)
            : (CornerPlace.RearLeft, CornerPlace.RearRight);
        var (one, other) = (book.Car.At(left), book.Car.At(right));
        var across = Readings(other).ToDictionary(r => r.Path, StringComparer.Ordinal);
        bool points = one.Hardpoints is { Mirrored: false } && other.Hardpoints is { Mirrored: false };
        bool steps = one.Motion.Steps.Count == other.Motion.Steps.Count;
        foreach (var (path, field, reading) in Readings(one))
        {
            if (across.TryGetValue(path, out var there) && (points || !path.StartsWith("hardpoints/", StringComparison.Ordinal))
                && (steps || !path.StartsWith("motion/steps/", StringComparison.Ordinal)))
            {
                Compare(book, path, field, Num.Of($"{CornerRelations.Path(left)}/{path}", $"{left.Words()} {Lower(field)}", reading),
                    Num.Of($"{CornerRelations.Path(right)}/{path}", $"{right.Words()} {Lower(field)}", there.Reading));
            }
        }

        foreach (var thing in one.Obstacles)
        {
            if (other.Obstacles.FirstOrDefault(o => o.Id == thing.Id) is { } twin && twin.Gaps.Count == thing.Gaps.Count)
            {
                Gaps(book, left, right, thing, twin);
            }
        }
    }

    // Each gap beside the one at the mirrored place; a gap without one was read elsewhere, or its place is a slip.
    private static void Gaps(RelationBook book, CornerPlace left, CornerPlace right, Obstacle one, Obstacle other)
    {
        for (int i = 0; i < one.Gaps.Count; i++)
        {
            var gap = one.Gaps[i];
            int twin = Enumerable.Range(0, other.Gaps.Count).Where(k => other.Gaps[k].From == gap.From
                && other.Gaps[k].Direction == gap.Direction)
                .OrderBy(k => Apart(gap.Clock, 12 - other.Gaps[k].Clock)).FirstOrDefault(-1);
            if (twin < 0)
            {
                continue;
            }

            string at = FormattableString.Invariant($"{CornerRelations.Path(left)}/obstacles/{one.Id}/gaps/{i}");
            string there = FormattableString.Invariant($"{CornerRelations.Path(right)}/obstacles/{one.Id}/gaps/{twin}");
            double apart = Apart(gap.Clock, 12 - other.Gaps[twin].Clock);
            book.Add(Kinds.Sides, at + "/clock", apart, Bands.Asked(0, 0.75),
                () => $"The gap to the {one.Name} at {Hours(gap.Clock)} o'clock has no twin at the mirrored place on the right.",
                Clock(at, gap), Clock(there, other.Gaps[twin]));
            if (apart <= 0.75)
            {
                Compare(book, $"obstacles/{one.Id}/{i}", Field<Gap>("distance"), Num.Of(at + "/distance", $"left gap to the {one.Name}",
                    gap.Distance),
                    Num.Of(there + "/distance", $"right gap to the {one.Name}", other.Gaps[twin].Distance));
                var (steer, opposite) = (Num.Of(at + "/steer", "steered left", gap.Steer), Num.Of(there + "/steer", "steered right",
                    other.Gaps[twin].Steer));
                book.Add(Kinds.Sides, at + "/steer", steer.Si + opposite.Si, Bands.Around(6 * Degree),
                    () => $"The gap to the {one.Name} was read steered {steer.Typed} on the left and {opposite.Typed} on the right; "
                        + $"mirrored it is the "
                        + "other way.", steer, opposite);
            }
        }
    }

    private static void Compare(RelationBook book, string path, FieldShape field, Num left, Num right)
    {
        // What lies left of the car's middle is written with a plus, what lies right of it with a minus.
        double there = path.StartsWith("hardpoints/", StringComparison.Ordinal) && field.Name == "y" ? -right.Si : right.Si;
        double fine = Fine(path, field, Math.Max(Math.Abs(left.Si), Math.Abs(there)));
        book.Add(Kinds.Sides, left.Path, left.Si - there, Bands.Around(fine, Far(path, left.Si, there)),
            () => $"{Upper(left.Label)} is {left.Typed}, {right.Label} {right.Typed}; a car's two sides are nearly alike.", left, right);
    }

    // A length or mass of one side that is three times the other's cannot be; a gap can.
    private static double Far(string path, double left, double right)
    {
        bool sized = path is "rideHeight" or "springAxisLength" or "damperAxisLength" or "calliperRadius" or "unsprungMass"
            or "motion/springRatio" or "motion/damperRatio" or "steering/lock";
        return sized ? 0.67 * Math.Max(Math.Abs(left), Math.Abs(right)) : double.PositiveInfinity;
    }

    /// <summary>By how much two sides may differ. Common practice, no source.</summary>
    private static double Fine(string path, FieldShape field, double size) => (field.Words.Dimension, field.Name) switch
    {
        (_, "outboardPerTravel" or "forwardPerTravel") => 0.032,
        (_, "swingArm") => 0.3 * size,
        (_, "camber") => 0.5 * Degree,
        (_, "toe") => 0.25 * Degree,
        (_, "lock") => 6 * Degree,
        (Dimension.Length, _) when path.StartsWith("hardpoints/", StringComparison.Ordinal) => 0.012,
        (Dimension.Length, "rideHeight") => 0.03,
        (Dimension.Length, "bumpAtLock") => 0.012,
        (Dimension.Length, _) => Math.Clamp(0.25 * size, 0.005, 0.025),
        (Dimension.Angle, _) => 1.5 * Degree,
        (Dimension.AnglePerLength, _) => 0.0072 * Degree * 1000,
        (Dimension.InverseLength, _) => 0.5,
        (Dimension.Ratio, _) => Math.Max(0.02, 0.1 * size),
        _ => 0.3 * size,
    };

    private static IEnumerable<(string Path, FieldShape Field, Reading Reading)> Readings(Corner corner) =>
        FieldWalk.Readings(corner with { Obstacles = [] }, "").Select(r => (r.Path, r.Field, r.Reading));


    private static double Apart(double a, double b)
    {
        double turned = Math.Abs(a - b) % 12;
        return Math.Min(turned, 12 - turned);
    }

    private static Num Clock(string path, Gap gap) => new(path + "/clock", "clock position", Hours(gap.Clock), gap.Clock);

    private static string Hours(double clock) => clock.ToString("0.##", CultureInfo.InvariantCulture);

    private static FieldShape Field<T>(string name) => RecordShape.Of<T>().ByName[name];

    private static string Lower(FieldShape field) => char.ToLowerInvariant(field.Label[0]) + field.Label[1..];

    private static string Upper(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
