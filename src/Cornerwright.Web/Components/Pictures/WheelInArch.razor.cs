using System.Globalization;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Pictures;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>Present and proposed wheel over each other, with what stands beside them and the nearest gaps.</summary>
public sealed partial class WheelInArch
{
    private SectionLayout _layout = SectionLayout.Of(new WheelSection([], []), null);
    private IReadOnlyList<SectionGap> _shown = [];
    private (CornerPlace Corner, WheelSection? Section, string? State)? _drawn;
    private bool _changed = true;
    private List<(string? State, string Words)> _states = [];

    [Parameter, EditorRequired] public CornerPlace Corner { get; set; }
    [Parameter, EditorRequired] public WheelSection? Section { get; set; }

    /// <summary>The state shown; null for the worst of every obstacle.</summary>
    [Parameter] public string? State { get; set; }

    [Parameter] public EventCallback<string?> StateChanged { get; set; }

    private string Id => "section-" + Corner;

    private string Description => _shown.Count == 0
        ? "Nothing stands near this wheel in this state."
        : "Nearest gaps: " + string.Join("; ", _shown.Select((g, i) => $"{SectionLayout.Letter(i)}, {g.Obstacle}, {Px.Mm(g.Gap)} mm"))
        + ".";

    protected override void OnParametersSet()
    {
        var asked = (Corner, Section, State);
        _changed = _drawn is not { } drawn || drawn.Corner != Corner || !ReferenceEquals(drawn.Section, Section) || drawn.State != State;
        if (!_changed)
        {
            return;
        }

        _drawn = asked;
        var section = Section ?? new WheelSection([], []);
        _states = [(null, "worst"), .. section.Gaps.Where(g => !g.Worst).OrderBy(g => g.Travel).Select(g => g.State).Distinct()
            .Select(s => ((string?)s, s))];

        // A state of another corner may not exist at this one.
        string? state = _states.Any(s => s.State == State) ? State : null;
        _layout = SectionLayout.Of(section, state);
        _shown = SectionLayout.Shown(section.Gaps, state);
    }

    protected override bool ShouldRender() => _changed;

    private static bool OfWheel(string kind) => kind is "tyre" or "tyre now" or "rim" or "rim now";

    private static string Where(SectionGap gap)
    {
        string steer = Math.Abs(gap.Steer) < 1e-3 ? ""
            : $", steered {Math.Abs(gap.Steer) * 180 / Math.PI:F0}° to the {(gap.Steer > 0 ? "left" : "right")}";
        return $"wheel at {Px.Travel(gap.Travel)} mm{steer}, {Clock(gap.Clock)} o'clock";
    }

    /// <summary>"12", "10:30".</summary>
    private static string Clock(double hours)
    {
        if (!double.IsFinite(hours))
        {
            return "12";
        }

        int minutes = (int)Math.Round(((hours % 12) + 12) % 12 * 60 / 15) * 15;
        int hour = minutes / 60 % 12;
        string at = (hour == 0 ? 12 : hour).ToString(CultureInfo.InvariantCulture);
        return minutes % 60 == 0 ? at : at + ":" + (minutes % 60).ToString("00", CultureInfo.InvariantCulture);
    }
}
