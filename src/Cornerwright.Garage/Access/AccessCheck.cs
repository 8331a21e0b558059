using Cornerwright.Garage.Problems;

namespace Cornerwright.Garage.Access;

/// <summary>What makes an access graph unreadable: ids that stand twice or lead nowhere, threads and classes nobody makes.</summary>
public static class AccessCheck
{
    private static readonly string[] Classes = ["4.6", "4.8", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9", "5", "6", "8", "9",
        "10", "12"];

    /// <returns>Every problem; empty if the graph can be read. Cycles are not problems of the file: an order names them.</returns>
    public static IReadOnlyList<Problem> Problems(AccessGraph graph)
    {
        ArgumentNullException.ThrowIfNull(graph);
        var problems = new List<Problem>();
        var known = new HashSet<string>(StringComparer.Ordinal);
        foreach (var component in graph.Components)
        {
            if (!known.Add(component.Id))
            {
                problems.Add(new Problem("how it comes apart / id", component.Id, "each id once", "Give one of them another id."));
            }
        }

        foreach (var component in graph.Components)
        {
            string path = "how it comes apart / " + component.Name;
            foreach (string id in component.BeforeOff.Select(x => x.Component).Concat(component.BeforeLoose.Select(x => x.Component))
                .Concat(component.Supports.Select(x => x.Component)))
            {
                if (id.Length > 0 && !known.Contains(id))
                {
                    problems.Add(new Problem(path + " / component", id, string.Join(", ", known.Take(20)),
                        "Choose a component of this car, or add it first."));
                }
            }

            CheckFasteners(problems, component, path);
            CheckMinutes(problems, path + " / minutes to take off", component.MinutesOff);
            CheckMinutes(problems, path + " / minutes to fit", component.MinutesOn);
        }

        return problems;
    }

    /// <summary>Null if the text names a property class of bolts or nuts, or is empty.</summary>
    public static Problem? ClassProblem(string typed, string field) =>
        typed.Length == 0 || Classes.Contains(typed.Trim(), StringComparer.Ordinal)
        ? null
        : new Problem(field, typed, string.Join(", ", Classes), "Read the mark on the head or nut; leave it empty where there is none.");

    private static void CheckFasteners(List<Problem> problems, Component component, string path)
    {
        foreach (var twice in component.Fasteners.GroupBy(f => f.Id, StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            problems.Add(new Problem(path + " / held by / id", twice.Key, "each id once", "Give one of them another id."));
        }

        foreach (var fastener in component.Fasteners)
        {
            string where = $"{path} / {fastener.Name}";
            if (fastener.Thread.Length > 0)
            {
                problems.AddRange(ThreadDesignation.Parse(fastener.Thread, where + " / thread").Problems);
            }

            if (ClassProblem(fastener.Class, where + " / property class") is { } problem)
            {
                problems.Add(problem);
            }
        }
    }

    private static void CheckMinutes(List<Problem> problems, string path, double? minutes)
    {
        if (minutes is { } m && !(m is >= 0 and <= 1000))
        {
            problems.Add(new Problem(path, FormattableString.Invariant($"{m}"), "0 to 1000", "Write minutes."));
        }
    }
}
