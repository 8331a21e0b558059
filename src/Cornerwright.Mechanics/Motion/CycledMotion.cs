using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Motion;

/// <summary>
/// A corner cycled by hand: the wheel lifted in steps with the spring out, readings taken at each, and joined by
/// curves: through them or, where they carry errors, among them.
/// </summary>
/// <remarks>
/// A curve may have its own steps. Camber missing is <see cref="Reach.NotGiven"/>; toe, lateral or forward shift missing count as constant
/// zero change, which the caller shows as an assumption. Outside a curve's readings by at most the margin the answer is
/// <see cref="Reach.Extrapolated"/> along the end's straight line; further out there is none.
/// Source: docs/theory/motion.md §5.
/// </remarks>
public sealed class CycledMotion(
    SampledCurve? camber,
    SampledCurve? toe,
    SampledCurve? lateral,
    SampledCurve? springLength,
    SampledCurve? damperLength,
    double extrapolationMargin = 0.01,
    SampledCurve? forward = null) : CornerMotion
{
    /// <inheritdoc/>
    /// <remarks>Source: docs/theory/motion.md §5.</remarks>
    public override Reach WheelAt(double travel, out WheelMotionState wheel)
    {
        wheel = default;
        if (camber is null)
        {
            return Reach.NotGiven;
        }

        Reach reach = Worse(
            Worse(Domain(camber, travel), Domain(toe, travel)), Worse(Domain(lateral, travel), Domain(forward, travel)));
        if (reach.IsUsable())
        {
            // Shift is counted from the reference state, whatever zero the tape had.
            wheel = new(camber.At(travel).Value, toe?.At(travel).Value ?? 0, Shift(lateral, travel), Shift(forward, travel));
        }

        return reach;
    }

    /// <inheritdoc/>
    /// <remarks>Source: docs/theory/motion.md §5.</remarks>
    public override Reach StationAt(double travel, Station station, out StationState state)
    {
        state = default;
        if ((station == Station.Spring ? springLength : damperLength) is not { } curve)
        {
            return Reach.NotGiven;
        }

        Reach reach = Domain(curve, travel);
        if (reach.IsUsable())
        {
            var (length, first, second) = curve.At(travel);
            state = new(length, -first, -second);
        }

        return reach;
    }

    private static double Shift(SampledCurve? curve, double travel) => curve is null ? 0 : curve.At(travel).Value - curve.At(0).Value;

    private static Reach Worse(Reach a, Reach b) => (Reach)Math.Max((int)a, (int)b);

    private Reach Domain(SampledCurve? curve, double travel)
    {
        if (!double.IsFinite(travel))
        {
            return Reach.NotFinite;
        }

        if (curve is null || (travel >= curve.Start && travel <= curve.End))
        {
            return Reach.Reached;
        }

        double beyond = Math.Max(curve.Start - travel, travel - curve.End);
        return beyond <= extrapolationMargin ? Reach.Extrapolated : Reach.OutsideReadings;
    }
}
