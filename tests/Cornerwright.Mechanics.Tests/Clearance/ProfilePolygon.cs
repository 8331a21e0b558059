using Cornerwright.Mechanics.Clearance;

namespace Cornerwright.Mechanics.Tests.Clearance;

/// <summary>
/// A closed polygon in the half-plane r at least 0 that, turned round the spindle, makes a solid: any shape without self-crossing.
/// </summary>
/// <remarks>
/// The nearest point of a solid of revolution lies in the half-plane of the point asked for, because of all points of one circle
/// round the spindle the nearest has the same direction from it. So the planar distance is exact and no mirror image
/// is needed; edges on the spindle itself (r = 0 at both ends) are inside the solid and left out. Error: rounding only, below 1e-12 m.
/// The second way beside <see cref="ConvexProfile"/>. Source: docs/theory/clearance.md §1.
/// </remarks>
internal readonly ref struct ProfilePolygon(ReadOnlySpan<ProfilePoint> corners)
{
    private readonly ReadOnlySpan<ProfilePoint> corners = corners;

    public ReadOnlySpan<ProfilePoint> Corners => corners;

    /// <summary>Signed distance of a point (a, r), m, negative inside. Source: docs/theory/clearance.md §1.</summary>
    public double SignedDistance(double a, double r) => Nearest(a, r).Distance;

    /// <summary>
    /// Signed distance with the nearest point. Source: docs/theory/clearance.md §1; even-odd rule for inside, W. R. Franklin (1970).
    /// </summary>
    public ProfileHit Nearest(double a, double r)
    {
        double best = double.PositiveInfinity;
        ProfilePoint nearest = default;
        bool inside = false;
        ProfilePoint p = corners[^1];
        foreach (ProfilePoint q in corners)
        {
            double da = q.A - p.A, dr = q.R - p.R;
            if ((p.R > r) != (q.R > r) && a < p.A + ((r - p.R) / dr * da))
            {
                inside = !inside;
            }

            double square = (da * da) + (dr * dr);
            if (square > 0 && !(p.R == 0 && q.R == 0))
            {
                double t = Math.Clamp((((a - p.A) * da) + ((r - p.R) * dr)) / square, 0, 1);
                double na = p.A + (t * da), nr = p.R + (t * dr);
                double d = ((a - na) * (a - na)) + ((r - nr) * (r - nr));
                if (d < best)
                {
                    (best, nearest) = (d, new(na, nr));
                }
            }

            p = q;
        }

        double distance = Math.Sqrt(best);
        return new(inside ? -distance : distance, nearest);
    }
}
