using System.Text.RegularExpressions;

namespace Cornerwright.Architecture.Tests;

/// <summary>A function as it stands in a file: its name, the line of its first word, and how many lines it takes to its end.</summary>
internal readonly record struct Function(string Name, int Line, int Lines);

/// <summary>
/// Finds the functions of a source file: methods, constructors, operators and properties that compute. What stands inside one counts
/// as part of it; fields and tables that are only set to a value do not count.
/// </summary>
internal static partial class Functions
{
    /// <param name="source">Of a .cs file.</param>
    public static IReadOnlyList<Function> Of(string source)
    {
        string code = Attributes().Replace(Directive().Replace(PlainCode.Of(source), m => Blank(m.Value)), m => Blank(m.Value));
        var found = new List<Function>();
        Members(code, 0, found);
        return found;
    }

    /// <summary>The functions in the code blocks of a page; lines count from the page's top.</summary>
    public static IReadOnlyList<Function> OfPage(string page)
    {
        var found = new List<Function>();
        foreach (Match block in CodeBlock().Matches(page))
        {
            string code = PlainCode.Of(page[block.Index..]);
            int open = code.IndexOf('{', StringComparison.Ordinal);
            int above = page[..block.Index].Count(c => c == '\n');
            var members = new List<Function>();
            Members(Attributes().Replace(code[..(End(code, open) + 1)], m => Blank(m.Value)), open + 1, members);
            found.AddRange(members.Select(f => f with { Line = f.Line + above }));
        }

        return found;
    }

    /// <summary>Walks the members of one type, or of a file, from <paramref name="at"/> to the brace that ends it.</summary>
    private static int Members(string code, int at, List<Function> found)
    {
        int start = at;
        while (at < code.Length && code[at] != '}')
        {
            switch (code[at])
            {
                case ';':
                    start = ++at;
                    break;
                case '(' or '[':
                    at = End(code, at) + 1;
                    break;
                case '{' when IsType(code[start..at]):
                    at = Members(code, at + 1, found) + 1;
                    start = at;
                    break;
                case '{':
                    int end = End(code, at);
                    Add(code, start, at, end, found);
                    start = at = Initialiser(code, end) + 1;
                    break;
                case '=' when code[at..].StartsWith("=>", StringComparison.Ordinal):
                    end = Semicolon(code, at);
                    Add(code, start, at, end, found);
                    start = at = code[end] == ';' ? end + 1 : end;
                    break;
                case '=' when !Operator().IsMatch(code[start..at]):
                    end = Semicolon(code, at);
                    start = at = code[end] == ';' ? end + 1 : end;
                    break;
                default:
                    at++;
                    break;
            }
        }

        return at;
    }

    private static void Add(string code, int start, int body, int end, List<Function> found)
    {
        string header = code[start..body];
        start += header.Length - header.TrimStart().Length;
        int first = code.AsSpan(0, start).Count('\n') + 1, last = code.AsSpan(0, Math.Min(end + 1, code.Length)).Count('\n') + 1;
        var name = NameIn().Match(header);
        string word = name.Success ? name.Groups["operator"].Value + name.Groups["word"].Value : header.Trim().Split(' ')[^1];
        found.Add(new Function(word, first, last - first + 1));
    }

    /// <summary>A property may be set to a value behind its braces.</summary>
    private static int Initialiser(string code, int end)
    {
        int next = end + 1;
        while (next < code.Length && char.IsWhiteSpace(code[next]))
        {
            next++;
        }

        return next < code.Length && code[next] == '=' ? Semicolon(code, next) : end;
    }

    /// <summary>Where what begins here ends: at its semicolon, or at the brace of what is around it.</summary>
    private static int Semicolon(string code, int at)
    {
        while (at < code.Length - 1 && code[at] is not (';' or '}'))
        {
            at = code[at] is '(' or '[' or '{' ? End(code, at) + 1 : at + 1;
        }

        return at;
    }

    /// <summary>The bracket that ends the one at this place.</summary>
    private static int End(string code, int at)
    {
        int depth = 0;
        for (; at < code.Length; at++)
        {
            depth += code[at] switch { '(' or '[' or '{' => 1, ')' or ']' or '}' => -1, _ => 0 };
            if (depth == 0)
            {
                return at;
            }
        }

        return code.Length - 1;
    }

    private static bool IsType(string header) => TypeWord().IsMatch(header.Split('(')[0]);

    private static string Blank(string text) => string.Concat(text.Select(c => c == '\n' ? c : ' '));

    [GeneratedRegex(@"(?<=^|[{};\]]|\n)[ \t\r\n]*\[(?>[^\[\]]|(?<open>\[)|(?<-open>\]))*(?(open)(?!))\](?=\s*(?:\[|[A-Za-z(]))")]
    private static partial Regex Attributes();

    [GeneratedRegex(@"\b(?:class|struct|interface|enum|record|namespace)\b")]
    private static partial Regex TypeWord();

    [GeneratedRegex(@"\boperator\s*$|\boperator\s*[=!<>]$")]
    private static partial Regex Operator();

    // The word before the parameters; before those of a tuple that is returned stands a modifier.
    [GeneratedRegex(@"(?:\boperator\s*(?<operator>\S+?)|\b(?!(?:public|private|protected|internal|static|async|override|new)\b)"
        + @"(?<word>\w+)(?:<[^()]*>)?)\s*\(")]
    private static partial Regex NameIn();

    [GeneratedRegex(@"^[ \t]*#.*$", RegexOptions.Multiline)]
    private static partial Regex Directive();

    [GeneratedRegex(@"^@code\s*\{", RegexOptions.Multiline)]
    private static partial Regex CodeBlock();
}
