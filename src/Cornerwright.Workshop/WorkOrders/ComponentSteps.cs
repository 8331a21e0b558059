using Cornerwright.Garage.Access;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Workshop.WorkOrders;

/// <summary>Writes the steps of single components: off, slack, on, tight, and what gets its torque with the car on its wheels.</summary>
internal sealed class ComponentSteps(Car car, Build from, Build to, AccessMap map)
{
    /// <summary>A bolt reached under a car that stands on its wheels. Common practice, no source.</summary>
    private const double MinutesOnItsWheels = 3;

    /// <summary>Null where the present build has nothing there to take off.</summary>
    public OrderStep? Undo(Undoing item, AccessPlan plan)
    {
        var component = map[item.Node.Component];
        bool off = item.State == Undone.Off;
        if (off && !Has(from, component, item.Node))
        {
            return null;
        }

        var lines = component.Fasteners.Select(f => Line(item.Node, f)).ToList();
        var details = new List<string>();
        if (off && Swap(component, item.Node) is { Before.Length: > 0 } swap)
        {
            details.Add($"To the shelf: {swap.Before}. Mark it with its corner.");
        }

        if (component.Role != BuildRole.Wheel && plan.Why.TryGetValue(item, out var why))
        {
            string reason = why.Why.Length > 0 ? ": " + why.Why : "";
            details.Add($"For: {map[why.For.Node.Component].Name.ToLowerInvariant()}{reason}.");
        }

        details.AddRange(lines.Where(l => l.Fastener.Mark)
            .Select(l => $"Mark first where it sits, it sets the alignment: {l.Fastener.Name.ToLowerInvariant()}."));
        details.AddRange(lines.Where(l => l.Fastener.SingleUse && off)
            .Select(l => $"Single use, throw away: {l.Fastener.Name.ToLowerInvariant()}."));
        return new OrderStep
        {
            Id = Id(off ? "off" : "slack", item.Node),
            Phase = OrderPhase.TakeOff,
            Title = off
                ? Or(component.OffWords, "Take off: " + component.Name.ToLowerInvariant())
                : Or(component.LooseWords, "Slacken: " + component.Name.ToLowerInvariant()),
            Place = PlaceWords(item.Node),
            Details = details,
            Fasteners = lines,
            Cautions = Cautions(component, HazardTime.TakingOff),
            Minutes = component.MinutesOff,
            Node = item.Node,
        };
    }

    /// <summary>Null where the proposed build has nothing there to fit.</summary>
    public OrderStep? Redo(Undoing item)
    {
        var component = map[item.Node.Component];
        bool on = item.State == Undone.Off;
        if (on && !Has(to, component, item.Node))
        {
            return null;
        }

        var settings = Settings(component, item.Node).ToList();
        var details = new List<string>();
        var swap = on ? Swap(component, item.Node) : null;
        if (swap is not null)
        {
            details.Add($"New here: {swap.After}." + (component.Role == BuildRole.Stack ? " In this order, from the perch upward." : ""));
        }

        if (swap is not null && component.Role == BuildRole.Wheel)
        {
            details.Add("Bolts or nuts must fit this wheel's seats and reach deep enough: count the turns from first bite.");
        }

        details.AddRange(settings);
        details.AddRange(component.Fasteners.Where(f => f.When == TightenedWhen.OnItsWheels)
            .Select(f => $"Only by hand now: {f.Name.ToLowerInvariant()}. The torque comes with the car on its wheels."));
        var lines = component.Fasteners.Where(f => f.When == TightenedWhen.Unloaded).Select(f => Line(item.Node, f)).ToList();
        details.AddRange(component.Fasteners.Where(f => f.SingleUse && on).Select(f => $"A new one: {f.Name.ToLowerInvariant()}."));
        details.AddRange(component.Fasteners.Where(f => f.Locking.Length > 0).Select(f => $"{f.Name}: {f.Locking}."));
        if (!on && lines.Count == 0 && settings.Count == 0)
        {
            // Slack until the car stands on its wheels.
            return null;
        }

        string tight = settings.Count > 0 ? "Set, then tighten: " : "Tighten: ";
        return new OrderStep
        {
            Id = Id(on ? "on" : "tight", item.Node),
            Phase = OrderPhase.Fit,
            Title = on ? Or(component.OnWords, "Fit: " + component.Name.ToLowerInvariant()) : tight + component.Name.ToLowerInvariant(),
            Place = PlaceWords(item.Node),
            Details = details,
            Fasteners = lines,
            Cautions = on ? Cautions(component, HazardTime.Fitting) : [],
            Minutes = component.MinutesOn,
            Node = item.Node,
        };
    }

