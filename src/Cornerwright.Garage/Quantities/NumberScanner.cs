using System.Globalization;

namespace Cornerwright.Garage.Quantities;

/// <summary>Why the characters at hand are not one certain number.</summary>
internal enum NumberFault
{
    None,
    Missing,
    AmbiguousComma,
    RepeatedSeparator,
    BadGrouping,
    NoDigitAfterSeparator,
    NoDigitBeforeComma,
    Exponent,
    BadFraction,
    OutOfScale,
}

/// <summary>Reads one unsigned number as people write it, without ever choosing between two meanings.</summary>
/// <remarks>
/// Rules in docs/quantities.md, "Comma and point". Reads each character at most twice; no allocation on the usual path.
/// </remarks>
internal static class NumberScanner
{
    /// <summary>A typed number other than 0 lies between these: beyond, it is a slip of the finger, not a reading.</summary>
    public const double Smallest = 1e-12;

    public const double Largest = 1e12;

    /// <summary>Whole numbers up to here and powers of ten up to 22 are exact doubles, so one division rounds rightly.</summary>
    private const long ExactLimit = 1L << 53;

    private static readonly double[] PowersOfTen =
    [
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11,
        1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
    ];

    /// <summary>Reads a number at <paramref name="at"/> and moves past it.</summary>
    /// <param name="text">At most <see cref="Characters.TextLimit"/> characters.</param>
    /// <param name="at">First character of the number; after success the first one behind it.</param>
    /// <param name="fractions">Take 3/8, 7 3/4, 7-3/4, 7½ too.</param>
    /// <param name="value">At least 0, finite.</param>
    /// <param name="whole">Only digits, so that smaller units may follow (5 ft 3 in).</param>
    public static NumberFault Scan(ReadOnlySpan<char> text, ref int at, bool fractions, out double value, out bool whole)
    {
        (value, whole) = (0, false);
        if (fractions && at < text.Length && Characters.FractionSign(text[at]) is > 0 and var alone)
        {
            at++;
            value = alone;
            return NumberFault.None;
        }

        NumberFault fault = ScanDecimal(text, ref at, out value, out whole);
        if (fault != NumberFault.None)
        {
            return fault;
        }

        if (whole && fractions)
        {
            fault = ScanFraction(text, ref at, ref value, ref whole);
        }

        if (fault == NumberFault.None && HasExponent(text, at))
        {
            fault = NumberFault.Exponent;
        }

        if (fault == NumberFault.None && value != 0 && !(value >= Smallest && value <= Largest))
        {
            fault = NumberFault.OutOfScale;
        }

        return fault;
    }

    private static NumberFault ScanDecimal(ReadOnlySpan<char> text, ref int at, out double value, out bool whole)
    {
        (value, whole) = (0, false);
        int start = at;
        (int points, int commas, int last, int digits) = (0, 0, -1, 0);
        for (; at < text.Length; at++)
        {
            char c = text[at];
            if (char.IsAsciiDigit(c))
            {
                digits++;
            }
            else if (c is '.' or ',')
            {
                points += c == '.' ? 1 : 0;
                commas += c == ',' ? 1 : 0;
                last = at;
            }
            else
            {
                break;
            }
        }

        ReadOnlySpan<char> run = text[start..at];
        if (digits == 0)
        {
            return NumberFault.Missing;
        }

        NumberFault fault = (points + commas) switch
        {
            0 => NumberFault.None,
            1 => OneSeparator(run, last - start),
            _ when points > 0 && commas > 0 => Grouped(run, last - start),
            _ => NumberFault.RepeatedSeparator,
        };
        if (fault == NumberFault.None)
        {
            whole = last < 0;
            value = Evaluate(run, whole ? run.Length : last - start);
        }

        return fault;
    }

    /// <summary>One separator is the decimal one, unless a comma could as well part thousands.</summary>
    private static NumberFault OneSeparator(ReadOnlySpan<char> run, int separator)
    {
        int before = separator;
        int after = run.Length - separator - 1;
        return (run[separator], before, after) switch
        {
            (_, _, 0) => NumberFault.NoDigitAfterSeparator,
            (',', 0, _) => NumberFault.NoDigitBeforeComma,
            (',', <= 3, 3) when run[0] != '0' => NumberFault.AmbiguousComma,
            _ => NumberFault.None,
        };
    }

