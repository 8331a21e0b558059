using System.Globalization;
using System.Text;

namespace Cornerwright.PublishedChecks;

/// <summary>Writes docs/validation.md from a run of every check.</summary>
public static class ValidationPage
{
    public static string Write()
    {
        var results = CheckFiles.Subjects.ToDictionary(subject => subject, subject =>
            CheckFiles.BySubject[subject].Select(CheckResult.Of).ToArray());
        var deciding = results.Values.SelectMany(r => r).Where(r => !r.Check.ForInformation).ToArray();
        var page = new StringBuilder();
        page.Append(
            """
            # Validation

            Numbers of the outside world against ours. This page is written by a run of `tests/Cornerwright.PublishedChecks`
            (`CORNERWRIGHT_WRITE_DOCS=1 dotnet test tests/Cornerwright.PublishedChecks`); a test fails when it is out of date.
            Inputs of each check stand in `tests/Cornerwright.PublishedChecks/checks/`.

            Provenance: *looked up*: seen in the source or a copy of it; *from memory*: the source is known, its number was
            recalled and recomputed; *derived*: worked out from the formula that the source gives, so it tests our code
            and not the source.


            """);
        page.Append(CultureInfo.InvariantCulture, $"Checks that decide: {deciding.Length}, of which {deciding.Count(r => r.Holds)} hold. ");
        page.Append(CultureInfo.InvariantCulture,
            $"For information: {results.Values.Sum(r => r.Length) - deciding.Length}. Not run: {CheckFiles.NotRun.Count}.\n\n");
        Summary(page, deciding);
        foreach (string subject in CheckFiles.Subjects)
        {
            Table(page, Title(subject), results[subject].Where(r => !r.Check.ForInformation));
        }

        page.Append("\nThe following have a source of low confidence: shown, and never decisive.\n");
        Table(page, "For information", results.Values.SelectMany(r => r).Where(r => r.Check.ForInformation));
        NotRun(page);
        return page.ToString();
    }

    private static string Title(string subject) => char.ToUpperInvariant(subject[0]) + subject[1..];

    private static void Summary(StringBuilder page, CheckResult[] deciding)
    {
        page.Append("| provenance | checks | hold |\n|---|---|---|\n");
        foreach (var group in deciding.GroupBy(r => r.Check.Provenance).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            page.Append(CultureInfo.InvariantCulture, $"| {group.Key} | {group.Count()} | {group.Count(r => r.Holds)} |\n");
        }
    }

    private static void Table(StringBuilder page, string title, IEnumerable<CheckResult> results)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n## {title}\n\n");
        page.Append("| id | check | source | expected | tolerance | got | holds | provenance |\n|---|---|---|---|---|---|---|---|\n");
        foreach (var result in results)
        {
            var check = result.Check;
            string expected = check.Unit.Length > 0 ? $"{check.Expected} {check.Unit}" : check.Expected;
            string holds = check.ForInformation ? "-" : result.Holds ? "yes" : "**NO**";
            page.Append(
                CultureInfo.InvariantCulture,
                $"| {check.Id} | {Cell(check.Words)} | {Cell(Where(check.Source, check.Locator))} | {Cell(expected)} | {check.Tolerance} "
                    + $"| {Cell(result.Got)} | {holds} | {check.Provenance} |\n");
        }
    }

    private static void NotRun(StringBuilder page)
    {
        page.Append("\n## Not run\n\n| id | check | source | expected | why |\n|---|---|---|---|---|\n");
        foreach (var row in CheckFiles.NotRun)
        {
            page.Append(CultureInfo.InvariantCulture, $"| {row.Id} | {Cell(row.Words)} | "
                + $"{Cell(Where(row.Source, row.Locator))} | {Cell($"{row.Expected} {row.Unit}".Trim())} | {Cell(row.Why)} |\n");
        }
    }

    private static string Where(string source, string locator) => locator == "-" ? source : $"{source}; {locator}";

    private static string Cell(string text) =>
        text.Replace("|", "\\|", StringComparison.Ordinal).Replace("*", "\\*", StringComparison.Ordinal);
}
