using Cornerwright.Garage.Problems;

namespace Cornerwright.Garage.Scans;

/// <summary>Unwinds a reader to <see cref="ScanFile"/>, which turns it into a result. It never leaves this folder.</summary>
internal sealed class ScanFault(Problem problem) : Exception(problem.ToString())
{
    public Problem Problem { get; } = problem;

    public static ScanFault At(string where, string given, string allowed, string cure) =>
        new(new Problem("scan file / " + where, Printable(given), allowed, cure));

    public static ScanFault Ends(string where) =>
        At(where, "the file ends here", "a whole file", "It was cut off on its way: copy or export it again.");

    /// <summary>Pieces of a damaged file, short and without what a screen cannot show.</summary>
    private static string Printable(string text)
    {
        const int Longest = 60;
        string cut = text.Length <= Longest ? text : string.Concat(text.AsSpan(0, Longest - 3), "...");
        return string.Concat(cut.Select(c => c is >= ' ' and < '\u007f' or >= '\u00a0' ? c : '?'));
    }
}
