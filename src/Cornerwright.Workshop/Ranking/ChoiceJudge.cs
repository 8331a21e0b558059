using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Doubt;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Ranking;

/// <summary>
/// Judges one choice in full: both corners of the axle by the judge's own checks, clearance included, the checks of axle and car,
/// and the wishes; at the best estimate first, and with doubt only where nothing is broken.
/// </summary>
internal sealed class ChoiceJudge
{
    public const string WishedBudget = "wished-budget";

    private readonly SearchSpace _space;
    private readonly CornerResult _otherLeft, _otherRight;
    private readonly bool _scanned;

    public ChoiceJudge(SearchSpace space)
    {
        _space = space;
        _scanned = space.Scans.At(space.Axle.Left()).Any() || space.Scans.At(space.Axle.Right()).Any();
        var other = space.Axle.Other();
        _otherLeft = CornerResult.Of(CornerPlan.Compile(space.Car, space.Start, other.Left(), CarLearning.InUse(space.Car)));
        _otherRight = CornerResult.Of(CornerPlan.Compile(space.Car, space.Start, other.Right(), CarLearning.InUse(space.Car)));
    }

    /// <summary>The two corners of a build, at the best estimate.</summary>
    public (CornerResult Left, CornerResult Right) AtBest(Build build) =>
        (CornerResult.AtBest(CornerPlan.Compile(_space.Car, build, _space.Axle.Left(), CarLearning.InUse(_space.Car))),
            CornerResult.AtBest(CornerPlan.Compile(_space.Car, build, _space.Axle.Right(), CarLearning.InUse(_space.Car))));

    /// <summary>Judges a build of the search.</summary>
    /// <param name="build">Made by the search space.</param>
    public ChoiceVerdict Judge(Build build)
    {
        var (left, right) = AtBest(build);
        var broken = new List<BrokenCheck>();
        Broken(left, broken);
        Broken(right, broken);
        AxleBroken(left, right, broken);
        if (broken.Count == 0 && _scanned)
        {
            // Against scans only what holds without them: proving a gap over every pose costs more than all the rest.
            (left, right) = (WithScans(build, _space.Axle.Left()), WithScans(build, _space.Axle.Right()));
            Broken(left, broken);
            Broken(right, broken);
        }

        return broken.Count > 0 ? new ChoiceVerdict { Broken = broken } : Doubted(left, right);
    }

    private CornerResult WithScans(Build build, CornerPlace place) =>
        CornerResult.AtBest(CornerPlan.Compile(_space.Car, build, place, CarLearning.InUse(_space.Car)), _space.Scans.At(place));

    /// <summary>How surely all that the wheels have no part in holds together; the build bears no wheels.</summary>
    /// <returns>What the chance cannot be above, the number of those checks that
    /// lack a reading, and the first that is broken at the best estimate.</returns>
    public (double Bound, int Unknown, BrokenCheck? Broken) WithoutWheels(Build build)
    {
        var (left, right) = AtBest(build);
        var broken = new List<BrokenCheck>();
        Broken(left, broken);
        Broken(right, broken);
        broken.RemoveAll(b => b.Check == CheckCatalogue.WishedFrequency.Id || IsWheels(b.Check, left));
        left.AddDoubt();
        right.AddDoubt();
        var joint = new JointMargins();
        int unknown = AddCorner(joint, left, suspensionOnly: true) + AddCorner(joint, right, suspensionOnly: true);
        if (WholeCarChecks.SideDifference(left, right) is { Missing.Count: 0 } side)
        {
            double limit = Say.Limit(left.Plan.Limits.SideDifference);
            joint.Add(side.Value, -limit, limit, side.Doubt(), side.Parts, suspension: true);
        }

        return (joint.Bound(suspensionOnly: true), unknown, broken.FirstOrDefault());
    }

    private static bool IsWheels(string id, CornerResult corner) => corner.Find(id) is var i && i >= 0 && !IsSuspension(corner.Checks[i]);

    private static bool IsSuspension(CornerCheck check) => check.Kind.Scope == CheckScope.Suspension;

    private static bool IsKnown(CornerResult corner, int check) =>
        double.IsFinite(corner.Value(check)) && !corner.Checks[check].UnknownInPart(corner.Value(check)) && corner.TooWide(check) is null;

