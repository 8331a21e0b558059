using System.Globalization;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Pictures;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>Every piece of a spring stack in order and to scale, in each of its states side by side.</summary>
public sealed partial class StackDrawing
{
    private const double LabelHeight = 15.5;
    private StackLayout _layout = StackLayout.Of([]);
    private IReadOnlyList<StackState>? _drawn;
    private bool _changed = true;

    [Parameter, EditorRequired] public CornerPlace Corner { get; set; }
    [Parameter, EditorRequired] public IReadOnlyList<StackState> States { get; set; } = [];

    /// <summary>Stands above the drawing; left out, the corner's name does.</summary>
    [Parameter] public string? Title { get; set; }

    private string Id => "stack-" + Corner;

    private double Width => (2 * StackLayout.Margin) + (StackLayout.ColumnWidth * Math.Max(1, States.Count));

    private string Description => string.Join(" ", States.Select(s =>
        $"{s.State}: {Px.Mm(s.Space)} mm between the seats, {Force(s.Force)}, "
        + (s.Gap > 0 ? $"loose by {Px.Mm(s.Gap)} mm; " : "seated; ")
        + string.Join(", ", s.Pieces.Select(p => $"{p.Name} {Px.Mm(p.Length)} mm{(p.Coil && p.Shut ? ", coils touching" : "")}")) + "."));

    protected override void OnParametersSet()
    {
        _changed = !ReferenceEquals(_drawn, States);
        if (_changed)
        {
            (_drawn, _layout) = (States, StackLayout.Of(States));
        }
    }

    protected override bool ShouldRender() => _changed;

    private double[] Labels(PlacedState state) => LabelSpread.Place(
        [.. state.Pieces.Select(p => p.Middle)],
        [.. state.Pieces.Select(_ => LabelHeight)],
        26,
        _layout.Height - 16);

    private static double Half(PlacedState state) => state.Pieces.Select(p => p.Width / 2).DefaultIfEmpty(20).Max();

    private static string Force(double newtons) => newtons.ToString("#,0", CultureInfo.InvariantCulture).Replace(',', ' ') + " N";
}
