using Cornerwright.Garage.Access;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;

namespace Cornerwright.Workshop.WorkOrders;

/// <summary>Steps of the whole job, before, between and after the components. Their times are common practice, no source.</summary>
internal static class FrameSteps
{
    public static IEnumerable<OrderStep> Prepare(IReadOnlyList<BuildChange> changes, IReadOnlyList<string> singleUse)
    {
        yield return new OrderStep
        {
            Id = "prepare/parts", Phase = OrderPhase.Prepare,
                Title = "Lay out all parts, tools and consumables of the lists, and compare them with the car", Minutes = 15,
            Details = ["Read the car maker's instruction for this job first: where it differs from this sheet, it is right.",
                "Look at threads, lengths and left and right before anything is undone."],
        };
        if (singleUse.Count > 0)
        {
            yield return new OrderStep { Id = "prepare/single-use", Phase = OrderPhase.Prepare,
                Title = "Have the new single-use nuts and bolts at hand", Details = singleUse, Minutes = 2 };
        }

        if (changes.Any(c => c.Field.PropertyName is nameof(CornerBuild.Tyre) or nameof(CornerBuild.Wheel)))
        {
            yield return new OrderStep
            {
                Id = "prepare/tyres", Phase = OrderPhase.Prepare, Title = "Have the tyres mounted and balanced on their wheels",
                    Details = ["Check running direction and load and speed marks."],
            };
        }

        string[] oneSided = [.. OneSided(changes)];
        if (oneSided.Length > 0)
        {
            yield return new OrderStep
            {
                Id = "prepare/pairs", Phase = OrderPhase.Prepare,
                    Title = "Only one side of an axle gets new parts: make sure that this is meant", Details = oneSided, Minutes = 1,
                Cautions = ["Springs, dampers and tyres are changed in pairs on an axle: unequal sides pull when braking."],
            };
        }

        yield return new OrderStep
        {
            Id = "prepare/measure", Phase = OrderPhase.Prepare,
                Title = "Write down odometer, tyre pressures and the four heights from hub centre to arch edge", Minutes = 10,
            Details = ["On level ground, rolled a length and settled. Afterwards the same again: that is how you see what the work did."],
        };
    }

    public static IEnumerable<OrderStep> Lift(AxlePlace axle, bool wheelsOff)
    {
        string other = axle == AxlePlace.Front ? "rear" : "front";
        if (wheelsOff)
        {
            yield return new OrderStep
            {
                Id = $"standing/{axle.Words()}/wheel-bolts", Phase = OrderPhase.Standing, Place = axle.Words() + " axle", Minutes = 2,
                Title = "Car on its wheels: slacken the wheel bolts or nuts a quarter turn, no further",
            };
        }

        yield return new OrderStep
        {
            Id = $"standing/{axle.Words()}/lift", Phase = OrderPhase.Standing, Place = axle.Words() + " axle", Minutes = 10,
            Title = $"Chock the {other} wheels, lift the {axle.Words()} axle at the maker's points, set it on two stands",
            Details = ["Both wheels of the axle hang: on one wheel the anti-roll bar would load everything you undo."],
            Cautions = ["Level, firm ground. Nobody reaches under a car on a jack: stands first, shake it, then work."],
        };
    }

    public static OrderStep Lower(AxlePlace axle) => new()
    {
        Id = $"down/{axle.Words()}/lower", Phase = OrderPhase.LetDown, Place = axle.Words() + " axle", Minutes = 5,
        Title = "Look round once more, take the stands away, let the axle down",
        Details = ["Nothing lies in the wheel, every hose and wire is clipped, every nut on this sheet is ticked."],
    };

    public static OrderStep Settle() => new()
    {
        Id = "down/settle", Phase = OrderPhase.LetDown, Title = "Roll the car a length forward and back and rock it", Minutes = 5,
        Details = ["Bushings wind up and tyres scrub: until it has rolled it does not stand as it will drive."],
    };

    public static IEnumerable<OrderStep> Set(IReadOnlyList<BuildChange> changes, Build to, bool alignment, bool underBody)
    {
        if (changes.Any(c => c.Field.PropertyName is nameof(CornerBuild.Pressure) or nameof(CornerBuild.Tyre) or nameof(CornerBuild.Wheel)))
        {
            yield return new OrderStep
            {
                Id = "set/pressures", Phase = OrderPhase.Set, Title = "Set the tyre pressures, cold", Minutes = 5,
                Details =
                    [.. Places.Corners.Where(c => to.At(c).Pressure is not null).Select(c => $"{c.Words()}: {to.At(c).Pressure!.Typed}")],
            };
        }

        if (underBody)
        {
            yield return new OrderStep
            {
                Id = "set/free", Phase = OrderPhase.Set, Title =
                    "Steering from lock to lock, brake pedal pressed until it is firm: nothing rubs, no hose is tight, no lamp is lit",
                    Minutes = 5,
            };
        }

        if (changes.Any(c => c.MovesHeight))
        {
            yield return new OrderStep
            {
                Id = "set/heights", Phase = OrderPhase.Set,
                    Title = "Measure the four heights from hub centre to arch edge again and write them into the log", Minutes = 10,
                Details = ["In the load case in which heights are wanted. Left and right within a few millimetres; if not, find out "
                    + "why before you drive."],
            };
            yield return new OrderStep
            {
                Id = "set/lamps", Phase = OrderPhase.Set,
                    Title = "Have the headlamps aimed; where a height sensor hangs on an arm, have it taught anew",
                    Details = ["The car stands at another height than before."],
            };
        }

        if (alignment)
        {
            yield return new OrderStep
            {
                Id = "set/alignment", Phase = OrderPhase.Set, Title = "Measure and set camber, caster and toe",
                Details = ["Joints were undone that set them. Until then drive gently, and no further than to the alignment bench."],
            };
        }

        yield return new OrderStep
        {
            Id = "set/approval", Phase = OrderPhase.Set,
                Title = "Ask whether this change needs approval or inspection where the car is driven",
            Details = ["Wheels, tyres, springs and track. The maker's instructions, local codes and a licensed workshop decide; "
                + "this sheet does not."],
        };
    }

    public static IEnumerable<OrderStep> Later(IReadOnlyList<FastenerLine> again, bool settles)
    {
        if (again.Count > 0)
        {
            yield return new OrderStep
            {
                Id = "later/recheck", Phase = OrderPhase.Later,
                    Title = "After 50 to 100 km: check these torques again, and write odometer and date into the log", Fasteners = again,
                    Minutes = 15,
            };
        }

        if (settles)
        {
            yield return new OrderStep
            {
                Id = "later/settle", Phase = OrderPhase.Later,
                    Title = "After a week of driving: measure the heights again; new springs settle",
                Details = ["If it stands too high, turn the perches down a few turns at a time, drive, and measure again."],
            };
        }
    }

    private static IEnumerable<string> OneSided(IReadOnlyList<BuildChange> changes) => changes
        .Where(c => c.Part && c.Slot.About.Pieces != SlotPieces.OneAnAxle)
        .Where(c => !changes.Any(o => o.Corner == c.Corner.OtherSide() && o.Slot == c.Slot))
        .Select(c => $"{c.Field.Label}, only {c.Corner.Words()}: {c.After}");
}
