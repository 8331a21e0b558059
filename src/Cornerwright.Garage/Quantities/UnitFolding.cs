namespace Cornerwright.Garage.Quantities;

/// <summary>Brings the many ways to type one unit to one spelling: small letters, one product dot, plain quotes.</summary>
/// <remarks>
/// A product may be typed with a dot, a raised dot, a hyphen, a star or a gap (N·m, N.m, ft-lb, lb ft); all become "·".
/// A gap is never simply dropped: "m m" stays "m·m" and is no unit, it does not turn into mm.
/// Capitals do not matter, except that mPa (a thousandth of a pascal) is refused rather than taken for MPa.
/// </remarks>
internal static class UnitFolding
{
    /// <summary>Longest unit text looked at; the longest spelling has 10 characters, spaces and dots may double it.</summary>
    public const int Limit = 32;

    /// <summary>Folds into <paramref name="folded"/> (at least <see cref="Limit"/> long); false if it cannot be a unit.</summary>
    public static bool TryFold(ReadOnlySpan<char> typed, Span<char> folded, out int length)
    {
        length = 0;
        typed = Characters.Trim(typed);
        if (typed.Length > Limit || typed.SequenceEqual("mPa"))
        {
            return false;
        }

        for (int i = 0; i < typed.Length; i++)
        {
            char c = typed[i];
            if (IsJoint(c))
            {
                if (!TryJoint(typed, ref i, out bool last))
                {
                    return false;
                }

                // Around a slash and at the end (the dot of "in.") a gap or a dot says nothing.
                bool needless = last || length == 0 || folded[length - 1] == '/' || typed[i + 1] == '/';
                if (!needless)
                {
                    folded[length++] = '·';
                }

                continue;
            }

            if (c == '^' && i + 1 < typed.Length && typed[i + 1] == '2')
            {
                continue;
            }

            folded[length++] = c switch
            {
                '²' => '2',
                '\u2032' or '\u2019' or '\u2018' or '\u00B4' => '\'',
                '\u2033' or '\u201D' or '\u201C' => '"',
                'º' => '°',
                _ => char.ToLowerInvariant(c),
            };
        }

        return true;
    }

    /// <summary>Passes over one joint; at most one real mark in it, and only gaps or one dot may end the text.</summary>
    private static bool TryJoint(ReadOnlySpan<char> typed, ref int i, out bool last)
    {
        (int marks, int dots) = (0, 0);
        int start = i;
        while (i < typed.Length && IsJoint(typed[i]))
        {
            (marks, dots) = typed[i] switch
            {
                '.' => (marks, dots + 1),
                _ when Characters.IsGap(typed[i]) => (marks, dots),
                _ => (marks + 1, dots),
            };
            i++;
        }

        last = i == typed.Length;
        i--;
        bool first = start == 0;
        return marks <= 1 && dots <= 1 && !(last && marks > 0) && !(first && marks + dots > 0);
    }

    private static bool IsJoint(char c) =>
        Characters.IsGap(c) || c is '.' or '·' or '\u22C5' or '\u2219' or '*' or '-' or '\u2010' or '\u2011';
}
