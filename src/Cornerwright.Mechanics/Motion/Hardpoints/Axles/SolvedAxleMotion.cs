using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Axles;

/// <summary>One wheel of an axle whose points are known: its pose in both wheels' travels.</summary>
/// <remarks>
/// The wheel centre of the points given must be the hub-face centre, because travel and shift are those of the hub face. One instance
/// belongs to one thread. Source: docs/theory/rigid-axles.md §7.
/// </remarks>
public sealed class SolvedAxleMotion : PairedMotion
{
    /// <summary>
    /// Samples of each travel: over 0.2 m either way they leave below 1e-6 m and rad on axles of usual sizes (SolvedAxleMotionTests).
    /// </summary>
    private const int Samples = 9, Quantities = 4;

    private readonly RigidAxle? axle;
    private readonly TwistBeam? beam;
    private readonly bool left;
    private readonly Vec3 from;
    private ChebyshevSurface[]? sampled;

    /// <summary>A wheel of a rigid axle. Source: docs/theory/rigid-axles.md §2.</summary>
    /// <param name="axle">The axle.</param>
    /// <param name="left">Which wheel.</param>
    /// <param name="together">The same while both wheels rise alike, with its stations.</param>
    public SolvedAxleMotion(RigidAxle axle, bool left, CornerMotion together)
        : base(together) =>
        (this.axle, this.left, from) = (axle, left, (left ? axle.Points.Left : axle.Points.Right).WheelCentre);

    /// <summary>A wheel of a twist beam; its other side counts as its mirror image. Source: docs/theory/rigid-axles.md §6.</summary>
    /// <param name="beam">The beam.</param>
    /// <param name="together">The same while both wheels rise alike, with its stations.</param>
    public SolvedAxleMotion(TwistBeam beam, CornerMotion together)
        : base(together) =>
        (this.beam, left, from) = (beam, beam.Side > 0, beam.Points.Wheel.WheelCentre);

    /// <summary>
    /// Samples the wheel over both travels once, for whoever asks often; nothing happens where the axle cannot follow over all of it.
    /// Source: docs/theory/rigid-axles.md §8.
    /// </summary>
    /// <param name="travel">Least and most of this wheel, m.</param>
    /// <param name="other">Of the other one.</param>
    public void Sample((double Least, double Most) travel, (double Least, double Most) other)
    {
        if (!(travel.Most > travel.Least) || !(other.Most > other.Least))
        {
            return;
        }

        double[] own = ChebyshevCurve.Points(travel.Least, travel.Most, Samples),
            others = ChebyshevCurve.Points(other.Least, other.Most, Samples), values = new double[Quantities * Samples * Samples];
        for (int i = 0; i < Samples; i++)
        {
            for (int k = 0; k < Samples; k++)
            {
                if (!Solved(own[i], others[k], out WheelMotionState at).IsUsable())
                {
                    return;
                }

                int place = (i * Samples) + k, count = Samples * Samples;
                (values[place], values[count + place]) = (at.Camber, at.Toe);
                (values[(2 * count) + place], values[(3 * count) + place]) = (at.LateralShift, at.ForwardShift);
            }
        }

        sampled = [.. Enumerable.Range(0, Quantities).Select(q =>
            ChebyshevSurface.Through(travel, other, values.AsSpan(q * Samples * Samples, Samples * Samples), Samples))];
    }

    /// <inheritdoc/>
    public override Reach WheelAt(double travel, double other, out WheelMotionState wheel)
    {
        if (sampled is not { } s || !s[0].Holds(travel, other))
        {
            return Solved(travel, other, out wheel);
        }

        wheel = new(s[0].At(travel, other), s[1].At(travel, other), s[2].At(travel, other), s[3].At(travel, other));
        return Reach.Reached;
    }

    private Reach Solved(double travel, double other, out WheelMotionState wheel)
    {
        wheel = default;
        Vec3 centre, spindle;
        if (axle is not null)
        {
            Reach why = left ? axle.WheelAt(travel, other, true, out centre, out spindle)
                : axle.WheelAt(other, travel, false, out centre, out spindle);
            if (why != Reach.Reached)
            {
                return why;
            }
        }
        else
        {
            TwistBeamState state = beam!.At(0.5 * (travel + other), 0.5 * (travel - other));
            if (state.Why != Reach.Reached)
            {
                return state.Why;
            }

            (centre, spindle) = (state.Centre, state.Spindle);
        }

        double side = left ? 1 : -1;
        wheel = new(Math.Asin(-spindle.Z), Math.Atan2(spindle.X, side * spindle.Y), side * (centre.Y - from.Y), centre.X - from.X);
        return Reach.Reached;
    }
}
