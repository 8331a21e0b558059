using Cornerwright.Garage.Access;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Workshop.WorkOrders;

/// <summary>Writes the order of the work that turns one build into another.</summary>
public static class OrderWriter
{
    /// <returns>The order; or why there is none: nothing differs, or the graph blocks itself.</returns>
    public static Checked<WorkOrder> Write(Car car, Build from, Build to)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        var changes = BuildChange.Between(car, from, to);
        if (changes.Count == 0)
        {
            return Checked<WorkOrder>.Wrong(new Problem("build", to.Id, "a build that differs from what is on the car",
                $"\"{to.Name}\" and \"{from.Name}\" are bolted and set alike: there is nothing to do."));
        }

        var map = new AccessMap(car.Access);
        var targets = OrderTargets.Of(map, changes);
        var fit = AccessPlan.Reach(map, targets.Fit);
        var undo = AccessPlan.Reach(map, targets.Undo);
        return fit.Ok && undo.Ok
            ? Checked<WorkOrder>.From(Compose(car, from, to, changes, map, targets, undo.Value, fit.Value))
            : Checked<WorkOrder>.Wrong(fit.Problems.Count > 0 ? fit.Problems : undo.Problems);
    }

    private static WorkOrder Compose(Car car, Build from, Build to, IReadOnlyList<BuildChange> changes, AccessMap map, OrderTargets targets,
        AccessPlan undo, AccessPlan plan)
    {
        var writer = new ComponentSteps(car, from, to, map);
        var work = new List<OrderStep>();
        var groups = Groups(map, undo, plan);
        foreach (var group in groups.Where(g => g.Axles.Count == 0))
        {
            work.AddRange(Undo(writer, group.Undo, undo));
        }

        foreach (var group in groups.Where(g => g.Axles.Count > 0))
        {
            work.AddRange(group.Axles.SelectMany(a => FrameSteps.Lift(a, group.Items.Any(i => Axle(map, i) == a && IsWheel(map, i)))));
            work.AddRange(Undo(writer, group.Undo, undo));
            work.AddRange(Redo(writer, group.Items));
            foreach (var axle in group.Axles)
            {
                work.Add(FrameSteps.Lower(axle));
                work.AddRange(Ride(writer, group.Items.Where(i => Axle(map, i) == axle && IsWheel(map, i))));
            }
        }

        foreach (var group in groups.Where(g => g.Axles.Count == 0))
        {
            work.AddRange(Redo(writer, group.Items));
        }

        var atRide = Ride(writer, plan.Undo.Where(i => !IsWheel(map, i)).Reverse()).ToList();
        if (work.Count > 0 && (atRide.Count > 0 || changes.Any(c => c.MovesHeight)))
        {
            work.Add(FrameSteps.Settle());
        }

        work.AddRange(atRide);
        var again = work.Where(s => s.Phase is OrderPhase.Fit or OrderPhase.LetDown).SelectMany(s => s.Fasteners)
            .Where(f => f.Fastener.CheckAgain).ToList();
        bool alignment = plan.Undo.Any(i => map[i.Node.Component].MovesAlignment);
        OrderStep[] steps =
        [
            .. FrameSteps.Prepare(changes, OrderLists.SingleUse(map, work)),
            .. work,
            .. FrameSteps.Set(changes, to, alignment, underBody: plan.Undo.Count > 0),
            .. FrameSteps.Later(again, changes.Any(c => c.Field.PropertyName == nameof(CornerBuild.Stack))),
        ];
        var torques = Torques(work);
        return new WorkOrder
        {
            Car = car, From = from, To = to, Steps = steps, Parts = OrderLists.Parts(car, from, to), Torques = torques,
            Tools = OrderLists.Tools(map, steps, torques, lifted: groups.Any(g => g.Axles.Count > 0)),
            Consumables = OrderLists.Consumables(map, steps),
            Gaps = [.. targets.Gaps, .. Gaps(torques)],
            Minutes = steps.Any(s => s.Minutes is not null) ? steps.Sum(s => s.Minutes ?? 0) : null,
            Untimed = steps.Count(s => s.Minutes is null),
        };
    }

    /// <summary>
    /// One axle is finished before the next is lifted, unless something at one blocks something at the other. What belongs to the
    /// whole car comes off before everything and goes on after it.
    /// </summary>
    private static List<Group> Groups(AccessMap map, AccessPlan undo, AccessPlan plan)
    {
        bool tied = plan.Undo.Any(i => map.Before(i).Any(b => Axle(map, b.First) is { } other && Axle(map, i) is var own && own != other));
        var axles = plan.Undo.Select(i => Axle(map, i)).OfType<AxlePlace>().Distinct().Order().ToList();
        if (tied)
        {
            return [new Group(axles, undo.Undo, plan.Undo)];
        }

        var groups = axles.Select(a => new Group([a], At(undo, a), At(plan, a))).ToList();
        return At(plan, null).Count > 0 ? [new Group([], At(undo, null), At(plan, null)), .. groups] : groups;

        IReadOnlyList<Undoing> At(AccessPlan of, AxlePlace? axle) => [.. of.Undo.Where(i => Axle(map, i) == axle)];
    }

    private static IEnumerable<OrderStep> Undo(ComponentSteps writer, IEnumerable<Undoing> items, AccessPlan plan) =>
        items.Select(i => writer.Undo(i, plan)).OfType<OrderStep>();

    private static IEnumerable<OrderStep> Redo(ComponentSteps writer, IEnumerable<Undoing> items) =>
        items.Reverse().Select(writer.Redo).OfType<OrderStep>();

    private static IEnumerable<OrderStep> Ride(ComponentSteps writer, IEnumerable<Undoing> items) =>
        items.Select(writer.OnItsWheels).OfType<OrderStep>().DistinctBy(s => s.Id);

    private static IReadOnlyList<FastenerLine> Torques(IEnumerable<OrderStep> steps) =>
        [.. steps.Where(s => s.Phase is OrderPhase.Fit or OrderPhase.LetDown).SelectMany(s => s.Fasteners)
            .DistinctBy(f => (f.Node, f.Fastener.Id))];

    private static IEnumerable<string> Gaps(IReadOnlyList<FastenerLine> torques) => torques.Select(t => t.Warning).Where(w => w.Length > 0)
        .Concat(torques.Where(t => t.Fastener.Torque is null)
            .Select(t => $"{t.Fastener.Name}: look the torque up in the maker's instruction and write it into the graph.")).Distinct();

    private static AxlePlace? Axle(AccessMap map, Undoing item) => AccessMap.AxleOf(map[item.Node.Component].Place);

    private static bool IsWheel(AccessMap map, Undoing item) => map[item.Node.Component].Role == BuildRole.Wheel;

    private sealed record Group(IReadOnlyList<AxlePlace> Axles, IReadOnlyList<Undoing> Undo, IReadOnlyList<Undoing> Items);
}
