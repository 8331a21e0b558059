using System.Globalization;
using System.Text;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Web.Components.Linkages;
using Cornerwright.Web.Components.Pictures;
using Cornerwright.Workshop.Clearances;

namespace Cornerwright.Web.Components.Clearances;

/// <summary>
/// Where everything of a clearance map lies in its drawing: steering to the left at the left, bump upward. Fields are painted round the
/// poses that were worked out; the lines of touching and of the gap wanted run between them in straight pieces.
/// </summary>
public sealed class MapLayout
{
    public const double Width = 640;
    public const double Height = 430;
    public const double Left = 62;
    public const double Right = 626;
    public const double Top = 14;
    public const double Bottom = 376;

    private const int LimitSteps = 72;

    private readonly ClearanceMap _map;
    private readonly double _steerLow, _steerHigh, _travelLow, _travelHigh;

    /// <param name="map">With nothing missing.</param>
    /// <param name="box">The poses that count.</param>
    public MapLayout(ClearanceMap map, PoseBox box)
    {
        ArgumentNullException.ThrowIfNull(map);
        ArgumentNullException.ThrowIfNull(box);
        _map = map;
        (_travelLow, _travelHigh) = Wide(map.Travels[0], map.Travels[^1], 0.001);
        (_steerLow, _steerHigh) = Wide(map.Steers[0], map.Steers[^1], 0.02);
        Bands = [.. Enumerable.Range(0, MapBand.All.Count).Select(Fields)];
        Unreached = Fields(-1);
        Zero = Contour(0);
        Wanted = map.Wanted > 0 ? Contour(map.Wanted) : "";
        Forbidden = Limit(box);
        TravelMarks = [.. NiceScale.Over(_travelLow * 1000, _travelHigh * 1000, 1, 7).Marks.Where(m =>
            m >= (_travelLow * 1000) - 0.01 && m <= (_travelHigh * 1000) + 0.01)];
        double degree = Math.PI / 180;
        SteerMarks = map.Steers.Count == 1 ? [] : [.. NiceScale.Over(_steerLow / degree, _steerHigh / degree, 1, 8).Marks.Where(m =>
            m >= (_steerLow / degree) - 0.01 && m <= (_steerHigh / degree) + 0.01)];
    }

    /// <summary>A path for each of <see cref="MapBand.All"/>.</summary>
    public IReadOnlyList<string> Bands { get; }

    /// <summary>Where the linkage cannot go; whatever of it the limit forbids is covered.</summary>
    public string Unreached { get; }

    /// <summary>The line along which the wheel just touches.</summary>
    public string Zero { get; }

    /// <summary>The line along which the gap is the one wanted.</summary>
    public string Wanted { get; }

    /// <summary>Everything above the limit on bump at lock; empty without such a limit.</summary>
    public string Forbidden { get; }

    /// <summary>mm.</summary>
    public IReadOnlyList<double> TravelMarks { get; }

    /// <summary>Degrees; none where the wheel does not steer.</summary>
    public IReadOnlyList<double> SteerMarks { get; }

    public bool Steers => _map.Steers.Count > 1;

    public double X(double steer) => Steers ? Left + ((_steerHigh - steer) / (_steerHigh - _steerLow) * (Right - Left))
        : 0.5 * (Left + Right);

    public double Y(double travel) => Bottom - ((travel - _travelLow) / (_travelHigh - _travelLow) * (Bottom - Top));

    /// <summary>The pose at a place of the drawing, inside the map.</summary>
    public (double Travel, double Steer) PoseAt(double x, double y)
    {
        double steer = Steers ? _steerHigh - ((x - Left) / (Right - Left) * (_steerHigh - _steerLow)) : _map.Steers[0];
        double travel = _travelLow + ((Bottom - y) / (Bottom - Top) * (_travelHigh - _travelLow));
        return (Math.Clamp(travel, _map.Travels[0], _map.Travels[^1]), Math.Clamp(steer, _map.Steers[0], _map.Steers[^1]));
    }

    /// <summary>The gaps for the pointer to read, in tenths of a millimetre, by steer, then travel; empty where there is none.</summary>
    public string Readings() => string.Join(
        ',', _map.Poses.Select(p => double.IsFinite(p.Gap)
            ? Math.Round(p.Gap * 10_000, MidpointRounding.AwayFromZero).ToString("F0", CultureInfo.InvariantCulture) : ""));

    /// <summary>The pose with the least gap; null when no pose has one.</summary>
    public MapPose? Least()
    {
        MapPose? least = null;
        foreach (MapPose pose in _map.Poses)
        {
            least = double.IsFinite(pose.Gap) && !(least?.Gap <= pose.Gap) ? pose : least;
        }

        return least;
    }

