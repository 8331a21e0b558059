using Xunit.Abstractions;

namespace Cornerwright.Architecture.Tests;

/// <summary>A function fits a screen, and so does a line: a limit on files alone would push code sideways.</summary>
public sealed class LengthTests(ITestOutputHelper output)
{
    private const int LongestFunction = 70, LongestLine = 140;

    /// <summary>Folders that are being rebuilt; one without offenders must leave the list.</summary>
    private static readonly string[] BeingRebuilt =
        [];

    [Fact]
    public void A_function_fits_a_screen() => Hold(LongFunctions());

    [Fact]
    public void A_line_fits_a_screen() => Hold(LongLines());

    [Fact]
    public void What_is_exempt_still_needs_to_be()
    {
        string[] offenders = [.. LongFunctions(), .. LongLines()];
        Assert.All(BeingRebuilt, folder => Assert.Contains(offenders, o => o.StartsWith(folder, StringComparison.Ordinal)));
    }

    // The reader of functions bites, and is not led astray by braces in strings, comments and attributes.
    [Fact]
    public void Functions_are_measured_from_their_first_word_to_their_end()
    {
        const string Source = """
            namespace A;
            [Note("} {")]
            public sealed record R(int X)
            {
                // { not code
                private static readonly string[] Table = [
                    "{", $"{(true ? $"}}{1:0.0}" : "{")} {{", @"a""{", '{'.ToString()];
                public int Auto { get; init; } =
                    1;
                [Field("a", How = "b")]
                [Other]
                public int Twice =>
                    2 * X;
                public static R operator ==(R a, R b)
                {
                    return a;
                }
                public (int A, int B) Two<T>(T first) where T : class
                {
                    int Local() { return 1; }
                    return (1, Local());
                }
                private enum E { A = 1, B = 2 }
                public R(string s) : this(1) { }
            }
            """;
        Assert.Equal(
            ["Auto 8 1", "Twice 12 2", "== 14 4", "Two 18 5", "R 24 1"],
            Functions.Of(Source).Select(f => $"{f.Name} {f.Line} {f.Lines}"));
    }

    [Fact]
    public void Functions_of_a_page_stand_in_its_code_blocks()
    {
        const string Page = "<p>@(x) { '</p>\n@code {\n  private int One()\n  {\n    return 1;\n  }\n}\n";
        Assert.Equal(["One 3 4"], Functions.OfPage(Page).Select(f => $"{f.Name} {f.Line} {f.Lines}"));
    }

    // A string or a comment read wrongly would leave a brace over.
    [Fact]
    public void Every_source_file_is_read_to_its_end()
    {
        var odd = Repository.Sources(".cs").Where(f =>
        {
            string code = PlainCode.Of(File.ReadAllText(f));
            return code.Count(c => c == '{') != code.Count(c => c == '}') || code.Count(c => c == '(') != code.Count(c => c == ')')
                || code.Contains('"');
        }).Select(Repository.Relative);
        Assert.Empty(odd);
    }

    /// <summary>Code alone: markup is as wide as its sentences, and text between three quotes stands as it is.</summary>
    private static IEnumerable<(int Number, string Text)> Lines(string file)
    {
        string text = File.ReadAllText(file);
        bool page = file.EndsWith(".razor", StringComparison.Ordinal);
        int start = page ? text.IndexOf("\n@code", StringComparison.Ordinal) + 1 : 0;
        if (page && start == 0)
        {
            return [];
        }

        int above = text[..start].Count(c => c == '\n');
        return text[start..].Split('\n').Zip(PlainCode.Of(text[start..]).Split('\n'), (line, plain) => (Text: line, Plain: plain)).Index()
            .Where(l => !IsRaw(l.Item.Text.TrimStart(), l.Item.Plain) && !(page && IsMarkup(l.Item.Text.TrimStart())))
            .Select(l => (above + l.Index + 1, l.Item.Text));
    }

    private static bool IsMarkup(string line) => line.StartsWith('<') || line.StartsWith('@')
        || line.Contains("@<", StringComparison.Ordinal);

    private static bool IsRaw(string line, string plain) =>
        string.IsNullOrWhiteSpace(plain) && !line.StartsWith("//", StringComparison.Ordinal) && !(line.TrimStart('$') is ['"', .., '"']);

    private static IEnumerable<string> LongFunctions() => Repository.Sources(".cs", ".razor").SelectMany(file =>
    {
        string name = Repository.Relative(file), text = File.ReadAllText(file);
        var functions = file.EndsWith(".razor", StringComparison.Ordinal) ? Functions.OfPage(text) : Functions.Of(text);
        return functions.Where(f => f.Lines > LongestFunction)
            .Select(f => $"{name}:{f.Line}: {f.Name} takes {f.Lines} lines, at most {LongestFunction}");
    });

    private static IEnumerable<string> LongLines() => Repository.Sources(".cs", ".razor").SelectMany(file => Lines(file)
        .Where(l => l.Text.TrimEnd().Length > LongestLine)
        .Select(l => $"{Repository.Relative(file)}:{l.Number}: {l.Text.TrimEnd().Length} columns, at most {LongestLine}"));

    /// <summary>The test's output names the exempt too.</summary>
    private void Hold(IEnumerable<string> tooLong)
    {
        string[] all = [.. tooLong];
        output.WriteLine(string.Join('\n', all));
        string[] offenders = [.. all.Where(o => !BeingRebuilt.Any(f => o.StartsWith(f, StringComparison.Ordinal)))];
        Assert.True(offenders.Length == 0, string.Join('\n', offenders));
    }
}
