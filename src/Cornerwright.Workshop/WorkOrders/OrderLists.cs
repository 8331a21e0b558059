using System.Globalization;
using Cornerwright.Garage.Access;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Comparing;

namespace Cornerwright.Workshop.WorkOrders;

/// <summary>What has to lie ready: parts, tools, consumables.</summary>
internal static class OrderLists
{
    /// <summary>Parts that the proposed build has and the present one lacks, counted over the whole car.</summary>
    public static IReadOnlyList<OrderPart> Parts(Car car, Build from, Build to)
    {
        var lines = new List<OrderPart>();
        foreach (var (kind, part) in PartKind.All.SelectMany(k => k.On(car.Parts).Select(p => (k, p))))
        {
            int more = PieceCount.Of(car, to, kind, part.Id) - PieceCount.Of(car, from, kind, part.Id);
            if (more > 0)
            {
                var slots = CornerSlot.Of(kind).ToList();
                bool byAxle = slots.All(s => s.About.Pieces == SlotPieces.OneAnAxle);
                var where = Places.Corners
                    .Where(c => slots.Any(s => s.Holds(to.At(c), kind, part.Id) && !s.Holds(from.At(c), kind, part.Id)))
                    .Select(c => byAxle ? c.Axle().Words() : c.Words()).Distinct();
                lines.Add(new OrderPart(part, more, part.Price * more, string.Join(", ", where)));
            }
        }

        return lines;
    }

    public static IReadOnlyList<string> Tools(AccessMap map, IReadOnlyList<OrderStep> steps, IReadOnlyList<FastenerLine> torques,
        bool lifted)
    {
        var tools = new List<string>();
        if (lifted)
        {
            tools.AddRange(["trolley jack", "two axle stands", "wheel chocks"]);
        }

        var known = torques.Where(t => t.Fastener.Torque is not null).Select(t => t.Fastener.Torque!.Si).ToList();
        if (torques.Count > 0)
        {
            string span = known.Count == 0 ? ""
                : known.Max() - known.Min() < 0.5 ? ", for " + QuantityText.WriteTorqueBothWays(known.Min())
                : $", {QuantityText.WriteTorqueBothWays(known.Min())} to {QuantityText.WriteTorqueBothWays(known.Max())}";
            tools.Add("torque wrench" + span);
        }

        if (steps.Any(s => s.Fasteners.Any(f => f.Fastener.Mark)))
        {
            tools.Add("scriber or paint pen");
        }

        tools.AddRange(Nodes(steps).SelectMany(n => Split(map[n.Component].Tools)));
        tools.AddRange(steps.SelectMany(s => s.Fasteners).SelectMany(f => Split(f.Fastener.Drive)));
        return Distinct(tools);
    }

    public static IReadOnlyList<string> Consumables(AccessMap map, IReadOnlyList<OrderStep> steps)
    {
        var fitted = steps.Where(s => s.Phase == OrderPhase.Fit).ToList();
        var all = SingleUse(map, steps).Concat(Nodes(fitted).SelectMany(n => Split(map[n.Component].Consumables)))
            .Concat(fitted.SelectMany(s => s.Fasteners).Where(f => f.Fastener.Locking.Length > 0).Select(f => f.Fastener.Locking));
        return Distinct(all);
    }

    /// <summary>"2 new: rod's top nut (front)" for everything that comes right off.</summary>
    public static IReadOnlyList<string> SingleUse(AccessMap map, IReadOnlyList<OrderStep> steps)
    {
        var counted = new Dictionary<(string Component, string Fastener), (string Words, int Count, bool Known)>();
        foreach (var step in steps.Where(s => s.Phase == OrderPhase.Fit && s.Id.StartsWith("on/", StringComparison.Ordinal)
            && s.Node is not null))
        {
            var component = map[step.Node!.Value.Component];
            string axle = AccessMap.AxleOf(component.Place) is { } place ? $" ({place.Words()})" : "";
            foreach (var fastener in component.Fasteners.Where(f => f.SingleUse))
            {
                var key = (component.Id, fastener.Id);
                var before = counted.GetValueOrDefault(key, (fastener.Name.ToLowerInvariant() + axle, 0, true));
                counted[key] = (before.Item1, before.Item2 + (fastener.Count ?? 1), before.Item3 && fastener.Count is not null);
            }
        }

        return [.. counted.Values.Select(v => v.Known ? string.Create(CultureInfo.InvariantCulture, $"{v.Count} new: {v.Words}")
            : $"new, count them: {v.Words}")];
    }

    private static IEnumerable<AccessNode> Nodes(IEnumerable<OrderStep> steps) =>
        steps.Where(s => s.Node is not null).Select(s => s.Node!.Value).Distinct();

    private static IEnumerable<string> Split(string list) =>
        list.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static IReadOnlyList<string> Distinct(IEnumerable<string> texts) => [.. texts.Distinct(StringComparer.OrdinalIgnoreCase)];
}