    /// <returns>How many checks lack a reading.</returns>
    private static int AddCorner(JointMargins joint, CornerResult corner, bool suspensionOnly)
    {
        int unknown = 0;
        for (int i = 0; i < corner.Checks.Count; i++)
        {
            var check = corner.Checks[i];
            bool suspension = IsSuspension(check);
            if (suspensionOnly && !suspension)
            {
                continue;
            }

            if (IsKnown(corner, i))
            {
                joint.Add(corner.Value(i), check.Low, check.High, corner.Doubtful(i).Doubt, Parts(corner, i), suspension);
            }
            else
            {
                unknown++;
            }
        }

        return unknown;
    }

    private void Broken(CornerResult corner, List<BrokenCheck> broken)
    {
        var place = corner.Plan.Place;
        if (corner.Plan.CanRide && corner.Plan.HasLoad(CornerPlan.Wanted) && !double.IsFinite(corner.Numbers.Read.Ride[CornerPlan.Wanted]))
        {
            broken.Add(
                new(CheckCatalogue.Carries.Id, CheckCatalogue.Carries.General, place.Words(), place, new Measure(0, Units.Millimetre, 1)));
        }

        for (int i = 0; i < corner.Checks.Count; i++)
        {
            var check = corner.Checks[i];
            double margin = Math.Min(corner.Value(i) - check.Low, check.High - corner.Value(i));
            if (double.IsFinite(corner.Value(i)) && margin < 0)
            {
                broken.Add(
                    new(check.Id, check.Title, place.Words(), place, new Measure(-margin, check.Unit, check.Decimals), check.Clearance));
            }
        }

        Wish(corner, FigureKind.RideFrequency, CheckCatalogue.WishedFrequency, _space.Frequency, broken);
        Wish(corner, FigureKind.CamberAtRide, CheckCatalogue.WishedCamber, _space.Camber, broken);
    }

    private static void Wish(CornerResult corner, FigureKind figure, CheckKind wish, (double Low, double High) wished,
        List<BrokenCheck> broken)
    {
        double value = Figure(corner, figure), margin = Math.Min(value - wished.Low, wished.High - value);
        if (double.IsFinite(value) && margin < 0)
        {
            broken.Add(
                new(wish.Id, wish.General, corner.Plan.Place.Words(), corner.Plan.Place, new Measure(-margin, wish.Unit, wish.Decimals)));
        }
    }

    private void AxleBroken(CornerResult left, CornerResult right, List<BrokenCheck> broken)
    {
        foreach (var value in AxleValues(left, right))
        {
            double margin = Math.Min(value.Combined.Value - value.Low, value.High - value.Combined.Value);
            if (value.Combined.Missing.Count == 0 && margin < 0)
            {
                broken.Add(new(value.Check, value.Title, value.Where, null, value.Unit.With(-margin)));
            }
        }
    }

    private ChoiceVerdict Doubted(CornerResult left, CornerResult right)
    {
        left.AddDoubt();
        right.AddDoubt();
        var joint = new JointMargins();
        int unknown = 0;
        TightestCheck? tightest = null;
        double most = 1;
        foreach (var corner in new[] { left, right })
        {
            unknown += AddCorner(joint, corner, suspensionOnly: false);
            tightest = Tightest(tightest, corner);
            most = Enumerable.Range(0, corner.Checks.Count).Where(i => IsKnown(corner, i)).Select(corner.ChanceAtMost).Append(most).Min();
        }

        foreach (var value in AxleValues(left, right))
        {
            if (value.Combined.Missing.Count > 0)
            {
                unknown++;
                continue;
            }

            var doubt = value.Combined.Doubt();
            joint.Add(value.Combined.Value, value.Low, value.High, doubt, value.Combined.Parts,
                suspension: value.Check == CheckCatalogue.SideDifference.Id);
            tightest = Tighter(tightest, value.Check, value.Title, value.Where, value.Unit.With(value.Combined.Value), value.Low,
                value.High, doubt);
        }

        double frequency = (Figure(left, FigureKind.RideFrequency) + Figure(right, FigureKind.RideFrequency)) / 2;
        return new ChoiceVerdict
        {
            Probability = Math.Min(joint.Probability(), most),
            Bounds = (Math.Min(Math.Max(0, 1 - joint.FailuresSum), most), Math.Min(joint.Least, most)),
            Unknown = unknown,
            Tightest = tightest,
            Frequency = frequency,
            HeightMiss = Math.Max(HeightMiss(left), HeightMiss(right)),
        };
    }

