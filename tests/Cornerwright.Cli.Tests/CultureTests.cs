using System.Globalization;

namespace Cornerwright.Cli.Tests;

/// <summary>Every verb answers alike whatever the culture of the thread that asks: the rooms below are a library too.</summary>
public class CultureTests
{
    [Theory]
    [InlineData("list demo.json --json")]
    [InlineData("check demo.json")]
    [InlineData("check broken.json")]
    [InlineData("check cut-short.json")]
    [InlineData("judge demo.json now")]
    [InlineData("judge demo.json gravel-1 --json")]
    [InlineData("judge demo.json winter")]
    [InlineData("judge demo.json gravel-2 --brief --settle")]
    [InlineData("judge demo.json 1,5")]
    [InlineData("compare demo.json gravel-2 winter")]
    [InlineData("stack demo.json touring --corner front-left")]
    [InlineData("sweep demo.json gravel-3 --corner front-left --hardpoints --travel -120,0,120 --steer -32..32/32")]
    [InlineData("sweep demo.json --travel -80..160/0.00001")]
    [InlineData("order demo.json --build gravel-3")]
    [InlineData("order demo.json --from gravel-2 --build winter --json")]
    [InlineData("turns demo.json gravel-3 --height front=423mm --cross 50%")]
    [InlineData("turns demo.json gravel-3 --height front=600mm")]
    [InlineData("turns demo.json gravel-3 --camber front=-1.5deg --json")]
    [InlineData("learn demo.json")]
    [InlineData("rank demo.json --axle rear --from gravel-2 --parts wheels=w-gravel-40 --parts tyres=t-gravel-55 --list 3")]
    [InlineData("widest demo.json gravel-3 --corner rear-left")]
    [InlineData("scan-info demo/wagtail-front-left.ply")]
    [InlineData("scan-info far.obj")]
    [InlineData("import demo.json parts.csv --kind tyres --into more.json")]
    [InlineData("import demo.json wrong.csv --kind tyres --into more.json")]
    [InlineData("demo my.json")]
    public void An_answer_does_not_depend_on_the_callers_culture(string typed)
    {
        var here = Ask(typed, CultureInfo.InvariantCulture);
        var there = Ask(typed, WithCommaAndOtherMinus());
        Assert.True(here.Answer.Out.Length + here.Answer.Err.Length > 0, "nothing was answered");
        Assert.Equal(here.Answer, there.Answer);
        Assert.Equal(here.Written, there.Written);
    }

    // The culture bites: what is formatted without saying invariant comes out differently.
    [Fact]
    public void The_other_culture_writes_numbers_differently()
    {
        string written = "";
        Under(WithCommaAndOtherMinus(), () => written = (-1234.5).ToString("N1", CultureInfo.CurrentCulture));
        Assert.Equal("~1.234,5", written);
    }

    private static (Answer Answer, string? Written) Ask(string typed, CultureInfo culture)
    {
        var terminal = Terminal.WithDemo();
        string demo = terminal.Files[Terminal.DemoPath];
        terminal.Files["broken.json"] = demo.Replace("\"in\"", "\"1,5 in\"", StringComparison.Ordinal)
            .Replace(" mm\"", " mn\"", StringComparison.Ordinal);
        terminal.Files["cut-short.json"] = demo[..(demo.Length / 2)];
        terminal.Files["far.obj"] = "v -1.5 0 0\nv 1e30 2 3\nf 1 2 -9\n";
        terminal.Files["parts.csv"] = "id;name;size;tread\nt-comma;Seen at a sale;205/55 R16 91V;6,5 mm\n";
        terminal.Files["wrong.csv"] = "id;name;size\nt-comma;Seen at a sale;205/55 R99,5 91V\n";
        Answer? answer = null;
        Under(culture, () => answer = terminal.Run(typed.Split(' ')));
        string? written = new[] { "more.json", "my.json" }.Where(terminal.Files.Exists).Select(f => terminal.Files[f]).FirstOrDefault();
        return (answer!, written);
    }

    private static void Under(CultureInfo culture, Action work)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = culture;
        try
        {
            work();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    /// <summary>Made from the invariant culture, so that it is there where the system knows no others.</summary>
    private static CultureInfo WithCommaAndOtherMinus()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        culture.NumberFormat.PercentDecimalSeparator = ",";
        culture.NumberFormat.NegativeSign = "~";
        culture.NumberFormat.PositiveSign = "§";
        culture.DateTimeFormat.DateSeparator = ".";
        culture.DateTimeFormat.ShortDatePattern = "dd.MM.yyyy";
        culture.DateTimeFormat.TimeSeparator = "h";
        return culture;
    }
}
