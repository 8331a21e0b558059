using Cornerwright.Mechanics.Clearance;

namespace Cornerwright.Mechanics.Tests.Clearance;

/// <summary>Signed distance with the place it was measured from.</summary>
/// <param name="Distance">m, negative inside.</param>
/// <param name="Nearest">Nearest point of the profile, in the half-plane of the point asked for.</param>
/// <remarks>Source: docs/theory/clearance.md §1.</remarks>
public readonly record struct ProfileHit(double Distance, ProfilePoint Nearest);
