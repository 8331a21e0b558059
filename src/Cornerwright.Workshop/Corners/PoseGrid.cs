using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Workshop.Corners;

/// <summary>
/// The poses at which everything of the body is looked at first: all travel by all steer, both ends of each among them, and every steer
/// at which a gap was read; on an axle that carries both wheels by all travel of the other one, too. Where the build limits bump at lock,
/// the limit runs in straight lines from full bump straight ahead.
/// </summary>
internal sealed class PoseGrid
{
    /// <summary>Along the travel, both ends counted.</summary>
    public const int Travels = 9;

    /// <summary>Along the other wheel's travel, both ends counted, where it plays a part.</summary>
    private const int OtherTravels = 5;

    /// <summary>
    /// Steers are no further apart than this, rad: a shoulder that passes a point stays within 1 mm of its nearest over a sixth of it.
    /// </summary>
    private const double SteerStep = 4 * Math.PI / 180;

    private readonly ClearancePlan _clearance;
    private readonly double[] _steers;
    private readonly SpindleFrame[] _frames;   // by steer, then the other wheel's travel, then travel
    private readonly bool[] _usable;

    public PoseGrid(ThingPlaces places, CornerReader n, ClearancePlan clearance, (double Droop, double Bump) range)
    {
        (_clearance, Range, OtherRange) = (clearance, range, n.SweptOther());
        _steers = SteersOf(n, clearance);
        Others = OtherRange.Bump > OtherRange.Droop ? OtherTravels : 1;
        _frames = new SpindleFrame[Count];
        _usable = new bool[Count];
        for (int s = 0; s < _steers.Length; s++)
        {
            for (int o = 0; o < Others; o++)
            {
                for (int t = 0; t < Travels; t++)
                {
                    bool there = places.Pose(n, n.Motion, PlaceOf(s, o, t), out var pose);
                    (_usable[Index(s, o, t)], _frames[Index(s, o, t)]) = (there, there ? SpindleFrame.Of(pose) : default);
                }
            }
        }
    }

    /// <summary>How many poses there are.</summary>
    public int Count => _steers.Length * Others * Travels;

    /// <summary>How many travels of the other wheel; 1 where it plays no part.</summary>
    public int Others { get; }

    /// <summary>Full droop and full bump, m.</summary>
    public (double Droop, double Bump) Range { get; }

    /// <summary>Of the axle's other wheel, m; 0 to 0 where it plays no part.</summary>
    public (double Droop, double Bump) OtherRange { get; }

    /// <summary>rad, left positive, ascending.</summary>
    public IReadOnlyList<double> Steers => _steers;

    public double LeastSteer => _steers[0];

    public double MostSteer => _steers[^1];

    public double TravelStep => (Range.Bump - Range.Droop) / (Travels - 1);

    /// <summary>Between neighbours, rad; 0 where there is but one steer.</summary>
    public double WidestSteerStep => _steers.Length > 1 ? SteerStep : 0;

    /// <summary>Most travel at a steer, m.</summary>
    public double BumpAt(double steer) => _clearance.BumpAt(steer, Range);

    /// <summary>Between neighbours, m; 0 where there is but one.</summary>
    public double OtherStep => Others > 1 ? (OtherRange.Bump - OtherRange.Droop) / (OtherTravels - 1) : 0;

    public PosePlace PlaceOf(int steer, int other, int travel) => new(
        travel == Travels - 1 ? BumpAt(_steers[steer]) : Range.Droop + ((BumpAt(_steers[steer]) - Range.Droop) * travel / (Travels - 1)),
        _steers[steer],
        other == Others - 1 ? OtherRange.Bump : OtherRange.Droop + (other * OtherStep));

    /// <returns>False where the wheel cannot be.</returns>
    public bool Frame(int steer, int other, int travel, out SpindleFrame frame)
    {
        int index = Index(steer, other, travel);
        frame = _frames[index];
        return _usable[index];
    }

    /// <summary>Which pose stands at an index.</summary>
    public (int Steer, int Other, int Travel) At(int index) =>
        (index / (Others * Travels), index / Travels % Others, index % Travels);

    public int Index(int steer, int other, int travel) => (((steer * Others) + other) * Travels) + travel;

    private static double[] SteersOf(CornerReader n, ClearancePlan clearance)
    {
        var steers = new SortedSet<double> { 0 };
        foreach (var gap in clearance.Items.SelectMany(i => i.Gaps))
        {
            steers.Add(n.X.Or(gap.Steer, 0));
        }

        foreach (double end in (ReadOnlySpan<double>)[clearance.LockLeft, -clearance.LockRight])
        {
            int parts = (int)Math.Ceiling(Math.Abs(end) / SteerStep);
            for (int k = 1; k <= parts; k++)
            {
                steers.Add(end * k / parts);
            }
        }

        return [.. steers];
    }
}
