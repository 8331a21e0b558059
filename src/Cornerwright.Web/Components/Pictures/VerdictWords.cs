using Cornerwright.Workshop.Findings;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>The word that stands with every sign.</summary>
public static class VerdictWords
{
    public static IReadOnlyList<Verdict> WorstFirst { get; } = [Verdict.Fails, Verdict.Tight, Verdict.Unknown, Verdict.Holds];

    public static string Of(Verdict verdict) => verdict switch
    {
        Verdict.Fails => "fails",
        Verdict.Tight => "tight",
        Verdict.Holds => "holds",
        _ => "unknown",
    };
}
