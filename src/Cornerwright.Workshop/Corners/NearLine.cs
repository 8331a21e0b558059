using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Allowing;

namespace Cornerwright.Workshop.Corners;

/// <summary>A drop link for one row of inputs.</summary>
/// <param name="Link">As it stood, in B.</param>
/// <param name="Outer">Its outer end in S, with the wheel straight ahead at the reference state.</param>
internal readonly record struct StandingLink(SwingingLink Link, Vec3 Outer);

/// <summary>
/// A line that the wheel moves against: places on the body, or a link between knuckle and bar, whose ends move with the wheel.
/// </summary>
/// <param name="points">In B, m; of a link where it stood at the reference state.</param>
/// <param name="link">The default for a line on the body.</param>
/// <param name="lean">How the tyre leans on its wheel toward the link; nothing else feels it.</param>
/// <param name="leans">True for the tyre leaning.</param>
internal readonly ref struct NearLine(
    ReadOnlySpan<Vec3> points, StandingLink link = default, WheelLean lean = default, bool leans = false)
{
    private readonly ReadOnlySpan<Vec3> _points = points;
    private readonly StandingLink _link = link;
    private readonly WheelLean _lean = lean;

    public int Count => _points.Length;

    public bool Moves => _link.Link.Exists;

    /// <summary>Half of its thickness, m.</summary>
    public double Radius => _link.Link.Radius;

    /// <summary>The line as the wheel meets it in a state.</summary>
    public NearLine In(LoadState state) => new(_points, _link, _lean, state.Leans);

    /// <summary>What of the wheel it may touch: while the tyre leans, the tyre.</summary>
    public WheelSolid Facing(in WheelSolid wheel) => leans ? wheel.TyreAlone() : wheel;

    /// <summary>Its corners in S at a pose.</summary>
    /// <param name="places">Where wheel and knuckle are.</param>
    /// <param name="n">The corner.</param>
    /// <param name="place">Of the wheel.</param>
    /// <param name="frame">The wheel's frame there.</param>
    /// <param name="into">As many as there are corners.</param>
    /// <returns>False where the wheel cannot be.</returns>
    public bool InSpindle(ThingPlaces places, CornerReader n, in PosePlace place, in SpindleFrame frame, Span<Vec3> into)
    {
        if (Moves)
        {
            bool there = places.OnKnuckle(n, place, _link.Outer, out Vec3 outer);
            (into[0], into[1]) = (frame.ToSpindle(outer), frame.ToSpindle(_link.Link.BarEndAt(outer)));
            (into[0], into[1]) = leans ? (_lean.Meets(into[0]), _lean.Meets(into[1])) : (into[0], into[1]);
            return there;
        }

        for (int k = 0; k < _points.Length; k++)
        {
            into[k] = frame.ToSpindle(_points[k]);
        }

        return true;
    }
}
