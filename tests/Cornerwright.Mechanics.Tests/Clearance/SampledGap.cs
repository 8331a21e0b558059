using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Tests.Clearance;

/// <summary>
/// The slow second way: points all over both surfaces, in B, nearest pairs kept and sampled again ever more finely. It knows nothing of
/// meridian planes, gradients or convexity; it uses the polygons' corners and a frame of its own round the spindle.
/// </summary>
internal sealed class SampledGap
{
    private const double CoarseStep = 0.016;    // m between first samples
    private const int StartsAnEdge = 3;         // pairs kept for refinement, for each edge of the profiles
    private const int Rounds = 18;              // step shrinks by 1.8 a round: to under 1 µm

    private readonly (ProfilePoint From, ProfilePoint To, double Start)[] edges;
    private readonly double perimeter;
    private readonly Vec3 origin;
    private readonly Vec3 axis;
    private readonly Vec3 one;
    private readonly Vec3 two;
    private readonly List<(int Edge, double S, double Phi, double X, double Y, double Z)> coarse = [];

    public SampledGap(ReadOnlySpan<ProfilePoint> tyre, ReadOnlySpan<ProfilePoint> rim, WheelPose pose)
    {
        var list = new List<(ProfilePoint, ProfilePoint, double)>();
        foreach (ReadOnlySpan<ProfilePoint> polygon in new[] { tyre.ToArray(), rim.ToArray() })
        {
            for (int i = 0; i < polygon.Length; i++)
            {
                ProfilePoint p = polygon[i], q = polygon[(i + 1) % polygon.Length];
                list.Add((p, q, perimeter));
                perimeter += Math.Sqrt(Math.Pow(q.A - p.A, 2) + Math.Pow(q.R - p.R, 2));
            }
        }

        edges = [.. list];
        (origin, axis) = (pose.HubFace, pose.Spindle);
        one = axis.Cross(new Vec3(0.3, 0.1, 0.9)).Unit();
        two = axis.Cross(one);
        for (int edge = 0; edge < edges.Length; edge++)
        {
            var (from, to, start) = edges[edge];
            double length = Math.Sqrt(Math.Pow(to.A - from.A, 2) + Math.Pow(to.R - from.R, 2));
            int steps = Math.Max(1, (int)Math.Ceiling(length / CoarseStep));
            for (int i = 0; i < steps; i++)
            {
                double s = start + (length * (i + 0.5) / steps);
                int round = (int)Math.Ceiling(2 * Math.PI * Math.Max(from.R, to.R) / CoarseStep);
                for (int k = 0; k < round; k++)
                {
                    double phi = 2 * Math.PI * k / round;
                    Vec3 at = OnWheel(s, phi);
                    coarse.Add((edge, s, phi, at.X, at.Y, at.Z));
                }
            }
        }
    }

    /// <summary>Least distance between the surfaces; the obstacle is a map of two parameters over a rectangle.</summary>
    public double To(Func<double, double, Vec3> obstacle, double uMost, double vMost, double uMetres, double vMetres)
    {
        int nu = uMost > 0 ? Math.Max(2, (int)Math.Ceiling(uMetres / CoarseStep) + 1) : 1;
        int nv = vMost > 0 ? Math.Max(2, (int)Math.Ceiling(vMetres / CoarseStep) + 1) : 1;
        var points = new List<(double U, double V, Vec3 At)>();
        for (int i = 0; i < nu; i++)
        {
            for (int j = 0; j < nv; j++)
            {
                double u = nu > 1 ? uMost * i / (nu - 1) : 0, v = nv > 1 ? vMost * j / (nv - 1) : 0;
                points.Add((u, v, obstacle(u, v)));
            }
        }

        // For each edge of the profiles the nearest pairs of samples are starts, so that no part of the wheel is forgotten.
        var starts = new List<(double D, double S, double Phi, double U, double V)>[edges.Length];
        var nearest = new (double D, double S, double Phi)[edges.Length];
        foreach (var (u, v, at) in points)
        {
            Array.Fill(nearest, (double.PositiveInfinity, 0, 0));
            double x = at.X, y = at.Y, z = at.Z;
            foreach (ref readonly var on in System.Runtime.InteropServices.CollectionsMarshal.AsSpan(coarse))
            {
                double d = ((on.X - x) * (on.X - x)) + ((on.Y - y) * (on.Y - y)) + ((on.Z - z) * (on.Z - z));
                if (d < nearest[on.Edge].D)
                {
                    nearest[on.Edge] = (d, on.S, on.Phi);
                }
            }

            for (int e = 0; e < edges.Length; e++)
            {
                (starts[e] ??= []).Add((nearest[e].D, nearest[e].S, nearest[e].Phi, u, v));
            }
        }

        double least = double.PositiveInfinity;
        foreach (var start in starts.SelectMany(list => list.OrderBy(p => p.D).Take(StartsAnEdge)).OrderBy(p => p.D))
        {
            least = Math.Min(
                least,
                Refined(
                    obstacle, start, uMost, vMost, uMost > 0 ? CoarseStep * uMost / uMetres : 0,
                    vMost > 0 ? CoarseStep * vMost / vMetres : 0, least));
        }

        return Math.Sqrt(least);
    }

