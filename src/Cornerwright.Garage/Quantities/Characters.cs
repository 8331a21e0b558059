namespace Cornerwright.Garage.Quantities;

/// <summary>Characters that keyboards, phones and copied tables put into numbers.</summary>
internal static class Characters
{
    /// <summary>Longest text any of our parsers looks at.</summary>
    public const int TextLimit = 64;

    private const string Gaps = " \t\u00A0\u2009\u202F\u2007";
    private const string Edges = Gaps + "\r\n";

    public static bool IsGap(char c) => Gaps.Contains(c, StringComparison.Ordinal);

    public static bool IsMinus(char c) => c is '-' or '\u2212' or '\u2013' or '\u2010' or '\u2011';

    /// <summary>The text without blanks at its ends.</summary>
    public static ReadOnlySpan<char> Trim(ReadOnlySpan<char> text) => text.Trim(Gaps);

    /// <summary>What was typed without blanks and line ends around it: those come along when a cell is copied.</summary>
    public static ReadOnlySpan<char> TrimTyped(ReadOnlySpan<char> text) => text.Trim(Edges);

    public static void SkipGaps(ReadOnlySpan<char> text, ref int at)
    {
        while (at < text.Length && IsGap(text[at]))
        {
            at++;
        }
    }

    /// <summary>What was typed, for a message: unchanged, unless it is longer than any sensible input.</summary>
    public static string Shown(string? typed) => typed switch
    {
        null => "",
        { Length: > TextLimit } => string.Concat(typed.AsSpan(0, TextLimit), "…"),
        _ => typed,
    };

    /// <summary>The value of a fraction that is one character (½), or 0 if it is none.</summary>
    public static double FractionSign(char c) => c switch
    {
        '½' => 1.0 / 2,
        '¼' => 1.0 / 4,
        '¾' => 3.0 / 4,
        '⅛' => 1.0 / 8,
        '⅜' => 3.0 / 8,
        '⅝' => 5.0 / 8,
        '⅞' => 7.0 / 8,
        '⅓' => 1.0 / 3,
        '⅔' => 2.0 / 3,
        '⅙' => 1.0 / 6,
        '⅚' => 5.0 / 6,
        '⅕' => 1.0 / 5,
        '⅖' => 2.0 / 5,
        '⅗' => 3.0 / 5,
        '⅘' => 4.0 / 5,
        _ => 0,
    };
}
