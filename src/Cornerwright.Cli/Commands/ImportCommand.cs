using System.ComponentModel;
using Cornerwright.Cli.Edges;
using Cornerwright.Cli.Json;
using Cornerwright.Cli.Text;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Readings;
using Spectre.Console.Cli;

namespace Cornerwright.Cli.Commands;

/// <summary>Ends with the name of every kind of part that there is.</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class PartKindsDescriptionAttribute(string words) : DescriptionAttribute
{
    public override string Description
    {
        get
        {
            string[] names = [.. PartKind.All.Select(k => k.Name)];
            return $"{words}{string.Join(", ", names[..^1])} or {names[^1]}.";
        }
    }
}

public sealed class ImportSettings : CarSettings
{
    [CommandArgument(1, "<LIST>")]
    [Description("The parts list, CSV with a header line.")]
    public string List { get; init; } = "";

    [CommandOption("--kind <SHELF>")]
    [PartKindsDescription("What the rows are: ")]
    public string Kind { get; init; } = "";

    [CommandOption("--map <COLUMN=FIELD>")]
    [Description("Where a column goes, if its heading does not say so: \"Len=freeLength\", with a "
        + "unit for bare numbers \"Len=freeLength:mm\", \"Len=\" to leave it out. May be repeated.")]
    public string[] Map { get; init; } = [];

    [CommandOption("--source <WORD>")]
    [Description("Where the numbers come from: dataSheet (if not given), calliper, tape, scale, gauge or guess.")]
    public string Source { get; init; } = "dataSheet";

    [CommandOption("--try")]
    [Description("Only look: nothing is written.")]
    public bool Try { get; init; }
}

/// <summary>Puts a parts list on the shelf of a car file: every row, or none and every reason why.</summary>
public sealed class ImportCommand(Surroundings around) : Verb<ImportSettings>(around)
{
    protected override int Act(ImportSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var car = TakeCar(settings.File, out var asRead);
        var list = Around.Files.Read(settings.List);
        var kind = PartKind.Find(settings.Kind);
        List<Problem> problems = [.. car.Problems, .. list.Problems];
        if (kind is null)
        {
            problems.Add(new Problem("--kind", settings.Kind, string.Join(", ", PartKind.All.Select(k => k.Name)),
                "Say what the rows of the list are."));
        }

        if (!Enum.TryParse(settings.Source, ignoreCase: true, out ReadingSource source) || !Enum.IsDefined(source)
            || int.TryParse(settings.Source, out _))
        {
            problems.Add(new Problem("--source", settings.Source, "dataSheet, calliper, tape, scale, gauge, guess, setting",
                "Choose one of these."));
        }

        if (problems.Count > 0)
        {
            return Refuse(settings, problems);
        }

        var table = CsvTable.Read(list.Value);
        if (!table.Ok)
        {
            return Refuse(settings, table.Problems);
        }

        var columns = ColumnMap.Read(settings.Map, table.Value.Header, kind!);
        if (!columns.Ok)
        {
            return Refuse(settings, columns.Problems);
        }

        var parts = PartsCsv.Import(table.Value, kind!, columns.Value, car.Value.Parts, source);
        if (!parts.Ok)
        {
            return Refuse(settings, parts.Problems);
        }

        var grown = car.Value with { Parts = PartsCsv.Put(car.Value.Parts, parts.Value) };
        if (!settings.Try && PutBack(settings.File, grown, asRead) is { } problem)
        {
            return Refuse(settings, [problem]);
        }

        Report(settings, kind!, columns.Value, table.Value, parts.Value.All().Count());
        return ExitCode.Holds;
    }

    private void Report(ImportSettings settings, PartKind kind, IReadOnlyList<ColumnChoice> columns, CsvTable table, int count)
    {
        if (settings.Json)
        {
            Around.Out.Document(ImportJson.Write(kind, table.Header, columns, count, written: !settings.Try));
            return;
        }

        Around.Out.Table(["column", "goes to", "unit of bare numbers"],
            table.Header.Zip(columns).Select(p => new[] { p.First, ColumnMap.Words(p.Second), p.Second.DefaultUnit?.Symbol ?? "" }));
        Around.Out.Line("");
        string done = settings.Try ? $"could be put on the shelf of {settings.File}; nothing was written."
            : $"put on the shelf of {settings.File}.";
        Around.Out.Line($"{count} of kind \"{kind.Label}\" {done}");
    }
}