    /// <summary>
    /// What of an undone component gets its torque, or gets it again, with the car on its wheels; null where nothing does.
    /// </summary>
    public OrderStep? OnItsWheels(Undoing item)
    {
        var component = map[item.Node.Component];
        var lines = component.Fasteners.Where(f => f.When == TightenedWhen.OnItsWheels || f.AgainOnItsWheels)
            .Select(f => Line(item.Node, f)).ToList();
        if (lines.Count == 0 || (item.State == Undone.Off && !Has(to, component, item.Node)))
        {
            return null;
        }

        bool wheel = component.Role == BuildRole.Wheel, rubber = lines.Any(l => l.Fastener.BondedRubber);
        return new OrderStep
        {
            Id = Id("ride", item.Node),
            Phase = OrderPhase.LetDown,
            Title = (wheel ? "Tighten crosswise, in two rounds: " : "Tighten with the car on its wheels: ")
                + string.Join(", ", lines.Select(l => l.Fastener.Name)).ToLowerInvariant(),
            Place = PlaceWords(item.Node),
            Details =
            [
                .. rubber ? new[] { "At ride height, rolled and settled: its rubber is bonded and must be at rest where the car drives." }
                    : [],
                .. lines.Where(l => l.Fastener.AgainOnItsWheels && l.Fastener.When == TightenedWhen.Unloaded)
                .Select(l => $"Once more, now with weight on it: {l.Fastener.Name.ToLowerInvariant()}."),
            ],
            Fasteners = lines,
            Cautions = rubber ? ["Under the car only with its wheels on ramps, boards or a drive-on lift: never on a jack alone."] : [],
            Minutes = MinutesOnItsWheels,
            Node = item.Node,
        };
    }

    public FastenerLine Line(AccessNode node, Fastener fastener)
    {
        var component = map[node.Component];
        int? count = fastener.Count ?? (component.Role == BuildRole.Wheel && node.Corner is { } c ? car.At(c.Axle()).Hub.Bolts : null);
        return new FastenerLine(node, PlaceWords(node), fastener, count, TorqueSense.Words(fastener), TorqueSense.Warning(fastener));
    }

    public string PlaceWords(AccessNode node) => node.Corner is { } corner ? corner.Words()
        : AccessMap.AxleOf(map[node.Component].Place) is { } axle ? axle.Words() + " axle" : "";

    public static string Id(string verb, AccessNode node) =>
        node.Corner is { } corner ? $"{verb}/{node.Component}/{corner.Words().Replace(' ', '-')}" : $"{verb}/{node.Component}";

    /// <summary>Whether a build has the part that a component is; what is no part of a build is always there.</summary>
    private static bool Has(Build build, Component component, AccessNode node)
    {
        return CornerSlot.Of(component.Role) is not { } slot || CornersOf(component, node).Any(c => slot.Ids(build.At(c)).Count > 0);
    }

    /// <summary>The part that goes and the one that comes; null where it stays.</summary>
    private (string Before, string After)? SwapOf(Component component, CornerPlace corner)
    {
        var slots = CornerSlot.PartsOf(component.Role).ToList();
        string before = Words(from), after = Words(to);
        return before == after ? null : (before, after);

        // "forged 17 with 225/45 R17": what comes off in one piece is named together, what lies loose beside it where it changes.
        string Words(Build build)
        {
            string[] named = [.. slots.Where(s => s == slots[0] || s.Field.PropertyName == nameof(CornerBuild.Tyre)
                || !s.Same(from.At(corner), to.At(corner))).Select(s => s.Written(car.Parts, build.At(corner))).Where(w => w.Length > 0)];
            return named.Length < 2 ? string.Concat(named) : named[0] + " with " + string.Join(" and ", named[1..]);
        }
    }

    private SwapWords? Swap(Component component, AccessNode node) =>
        CornersOf(component, node).Select(c => SwapOf(component, c)).FirstOrDefault(s => s is not null) is { } swap
            ? new SwapWords(swap.Before, swap.After) : null;

    private IEnumerable<string> Settings(Component component, AccessNode node)
    {
        if (node.Corner is not { } corner)
        {
            yield break;
        }

        foreach (var slot in CornerSlot.SettingsOf(component.Role))
        {
            if (slot.Field.Get(to.At(corner)) is Reading wanted)
            {
                string was = slot.Field.Get(from.At(corner)) is Reading old && !slot.Same(from.At(corner), to.At(corner))
                    ? $" (was {old.Typed})" : "";
                yield return $"{slot.Field.Label}: {wanted.Typed}{was}.";
            }
        }
    }

    private static IEnumerable<CornerPlace> CornersOf(Component component, AccessNode node) =>
        node.Corner is { } corner ? [corner] : Places.Corners.Where(c => c.Axle() == AccessMap.AxleOf(component.Place));

    private static IReadOnlyList<string> Cautions(Component component, HazardTime time) =>
        [.. component.Hazards.Where(h => h.When == time || h.When == HazardTime.BothWays).Select(h => h.Sentence)];

    private static string Or(string words, string otherwise) => words.Length > 0 ? words : otherwise;

    private sealed record SwapWords(string Before, string After);
}
