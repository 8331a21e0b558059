using Cornerwright.Cli.Text;
using Cornerwright.Workshop.Pictures;

namespace Cornerwright.Cli.Tests;

public class LayoutTests
{
    [Fact]
    public void Lines_break_between_words_and_keep_a_number_with_its_unit() =>
        Assert.Equal(["the wheel runs", "25.4 mm into", "the lip"], Wrapping.Lines("the wheel runs 25.4 mm into the lip", 14));

    [Fact]
    public void No_word_is_lost_and_no_line_too_long_unless_a_word_is()
    {
        const int Seed = 20260531;
        var random = new Random(Seed);
        for (int i = 0; i < 500; i++)
        {
            string[] words = [.. Enumerable.Range(0, random.Next(1, 40)).Select(_ => new string('x', random.Next(1, 25)))];
            int width = random.Next(1, 60);
            var lines = Wrapping.Lines(string.Join(' ', words), width).ToList();
            Assert.Equal(words, lines.SelectMany(l => l.Split(' ')));
            Assert.All(lines, l => Assert.True(l.Length <= width || !l.Contains(' ', StringComparison.Ordinal), $"seed {Seed}, draw {i}"));
        }
    }

    [Theory]
    [InlineData(0, "0 %")]
    [InlineData(0.004, "<1 %")]
    [InlineData(0.5, "50 %")]
    [InlineData(0.9974, ">99 %")]
    [InlineData(1, "100 %")]
    public void A_chance_is_certain_only_when_it_is(double probability, string shown) =>
        Assert.Equal(shown, VerdictWords.Percent(probability));

    [Fact]
    public void A_stack_is_drawn_to_scale_within_half_a_row_a_piece()
    {
        StackPiece helper = new("Helper", 0.018, 0.08, Coil: true, Shut: true, 0.060, 0.018);
        StackPiece sheet = new("Sheet", 0.001, 0.08, Coil: false, Shut: false, 0.001, 0.001);
        StackPiece main = new("Main", 0.150, 0.09, Coil: true, Shut: false, 0.200, 0.085);
        var state = new StackState("ride", 0, 0.179, 0.010, 0, null, [helper, sheet, main]);
        double scale = StackDrawing.Scale([state], 30);
        var rows = StackDrawing.Rows(state, scale);
        Assert.Equal(0.179 / 30, scale, 1e-12);
        Assert.All(rows, r => Assert.Equal(StackDrawing.Width, r.Length));

        // From the top: seat, gap, main, sheet, helper, perch.
        Assert.Equal(Math.Round(0.010 / scale), rows.Count(r => r.Contains(':', StringComparison.Ordinal)));
        Assert.Equal(Math.Round(0.150 / scale), rows.Count(r => r.Contains('.', StringComparison.Ordinal)));
        Assert.Equal(1, rows.Count(r => r.Contains('_', StringComparison.Ordinal)));
        Assert.Equal(Math.Round(0.018 / scale), rows.Count(r => r.Contains('=', StringComparison.Ordinal)));
        Assert.StartsWith("vvv", rows[0]);
        Assert.StartsWith("^^^", rows[^1]);
        Assert.Contains(rows, r => r.Contains(" C ", StringComparison.Ordinal));
    }
}
