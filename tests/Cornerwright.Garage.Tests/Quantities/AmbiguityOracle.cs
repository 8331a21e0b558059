using System.Text.RegularExpressions;

namespace Cornerwright.Garage.Tests.Quantities;

/// <summary>The comma and point rule of docs/quantities.md, written a second time, as patterns: what may never be accepted.</summary>
internal static partial class AmbiguityOracle
{
    /// <summary>Null if every number in the text has one meaning, otherwise the number that has two or none.</summary>
    public static string? Offence(string text)
    {
        foreach (Match match in Runs().Matches(text))
        {
            string run = match.Value;
            bool clear = PlainNumber().IsMatch(run) || PointNumber().IsMatch(run)
                || (CommaNumber().IsMatch(run) && !AmbiguousComma().IsMatch(run))
                || CommaThousands().IsMatch(run) || PointThousands().IsMatch(run);
            if (!clear && run != "." && run != ",")
            {
                return run;
            }
        }

        return Exponent().Match(text) is { Success: true } power ? power.Value : null;
    }

    // A dot behind a letter is an abbreviation's (in., ft.-lb.), not a number's.
    [GeneratedRegex(@"(?<![A-Za-z])[0-9.,]*[0-9][0-9.,]*|(?<=[A-Za-z])[0-9,]*[0-9][0-9.,]*", RegexOptions.CultureInvariant)]
    private static partial Regex Runs();

    [GeneratedRegex(@"^[0-9]+$", RegexOptions.CultureInvariant)]
    private static partial Regex PlainNumber();

    [GeneratedRegex(@"^[0-9]*\.[0-9]+$", RegexOptions.CultureInvariant)]
    private static partial Regex PointNumber();

    [GeneratedRegex(@"^[0-9]+,[0-9]+$", RegexOptions.CultureInvariant)]
    private static partial Regex CommaNumber();

    [GeneratedRegex(@"^[1-9][0-9]{0,2},[0-9]{3}$", RegexOptions.CultureInvariant)]
    private static partial Regex AmbiguousComma();

    [GeneratedRegex(@"^[1-9][0-9]{0,2}(,[0-9]{3})+\.[0-9]+$", RegexOptions.CultureInvariant)]
    private static partial Regex CommaThousands();

    [GeneratedRegex(@"^[1-9][0-9]{0,2}(\.[0-9]{3})+,[0-9]+$", RegexOptions.CultureInvariant)]
    private static partial Regex PointThousands();

    [GeneratedRegex(@"[0-9][eE][+-]?[0-9]", RegexOptions.CultureInvariant)]
    private static partial Regex Exponent();
}
