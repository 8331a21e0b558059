using Cornerwright.Cli.Text;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Workshop.Findings;

namespace Cornerwright.Cli.Commands;

/// <summary>Which findings a person wants to see. It never changes the verdict or the exit code.</summary>
internal sealed record FindingFilter(IReadOnlyList<CornerPlace> Corners, IReadOnlyList<Verdict> Verdicts, IReadOnlyList<string> Checks)
{
    /// <summary>Every unknown name at once.</summary>
    public static Checked<FindingFilter> Read(IReadOnlyList<string> corners, IReadOnlyList<string> verdicts, IReadOnlyList<string> checks,
        IReadOnlyList<Finding> among)
    {
        var places = BuildChoice.Corners(corners);
        var problems = places.Problems.ToList();
        var wanted = new List<Verdict>();
        foreach (string typed in verdicts.SelectMany(v => v.Split(',')))
        {
            var match = Enum.GetValues<Verdict>().Where(v => string.Equals(v.Word(), typed.Trim(), StringComparison.OrdinalIgnoreCase))
                .ToList();
            wanted.AddRange(match);
            if (match.Count == 0)
            {
                problems.Add(new Problem("--verdict", typed, string.Join(", ", Enum.GetValues<Verdict>().Select(VerdictWords.Word)),
                    "Name one of these, or several with commas."));
            }
        }

        string[] names = [.. checks.SelectMany(c => c.Split(',')).Select(c => c.Trim())];
        string[] known = [.. among.Select(f => f.Check).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        problems.AddRange(names.Where(n => !known.Contains(n, StringComparer.Ordinal))
            .Select(n => new Problem("--check", n, string.Join(", ", known), "Name a check that this build has, or several with commas.")));
        return problems.Count > 0
            ? Checked<FindingFilter>.Wrong(problems)
            : Checked<FindingFilter>.From(new FindingFilter(places.Value, wanted, names));
    }

    /// <summary>A finding of an axle is shown with either of its corners; one of the whole car, always.</summary>
    public bool Shows(Finding finding) =>
        (Verdicts.Count == 0 || Verdicts.Contains(finding.Verdict))
        && (Checks.Count == 0 || Checks.Contains(finding.Check))
        && (finding.Corner is { } corner ? Corners.Contains(corner)
            : finding.Axle is not { } axle || Corners.Any(c => c.Axle() == axle));

    public bool Shows(Figure figure) => figure.Corner is not { } corner || Corners.Contains(corner);
}
