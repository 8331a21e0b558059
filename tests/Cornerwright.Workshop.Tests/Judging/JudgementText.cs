using System.Globalization;
using System.Text;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Tests.Judging;

/// <summary>A judgement as people read it, rounded: what must be the same on every run and thread count.</summary>
internal static class JudgementText
{
    public static string Of(Judgement judgement)
    {
        var text = new StringBuilder();
        foreach (var f in judgement.Findings)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"{f.Key}|{f.Verdict}|{f.Value?.Text}|{f.Low?.Text}|{f.High?.Text}|{f.Margin?.Text}|{f.Doubt?.Text}|"
                + $"{f.Probability:0.0000}|{f.FirstOrderEnough}|{f.Worst?.Words}|{f.Sentence}");
            text.AppendJoin(';', f.Missing).AppendJoin(';', f.Assumptions);
            text.AppendJoin(';', f.Deciding.Select(d => string.Create(CultureInfo.InvariantCulture, $"{d.Label} {d.Share:0.000}")));
            text.AppendJoin(';', f.Cures.Select(c => $"{c.Sentence} {c.Gain.Text} {c.MarginAfter.Text} {c.Side} {c.Setting} {c.NewValue}"))
                .Append('\n');
        }

        foreach (var f in judgement.Figures)
        {
            text.Append(CultureInfo.InvariantCulture, $"{f.Key}|{f.Title}|{f.Value.Text}|{f.Doubt?.Text}|{f.Note}\n");
        }

        foreach (var p in judgement.Pictures)
        {
            text.AppendJoin(';', p.Marks.Select(m => string.Create(CultureInfo.InvariantCulture,
                $"{m.Event} {m.Travel * 1000:0.00} {m.Doubt * 1000:0.00} {m.Words}"))).Append('\n');
            text.AppendJoin(';', p.Stack.Select(s => string.Create(CultureInfo.InvariantCulture,
                $"{s.State} {s.Space * 1000:0.00} {s.Gap * 1000:0.00} {s.Force:0.0}"))).Append('\n');
        }

        return text.ToString();
    }
}
