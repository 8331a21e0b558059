using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Ranking;

/// <summary>A wheel with tyre and spacer, and what can be said of it without springs.</summary>
/// <param name="Stiffness">Of the tyre, N/m, by side; NaN where no pressure
/// or size is known: then it is left out of the ride frequency.</param>
/// <param name="Unknown">Wheel checks that lack a reading.</param>
/// <param name="Bound">What the chance of all that springs have no part in cannot be above.</param>
/// <param name="Apart">True where none of that stands on an input that springs feel: then it is independent of them.</param>
/// <param name="Broken">The checks that wheel, tyre and spacer break by themselves.</param>
internal sealed record WheelSet(WheelChoice Choice, decimal Cost, (double Left, double Right) Stiffness, int Unknown, double Bound,
    bool Apart, IReadOnlyList<BrokenCheck> Broken)
{
    /// <summary>
    /// Judges a wheel set on the starting build and takes what the wheels decide alone: their own checks, and the gaps to what
    /// is fixed to the wheel carrier.
    /// </summary>
    public static WheelSet Of(SearchSpace space, int index)
    {
        var choice = space.WheelSetOf(index);
        var build = space.WithWheels(choice);
        CornerResult left = Judged(space, build, space.Axle.Left()), right = Judged(space, build, space.Axle.Right());
        var broken = new List<BrokenCheck>();
        var joint = new JointMargins();
        int unknown = 0;
        bool apart = true;
        foreach (var corner in new[] { left, right })
        {
            var alone = WheelChecks.For(corner.Plan).Select(c => c.Id).ToHashSet(StringComparer.Ordinal);
            for (int i = 0; i < corner.Checks.Count; i++)
            {
                var check = corner.Checks[i];
                if (!alone.Contains(check.Id) && !OnCarrier(corner.Plan, check))
                {
                    continue;
                }

                double value = corner.Value(i), margin = Math.Min(value - check.Low, check.High - value);
                unknown += double.IsFinite(value) || check.Clearance >= 0 ? 0 : 1;
                if (double.IsFinite(value) && margin < 0)
                {
                    broken.Add(new(check.Id, check.Title, corner.Plan.Place.Words(), corner.Plan.Place,
                        new Measure(-margin, check.Unit, check.Decimals)));
                }
                else if (double.IsFinite(value))
                {
                    joint.Add(value, check.Low, check.High, corner.Doubtful(i).Doubt, Parts(corner, i), suspension: false);
                    apart &= IsApart(corner, i);
                }
            }
        }

        double limit = Say.Limit(space.Limits.TrackChange), track = limit - Math.Abs(WholeCarChecks.TrackChange(left.Plan, right.Plan));
        if (track < 0)
        {
            broken.Add(new("track-change", "Track", $"{space.Axle.Words()} axle", null, new Measure(-track, Units.Millimetre, 1)));
        }

        return new WheelSet(choice, space.CostOf(choice), (StiffnessAt(left.Plan), StiffnessAt(right.Plan)), unknown,
            joint.Bound(suspensionOnly: false), apart, broken);
    }

    private static CornerResult Judged(SearchSpace space, Build build, CornerPlace place) =>
        CornerResult.Of(CornerPlan.Compile(space.Car, build, place, CarLearning.InUse(space.Car)));

    private static bool OnCarrier(CornerPlan plan, CornerCheck check) =>
        check.Clearance >= 0 && check.Clearance < plan.Clearance.Items.Count
            && plan.Clearance.Items[check.Clearance] is { Piece: null, AttachedTo: AttachedTo.Knuckle };

    // Springs feel what moves travel or motion; a check that stands on nothing of that has no input in common with theirs.
    private static bool IsApart(CornerResult corner, int check)
    {
        var contributions = corner.Contributions(check);
        for (int i = 0; i < contributions.Length; i++)
        {
            if (contributions[i] != 0 && corner.Numbers.Reads!.InTravel(i))
            {
                return false;
            }
        }

        return corner.Plan.Inputs.Learned is null;
    }

    private static IEnumerable<(Input, double)> Parts(CornerResult corner, int check)
    {
        for (int i = 0; i < corner.Plan.Inputs.Count; i++)
        {
            yield return (corner.Plan.Inputs.Inputs[i], corner.Contributions(check)[i]);
        }
    }

    private static double StiffnessAt(CornerPlan plan) =>
        plan.Build.At(plan.Place).Pressure is { } pressure && plan.Parts.TyreSize is { } tyre ? tyre.VerticalStiffness(pressure.Si)
            : double.NaN;
}
