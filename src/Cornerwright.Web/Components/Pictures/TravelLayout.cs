using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Pictures;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>What a stretch of the travel column stands for.</summary>
public enum TravelZone
{
    /// <summary>Neither stop touches: the road's own travel.</summary>
    Free,

    /// <summary>The spring has left its seat, but the wheel can still hang lower.</summary>
    Loose,

    /// <summary>The bump stop is being squeezed.</summary>
    OnStop,

    /// <summary>Something solid ends the travel before this.</summary>
    OutOfReach,
}

/// <summary>A stretch of travel, m, and what it stands for.</summary>
public sealed record ZoneSpan(TravelZone Zone, double From, double To);

/// <summary>A mark with its place on the axis and the place of its label, both in drawing units downward.</summary>
/// <param name="OffScale">The mark lies beyond the drawn axis; its label says so.</param>
public sealed record PlacedMark(TravelMark Mark, double Y, double LabelY, IReadOnlyList<string> Lines, bool OffScale);

/// <summary>The travel column in drawing units: bump up, droop down, to scale.</summary>
public sealed class TravelLayout
{
    /// <summary>Drawing units.</summary>
    public const double Width = 300;

    /// <summary>Drawing units.</summary>
    public const double Height = 420;

    private const double Top = 14;
    private const double Bottom = Height - 14;
    private const double LineHeight = 15.5;
    private const int LettersPerLine = 22;

    /// <summary>
    /// Marks farther than this beyond the last that matters are named at the edge, so that they do not squeeze the rest (m).
    /// </summary>
    private const double Beyond = 0.045;

    private const double Step = 0.01;

    private TravelLayout(double low, double high) => (Low, High) = (low, high);

    /// <summary>Lowest travel drawn, m.</summary>
    public double Low { get; }

    /// <summary>Highest travel drawn, m.</summary>
    public double High { get; }

    public IReadOnlyList<ZoneSpan> Zones { get; private init; } = [];
    public IReadOnlyList<PlacedMark> Marks { get; private init; } = [];

    /// <summary>Travels with a number at the axis, m.</summary>
    public IReadOnlyList<double> Ticks { get; private init; } = [];

    /// <summary>The ride mark that a drag moves; null where the corner does not find its height.</summary>
    public PlacedMark? Ride { get; private init; }

    public double Y(double travel) => Bottom - ((travel - Low) / (High - Low) * (Bottom - Top));

    /// <summary>Drawing units per metre.</summary>
    public double PerMetre => (Bottom - Top) / (High - Low);

    /// <param name="marks">In any order.</param>
    /// <param name="rideWords">The ride mark that can be dragged; the first one where this is left out or not found.</param>
    public static TravelLayout Of(IReadOnlyList<TravelMark> marks, string? rideWords = null)
    {
        ArgumentNullException.ThrowIfNull(marks);
        TravelMark[] sound = [.. marks.Where(m => double.IsFinite(m.Travel)).OrderBy(m => m.Travel)];
        double? droop = First(sound, TravelEvent.DroopStop);
        double? touched = First(sound, TravelEvent.StopTouched);
        double? end = sound.Where(m => Ends(m.Event)).Select(m => (double?)m.Travel).FirstOrDefault();
        double? ride = First(sound, TravelEvent.Ride);

        // The axis reaches from what ends the droop to what ends the bump, and a little beyond.
        double[] cores = [.. new[] { droop, touched, end, ride }.OfType<double>()];
        double coreLow = cores.Length > 0 ? cores.Min() : -0.05;
        double coreHigh = cores.Length > 0 ? cores.Max() : 0.05;
        double low = sound.Select(m => m.Travel).Where(t => t >= coreLow - Beyond).Append(coreLow).Min();
        double high = sound.Select(m => m.Travel).Where(t => t <= coreHigh + Beyond).Append(coreHigh).Max();
        low = Step * Math.Floor((low - 0.006) / Step);
        high = Step * Math.Ceiling((high + 0.006) / Step);

        var scale = new TravelLayout(low, high);
        var placed = scale.Label(sound);
        double tick = high - low > 0.25 ? 0.05 : 0.02;
        int from = (int)Math.Ceiling((low / tick) - 1e-9);
        int to = (int)Math.Floor((high / tick) + 1e-9);
        return new(low, high)
        {
            Zones = SplitIntoZones(low, high, droop, First(sound, TravelEvent.SpringSeats), touched, end),
            Marks = placed,
            Ride = placed.FirstOrDefault(p => p.Mark.Event == TravelEvent.Ride && p.Mark == DraggedRide(marks, rideWords)),
            Ticks = [.. Enumerable.Range(from, to - from + 1).Select(i => i * tick)],
        };
    }

    private static TravelMark? DraggedRide(IReadOnlyList<TravelMark> marks, string? words) =>
        marks.FirstOrDefault(m => m.Event == TravelEvent.Ride && m.Words == words)
            ?? marks.FirstOrDefault(m => m.Event == TravelEvent.Ride);

    private static bool Ends(TravelEvent what) =>
        what is TravelEvent.StopSpent or TravelEvent.CoilBind or TravelEvent.DamperShut or TravelEvent.MetalMeets;

    private static double? First(TravelMark[] marks, TravelEvent what) =>
        marks.Where(m => m.Event == what).Select(m => (double?)m.Travel).FirstOrDefault();

    private static List<ZoneSpan> SplitIntoZones(double low, double high, double? droop, double? seats, double? touched, double? end)
    {
        var zones = new List<ZoneSpan>();
        double bottom = Math.Clamp(droop ?? low, low, high);
        double top = Math.Clamp(end ?? high, bottom, high);
        double loose = Math.Clamp(seats ?? bottom, bottom, top);
        double stop = Math.Clamp(touched ?? top, loose, top);
        Add(TravelZone.OutOfReach, low, bottom);
        Add(TravelZone.Loose, bottom, loose);
        Add(TravelZone.Free, loose, stop);
        Add(TravelZone.OnStop, stop, top);
        Add(TravelZone.OutOfReach, top, high);
        return zones;

        void Add(TravelZone zone, double from, double to)
        {
            if (to - from > 1e-6)
            {
                zones.Add(new ZoneSpan(zone, from, to));
            }
        }
    }

    private List<PlacedMark> Label(TravelMark[] marks)
    {
        var lines = marks.Select(m => Lines(m.Words)).ToArray();
        double[] wanted = [.. marks.Select(m => Y(Math.Clamp(m.Travel, Low, High)))];
        double[] heights = [.. lines.Select(l => (LineHeight * l.Count) + 4)];
        double[] at = LabelSpread.Place(wanted, heights, 2, Height - 2);
        return [.. marks.Select((m, i) => new PlacedMark(m, wanted[i], at[i], lines[i], m.Travel < Low || m.Travel > High))];
    }

    private static List<string> Lines(string words)
    {
        var lines = new List<string> { "" };
        foreach (string word in words.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (lines[^1].Length > 0 && lines[^1].Length + 1 + word.Length > LettersPerLine)
            {
                lines.Add("");
            }

            lines[^1] = lines[^1].Length == 0 ? word : lines[^1] + " " + word;
        }

        return lines;
    }
}
