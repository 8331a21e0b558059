using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Fitted;
using Cornerwright.Workshop.Weighing;
using static Cornerwright.Workshop.Findings.Say;

namespace Cornerwright.Workshop.Judging;

/// <summary>Checks that need more than one corner.</summary>
internal static class WholeCarChecks
{
    /// <summary>
    /// Tyres of one driven axle, or of all wheels of a four-wheel drive, may
    /// differ by this share in rolling circumference. Common practice, no source.
    /// </summary>
    internal const double EqualRolling = 0.01;

    public static IEnumerable<Finding> For(Car car, IReadOnlyList<CornerResult> corners, double certainty)
    {
        foreach (var axle in new[] { AxlePlace.Front, AxlePlace.Rear })
        {
            CornerResult left = Of(corners, axle, left: true), right = Of(corners, axle, left: false);
            yield return SideDifference(axle, left, right, certainty);
            if (Track(axle, left, right, certainty) is { } track)
            {
                yield return track;
            }

            if (Rolls(left.Plan.Parts) && Rolls(right.Plan.Parts)
                && WheelChecks.RollingDiameter(left.Plan.Parts) != WheelChecks.RollingDiameter(right.Plan.Parts))
            {
                yield return Rolling($"{axle.Words()} axle", axle, left, right, certainty);
            }
        }

        if (car.Front.Driven && car.Rear.Driven && Rolls(corners[0].Plan.Parts) && Rolls(corners[2].Plan.Parts))
        {
            yield return Rolling("car", null, corners[0], corners[2], certainty);
        }

        yield return GroundClearance(car, corners, certainty);
    }

    private static Finding SideDifference(AxlePlace axle, CornerResult left, CornerResult right, double certainty)
    {
        double limit = Limit(left.Plan.Limits.SideDifference);
        return SideDifference(left, right).Judge(
            Frame(CheckCatalogue.SideDifference, axle), UnitOf(CheckCatalogue.SideDifference), -limit, limit, certainty,
            value => Math.Abs(value) < 0.0005 ? "Left and right stand level."
                : $"The {(value > 0 ? "left" : "right")} side stands {Say.Mm(Math.Abs(value))} higher.");
    }

    /// <summary>Left height less right height.</summary>
    internal static CombinedValue SideDifference(CornerResult left, CornerResult right) =>
        new CombinedValue().Add(left, CarriedKind.Height, 1).Add(right, CarriedKind.Height, -1);

    private static Finding? Track(AxlePlace axle, CornerResult left, CornerResult right, double certainty)
    {
        if (left.Plan.Wheel is null || left.Plan.WheelNow is null || right.Plan.Wheel is null || right.Plan.WheelNow is null)
        {
            return null;
        }

        double limit = Limit(left.Plan.Limits.TrackChange);
        return new CombinedValue().Add(TrackChange(left.Plan, right.Plan)).Judge(
            Frame(CheckCatalogue.TrackChange, axle), UnitOf(CheckCatalogue.TrackChange), -limit, limit, certainty,
            value => Math.Abs(value) < 0.00005 ? "The track stays as it is."
                : $"The track grows by {Say.Mm(value)}.".Replace("grows by -", "shrinks by ", StringComparison.Ordinal));
    }

    /// <summary>By how much the track grows, m; NaN where a wheel, now or to come, is not known.</summary>
    internal static double TrackChange(CornerPlan left, CornerPlan right)
    {
        return Outward(left) + Outward(right);

        static double Outward(CornerPlan corner)
        {
            var x = corner.Inputs.Best();
            return corner.Wheel is { } wheel && corner.WheelNow is { } now ? wheel.AxialCentre(x) - now.AxialCentre(x) : double.NaN;
        }
    }

