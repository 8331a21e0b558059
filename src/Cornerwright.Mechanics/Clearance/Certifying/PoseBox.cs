namespace Cornerwright.Mechanics.Clearance.Certifying;

/// <summary>The box of travel, steer and the field's third way that is asked about, with the user's limit on bump at lock.</summary>
/// <param name="Least">Its low corner.</param>
/// <param name="Most">Its high corner; equal to Least along a way that does not move.</param>
/// <param name="BumpLimit">
/// Most travel allowed at each steer, straight lines between, level beyond the ends; null for none. Steer ascending.
/// </param>
/// <remarks>Source: docs/theory/certified-clearance.md §1.</remarks>
public sealed record PoseBox(PosePlace Least, PosePlace Most, IReadOnlyList<BumpAtSteer>? BumpLimit = null)
{
    /// <summary>True when the box is finite, its corners in order, and the limit's steers ascend. Source: definition.</summary>
    public bool IsSound
    {
        get
        {
            for (int way = 0; way < 3; way++)
            {
                if (!(Least[way] <= Most[way]) || !double.IsFinite(Most[way] - Least[way]))
                {
                    return false;
                }
            }

            double last = double.NegativeInfinity;
            foreach (BumpAtSteer point in BumpLimit ?? [])
            {
                if (!(point.Steer > last) || !double.IsFinite(point.Steer + point.Bump))
                {
                    return false;
                }

                last = point.Steer;
            }

            return true;
        }
    }

    /// <summary>The allowed bump at a steer, m; infinite without a limit. Source: linear interpolation.</summary>
    public double AllowedBump(double steer)
    {
        if (BumpLimit is not { Count: > 0 } limit)
        {
            return double.PositiveInfinity;
        }

        if (steer <= limit[0].Steer)
        {
            return limit[0].Bump;
        }

        for (int i = 1; i < limit.Count; i++)
        {
            if (steer <= limit[i].Steer)
            {
                double share = (steer - limit[i - 1].Steer) / (limit[i].Steer - limit[i - 1].Steer);
                return limit[i - 1].Bump + (share * (limit[i].Bump - limit[i - 1].Bump));
            }
        }

        return limit[^1].Bump;
    }

    /// <summary>
    /// The most allowed bump over a stretch of steer, and where. Source: a chain of straight lines is highest at a corner or an end.
    /// </summary>
    internal (double Bump, double Steer) MostAllowedBump(double from, double to)
    {
        var best = (Bump: AllowedBump(from), Steer: from);
        if (AllowedBump(to) > best.Bump)
        {
            best = (AllowedBump(to), to);
        }

        foreach (BumpAtSteer point in BumpLimit ?? [])
        {
            if (point.Steer > from && point.Steer < to && point.Bump > best.Bump)
            {
                best = (point.Bump, point.Steer);
            }
        }

        double middle = 0.5 * (from + to);
        return AllowedBump(middle) >= best.Bump ? (best.Bump, middle) : best;
    }

    internal PosePlace Middle => new(
        0.5 * (Least.Travel + Most.Travel), 0.5 * (Least.Steer + Most.Steer), 0.5 * (Least.Third + Most.Third));
}

/// <summary>A corner of the limit on bump: the most travel (m) at a steer.</summary>
/// <remarks>Source: docs/theory/certified-clearance.md §1.</remarks>
public readonly record struct BumpAtSteer(double Steer, double Bump);
