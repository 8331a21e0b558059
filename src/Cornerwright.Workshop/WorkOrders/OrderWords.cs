using Cornerwright.Garage.Access;

namespace Cornerwright.Workshop.WorkOrders;

/// <summary>The words in which an order is shown, the same on paper, screen and console.</summary>
public static class OrderWords
{
    public static string Of(OrderPhase phase) => phase switch
    {
        OrderPhase.Prepare => "Before you begin",
        OrderPhase.Standing => "Still on its wheels",
        OrderPhase.TakeOff => "Take off",
        OrderPhase.Fit => "Fit",
        OrderPhase.LetDown => "Down on its wheels",
        OrderPhase.Set => "Set and check",
        _ => "After the first kilometres",
    };

    public static string Of(TighteningPattern pattern) => pattern switch
    {
        TighteningPattern.Star => "crosswise",
        TighteningPattern.Alternate => "in turn, a little each",
        _ => "",
    };

    public static string Of(TightenedWhen when) => when == TightenedWhen.OnItsWheels ? "on its wheels" : "unloaded";

    /// <summary>
    /// "3 × Top mount to body, nuts: 13 mm socket, 28 N·m (21 lbf·ft), crosswise"; without the torque where it is undone.
    /// </summary>
    public static string Line(FastenerLine line, bool tighten)
    {
        ArgumentNullException.ThrowIfNull(line);
        string count = line.Count is { } n ? FormattableString.Invariant($"{n} × ") : "";
        string[] rest = [line.Fastener.Drive, .. tighten ? [line.Torque, Of(line.Fastener.Pattern)] : Array.Empty<string>()];
        string tail = string.Join(", ", rest.Where(r => r.Length > 0));
        return count + line.Fastener.Name + (tail.Length > 0 ? ": " + tail : "");
    }

    /// <summary>"about 6 h, and 5 steps whose time nobody has written down".</summary>
    public static string Time(WorkOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        if (order.Minutes is not { } minutes)
        {
            return "nobody has written down how long it takes";
        }

        // No estimate of this kind is good to less than a quarter of an hour.
        double quarters = Math.Max(1, Math.Round(minutes / 15));
        string time = quarters < 4
            ? FormattableString.Invariant($"about {quarters * 15} min")
            : FormattableString.Invariant($"about {quarters / 4:0.##} h");
        return order.Untimed > 0
            ? time + FormattableString.Invariant($", without {order.Untimed} of the steps (tyre shop, alignment and the like)") : time;
    }

    /// <summary>Steps in a row of one phase at one axle, under one heading.</summary>
    public static IReadOnlyList<(string Heading, IReadOnlyList<OrderStep> Steps)> Sections(WorkOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        var sections = new List<(string Heading, IReadOnlyList<OrderStep> Steps)>();
        foreach (var step in order.Steps)
        {
            string heading = Heading(step);
            if (sections.Count == 0 || sections[^1].Heading != heading)
            {
                sections.Add((heading, new List<OrderStep>()));
            }

            ((List<OrderStep>)sections[^1].Steps).Add(step);
        }

        return sections;
    }

    private static string Heading(OrderStep step)
    {
        string axle = step.Phase is not (OrderPhase.Standing or OrderPhase.TakeOff or OrderPhase.Fit) || step.Place.Length == 0 ? ""
            : step.Place.StartsWith("front", StringComparison.Ordinal) ? ", front axle" : ", rear axle";
        return Of(step.Phase) + axle;
    }
}
