using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Xunit.Abstractions;

namespace Cornerwright.Workshop.Tests.Relations;

/// <summary>
/// A check whose reading is missing says so. Seen: with the caliper not measured 129 checks held, and the word caliper stood nowhere.
/// </summary>
public class NothingVanishesTests(ITestOutputHelper output)
{
    private static readonly Car Demo = DemoCar.Read();

    /// <summary>A height that nobody wants is no check; everything else that can be typed is a reading.</summary>
    private static readonly string[] Wishes = ["limits/frontHeight", "limits/rearHeight"];

    [Fact]
    public void No_check_disappears_with_a_reading()
    {
        string[] builds = ["now", "gravel-3", "touring", "gravel-1"];
        var before = builds.ToDictionary(b => b, b => Keys(Demo, b));
        var vanished = new List<string>();
        int removed = 0;
        foreach (var (path, field, _) in EveryReading.Of(Demo))
        {
            // A field that the document cannot do without is not removed: the record goes with it.
            if (field.Words.Needed || Wishes.Contains(path) || CarPath.Without(Demo, path) is not { } car)
            {
                continue;
            }

            removed++;
            foreach (string build in builds.Where(b => Bears(path, b)))
            {
                vanished.AddRange(before[build].Except(Keys(car, build)).Select(k => $"without {path}, build {build} loses {k}"));
            }
        }

        output.WriteLine(string.Join('\n', vanished));
        Assert.True(removed > 250, $"only {removed} readings were removed");
        Assert.Empty(vanished);
    }

    [Theory]
    [InlineData("frontLeft/calliperRadius", "front-left/calliper-barrel", "frontLeft/calliperRadius")]
    [InlineData("frontLeft/calliperProud", "front-left/calliper-spokes", "frontLeft/calliperProud")]
    [InlineData("parts/wheels/w-gravel-40/loadRating", "rear-right/wheel-load", "parts/wheels/w-gravel-40/loadRating")]
    [InlineData("parts/springs/f-6-250/tensileStrength", "front-left/spring-stress-f-6-250", "parts/springs/f-6-250/tensileStrength")]
    [InlineData("parts/springs/f-6-250/greatestDeflection", "front-left/spring-travel-f-6-250", "parts/springs/f-6-250/greatestDeflection")]
    [InlineData("parts/dampers/d-front/threadLow", "front-left/collar-thread", "parts/dampers/d-front/threadLow")]
    [InlineData("parts/dampers/d-front/windowHigh", "front-left/damper-window", "parts/dampers/d-front/windowHigh")]
    [InlineData("parts/topMounts/m-ball/register", "front-left/fit-mount-f-6-250", "parts/topMounts/m-ball/register")]
    [InlineData("parts/sheets/f-adapter/collarHeight", "front-left/captive-f-adapter", "parts/sheets/f-adapter/collarHeight")]
    public void A_check_without_its_reading_is_unknown_and_names_it(string removed, string key, string missing)
    {
        var judged = Judge.Build(CarPath.Without(Demo, removed)!, "gravel-3", JudgeOptions.FindingsOnly);
        var finding = Assert.Single(judged.Findings, f => f.Key == key);
        Assert.Equal(Verdict.Unknown, finding.Verdict);
        Assert.Contains(finding.Missing, m => m.Path == missing);
        Assert.NotEqual(Verdict.Holds, judged.Verdict);
    }

    [Fact]
    public void A_plain_pad_without_any_register_is_no_adapter()
    {
        Assert.DoesNotContain(Keys(Demo, "now"), k => k.Contains("r-rubber", StringComparison.Ordinal));
        Assert.IsType<Sheet>(Demo.Parts.Sheets.First(s => s.Id == "r-rubber"));
    }

    // A part that a build does not use and the settings of another build cannot change what is checked of it.
    private static bool Bears(string path, string build) => !path.StartsWith("builds/", StringComparison.Ordinal)
        || path.StartsWith($"builds/{build}/", StringComparison.Ordinal) || path.StartsWith("builds/now/", StringComparison.Ordinal);

    private static HashSet<string> Keys(Car car, string build) =>
        [.. Judge.Build(car, build, JudgeOptions.FindingsOnly).Findings.Select(f => f.Key)];
}
