using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Workshop.Allowing;

/// <summary>
/// One state of load and where it moves the wheel in the body. Side force moves the tyre sideways by an amount that changes in a straight
/// line with height: the outer wheel's top goes outboard, all below goes inboard; the inner wheel moves the other way by half as much.
/// Braking and bumps move it rearward. Nothing of this is joined with full lock: it fades in a straight line from straight ahead to lock.
/// </summary>
/// <param name="Share">Of the outer wheel's side force: 1, or -0.5 for the inner wheel, or 0.</param>
/// <param name="Height">Of what stands near the wheel, over the hub with the wheel at travel 0, m: the tyre moves as it does there.</param>
/// <param name="Level">False to take the height as given whatever the travel.</param>
/// <param name="Back">Rearward, m.</param>
/// <remarks>Source: docs/theory/allowances.md §3.</remarks>
internal readonly record struct Sway(double Share, double Height, bool Level, double Back)
{
    /// <summary>The inner wheel bears at most half of what the outer one does: statics at 0.5 g, less at 1 g.</summary>
    private const double InnerShare = -0.5;

    /// <summary>A state that moves the wheel by less than this toward a thing is not worth a search, m.</summary>
    private const double Noticed = 2e-4;

    /// <summary>What lies no further behind the hub than this is hardly nearer for a wheel that moves rearward, m.</summary>
    private const double Behind = 0.03;

    /// <summary>"outer wheel in a corner, braking or over a bump".</summary>
    public string Words => (Share, Back) switch
    {
        (> 0, 0) => "outer wheel in a corner",
        (< 0, 0) => "inner wheel in a corner",
        (> 0, _) => "outer wheel in a corner, braking or over a bump",
        (< 0, _) => "inner wheel in a corner, braking or over a bump",
        _ => "braking or over a bump",
    };

    /// <summary>
    /// 1 where it counts inboard, -1 where outboard; 0 as both allowances have it together. Each is a limit ("by up to"), and the tyre may
    /// give less of the other one: toward a thing only the one counts that moves it there, so that a larger one never takes it away.
    /// </summary>
    public int Way { get; init; }

    /// <summary>Inboard, m, at a height over the hub as a share of the radius, -1 to 1.</summary>
    private static double Inboard(CornerAllowances allowed, double share, double height, int way)
    {
        double h = Math.Clamp(height, -1, 1);
        double inboard = (allowed.In * (1 - h)) + (allowed.Top * Math.Max(0, -h)), outboard = allowed.Top * Math.Max(0, h);
        bool both = way == 0, first = way * share > 0;
        return share * ((both || first ? inboard : 0) - (both || !first ? outboard : 0));
    }

    /// <summary>The pose as this load has it.</summary>
    /// <param name="pose">At rest.</param>
    /// <param name="travel">m.</param>
    /// <param name="steer">rad.</param>
    /// <param name="at">The corner's allowances, tyre and locks.</param>
    public WheelPose Under(in WheelPose pose, double travel, double steer, SwayCorner at) =>
        pose with { HubFace = pose.HubFace + Move(travel, steer, at) };

    /// <summary>By how much the wheel moves in B, m.</summary>
    public Vec3 Move(double travel, double steer, SwayCorner at)
    {
        double fade = at.Fade(steer), height = (Height - (Level ? 0 : travel)) / at.Radius;
        double inboard = Inboard(at.Allowed, Share, height, Way);
        return new(-Back * fade, (at.Side == WheelSide.Left ? -inboard : inboard) * fade, 0);
    }

    /// <summary>The wheel is moved by no more than this, m.</summary>
    public double Most(CornerAllowances allowed)
    {
        double aside = Math.Abs(Share) * Math.Max(Math.Abs(allowed.Top), Math.Abs((2 * allowed.In) + allowed.Top));
        return Math.Sqrt((aside * aside) + (Back * Back));
    }

    /// <summary>The states of load that bring the tyre nearer to a thing, beside the one at rest.</summary>
    /// <param name="points">Of the thing, with the wheel at travel 0, straight ahead: outboard of the tyre's middle, over the hub, ahead
    /// of the hub, m.</param>
    /// <param name="at">The corner.</param>
    /// <param name="range">Of travel, m.</param>
    public static IReadOnlyList<Sway> Toward(ReadOnlySpan<Vec3> points, SwayCorner at, (double Droop, double Bump) range)
    {
        var allowed = at.Allowed;
        if (!allowed.Sways || points.Length == 0)
        {
            return [];
        }

        var (low, high) = (points[0], points[0]);
        foreach (Vec3 p in points)
        {
            low = new(Math.Min(low.X, p.X), Math.Min(low.Y, p.Y), Math.Min(low.Z, p.Z));
            high = new(Math.Max(high.X, p.X), Math.Max(high.Y, p.Y), Math.Max(high.Z, p.Z));
        }

        var states = new List<Sway>();
        if (low.X < at.Middle)
        {
            AddStates(states, 1, at, (low.Y, high.Y), range);
        }

        if (high.X > -at.Middle)
        {
            AddStates(states, -1, at, (low.Y, high.Y), range);
        }

        bool behind = low.Z < -Behind && allowed.Back > 0, ahead = high.Z > -Behind;
        if (states.Count == 0 && behind)
        {
            states.Add(new(0, 0, false, 0));
        }

        return [.. states.SelectMany(s => Backs().Select(back => s with { Back = back }))];

        IEnumerable<double> Backs()
        {
            if (behind)
            {
                yield return allowed.Back;
            }

            if (ahead)
            {
                yield return 0;
            }
        }
    }

    // The outer wheel and the inner one, each at the lowest and the highest place of the thing, unless the other moves further that way.
    private static void AddStates(
        List<Sway> states, int way, SwayCorner at, (double Low, double High) of, (double Droop, double Bump) range)
    {
        foreach (double height in of.Low == of.High ? (ReadOnlySpan<double>)[of.Low] : [of.Low, of.High])
        {
            var (outer, inner) = (Ends(1, height), Ends(InnerShare, height));
            if (Math.Max(outer.First, outer.Last) > Noticed && !(inner.First > outer.First && inner.Last > outer.Last))
            {
                states.Add(new(1, height, false, 0) { Way = way });
            }

            if (Math.Max(inner.First, inner.Last) > Noticed && !(outer.First >= inner.First && outer.Last >= inner.Last))
            {
                states.Add(new(InnerShare, height, false, 0) { Way = way });
            }
        }

        (double First, double Last) Ends(double share, double height) => (
            way * Inboard(at.Allowed, share, (height - range.Bump) / at.Radius, way),
            way * Inboard(at.Allowed, share, (height - range.Droop) / at.Radius, way));
    }

    /// <summary>The states of load for a thing of any height, all round the wheel: each height as it is worst.</summary>
    public static IReadOnlyList<Sway> AllRound(SwayCorner at)
    {
        var allowed = at.Allowed;
        if (!allowed.Sways)
        {
            return [];
        }

        // At hub height inboard, where a scan of an arch reaches down to; outboard by the outer wheel's top or the inner one's middle.
        double outward = Inboard(allowed, InnerShare, 0, 0), top = Inboard(allowed, 1, 1, 0);
        Sway inboard = new(1, 0, true, 0);
        Sway outboard = outward < top ? new(InnerShare, 0, true, 0) : new(1, at.Radius, true, 0);
        return allowed.Back > 0
            ? [inboard, outboard, inboard with { Back = allowed.Back }, outboard with { Back = allowed.Back }] : [inboard, outboard];
    }
}

/// <summary>What a load's effect on one wheel depends on.</summary>
/// <param name="Allowed">The allowances.</param>
/// <param name="Side">Of the car.</param>
/// <param name="Radius">Of the tyre, m.</param>
/// <param name="Middle">How far to either side of the tyre's middle plane a thing counts as standing on both sides, m.</param>
/// <param name="LockLeft">rad, 0 where the wheel does not steer.</param>
/// <param name="LockRight">Likewise.</param>
internal sealed record SwayCorner(CornerAllowances Allowed, WheelSide Side, double Radius, double Middle, double LockLeft, double LockRight)
{
    /// <summary>Of the load, what is joined with a steer: all straight ahead, nothing at lock.</summary>
    public double Fade(double steer)
    {
        double end = steer > 0 ? LockLeft : LockRight;
        return end > 0 ? Math.Max(0, 1 - (Math.Abs(steer) / end)) : 1;
    }
}
