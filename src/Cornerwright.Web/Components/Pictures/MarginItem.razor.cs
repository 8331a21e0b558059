using Cornerwright.Workshop.Findings;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>One row of the margins. While a slider moves, a row that reads as before is not drawn again.</summary>
public sealed partial class MarginItem
{
    private string _drawn = "";
    private bool _changed = true;
    private bool _open;

    [Parameter, EditorRequired] public MarginRow Row { get; set; } = default!;
    [Parameter] public EventCallback<Cure> TryCure { get; set; }
    [Parameter] public Func<string, string?>? LinkTo { get; set; }
    private string BodyId => "finding-" + Row.Finding.Key.Replace('/', '-');

    protected override void OnParametersSet()
    {
        // All that a closed row shows; what is open may change in any of its parts.
        var f = Row.Finding;
        string reads =
            $"{Row.Where}|{f.Verdict}|{f.Value?.Text}|{f.Low?.Text}|{f.High?.Text}|{f.Doubt?.Text}|{f.Probability:F3}|{f.Sentence}";
        _changed = _open || reads != _drawn;
        _drawn = reads;
    }

    protected override bool ShouldRender() => _changed;

    private static string Signed(Measure margin) => margin.Si < 0 ? "short by " + margin.With(-margin.Si).Text : margin.Text + " in hand";

    private static string Limit(Finding finding) => (finding.Value, finding.Low, finding.High) switch
    {
        ({ } v, { } low, { } high) => $"{v.Text}, wanted {low.Number} to {high.Text}",
        ({ } v, { } low, null) => $"{v.Text}, at least {low.Text}",
        ({ } v, null, { } high) => $"{v.Text}, at most {high.Text}",
        ({ } v, null, null) => v.Text,
        _ => "",
    };

    private void Toggle() => (_open, _changed) = (!_open, true);
}
