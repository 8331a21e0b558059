using Cornerwright.Workshop.Findings;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>The margins of a build: each finding with its value on a scale, its doubt, and what would cure it.</summary>
public sealed partial class MarginList
{
    private readonly HashSet<string> _open = new(StringComparer.Ordinal);
    private IReadOnlyList<Finding>? _told;
    private IReadOnlyList<MarginRow> _rows = [];

    [Parameter, EditorRequired] public IReadOnlyList<Finding> Findings { get; set; } = [];

    /// <summary>The user wants to see the build with this cure; without it no cure has a button.</summary>
    [Parameter] public EventCallback<Cure> TryCure { get; set; }

    /// <summary>Address of the page where a reading is entered, by its path in the car document; null where there is none.</summary>
    [Parameter] public Func<string, string?>? LinkTo { get; set; }

    /// <summary>Address of the page where a missing reading is entered, by the finding and the reading's words.</summary>
    [Parameter] public Func<Finding, string, string>? LinkMissing { get; set; }

    [Parameter] public string EmptyWords { get; set; } = "No finding matches this choice.";

    protected override void OnParametersSet()
    {
        if (!ReferenceEquals(_told, Findings))
        {
            (_told, _rows) = (Findings, MarginRow.Of(Findings));
        }
    }

    private static string BodyId(Finding finding) => "finding-" + finding.Key.Replace('/', '-');

    private static string Signed(Measure margin) => margin.Si < 0 ? "short by " + margin.With(-margin.Si).Text : margin.Text + " in hand";

    private static string Limit(Finding finding) => (finding.Value, finding.Low, finding.High) switch
    {
        ({ } v, { } low, { } high) => $"{v.Text}, wanted {low.Number} to {high.Text}",
        ({ } v, { } low, null) => $"{v.Text}, at least {low.Text}",
        ({ } v, null, { } high) => $"{v.Text}, at most {high.Text}",
        ({ } v, null, null) => v.Text,
        _ => "",
    };

    private void Toggle(string key)
    {
        if (!_open.Remove(key))
        {
            _open.Add(key);
        }
    }
}
