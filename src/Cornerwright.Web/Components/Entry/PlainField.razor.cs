using System.Globalization;
using Cornerwright.Garage.Access;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Designations;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Entry;

/// <summary>A field that is not a reading. What cannot be read stays in its box with the reason.</summary>
public partial class PlainField
{
    private const decimal MostMoney = 1_000_000_000;

    private string _text = "";
    private object? _shown;
    private bool _loaded;
    private Problem? _problem;

    [Parameter, EditorRequired] public FieldShape Field { get; set; } = null!;
    [Parameter] public object? Value { get; set; }
    [Parameter] public string Path { get; set; } = "";
    [Parameter] public string Where { get; set; } = "";
    [Parameter] public Car? Car { get; set; }
    [Parameter, EditorRequired] public Mend Mend { get; set; } = null!;

    /// <summary>Why it cannot be changed now; empty if it can.</summary>
    [Parameter] public string Locked { get; set; } = "";

    private string RowId => FieldPaths.RowId(Path);
    private string BoxId => RowId + "-box";
    private string HowId => RowId + "-how";
    private string FullName => Where.Length == 0 ? Field.Label : Where + " / " + Field.Label;

    protected override void OnParametersSet()
    {
        if (!_loaded || !Equals(_shown, Value))
        {
            (_loaded, _shown, _problem) = (true, Value, null);
            _text = Value is IFormattable number ? number.ToString(null, CultureInfo.InvariantCulture) : Value?.ToString() ?? "";
        }
    }

    private static string Text(ChangeEventArgs e) => e.Value?.ToString() ?? "";

    private void Type(ChangeEventArgs e)
    {
        _text = Text(e);
        var (value, problem) = Read(_text);
        _problem = problem;
        if (problem is null && !Equals(value, Value))
        {
            Put(value);
        }
    }

    /// <summary>The browser's own date box gives a whole date or nothing.</summary>
    private void PutDate(ChangeEventArgs e) =>
        Put(DateOnly.TryParseExact(Text(e), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : null);

    private void Put(object? value) => Mend(FullName, _ => value);

    private (object? Value, Problem? Problem) Read(string text)
    {
        string trimmed = text.Trim();
        switch (Field.Kind)
        {
            case FieldKind.Whole:
                return trimmed.Length == 0 ? (null, null)
                    : int.TryParse(trimmed, NumberStyles.None, CultureInfo.InvariantCulture, out int whole) && whole <= 1000 ? (whole, null)
                    : (null, new Problem(FullName, text, "a whole number, 0 to 1000", "Write digits only."));
            case FieldKind.Number when Field.PropertyName == nameof(Gap.Clock):
                return double.TryParse(trimmed, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double clock)
                    && clock is >= 0 and <= 12 ? (clock, null)
                    : (null, new Problem(FullName, text, "0 to 12, as on a clock face", "12 is up; half past ten is 10.5."));
            case FieldKind.Number when trimmed.Length == 0 && Field.IsOptional:
                return (null, null);
            case FieldKind.Number:
                return double.TryParse(trimmed, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign,
                    CultureInfo.InvariantCulture, out double number) && double.IsFinite(number) ? (number, null)
                    : (null, new Problem(FullName, text, "a number", "Write it with a point: 1.5."));
            case FieldKind.Money:
                return trimmed.Length == 0 ? (null, null)
                    : decimal.TryParse(trimmed, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal money)
                    && money <= MostMoney ? (money, null)
                    : (null,
                        new Problem(FullName, text, "a price, 0 to 1000000000", "Write it with a point and without the currency: 129.50."));
            case FieldKind.Text when ThreadOrClassProblem(trimmed) is { } problem:
                return (null, problem);
            default:
                return Field.Words.Needed && trimmed.Length == 0
                    ? (null, new Problem(FullName, text, "some text", "Fill it in."))
                    : (text, DesignationProblem(text));
        }
    }

    /// <summary>Tyre and rim designations are read at once, so that a slip shows where it was made.</summary>
    private Problem? DesignationProblem(string text) => (Field.PropertyName, Path) switch
    {
        ("Designation", _) when Path.StartsWith("parts/wheels", StringComparison.Ordinal) =>
            First(RimDesignation.Parse(text, FullName).Problems),
        ("Designation", _) when Path.StartsWith("parts/tyres", StringComparison.Ordinal) =>
            First(TyreDesignation.Parse(text, FullName).Problems),
        _ => null,
    };

    /// <summary>A thread and a property class are read at once too.</summary>
    private Problem? ThreadOrClassProblem(string text) => (Field.PropertyName, text.Length) switch
    {
        (nameof(Fastener.Thread), > 0) when Field.Words.How.StartsWith('M') => First(ThreadDesignation.Parse(text, FullName).Problems),
        (nameof(Fastener.Class), > 0) => AccessCheck.ClassProblem(text, FullName),
        _ => null,
    };

    private static Problem? First(IReadOnlyList<Problem> problems) => problems.Count > 0 ? problems[0] : null;
}
