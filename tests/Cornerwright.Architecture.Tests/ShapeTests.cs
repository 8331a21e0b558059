using System.Reflection;
using System.Text.RegularExpressions;

namespace Cornerwright.Architecture.Tests;

/// <summary>House rules of form that a reader would otherwise have to watch for.</summary>
public partial class ShapeTests
{
    private const int LongestFile = 500;

    /// <summary>Files that were longer when the rule came; it may only shrink.</summary>
    private static readonly string[] StillTooLong = [];

    private static readonly string[] EmptyWords = ["Utils", "Util", "Helper", "Helpers", "Manager", "Managers"];

    private static readonly string[] Rooms =
        ["Cornerwright.Mechanics", "Cornerwright.Garage", "Cornerwright.Workshop", "Cornerwright.Storage", "Cornerwright.Web",
            "cornerwright"];

    [Fact]
    public void No_source_file_is_too_long_to_read()
    {
        var tooLong = Repository.Sources(".cs", ".razor", ".css", ".js")
            .Select(f => (Name: Repository.Relative(f), Lines: File.ReadLines(f).Count()))
            .Where(f => f.Lines > LongestFile && !StillTooLong.Contains(f.Name, StringComparer.Ordinal))
            .Select(f => $"{f.Name}: {f.Lines} lines, at most {LongestFile}: split it");
        Assert.Empty(tooLong);
    }

    [Fact]
    public void Names_say_what_a_thing_is()
    {
        var empty = Rooms.SelectMany(r => Assembly.Load(r).GetTypes()).Select(t => t.Name)
            .Concat(Repository.Sources(".cs", ".razor", ".js").Select(f => Path.GetFileNameWithoutExtension(f)!))
            .Where(n => EmptyWords.Any(w => n.EndsWith(w, StringComparison.Ordinal)));
        Assert.Empty(empty);
    }

    [Fact]
    public void Namespaces_follow_folders()
    {
        var astray = new List<string>();
        foreach (string file in Repository.Sources(".cs").Where(f => Repository.Relative(f).StartsWith("src/", StringComparison.Ordinal)))
        {
            var match = NamespaceLine().Match(File.ReadAllText(file));
            string folder = string.Join('.', Repository.Relative(file).Split('/')[1..^1]);
            if (match.Success && match.Groups[1].Value != folder)
            {
                astray.Add($"{Repository.Relative(file)} declares {match.Groups[1].Value}");
            }
        }

        Assert.Empty(astray);
    }

    [Fact]
    public void No_test_is_skipped()
    {
        var skipping = Repository.Sources(".cs")
            .Where(f => Repository.Relative(f).StartsWith("tests/", StringComparison.Ordinal) && SkipWord().IsMatch(File.ReadAllText(f)))
            .Select(Repository.Relative);
        Assert.Empty(skipping);
    }

    [Fact]
    public void No_region_and_no_work_left_without_a_name()
    {
        var left = Repository.Sources(".cs", ".razor")
            .Where(f => !f.EndsWith(nameof(ShapeTests) + ".cs", StringComparison.Ordinal))
            .SelectMany(f => File.ReadLines(f).Select((line, i) => (File: Repository.Relative(f), Line: i + 1, Text: line)))
            .Where(l => LeftOver().IsMatch(l.Text))
            .Select(l => $"{l.File}:{l.Line}: {l.Text.Trim()}");
        Assert.Empty(left);
    }

    [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex NamespaceLine();

    [GeneratedRegex(@"\[(Fact|Theory)\([^\]]*Skip\s*=|Skip\.(If|Unless)|Assert\.Skip")]
    private static partial Regex SkipWord();

    [GeneratedRegex(@"^\s*#region|//\s*(TODO|FIXME|HACK|XXX)\b|throw new NotImplementedException")]
    private static partial Regex LeftOver();
}
