namespace Cornerwright.Web.Components.Linkages;

/// <summary>A line of a chart: a value at each place of the sweep, in the chart's unit; null where there is none.</summary>
/// <param name="Name">As written at its end: "now" or the build's name.</param>
/// <param name="Proposed">Drawn whole; the present one is dashed.</param>
/// <param name="Values">One for each place.</param>
/// <param name="Ride">Place at which it rides, in the unit of the places; null while unknown or in a sweep of the rack.</param>
public sealed record CurveLine(string Name, bool Proposed, IReadOnlyList<double?> Values, double? Ride);

/// <summary>One quantity through travel or steer, present against proposed.</summary>
/// <param name="Quantity">What is drawn.</param>
/// <param name="Along">What runs to the right.</param>
/// <param name="PlacesMm">mm of travel, bump positive, or of rack to the left.</param>
/// <param name="Lines">Present first; one alone where they are the same build.</param>
/// <param name="ReachMm">From hanging to the first stop of the proposed build, mm; null while unknown.</param>
public sealed record CurveSheet(
    LinkageQuantity Quantity, SweepAlong Along, IReadOnlyList<double> PlacesMm, IReadOnlyList<CurveLine> Lines,
    (double Least, double Most)? ReachMm)
{
    /// <summary>Unique in the page.</summary>
    public string Key => $"{(Along == SweepAlong.Travel ? "travel" : "rack")}-{Quantity.Key}";

    /// <summary>Charts of every quantity that these settings have.</summary>
    /// <param name="present">As the car was measured.</param>
    /// <param name="proposed">Null where it is the same build.</param>
    /// <param name="along">Which way.</param>
    public static IReadOnlyList<CurveSheet> Of(LinkageSetting present, LinkageSetting? proposed, SweepAlong along)
    {
        ArgumentNullException.ThrowIfNull(present);
        LinkageSetting[] settings = proposed is null ? [present] : [present, proposed];
        if (along == SweepAlong.Rack && !present.Steers)
        {
            return [];
        }

        var (least, most) = along == SweepAlong.Travel ? LinkageSweep.TravelOf(settings) : LinkageSweep.RackOf(settings);
        var sweeps = settings.Select(s => LinkageSweep.Of(s, along, least, most)).ToList();
        double[] places = [.. sweeps[0].Points.Select(p => p.At * 1000)];
        var last = settings[^1];
        (double, double)? reach = along == SweepAlong.Travel && last is { Droop: { } droop, Bump: { } bump }
            && double.IsFinite(droop + bump)
            ? (droop * 1000, bump * 1000) : null;
        var sheets = new List<CurveSheet>();
        foreach (var quantity in LinkageQuantity.All)
        {
            CurveLine[] lines = [.. sweeps.Select((sweep, i) => new CurveLine(
                i == 0 ? "now" : sweep.Setting.Name, i == 1,
                [.. sweep.Points.Select(p => p.Wheel is { } wheel ? quantity.Shown(wheel, sweep.Setting) : null)],
                along == SweepAlong.Travel && sweep.Setting.Ride is { } ride && double.IsFinite(ride) ? ride * 1000 : null))];
            if (lines.Any(l => l.Values.Any(v => v is not null)))
            {
                sheets.Add(new(quantity, along, places, lines, reach));
            }
        }

        return sheets;
    }

    /// <summary>The value of a line at a place between two samples, straight; null outside or where there is none.</summary>
    public double? ValueAt(CurveLine line, double placeMm)
    {
        ArgumentNullException.ThrowIfNull(line);
        double step = (PlacesMm[^1] - PlacesMm[0]) / (PlacesMm.Count - 1), at = (placeMm - PlacesMm[0]) / step;
        if (!(at >= -1e-9 && at <= PlacesMm.Count - 1 + 1e-9))
        {
            return null;
        }

        int i = Math.Clamp((int)Math.Floor(at), 0, PlacesMm.Count - 2);
        return line.Values[i] is { } a && line.Values[i + 1] is { } b ? a + ((at - i) * (b - a)) : null;
    }
}