    private static TightestCheck? Tightest(TightestCheck? least, CornerResult corner)
    {
        for (int i = 0; i < corner.Checks.Count; i++)
        {
            var check = corner.Checks[i];
            if (IsKnown(corner, i))
            {
                least = Tighter(least, check.Id, check.Title, corner.Plan.Place.Words(),
                    new Measure(corner.Value(i), check.Unit, check.Decimals), check.Low, check.High, corner.Doubtful(i).Doubt);
            }
        }

        return least;
    }

    private static TightestCheck? Tighter(TightestCheck? least, string id, string title, string
        where, Measure value, double low, double high, in LinearDoubt doubt)
    {
        double holds = doubt.Within(value.Si, low, high);
        return holds >= 1 - 1e-9 || holds >= (least?.Probability ?? 1) ? least
            : new(id, title, where, value.With(Math.Min(value.Si - low, high - value.Si)), value.With(2 * doubt.StandardDeviation), holds);
    }

    private double HeightMiss(CornerResult corner)
    {
        double height = corner.Value(corner.Find(CarriedKind.Height));
        return Math.Abs(
            height - (double.IsNaN(_space.HeightTarget) ? corner.Plan.Corner.RideHeight?.Si ?? double.NaN : _space.HeightTarget));
    }

    private static double Figure(CornerResult corner, FigureKind kind) =>
        corner.Find(kind) is var i && i >= 0 ? corner.Value(i) : double.NaN;

    private static IEnumerable<(Input, double)> Parts(CornerResult corner, int check)
    {
        for (int i = 0; i < corner.Plan.Inputs.Count; i++)
        {
            yield return (corner.Plan.Inputs.Inputs[i], corner.Contributions(check)[i]);
        }
    }

    private readonly record struct AxleValue(string Check, string Title, string Where, CombinedValue Combined, double Low, double High,
        Measure Unit);

    // Of the checks of more than one corner those that this axle has a part in, as the judge has them.
    private IEnumerable<AxleValue> AxleValues(CornerResult left, CornerResult right)
    {
        string axle = $"{_space.Axle.Words()} axle";
        var (limits, mm, share) = (left.Plan.Limits, new Measure(0, Units.Millimetre, 1), new Measure(0, Units.Percent, 2));
        double side = Say.Limit(limits.SideDifference), track = Say.Limit(limits.TrackChange),
            clearance = Say.Limit(limits.GroundClearance);
        yield return new("side-difference", "Left and right height", axle, WholeCarChecks.SideDifference(left, right), -side, side, mm);
        if (WholeCarChecks.TrackChange(left.Plan, right.Plan) is var change && double.IsFinite(change))
        {
            yield return new("track-change", "Track", axle, new CombinedValue().Add(change), -track, track, mm);
        }

        bool front = _space.Axle == AxlePlace.Front;
        var car = _space.Car;
        IReadOnlyList<CornerResult> corners = front ? [left, right, _otherLeft, _otherRight] : [_otherLeft, _otherRight, left, right];
        if (car.Front.Driven && car.Rear.Driven && WholeCarChecks.Rolls(corners[0].Plan.Parts)
            && WholeCarChecks.Rolls(corners[2].Plan.Parts))
        {
            var ratio = new CombinedValue().Add(WholeCarChecks.RollingRatio(corners[0].Plan.Parts, corners[2].Plan.Parts));
            yield return new("equal-rolling", "Front and rear roll alike", "car", ratio, -WholeCarChecks.EqualRolling,
                WholeCarChecks.EqualRolling, share);
        }

        foreach (var place in new[] { AxlePlace.Front, AxlePlace.Rear })
        {
            yield return new("ground-clearance", "Ground clearance", "car", WholeCarChecks.Clearance(car, corners, place), clearance,
                double.PositiveInfinity, mm with { Decimals = 0 });
        }
    }
}
