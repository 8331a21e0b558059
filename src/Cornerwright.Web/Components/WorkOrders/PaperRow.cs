using Cornerwright.Workshop.WorkOrders;

namespace Cornerwright.Web.Components.WorkOrders;

/// <summary>A step as it stands on paper: the same step at both wheels is one row with two boxes.</summary>
/// <param name="Places">One box each; one empty place for a step of the whole car.</param>
/// <param name="Details">Those of one wheel alone begin with its name.</param>
public sealed record PaperRow(string Title, IReadOnlyList<string> Places, IReadOnlyList<string> Cautions, IReadOnlyList<string> Fasteners,
    IReadOnlyList<string> Details)
{
    /// <summary>The rows of one section, in the order in which the first wheel's steps stand.</summary>
    public static IReadOnlyList<PaperRow> Of(IReadOnlyList<OrderStep> section)
    {
        ArgumentNullException.ThrowIfNull(section);
        return [.. section.GroupBy(Key, StringComparer.Ordinal).Select(g => Row([.. g]))];
    }

    /// <summary>What is done to which component, without the wheel.</summary>
    private static string Key(OrderStep step) => step.Node?.Corner is null ? step.Id
        : step.Id[..step.Id.LastIndexOf('/')] + "|" + step.Title;

    private static PaperRow Row(IReadOnlyList<OrderStep> steps)
    {
        bool tighten = steps[0].Phase is not (OrderPhase.TakeOff or OrderPhase.Standing);
        return new PaperRow(
            steps[0].Title,
            [.. steps.Select(s => s.Place)],
            Merged(steps, s => s.Cautions),
            Merged(steps, s =>
                [.. s.Fasteners.Select(f => (s.Phase == OrderPhase.Later ? f.Where + ": " : "") + OrderWords.Line(f, tighten))]),
            Merged(steps, s => s.Details));
    }

    private static IReadOnlyList<string> Merged(IReadOnlyList<OrderStep> steps, Func<OrderStep, IReadOnlyList<string>> of)
    {
        var lines = steps.SelectMany(s => of(s).Select(line => (s.Place, Line: line))).ToList();
        return [.. lines.Select(l => l.Line).Distinct(StringComparer.Ordinal).Select(line =>
        {
            var places = lines.Where(l => l.Line == line).Select(l => l.Place).Distinct().ToList();
            return places.Count == steps.Count || places[0].Length == 0 ? line : string.Join(", ", places) + ": " + line;
        })];
    }
}

/// <summary>One fastener in the torque table: the same at both wheels is one row.</summary>
public sealed record TorqueRow(string Where, string Name, string Count, string Size, string Torque, string Pattern, string When,
    string From, string Warning)
{
    public static IReadOnlyList<TorqueRow> Of(IReadOnlyList<FastenerLine> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        return [.. lines.GroupBy(l => (l.Node.Component, l.Fastener.Id, l.Count)).Select(g => Row([.. g]))];
    }

    private static TorqueRow Row(IReadOnlyList<FastenerLine> lines)
    {
        var (line, fastener) = (lines[0], lines[0].Fastener);
        var places = lines.Select(l => l.Where).Order(StringComparer.Ordinal).ToList();
        string where = places is ["front left", "front right"] ? "front, both" : places is ["rear left", "rear right"] ? "rear, both"
            : string.Join(", ", places);
        string count = line.Count is { } n ? FormattableString.Invariant($"{n}") + (lines.Count > 1 ? " each" : "") : "";
        string size = string.Join(", ", new[] { fastener.Thread, fastener.Class.Length > 0 ? "class " + fastener.Class : "" }
            .Where(t => t.Length > 0));
        string when = OrderWords.Of(fastener.When) + (fastener.AgainOnItsWheels ? ", again on its wheels" : "")
            + (fastener.CheckAgain ? ", again after 50 to 100 km" : "");
        return new TorqueRow(where, fastener.Name, count, size, line.Torque, OrderWords.Of(fastener.Pattern), when, fastener.TorqueFrom,
            line.Warning);
    }
}
