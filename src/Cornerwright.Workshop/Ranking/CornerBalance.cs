using Cornerwright.Mechanics.Loads;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Numerics;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Ranking;

/// <summary>
/// Contact load of one corner against travel, for one stack on one station: the judge's balance without its row of inputs.
/// A test holds the two against each other.
/// </summary>
internal readonly struct CornerBalance(StaticStation station, StackElement[] stack, double perch) : IRisingFunction
{
    private const double LeastSpace = 1e-4;

    public double ValueAt(double x, out double slope)
    {
        if (!station.Motion!.StationAt(x, Station.Spring, out var at).IsUsable())
        {
            slope = 0;
            return double.NaN;
        }

        // The stack: its force and tangent rate; metal once it is solid.
        var spring = SpringStack.ForceAt(stack, Math.Max(LeastSpace, at.Length - station.SeatDrop - perch));
        double force = spring.Force, rate = 0;
        if (spring.State == StackState.Bound)
        {
            (force, rate) = (force + (SolvedCorner.SolidRate * spring.Overrun), SolvedCorner.SolidRate);
        }
        else if (spring.State == StackState.Seated)
        {
            rate = SpringStack.TangentRateAt(stack, force) ?? SolvedCorner.SolidRate;
        }

        slope = RideRates.WheelRate(rate, at.MotionRatio, force, at.MotionRatioSlope);
        return (station.Unsprung * SolvedCorner.Gravity) + (at.MotionRatio * force) + DamperLoad(station, x, ref slope);
    }

    /// <summary>What the damper's rod and the bump stop carry of the contact load at a travel, N; its slope is added.</summary>
    public static double DamperLoad(StaticStation station, double x, ref double slope)
    {
        if (!station.HasDamper || !station.Motion!.StationAt(x, Station.Damper, out var damper).IsUsable())
        {
            return 0;
        }

        double rod = station.RodForce + StopForce(station, damper.Length - station.RodDrop - station.Body, out double stopRate);
        slope += RideRates.WheelRate(stopRate, damper.MotionRatio, rod, damper.MotionRatioSlope);
        return damper.MotionRatio * rod;
    }

    private static double StopForce(StaticStation station, double rodShowing, out double rate)
    {
        rate = 0;
        double squeezed = station.StopLength + station.Packer - rodShowing;
        if (!(squeezed > 0))
        {
            return 0;
        }

        double force = 0;
        if (station.StopCurve is { } curve)
        {
            force = curve.ForceAt(squeezed);
            rate = 1 / curve.ComplianceAt(force);
        }

        double beyond = station.StopSpent + station.Packer - rodShowing;
        if (beyond > 0)
        {
            force += SolvedCorner.SolidRate * beyond;
            rate += SolvedCorner.SolidRate;
        }

        return force;
    }
}
