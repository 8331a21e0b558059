using Cornerwright.Garage.Quantities;

namespace Cornerwright.Garage.Designations;

/// <summary>Walks over a designation; letters match in either case, gaps are passed where a designation allows them.</summary>
internal ref struct TextCursor(ReadOnlySpan<char> text)
{
    private readonly ReadOnlySpan<char> _text = text;

    public int At { get; set; }

    public readonly bool AtEnd => At >= _text.Length;

    public readonly char Next => AtEnd ? '\0' : _text[At];

    public readonly bool AtDigit => char.IsAsciiDigit(Next);

    public readonly bool AtLetter => char.IsAsciiLetter(Next);

    public readonly ReadOnlySpan<char> Rest => AtEnd ? [] : _text[At..];

    public void SkipGaps()
    {
        int at = At;
        Characters.SkipGaps(_text, ref at);
        At = at;
    }

    /// <summary>Takes a word if it stands here.</summary>
    public bool Take(ReadOnlySpan<char> word)
    {
        if (!Rest.StartsWith(word, StringComparison.OrdinalIgnoreCase))
        {
            return false;
        }

        At += word.Length;
        return true;
    }

    /// <summary>Takes a word that no further letter or digit makes longer.</summary>
    public bool TakeWhole(ReadOnlySpan<char> word)
    {
        int start = At;
        if (Take(word) && !AtLetter && !AtDigit)
        {
            return true;
        }

        At = start;
        return false;
    }

    /// <summary>Takes x, X, × or *.</summary>
    public bool TakeTimes()
    {
        if (Next is not ('x' or 'X' or '×' or '*'))
        {
            return false;
        }

        At++;
        return true;
    }

    /// <summary>Takes a whole number of 1 to 4 digits, not followed by a decimal mark and a digit.</summary>
    public bool TakeInteger(out int value)
    {
        (value, int start) = (0, At);
        while (AtDigit && At - start < 5)
        {
            value = (value * 10) + (Next - '0');
            At++;
        }

        bool decimals = Next is '.' or ',' && At + 1 < _text.Length && char.IsAsciiDigit(_text[At + 1]);
        return At > start && At - start <= 4 && !decimals;
    }

    /// <summary>Takes a number by the rules of the quantities, fractions if asked.</summary>
    public NumberFault TakeNumber(bool fractions, out double value)
    {
        int at = At;
        NumberFault fault = NumberScanner.Scan(_text, ref at, fractions, out value, out _);
        At = at;
        return fault;
    }

    /// <summary>The digits, points and commas at hand, for a message.</summary>
    public readonly ReadOnlySpan<char> Run()
    {
        int end = At;
        while (end < _text.Length && (char.IsAsciiDigit(_text[end]) || _text[end] is '.' or ','))
        {
            end++;
        }

        return AtEnd ? [] : _text[At..end];
    }

    /// <summary>The word at hand, for a message.</summary>
    public readonly ReadOnlySpan<char> Word()
    {
        int end = At;
        while (end < _text.Length && !Characters.IsGap(_text[end]))
        {
            end++;
        }

        return AtEnd ? [] : _text[At..end];
    }
}
