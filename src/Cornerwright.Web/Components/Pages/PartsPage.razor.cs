using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Readings;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Components.Entry;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Cornerwright.Web.Components.Pages;

/// <summary>The shelf, one kind of part at a time; the kind and the part being worked on stand in the address.</summary>
public partial class PartsPage
{
    /// <summary>As many columns as a wide screen shows without squeezing.</summary>
    private const int MostColumns = 5;

    private static readonly string[] Hidden = [nameof(Part.Id)];

    private string _inSight = "";
    private bool _csv;
    private string _refusal = "";
    private IReadOnlyList<Problem> _problems = [];

    [Inject] private IJSRuntime Js { get; set; } = null!;

    [SupplyParameterFromQuery(Name = "kind")] public string? KindName { get; set; }
    [SupplyParameterFromQuery(Name = "part")] public string? PartId { get; set; }

    private PartKind Kind => Shelf.Kind(KindName) ?? Shelf.Kinds[0];

    private IReadOnlyList<Part> Parts => Shelf.Of(Car, Kind);

    /// <summary>A part of this kind that is being made. It waits on the bench, whichever page is looked at meanwhile.</summary>
    private Part? New
    {
        get => (Part?)Bench.InMaking(Kind.Path);
        set => Bench.Make(Kind.Path, value);
    }

    private Part? Open => Parts.FirstOrDefault(p => p.Id == PartId);

    /// <summary>The kind's own fields that some part fills in, in declared order.</summary>
    private IReadOnlyList<FieldShape> Columns =>
        [.. OwnFields.Where(f => Parts.Any(p => FieldSense.Filled(f.Get(p)) || f.Kind == FieldKind.Choice)).Take(MostColumns)];

    private IEnumerable<FieldShape> OwnFields => Kind.Shape.Fields
        .Where(f => f.Kind is FieldKind.Reading or FieldKind.Choice || f.PropertyName == "Designation");

    protected override void OnCarReady()
    {
        (_refusal, _problems) = ("", []);
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        // The form stands below the shelf: bring it into sight when another part is taken up, unless the address names a box in it.
        if (Ready && Open?.Id is { } open && open != _inSight)
        {
            _inSight = open;
            if (!Navigation.Uri.Contains('#', StringComparison.Ordinal))
            {
                await Js.InvokeVoidAsync("cornerwright.show", "h-part");
            }
        }
    }

    private static string Cell(FieldShape field, Part part) => field.Get(part) switch
    {
        null => "",
        Reading reading => reading.Typed,
        string text => text,
        var choice => ChoiceWords.Of(choice),
    };

    private string Summary(Part part) => string.Join(" · ", Columns.Select(c => Cell(c, part)).Where(t => t.Length > 0));

    private void StartNew() => (New, _problems) = (Kind.New(), []);

    /// <summary>A part goes on the shelf when the whole car reads back with it: every reason against it is shown.</summary>
    private void PutNew()
    {
        if (New is not { } part)
        {
            return;
        }

        part = part with { Id = FreshId.FromName(part.Name, Shelf.TakenIds(Car, Kind)) };
        var kind = Kind;
        var read = OpenEntries.ReadBack(Shelf.Put(Car, kind, part));
        _problems = read.Problems;
        if (read.Ok)
        {
            Bench.Apply($"New part: {part.Name}", car => Shelf.Put(car, kind, part));
            New = null;
            Navigation.NavigateTo(Addresses.Part(Id, kind.Name, part.Id));
        }
    }

    private void Duplicate(Part part)
    {
        var kind = Kind;
        string name = "Copy of " + part.Name;
        string id = FreshId.FromName(name, Shelf.TakenIds(Car, kind));
        Bench.Apply($"Duplicate {part.Name}", car => Shelf.Put(car, kind, Shelf.Copy(part, id, name)));
        Navigation.NavigateTo(Addresses.Part(Id, kind.Name, id));
    }

    private void Delete(Part part)
    {
        var kind = Kind;
        var users = Shelf.UsersOf(Car, kind, part.Id);
        if (users.Count > 0)
        {
            _refusal = $"{part.Name} stays on the shelf: it is in {string.Join(", ", users)}. Choose another part there first.";
            return;
        }

        _refusal = "";
        Bench.Apply($"Take {part.Name} off the shelf", car => Shelf.Remove(car, kind, part.Id));
    }

    private void MendPart(string partId, string words, Func<object?, object?> rework)
    {
        var kind = Kind;
        Bench.Apply(words, car => Shelf.Change(car, kind, partId, p => (Part)rework(p)!));
    }
}