    /// <summary>Two kinds: the last is the decimal one, once; the others must part groups of exactly three digits.</summary>
    private static NumberFault Grouped(ReadOnlySpan<char> run, int separator)
    {
        char grouping = run[separator] == '.' ? ',' : '.';
        if (run.Length == separator + 1)
        {
            return NumberFault.NoDigitAfterSeparator;
        }

        int group = 0;
        bool first = true;
        for (int i = 0; i <= separator; i++)
        {
            if (char.IsAsciiDigit(run[i]))
            {
                group++;
                continue;
            }

            bool fits = first ? group is >= 1 and <= 3 && run[0] != '0' : group == 3;
            if (!fits || (i < separator && run[i] != grouping))
            {
                return NumberFault.BadGrouping;
            }

            (group, first) = (0, false);
        }

        return NumberFault.None;
    }

    private static double Evaluate(ReadOnlySpan<char> run, int separator)
    {
        (long mantissa, int decimals, bool exact) = (0, 0, true);
        for (int i = 0; i < run.Length && exact; i++)
        {
            if (char.IsAsciiDigit(run[i]))
            {
                mantissa = (mantissa * 10) + (run[i] - '0');
                decimals += i > separator ? 1 : 0;
                exact = mantissa < ExactLimit && decimals < PowersOfTen.Length;
            }
        }

        return exact ? mantissa / PowersOfTen[decimals] : EvaluateLong(run, separator);
    }

    private static double EvaluateLong(ReadOnlySpan<char> run, int separator)
    {
        Span<char> plain = stackalloc char[Characters.TextLimit + 1];
        int length = 0;
        for (int i = 0; i < run.Length; i++)
        {
            if (char.IsAsciiDigit(run[i]))
            {
                plain[length++] = run[i];
            }
            else if (i == separator)
            {
                plain[length++] = '.';
            }
        }

        return double.Parse(plain[..length], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
    }

    private static NumberFault ScanFraction(ReadOnlySpan<char> text, ref int at, ref double value, ref bool whole)
    {
        // 3/8: what was read so far is the numerator.
        int behind = at;
        if (IsSlash(text, behind) && IsDigit(text, behind + 1))
        {
            behind++;
            return Divide(text, ref behind, ref at, value, 0, ref value, ref whole);
        }

        // 7½ and 7 ½.
        Characters.SkipGaps(text, ref behind);
        bool parted = behind > at;
        if (behind < text.Length && Characters.FractionSign(text[behind]) is > 0 and var part)
        {
            at = behind + 1;
            (value, whole) = (value + part, false);
            return NumberFault.None;
        }

        // 7 3/4 and 7-3/4.
        if (!parted && behind < text.Length && Characters.IsMinus(text[behind]))
        {
            behind++;
            parted = true;
        }

        int digits = behind;
        double numerator = 0;
        for (; IsDigit(text, digits) && digits - behind < 5; digits++)
        {
            numerator = (numerator * 10) + (text[digits] - '0');
        }

        if (!parted || digits == behind || !IsSlash(text, digits) || !IsDigit(text, digits + 1))
        {
            return NumberFault.None;
        }

        digits++;
        return Divide(text, ref digits, ref at, numerator, value, ref value, ref whole, mixed: true);
    }

    private static NumberFault Divide(
        ReadOnlySpan<char> text, ref int i, ref int at, double numerator, double add, ref double value, ref bool whole, bool mixed = false)
    {
        double denominator = 0;
        int start = i;
        for (; IsDigit(text, i) && i - start < 5; i++)
        {
            denominator = (denominator * 10) + (text[i] - '0');
        }

        bool clean = i - start <= 4 && numerator <= 9999 && denominator > 0 && !(mixed && numerator >= denominator)
            && !(i < text.Length && text[i] is '.' or ',');
        if (!clean)
        {
            return NumberFault.BadFraction;
        }

        at = i;
        (value, whole) = (add + (numerator / denominator), false);
        return NumberFault.None;
    }

    private static bool HasExponent(ReadOnlySpan<char> text, int at) =>
        at + 1 < text.Length && text[at] is 'e' or 'E'
        && (char.IsAsciiDigit(text[at + 1])
            || (at + 2 < text.Length && (text[at + 1] == '+' || Characters.IsMinus(text[at + 1])) && char.IsAsciiDigit(text[at + 2])));

    private static bool IsSlash(ReadOnlySpan<char> text, int i) => i < text.Length && text[i] is '/' or '\u2044';

    private static bool IsDigit(ReadOnlySpan<char> text, int i) => i < text.Length && char.IsAsciiDigit(text[i]);
}
