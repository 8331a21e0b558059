using Cornerwright.Workshop.Relations;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Pages;

/// <summary>
/// Numbers that do not go together: each with its sentence, a way to its fields, and a box for a word of why it is right.
/// </summary>
public sealed partial class RelationStrip
{
    private const int MostTies = 8;

    private readonly Dictionary<string, string> _why = new(StringComparer.Ordinal);
    private string? _wanting;

    [Parameter, EditorRequired] public CarRelations Relations { get; set; } = CarRelations.None;

    [Parameter, EditorRequired] public string CarId { get; set; } = "";

    /// <summary>On paper nothing can be confirmed.</summary>
    [Parameter] public bool Print { get; set; }

    /// <summary>A relation and a word of why it is so.</summary>
    [Parameter] public EventCallback<(Relation Relation, string Why)> Confirmed { get; set; }

    [Parameter] public EventCallback<Relation> TakeBack { get; set; }

    private string Why(Relation relation) => _why.GetValueOrDefault(relation.Id, "");

    private async Task Confirm(Relation relation)
    {
        string why = Why(relation);
        _wanting = string.IsNullOrWhiteSpace(why) ? relation.Id : null;
        if (_wanting is null)
        {
            await Confirmed.InvokeAsync((relation, why));
        }
    }

    private static string Band(Relation relation) => relation switch
    {
        { IsConfirmed: true } => "Confirmed",
        { Band: Workshop.Relations.Band.CannotBe } => "Cannot be",
        _ => "Surprising",
    };

    private static string Class(Relation relation) => relation switch
    {
        { IsConfirmed: true } => "confirmed",
        { Band: Workshop.Relations.Band.CannotBe } => "cannot-be",
        _ => "surprising",
    };
}
