using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;

namespace Cornerwright.Cli.Commands;

/// <summary>Where the columns of a list go: guessed from its header, and put right by what a person says with --map.</summary>
internal static class ColumnMap
{
    /// <summary>Every wrong choice at once.</summary>
    /// <param name="typed">"COLUMN=FIELD", "COLUMN=FIELD.tolerance", "COLUMN=FIELD:UNIT", "COLUMN=" to leave it out.</param>
    public static Checked<IReadOnlyList<ColumnChoice>> Read(IReadOnlyList<string> typed, IReadOnlyList<string> header, PartKind kind)
    {
        var choices = ColumnChoice.Guess(header, kind).ToArray();
        var problems = new List<Problem>();
        foreach (string choice in typed)
        {
            int equals = choice.LastIndexOf('=');
            int column = equals < 0 ? -1
                : header.ToList().FindIndex(h => string.Equals(h.Trim(), choice[..equals].Trim(), StringComparison.OrdinalIgnoreCase));
            if (column < 0)
            {
                problems.Add(new Problem("--map", choice, string.Join(", ", header), "Write COLUMN=FIELD with a column of the list."));
                continue;
            }

            var read = ReadTarget(choice, choice[(equals + 1)..].Trim(), kind);
            problems.AddRange(read.Problems);
            choices[column] = read.Ok ? read.Value : choices[column];
        }

        return problems.Count > 0
            ? Checked<IReadOnlyList<ColumnChoice>>.Wrong(problems)
            : Checked<IReadOnlyList<ColumnChoice>>.From(choices);
    }

    /// <summary>"Free length", "Free length, tolerance", "(left out)".</summary>
    public static string Words(ColumnChoice choice) => choice switch
    {
        { Field: null } => "(left out)",
        { Field: { } field, Piece: ColumnPiece.Value } => field.Label,
        { Field: { } field } => $"{field.Label}, {choice.Piece.ToString().ToLowerInvariant()}",
    };

    private static Checked<ColumnChoice> ReadTarget(string choice, string target, PartKind kind)
    {
        if (target.Length == 0)
        {
            return Checked<ColumnChoice>.From(ColumnChoice.LeftOut);
        }

        int colon = target.IndexOf(':', StringComparison.Ordinal);
        (string name, string unitText) = colon < 0 ? (target, "") : (target[..colon].Trim(), target[(colon + 1)..].Trim());
        int point = name.LastIndexOf('.');
        bool hasPiece = point > 0;
        var piece = ColumnPiece.Value;
        if (hasPiece && (!Enum.TryParse(name[(point + 1)..], ignoreCase: true, out piece) || !Enum.IsDefined(piece)))
        {
            return Checked<ColumnChoice>.Wrong(
                new Problem("--map", choice, "tolerance, spread, source or date behind the point", "Write FIELD.tolerance, for example."));
        }

        string fieldName = hasPiece ? name[..point] : name;
        var field = ColumnChoice.FieldsOf(kind).FirstOrDefault(f =>
            string.Equals(f.Name, fieldName, StringComparison.OrdinalIgnoreCase)
                || string.Equals(f.Label, fieldName, StringComparison.OrdinalIgnoreCase));
        if (field is null)
        {
            return Checked<ColumnChoice>.Wrong(new Problem("--map", choice,
                string.Join(", ", ColumnChoice.FieldsOf(kind).Select(f => f.Name)), "Name a field of this kind of part."));
        }

        if (unitText.Length == 0)
        {
            return Checked<ColumnChoice>.From(new ColumnChoice(field, piece));
        }

        return field.Kind == FieldKind.Reading && Units.Find(unitText, field.Words.Dimension) is { } unit
            ? Checked<ColumnChoice>.From(new ColumnChoice(field, piece, unit))
            : Checked<ColumnChoice>.Wrong(new Problem("--map", choice,
                field.Kind == FieldKind.Reading ? $"a unit such as {field.Unit!.Symbol}"
                    : "no unit: the field is not a quantity", "Correct the unit behind the colon, or take it out."));
    }
}
