using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Components.Entry;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;

namespace Cornerwright.Web.Components.Pages;

/// <summary>A parts list from a CSV file. All rows go on the shelf, or none and every reason.</summary>
public partial class PartsImport
{
    private const int MostProblems = 50;
    private const int Samples = 3;

    private CsvTable? _table;
    private ColumnChoice[] _choices = [];
    private IReadOnlyList<Problem> _problems = [];
    private ReadingSource _source = ReadingSource.DataSheet;
    private string _name = "";
    private string _done = "";

    [Inject] private Workbench Bench { get; set; } = null!;

    [Parameter, EditorRequired] public PartKind Kind { get; set; } = null!;

    /// <summary>The person is done with it.</summary>
    [Parameter] public EventCallback Closed { get; set; }

    /// <summary>Takes a file's bytes: for the button, and for tests.</summary>
    public void Take(string name, ReadOnlyMemory<byte> bytes)
    {
        var read = CsvTable.Read(bytes);
        (_name, _problems, _done) = (name, read.Problems, "");
        _table = read.Try(out var table) ? table : null;
        _choices = _table is null ? [] : [.. ColumnChoice.Guess(_table.Header, Kind)];
    }

    private async Task Load(InputFileChangeEventArgs e)
    {
        using var room = new MemoryStream();
        try
        {
            await using var stream = e.File.OpenReadStream(CsvTable.GreatestBytes);
            await stream.CopyToAsync(room);
        }
        catch (IOException error)
        {
            (_table, _problems) =
                (null, [new Problem(e.File.Name, $"{e.File.Size} bytes", $"at most {CsvTable.GreatestBytes} bytes", error.Message)]);
            return;
        }

        Take(e.File.Name, room.ToArray());
    }

    private async Task Close() => await Closed.InvokeAsync();

    private void Import()
    {
        if (_table is not { } table || Bench.Car is not { } car)
        {
            return;
        }

        var (whole, choices) = WithIds(table, car);
        var imported = PartsCsv.Import(whole, Kind, choices, car.Parts, _source);
        _problems = imported.Problems;
        if (!imported.Try(out var parts))
        {
            return;
        }

        // The whole car must read back with them: ids, lengths in order, designations.
        var readBack = OpenEntries.ReadBack(car with { Parts = PartsCsv.Put(car.Parts, parts) });
        _problems = readBack.Problems;
        if (readBack.Ok)
        {
            Bench.Apply($"Import {Kind.On(parts).Count} {Kind.Label.ToLowerInvariant()}", c =>
                c with { Parts = PartsCsv.Put(c.Parts, parts) });
            (_done, _table) = ($"{Kind.On(parts).Count} {Kind.Label.ToLowerInvariant()} from {_name} are on the shelf.", null);
        }
    }

    /// <summary>A list of a shop has names and no ids: then ids are made from the names, as for a part typed by hand.</summary>
    private (CsvTable Table, ColumnChoice[] Choices) WithIds(CsvTable table, Car car)
    {
        int name = Array.FindIndex(_choices, c => c is { Field.Name: "name", Piece: ColumnPiece.Value });
        if (name < 0 || _choices.Any(c => c.Field?.Name == "id"))
        {
            return (table, _choices);
        }

        var taken = Shelf.TakenIds(car, Kind).ToList();
        var rows = new List<CsvRow>(table.Rows.Count);
        foreach (var row in table.Rows)
        {
            string id = FreshId.FromName(name < row.Cells.Count ? row.Cells[name] : "", taken);
            taken.Add(id);
            rows.Add(row with { Cells = [.. row.Cells, id] });
        }

        return (table with { Header = [.. table.Header, "id"], Rows = rows }, [.. _choices, new ColumnChoice(Kind.Shape.ByName["id"])]);
    }

    private static IEnumerable<ColumnPiece> PiecesOf(FieldShape field) =>
        field.Kind == FieldKind.Reading ? Enum.GetValues<ColumnPiece>() : [ColumnPiece.Value];

    private static string TargetOf(ColumnChoice choice) => choice.Field is { } field ? $"{field.Name}/{choice.Piece}" : "";

    private static bool TakesUnit(ColumnChoice choice) =>
        choice is { Field.Kind: FieldKind.Reading, Piece: ColumnPiece.Value or ColumnPiece.Tolerance };

    private void Choose(int column, string target)
    {
        string[] halves = target.Split('/');
        _choices[column] = halves.Length == 2 && Kind.Shape.ByName.TryGetValue(halves[0], out var field)
            && Enum.TryParse(halves[1], out ColumnPiece piece)
            ? new ColumnChoice(field, piece)
            : ColumnChoice.LeftOut;
    }

    private void ChooseUnit(int column, string? symbol) =>
        _choices[column] = _choices[column] with { DefaultUnit = Units.Of(_choices[column].Field!.Words.Dimension)
            .FirstOrDefault(u => u.Symbol == symbol) };
}
