using System.Globalization;
using System.Text;
using Cornerwright.Web.Components.Pictures;

namespace Cornerwright.Web.Components.Linkages;

/// <summary>A chart laid out in drawing units: what stands where.</summary>
public sealed class CurveLayout
{
    /// <summary>Drawing units.</summary>
    public const double Width = 400, Height = 230, Left = 50, Right = 390, Top = 12, Bottom = 190;

    private readonly CurveSheet _sheet;

    /// <param name="sheet">With at least one value.</param>
    public CurveLayout(CurveSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        _sheet = sheet;
        double[] values = [.. sheet.Lines.SelectMany(l => l.Values).OfType<double>()];
        double narrowest = 20 * sheet.Quantity.Least;
        Up = values.Length == 0 ? NiceScale.Over(0, 0, narrowest) : NiceScale.Over(values.Min(), values.Max(), narrowest, 4);
        Across = NiceScale.Over(sheet.PlacesMm[0], sheet.PlacesMm[^1], 1, 7);
    }

    /// <summary>Scale of the values.</summary>
    public NiceScale Up { get; }

    /// <summary>Scale of travel or rack; only marks between the ends are drawn.</summary>
    public NiceScale Across { get; }

    /// <summary>Marks of travel or rack that lie within the sweep, mm.</summary>
    public IEnumerable<double> AcrossMarks => Across.Marks.Where(m => m >= _sheet.PlacesMm[0] - 1e-9 && m <= _sheet.PlacesMm[^1] + 1e-9);

    /// <summary>Where a place stands, drawing units.</summary>
    public double X(double placeMm) =>
        Left + ((placeMm - _sheet.PlacesMm[0]) / (_sheet.PlacesMm[^1] - _sheet.PlacesMm[0]) * (Right - Left));

    /// <summary>Where a value stands, drawing units.</summary>
    public double Y(double value) => Bottom - ((value - Up.Least) / (Up.Most - Up.Least) * (Bottom - Top));

    /// <summary>The path of a line; broken where there is no value.</summary>
    public string Path(CurveLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        var path = new StringBuilder();
        bool pen = false;
        for (int i = 0; i < line.Values.Count; i++)
        {
            if (line.Values[i] is { } value)
            {
                path.Append(pen ? 'L' : 'M').Append(Px.Of(X(_sheet.PlacesMm[i]))).Append(' ').Append(Px.Of(Y(value)));
                pen = true;
            }
            else
            {
                pen = false;
            }
        }

        return path.ToString();
    }

    /// <summary>From hanging to the first stop, drawing units; null while unknown.</summary>
    public (double From, double To)? Reach => _sheet.ReachMm is { } reach
        ? (X(Math.Max(reach.Least, _sheet.PlacesMm[0])), X(Math.Min(reach.Most, _sheet.PlacesMm[^1]))) : null;

    /// <summary>Where a line is at ride, drawing units; null while unknown or outside.</summary>
    public (double X, double Y)? RideOf(CurveLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return line.Ride is { } ride && _sheet.ValueAt(line, ride) is { } value ? (X(ride), Y(value)) : null;
    }

    /// <summary>
    /// Where a line's name is written: near the end at which the lines lie further apart, the present one on the other side of its line.
    /// </summary>
    public (double X, double Y, string Anchor)? LabelOf(CurveLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        if (Together && !line.Proposed)
        {
            return null;
        }

        int n = line.Values.Count, near = n / 8;
        int i = Apart(n - 1 - near) >= Apart(near) ? n - 1 - near : near;
        if (line.Values[i] is not { } value)
        {
            return null;
        }

        double other = _sheet.Lines.Where(l => l != line).Select(l => l.Values[i]).FirstOrDefault()
            ?? (line.Proposed ? double.MinValue : double.MaxValue);
        bool above = value > other || (value == other && line.Proposed);
        double y = Y(value) + (above ? -8 : 16);
        return (X(_sheet.PlacesMm[i]), Math.Clamp(y, Top + 8, Bottom - 4), i < n / 2 ? "start" : "end");
    }

    /// <summary>True where both lines lie so close together that they are one to the eye.</summary>
    public bool Together => _sheet.Lines is [var a, var b] && Enumerable.Range(0, a.Values.Count).All(i =>
        a.Values[i] is null ? b.Values[i] is null
            : b.Values[i] is not null && Math.Abs(Y(a.Values[i]!.Value) - Y(b.Values[i]!.Value)) < 1.5);

    /// <summary>A mark's number, with no more decimals than the scale needs.</summary>
    public static string Mark(double value, in NiceScale scale)
    {
        double rounded = Math.Round(value, scale.Decimals);
        return (rounded == 0 ? 0 : rounded).ToString("F" + scale.Decimals, CultureInfo.InvariantCulture).Replace('-', '−');
    }

    private double Apart(int i) => _sheet.Lines is [var a, var b] && a.Values[i] is { } x && b.Values[i] is { } y ? Math.Abs(x - y) : 0;
}