    private double Refined(
        Func<double, double, Vec3> obstacle, (double D, double S, double Phi, double U, double V) start,
        double uMost, double vMost, double uStep, double vStep, double least)
    {
        var (best, s0, phi0, u0, v0) = start;
        double sStep = CoarseStep, phiStep = CoarseStep / 0.25;
        Span<double> wx = stackalloc double[25], wy = stackalloc double[25], wz = stackalloc double[25];
        for (int round = 0; round < Rounds; round++)
        {
            if (round == 4 && Math.Sqrt(best) > Math.Sqrt(least) + 0.002)
            {
                return best;    // a start that is 2 mm behind after four rounds is not the nearest place
            }

            sStep /= 1.8;
            phiStep /= 1.8;
            uStep /= 1.8;
            vStep /= 1.8;
            var (s, phi, u, v) = (s0, phi0, u0, v0);
            for (int k = 0; k < 25; k++)
            {
                (wx[k], wy[k], wz[k]) = OnWheel(s + (((k % 5) - 2) * sStep), phi + (((k / 5) - 2) * phiStep));
            }

            for (int i = uMost > 0 ? -2 : 0; i <= (uMost > 0 ? 2 : 0); i++)
            {
                for (int j = vMost > 0 ? -2 : 0; j <= (vMost > 0 ? 2 : 0); j++)
                {
                    double ui = Math.Clamp(u + (i * uStep), 0, uMost), vj = v + (j * vStep);
                    Vec3 at = obstacle(ui, vj);
                    double x = at.X, y = at.Y, z = at.Z;
                    for (int k = 0; k < 25; k++)
                    {
                        double d = ((wx[k] - x) * (wx[k] - x)) + ((wy[k] - y) * (wy[k] - y)) + ((wz[k] - z) * (wz[k] - z));
                        if (d < best)
                        {
                            best = d;
                            (s0, phi0, u0, v0) = (s + (((k % 5) - 2) * sStep), phi + (((k / 5) - 2) * phiStep), ui, vj);
                        }
                    }
                }
            }
        }

        return best;
    }

    private Vec3 OnWheel(double s, double phi)
    {
        s = Math.Clamp(s, 0, perimeter);
        int low = 0, high = edges.Length - 1;
        while (low < high)
        {
            int middle = (low + high + 1) / 2;
            (low, high) = edges[middle].Start <= s ? (middle, high) : (low, middle - 1);
        }

        var (from, to, start) = edges[low];
        double end = low + 1 < edges.Length ? edges[low + 1].Start : perimeter;
        double share = end > start ? (s - start) / (end - start) : 0;
        double a = from.A + (share * (to.A - from.A)), r = from.R + (share * (to.R - from.R));
        var (sin, cos) = Math.SinCos(phi);
        return origin + (axis * a) + (one * (r * cos)) + (two * (r * sin));
    }
}
