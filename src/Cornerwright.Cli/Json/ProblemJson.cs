using Cornerwright.Garage.Problems;

namespace Cornerwright.Cli.Json;

/// <summary>Every problem of bad input, for scripts.</summary>
internal static class ProblemJson
{
    public static string Write(IReadOnlyList<Problem> problems) => JsonPage.Write("problems", writer =>
        writer.Objects("problems", problems, problem =>
        {
            writer.WriteString("field", problem.Field);
            writer.WriteString("given", problem.Given);
            writer.WriteString("allowed", problem.Allowed);
            writer.WriteString("mend", problem.Cure);
        }));
}