    private static Finding Rolling(string where, AxlePlace? axle, CornerResult first, CornerResult second, double certainty)
    {
        double ratio = RollingRatio(first.Plan.Parts, second.Plan.Parts);
        return new CombinedValue().Add(ratio).Judge(
            new Finding { Check = CheckCatalogue.EqualRolling.Id, Title = axle is null ? "Front and rear roll alike"
                : CheckCatalogue.EqualRolling.General, Where = where, Axle = axle, Verdict = Verdict.Unknown, Sentence = "" },
            UnitOf(CheckCatalogue.EqualRolling), -EqualRolling, EqualRolling, certainty,
            value => $"Their rolling circumferences differ by "
                + $"{Percent(Math.Abs(value), 1)}; differentials and anti-lock control want them alike.");
    }

    /// <summary>By how much further the first rolls a turn, as a share.</summary>
    internal static double RollingRatio(CornerParts first, CornerParts second) =>
        (WheelChecks.RollingDiameter(first) / WheelChecks.RollingDiameter(second)) - 1;

    private static Finding GroundClearance(Car car, IReadOnlyList<CornerResult> corners, double certainty)
    {
        // The body goes down by the mean travel of the lower axle, and up by what the tyres' radius grows.
        CombinedValue[] axles = [.. new[] { AxlePlace.Front, AxlePlace.Rear }.Select(a => Clearance(car, corners, a))
            .OrderBy(v => v.Missing.Count > 0 ? double.NegativeInfinity : v.Value)];
        double limit = Limit(corners[0].Plan.Limits.GroundClearance);
        var frame = new Finding { Check = CheckCatalogue.GroundClearance.Id, Title = CheckCatalogue.GroundClearance.General, Where = "car",
            Verdict = Verdict.Unknown, Sentence = "",
            Assumptions = ["tyres sink as much under load as the present ones", "the lowest place follows the lower axle"] };
        Finding lower = Judged(axles[0]), other = Judged(axles[1]);

        // Where the other axle may turn out to be the low one, one axle's probability is not the car's.
        bool both = Math.Min(lower.Probability ?? 0, 1 - (other.Probability ?? 1)) > BentProbability.Noticeable;
        return lower with { FirstOrderEnough = lower.FirstOrderEnough && !both };

        Finding Judged(CombinedValue axle) =>
            axle.Judge(frame, UnitOf(CheckCatalogue.GroundClearance), limit, double.PositiveInfinity, certainty,
            value => $"{Mm(value, 0)} under the lowest place; {Mm(Math.Abs(value - (car.GroundClearance?.Si ?? value)), 0)} "
                + $"{(value >= (car.GroundClearance?.Si ?? value) ? "more" : "less")} than as measured.");
    }

    /// <summary>Ground clearance as one axle decides it.</summary>
    internal static CombinedValue Clearance(Car car, IReadOnlyList<CornerResult> corners, AxlePlace axle)
    {
        CornerResult left = Of(corners, axle, left: true), right = Of(corners, axle, left: false);
        double radius = Rolls(left.Plan.Parts) && left.Plan.PartsNow is { } now && Rolls(now)
            ? (WheelChecks.RollingDiameter(left.Plan.Parts) - WheelChecks.RollingDiameter(now)) / 2 : 0;
        return new CombinedValue().Add("groundClearance", "ground clearance", car.GroundClearance, 1)
            .Add(left, CarriedKind.RideTravel, -0.5).Add(right, CarriedKind.RideTravel, -0.5).Add(radius);
    }

    internal static bool Rolls(CornerParts parts) => parts.TyreSize is not null;

    private static Measure UnitOf(CheckKind kind) => new(0, kind.Unit, kind.Decimals);

    private static Finding Frame(CheckKind kind, AxlePlace axle) =>
        new() { Check = kind.Id, Title = kind.General, Where = $"{axle.Words()} axle", Axle = axle, Verdict = Verdict.Unknown,
            Sentence = "" };

    private static CornerResult Of(IReadOnlyList<CornerResult> corners, AxlePlace axle, bool left) =>
        corners[(axle == AxlePlace.Front ? 0 : 2) + (left ? 0 : 1)];
}
