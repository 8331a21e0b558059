using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Following;

/// <summary>How far a linkage goes both ways from the reference state.</summary>
/// <param name="Least">m, at most 0, to 1e-6 m.</param>
/// <param name="Most">m, at least 0, to 1e-6 m.</param>
/// <param name="StopsLeast">What stops it there; null when the limit asked for was reached.</param>
/// <param name="StopsMost">Likewise.</param>
/// <remarks>
/// Only the linkage stops it: neither dampers nor bump stops nor the swing of ball joints. Source: docs/theory/hardpoints.md §3.
/// </remarks>
public sealed record LinkageRange(double Least, double Most, CannotReach? StopsLeast, CannotReach? StopsMost)
{
    /// <summary>
    /// Travel that can be reached at a place of rack and plate, m; null when even travel 0 cannot be, or nothing holds the knuckle.
    /// </summary>
    /// <param name="linkage">What to follow.</param>
    /// <param name="rack">m along +Y.</param>
    /// <param name="plate">m along the plate's direction.</param>
    /// <param name="limit">Where to stop looking, m, either way.</param>
    /// <remarks>Source: docs/theory/hardpoints.md §3.</remarks>
    public static LinkageRange? OfTravel(KnuckleLinkage linkage, double rack = 0, double plate = 0, double limit = 0.3) =>
        Of(linkage, new(0, rack, plate), at => at.Travel, new(-limit, rack, plate), new(limit, rack, plate));

    /// <summary>
    /// Rack that can be reached at a travel and place of the plate, m; null when even rack 0 cannot be, or nothing holds the knuckle.
    /// </summary>
    /// <param name="linkage">What to follow.</param>
    /// <param name="travel">m, bump positive.</param>
    /// <param name="plate">m along the plate's direction.</param>
    /// <param name="limit">Where to stop looking, m, either way.</param>
    /// <remarks>Source: docs/theory/hardpoints.md §3.</remarks>
    public static LinkageRange? OfRack(KnuckleLinkage linkage, double travel = 0, double plate = 0, double limit = 0.2) =>
        Of(linkage, new(travel, 0, plate), at => at.Rack, new(travel, -limit, plate), new(travel, limit, plate));

    private static LinkageRange? Of(
        KnuckleLinkage linkage, in LinkagePlace middle, Func<LinkagePlace, double> read, in LinkagePlace least, in LinkagePlace most)
    {
        if (KnuckleFollower.Create(linkage, out _) is not { } follower)
        {
            return null;
        }

        (double At, CannotReach? Stops)? low = End(follower, middle, least, read), high = End(follower, middle, most, read);
        return low is { } l && high is { } h ? new(l.At, h.At, l.Stops, h.Stops) : null;
    }

    private static (double At, CannotReach? Stops)? End(
        KnuckleFollower follower, in LinkagePlace middle, in LinkagePlace end, Func<LinkagePlace, double> read)
    {
        if (follower.MoveTo(middle.Travel, middle.Rack, middle.Plate) != Reach.Reached)
        {
            return null;
        }

        CannotReach? stops = follower.GoTowards(end) ? null : follower.WhatStops(end);
        return (read(follower.Place), stops);
    }
}
