using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Workshop.Corners;

/// <summary>
/// The poses at which everything of the body is looked at first: all travel by all steer, both ends of each among them, and every steer
/// at which a gap was read. Where the build limits bump at lock, the limit runs in straight lines from full bump straight ahead.
/// </summary>
internal sealed class PoseGrid
{
    /// <summary>Along the travel, both ends counted.</summary>
    public const int Travels = 9;

    /// <summary>
    /// Steers are no further apart than this, rad: a shoulder that passes a point stays within 1 mm of its nearest over a sixth of it.
    /// </summary>
    private const double SteerStep = 4 * Math.PI / 180;

    private readonly ClearancePlan _clearance;
    private readonly double[] _steers;
    private readonly SpindleFrame[] _frames;   // by steer, then travel
    private readonly bool[] _usable;

    public PoseGrid(ThingPlaces places, CornerReader n, ClearancePlan clearance, (double Droop, double Bump) range)
    {
        (_clearance, Range) = (clearance, range);
        _steers = SteersOf(n, clearance);
        _frames = new SpindleFrame[_steers.Length * Travels];
        _usable = new bool[_frames.Length];
        for (int s = 0; s < _steers.Length; s++)
        {
            for (int t = 0; t < Travels; t++)
            {
                bool there = places.Pose(n, n.Motion, TravelAt(s, t), _steers[s], out var pose);
                (_usable[Index(s, t)], _frames[Index(s, t)]) = (there, there ? SpindleFrame.Of(pose) : default);
            }
        }
    }

    /// <summary>Full droop and full bump, m.</summary>
    public (double Droop, double Bump) Range { get; }

    /// <summary>rad, left positive, ascending.</summary>
    public IReadOnlyList<double> Steers => _steers;

    public double LeastSteer => _steers[0];

    public double MostSteer => _steers[^1];

    public double TravelStep => (Range.Bump - Range.Droop) / (Travels - 1);

    /// <summary>Between neighbours, rad; 0 where there is but one steer.</summary>
    public double WidestSteerStep => _steers.Length > 1 ? SteerStep : 0;

    /// <summary>Most travel at a steer, m.</summary>
    public double BumpAt(double steer) => _clearance.BumpAt(steer, Range);

    public double TravelAt(int steer, int travel) =>
        travel == Travels - 1 ? BumpAt(_steers[steer]) : Range.Droop + ((BumpAt(_steers[steer]) - Range.Droop) * travel / (Travels - 1));

    /// <returns>False where the wheel cannot be.</returns>
    public bool Frame(int steer, int travel, out SpindleFrame frame)
    {
        frame = _frames[Index(steer, travel)];
        return _usable[Index(steer, travel)];
    }

    private static int Index(int steer, int travel) => (steer * Travels) + travel;

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