    private static (double Low, double High) Wide(double low, double high, double least) =>
        high - low >= least ? (low, high) : (low - (0.5 * least), high + (0.5 * least));

    private double GapAt(int steer, int travel) => _map.Poses[(steer * _map.Travels.Count) + travel].Gap;

    // A pose just beyond the limit is painted like its neighbour below: the limit's own line cuts it off.
    private int BandAt(int steer, int travel)
    {
        double gap = GapAt(steer, travel);
        return MapBand.Of(double.IsNaN(gap) && travel > 0 ? GapAt(steer, travel - 1) : gap, _map.Wanted);
    }

    private string Fields(int band)
    {
        var path = new StringBuilder();
        for (int j = 0; j < _map.Steers.Count; j++)
        {
            // Steers ascend to the left of the drawing.
            double left = Steers ? X(Between(_map.Steers, j, 1)) : Left, right = Steers ? X(Between(_map.Steers, j, -1)) : Right;
            for (int i = 0; i < _map.Travels.Count; i++)
            {
                int from = i;
                while (i < _map.Travels.Count && BandAt(j, i) == band)
                {
                    i++;
                }

                if (i > from)
                {
                    path.Append('M').Append(Px.Of(left)).Append(' ').Append(Px.Of(Y(Between(_map.Travels, from, -1)))).Append('H')
                        .Append(Px.Of(right))
                        .Append('V').Append(Px.Of(Y(Between(_map.Travels, i - 1, 1)))).Append('H').Append(Px.Of(left)).Append('Z');
                }
            }
        }

        return path.ToString();
    }

    private static double Between(IReadOnlyList<double> values, int i, int way)
    {
        int other = Math.Clamp(i + way, 0, values.Count - 1);
        return 0.5 * (values[i] + values[other]);
    }

    // Marching squares: two or four of a square's edges are crossed; of four, each crossing is joined to the next.
    private string Contour(double level)
    {
        var path = new StringBuilder();
        if (!Steers)
        {
            for (int i = 0; i + 1 < _map.Travels.Count; i++)
            {
                if (Share(GapAt(0, i), GapAt(0, i + 1), level) is { } share)
                {
                    path.Append(CultureInfo.InvariantCulture,
                        $"M{Px.Of(Left)} {Px.Of(Y(_map.Travels[i] + (share * (_map.Travels[i + 1] - _map.Travels[i]))))}H{Px.Of(Right)}");
                }
            }

            return path.ToString();
        }

        Span<(double X, double Y)> met = stackalloc (double, double)[4];
        for (int j = 0; j + 1 < _map.Steers.Count; j++)
        {
            for (int i = 0; i + 1 < _map.Travels.Count; i++)
            {
                int count = 0;
                Meet(j, i, j + 1, i, level, met, ref count);
                Meet(j + 1, i, j + 1, i + 1, level, met, ref count);
                Meet(j + 1, i + 1, j, i + 1, level, met, ref count);
                Meet(j, i + 1, j, i, level, met, ref count);
                for (int k = 0; k + 1 < count; k += 2)
                {
                    path.Append('M').Append(Px.Of(met[k].X)).Append(' ').Append(Px.Of(met[k].Y)).Append('L').Append(Px.Of(met[k + 1].X))
                        .Append(' ').Append(Px.Of(met[k + 1].Y));
                }
            }
        }

        return path.ToString();
    }

    private void Meet(int j, int i, int toJ, int toI, double level, Span<(double X, double Y)> met, ref int count)
    {
        if (Share(GapAt(j, i), GapAt(toJ, toI), level) is { } share)
        {
            met[count++] = (
                X(_map.Steers[j] + (share * (_map.Steers[toJ] - _map.Steers[j]))),
                Y(_map.Travels[i] + (share * (_map.Travels[toI] - _map.Travels[i]))));
        }
    }

    private static double? Share(double from, double to, double level) =>
        double.IsFinite(from + to) && from < level != to < level ? (level - from) / (to - from) : null;

    private string Limit(PoseBox box)
    {
        if (box.BumpLimit is null)
        {
            return "";
        }

        var path = new StringBuilder();
        for (int k = 0; k <= LimitSteps; k++)
        {
            double steer = _steerLow + ((_steerHigh - _steerLow) * k / LimitSteps);
            path.Append(k == 0 ? 'M' : 'L').Append(Px.Of(X(steer))).Append(' ')
                .Append(Px.Of(Y(Math.Min(_travelHigh, box.AllowedBump(steer)))));
        }

        return path.Append('V').Append(Px.Of(Top)).Append('H').Append(Px.Of(X(_steerLow))).Append('Z').ToString();
    }
}
