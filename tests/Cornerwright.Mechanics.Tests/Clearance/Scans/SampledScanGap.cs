using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Tests.Clearance.Scans;

/// <summary>
/// The least distance to triangles by sampling alone: no tree, no gradients, no convexity, the general polygon for the profile.
/// </summary>
/// <remarks>Sampling can only miss the nearest place, so it can only be too large.</remarks>
internal static class SampledScanGap
{
    private const double Fine = 1e-3;
    private const int Descents = 16;

    private readonly record struct Sample(double Gap, Vec3 A, Vec3 B, Vec3 C);

    public static double Of(TriangleMesh mesh, WheelShape shape, in WheelPose pose)
    {
        // Every triangle's middle; then quarters of whatever the Lipschitz property leaves open, down to a millimetre.
        var wheel = new Wheel(shape, pose);
        double best = double.PositiveInfinity;
        var open = new List<Sample>();
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            var (a, b, c) = mesh.Triangle(t);
            best = Math.Min(best, Math.Min(wheel.Gap(a), Math.Min(wheel.Gap(b), wheel.Gap(c))));
            open.Add(new(wheel.Gap((a + b + c) / 3), a, b, c));
        }

        var fine = new List<Sample>();
        while (open.Count > 0)
        {
            var next = new List<Sample>();
            foreach (Sample s in open)
            {
                best = Math.Min(best, s.Gap);
                Vec3 middle = (s.A + s.B + s.C) / 3;
                double size = Math.Max((s.A - middle).Length, Math.Max((s.B - middle).Length, (s.C - middle).Length));
                if (s.Gap - size >= best)
                {
                    continue;
                }

                if (size < Fine)
                {
                    fine.Add(s);
                    continue;
                }

                Vec3 ab = (s.A + s.B) / 2, bc = (s.B + s.C) / 2, ca = (s.C + s.A) / 2;
                foreach (var (p, q, r) in new[] { (s.A, ab, ca), (ab, s.B, bc), (ca, bc, s.C), (ab, bc, ca) })
                {
                    next.Add(new(wheel.Gap((p + q + r) / 3), p, q, r));
                }
            }

            // Of very many the lowest: a plane parallel to the tread leaves whole fields open.
            open = next.Count > 4000 ? [.. next.OrderBy(s => s.Gap).Take(4000)] : next;
        }

        foreach (Sample s in fine.OrderBy(s => s.Gap).Take(Descents))
        {
            best = Math.Min(best, Descent(wheel, s));
        }

        return best;
    }

    /// <summary>
    /// Steps in ever new directions, shorter when none helps, held inside the triangle: a fold has few directions downhill.
    /// </summary>
    private static double Descent(in Wheel wheel, in Sample s)
    {
        Vec3 ab = s.B - s.A, ac = s.C - s.A;
        double u = 1.0 / 3, v = 1.0 / 3, best = s.Gap, angle = 0;
        for (double step = 0.5; step > 1e-4;)
        {
            bool better = false;
            for (int k = 0; k < 12; k++, angle += 2.399963229728653)
            {
                double nu = Math.Max(0, u + (step * Math.Cos(angle))), nv = Math.Max(0, v + (step * Math.Sin(angle)));
                if (nu + nv > 1)
                {
                    (nu, nv) = (nu / (nu + nv), nv / (nu + nv));
                }

                double gap = wheel.Gap(s.A + (ab * nu) + (ac * nv));
                if (gap < best)
                {
                    (best, u, v, better) = (gap, nu, nv, true);
                }
            }

            step = better ? step : 0.6 * step;
        }

        return best;
    }

    internal readonly struct Wheel(WheelShape shape, WheelPose pose)
    {
        public double Gap(in Vec3 p)
        {
            Vec3 u = p - pose.HubFace;
            double a = u.Dot(pose.Spindle), r = Math.Sqrt(Math.Max(0, u.LengthSquared - (a * a)));
            double best = double.PositiveInfinity;
            foreach (ProfilePoint[] piece in shape.Corners.Cast<ProfilePoint[]>())
            {
                best = Math.Min(best, new ProfilePolygon(piece).SignedDistance(a, r));
            }

            return best;
        }
    }
}
