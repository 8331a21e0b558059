using System.Globalization;
using Cornerwright.Workshop.WorkOrders;
using Spectre.Console;

namespace Cornerwright.Cli.Text;

/// <summary>A work order in lines: lists first, then every step in order.</summary>
internal static class OrderText
{
    private const int Indent = 2, Under = 7;

    public static void Write(IAnsiConsole console, WorkOrder order)
    {
        console.Line($"{order.Car.Name}: from \"{order.From.Name}\" to \"{order.To.Name}\"");
        console.Sentence($"Time: {OrderWords.Time(order)}.", 0);
        console.Sentence("The maker's instruction comes first: where it differs from this order, it is right.", 0);
        Lists(console, order);
        int number = 0;
        foreach (var (heading, steps) in OrderWords.Sections(order))
        {
            console.Heading(heading);
            foreach (var step in steps)
            {
                Step(console, step, ++number);
            }
        }

        console.Heading("Torques");
        console.Table(
            ["where", "fastener", ">pieces", "torque", "pattern", "when"],
            order.Torques.Select(t => new[] { t.Where, t.Fastener.Name, t.Count?.ToString(CultureInfo.InvariantCulture) ?? "", t.Torque,
                OrderWords.Of(t.Fastener.Pattern), OrderWords.Of(t.Fastener.When) }),
            Indent);
    }

    private static void Lists(IAnsiConsole console, WorkOrder order)
    {
        if (order.Parts.Count > 0)
        {
            console.Heading("Parts" + (order.Car.Currency.Length > 0 ? ", prices in " + order.Car.Currency : ""));
            console.Table(
                [">pieces", "part", ">sum", "", "for"],
                order.Parts.Select(p => new[] { p.Count.ToString(CultureInfo.InvariantCulture), p.Part.Name,
                    p.Sum?.ToString("0.00", CultureInfo.InvariantCulture) ?? "", p.Part.Owned ? "owned" : "to buy", p.Where }),
                Indent);
        }

        List(console, "Tools", order.Tools);
        List(console, "Consumables", order.Consumables);
        List(console, "Not known to the order", order.Gaps);
    }

    private static void List(IAnsiConsole console, string heading, IReadOnlyList<string> items)
    {
        if (items.Count > 0)
        {
            console.Heading(heading);
            foreach (string item in items)
            {
                console.Sentence(item, Indent);
            }
        }
    }

    private static void Step(IAnsiConsole console, OrderStep step, int number)
    {
        string place = step.Place.Length > 0 ? step.Place + ": " : "";
        string head = string.Create(CultureInfo.InvariantCulture, $"{number,4}  ");
        bool first = true;
        foreach (string line in Wrapping.Lines(place + step.Title, Page.WidthOf(console) - Under))
        {
            console.Line((first ? head + " " : new string(' ', Under)) + line);
            first = false;
        }

        foreach (string caution in step.Cautions)
        {
            console.Sentence("! " + caution, Under);
        }

        bool tighten = step.Phase is not (OrderPhase.TakeOff or OrderPhase.Standing);
        foreach (var fastener in step.Fasteners)
        {
            console.Sentence("- " + (step.Phase == OrderPhase.Later ? fastener.Where + ": " : "") + OrderWords.Line(fastener, tighten),
                Under);
        }

        foreach (string detail in step.Details)
        {
            console.Sentence(detail, Under);
        }
    }
}
