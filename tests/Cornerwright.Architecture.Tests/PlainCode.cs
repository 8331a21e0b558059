namespace Cornerwright.Architecture.Tests;

/// <summary>
/// C# source with every comment, string and character blanked out, lines kept: what is left of braces, brackets and semicolons is
/// code. Interpolated strings go with their holes. Source: C# language specification, 6.3 and 6.4 (ECMA-334, 7th edition, 2023);
/// raw strings as of C# 11.
/// </summary>
internal sealed class PlainCode
{
    private readonly string _source;
    private readonly char[] _plain;
    private int _at;

    private PlainCode(string source)
    {
        _source = source;
        _plain = source.ToCharArray();
    }

    public static string Of(string source)
    {
        var code = new PlainCode(source);
        code.Code(inHole: false);
        return new string(code._plain);
    }

    private char Next => _at < _source.Length ? _source[_at] : '\0';

    private bool Starts(string word) => string.CompareOrdinal(_source, _at, word, 0, word.Length) == 0;

    /// <summary>Up to the end; in a hole of an interpolated string up to the brace that ends it.</summary>
    private void Code(bool inHole)
    {
        int depth = 0;
        while (_at < _source.Length)
        {
            if (Starts("//"))
            {
                Blank(LineEnd());
            }
            else if (Starts("/*"))
            {
                int end = _source.IndexOf("*/", _at + 2, StringComparison.Ordinal);
                Blank(end < 0 ? _source.Length : end + 2);
            }
            else if (Next == '\'')
            {
                Blank(_at + (_source[_at + 1] == '\\' ? _source.IndexOf('\'', _at + 3) - _at : 2) + 1);
            }
            else if (Next is '"' || (Next is '$' or '@' && StringStart() > _at))
            {
                Text();
            }
            else
            {
                depth += Next switch { '{' => 1, '}' => -1, _ => 0 };
                if (inHole && depth < 0)
                {
                    return;
                }

                _at++;
            }
        }
    }

    /// <summary>Where the quotes of a prefixed string begin; the present place where none follow the prefix.</summary>
    private int StringStart()
    {
        int quote = _at;
        while (quote < _source.Length && _source[quote] is '$' or '@')
        {
            quote++;
        }

        return quote < _source.Length && _source[quote] == '"' ? quote : _at;
    }

    private void Text()
    {
        int start = _at, quote = StringStart();
        string prefix = _source[_at..quote];
        int quotes = 0, dollars = prefix.Count(c => c == '$');
        while (quote + quotes < _source.Length && _source[quote + quotes] == '"')
        {
            quotes++;
        }

        bool verbatim = prefix.Contains('@'), raw = quotes >= 3 && !verbatim;
        _at = quote + (raw ? quotes : 1);
        while (_at < _source.Length && !Ends(raw, quotes, verbatim))
        {
            Step(raw, verbatim, dollars);
        }

        _at += raw ? quotes : 1;
        int end = Math.Min(_at, _source.Length);
        _at = start;
        Blank(end);
    }

    private bool Ends(bool raw, int quotes, bool verbatim) =>
        raw ? Starts(new string('"', quotes)) : Next == '"' && !(verbatim && Starts("\"\""));

    /// <summary>One character of a string, one escape, or one whole hole.</summary>
    private void Step(bool raw, bool verbatim, int dollars)
    {
        if (!raw && !verbatim && Next == '\\')
        {
            _at += 2;
        }
        else if (!raw && (Starts("\"\"") || (dollars > 0 && (Starts("{{") || Starts("}}")))))
        {
            _at += 2;
        }
        else if (dollars > 0 && Starts(new string('{', dollars)))
        {
            _at += dollars;
            Code(inHole: true);
            _at += dollars;
        }
        else
        {
            _at++;
        }
    }

    private int LineEnd() => _source.IndexOf('\n', _at) is var end && end < 0 ? _source.Length : end;

    private void Blank(int end)
    {
        for (; _at < end && _at < _source.Length; _at++)
        {
            if (_plain[_at] != '\n')
            {
                _plain[_at] = ' ';
            }
        }
    }
}
