using Cornerwright.Workshop.Findings;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>The margins of a build: each finding with its value on a scale, its doubt, and what would cure it.</summary>
public sealed partial class MarginList
{
    private IReadOnlyList<Finding>? _told;
    private IReadOnlyList<MarginRow> _rows = [];
    private bool _changed = true;

    [Parameter, EditorRequired] public IReadOnlyList<Finding> Findings { get; set; } = [];

    /// <summary>The user wants to see the build with this cure; without it no cure has a button.</summary>
    [Parameter] public EventCallback<Cure> TryCure { get; set; }

    /// <summary>Address of the page where a reading is entered, by its path in the car document; null where there is none.</summary>
    [Parameter] public Func<string, string?>? LinkTo { get; set; }

    [Parameter] public string EmptyWords { get; set; } = "No finding matches this choice.";

    protected override void OnParametersSet()
    {
        _changed = !ReferenceEquals(_told, Findings);
        if (_changed)
        {
            (_told, _rows) = (Findings, MarginRow.Of(Findings));
        }
    }

    protected override bool ShouldRender() => _changed;
}
