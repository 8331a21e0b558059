using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Tests.Clearance.Scans;

/// <summary>
/// An invented wheel arch as a scanner would see it: inner wall, roof, wing lip, a bulge and a seam, with a little noise. Left side, B.
/// </summary>
/// <remarks>Made of sines and a fixed hash, so that it is the same everywhere. Nothing of it is measured on a car.</remarks>
internal static class InventedArch
{
    public static readonly Vec3 Hub = new(0, 0.75, 0.31);

    /// <summary>So many triangles or a few fewer.</summary>
    public static TriangleMesh Mesh(int triangles, double growth = 0)
    {
        int round = Math.Max(2, (int)Math.Sqrt(triangles / 2 * 1.6)), across = Math.Max(2, triangles / 2 / round);
        var xyz = new float[3 * (round + 1) * (across + 1)];
        var corners = new int[6 * round * across];
        int n = 0;
        for (int i = 0; i <= round; i++)
        {
            for (int j = 0; j <= across; j++)
            {
                Vec3 p = Point((double)i / round, (double)j / across, growth);
                (xyz[n], xyz[n + 1], xyz[n + 2]) = ((float)p.X, (float)p.Y, (float)(p.Z + (4e-5 * Hash(n))));
                n += 3;
            }
        }

        n = 0;
        for (int i = 0; i < round; i++)
        {
            for (int j = 0; j < across; j++)
            {
                int a = (i * (across + 1)) + j, b = a + across + 1;
                (corners[n], corners[n + 1], corners[n + 2]) = (a, b, a + 1);
                (corners[n + 3], corners[n + 4], corners[n + 5]) = (a + 1, b, b + 1);
                n += 6;
            }
        }

        return TriangleMesh.From(xyz, corners);
    }

    /// <summary>From ahead over the top to behind (u), from the inner wall's foot over the roof to the lip (v).</summary>
    private static Vec3 Point(double u, double v, double growth)
    {
        double angle = Math.PI * (-0.62 + (1.24 * u));
        double wall = 0.42, lip = 0.93;
        double a, r;
        if (v < wall)
        {
            double s = v / wall;
            a = -0.285 + (0.03 * s * s) + (0.03 * Math.Exp(-60 * ((u - 0.45) * (u - 0.45))) * Math.Sin(Math.PI * s));
            r = 0.12 + (0.255 * s);
        }
        else
        {
            double s = (v - wall) / (1 - wall);
            a = -0.255 + (0.335 * s);
            r = 0.375 + (0.012 * Math.Sin(Math.PI * s)) - (v > lip ? 0.018 * (v - lip) / (1 - lip) : 0);
        }

        r += growth + (0.0018 * Math.Sin(37 * u) * Math.Sin(11 * v)) + (0.004 * Math.Exp(-9000 * (u - 0.58) * (u - 0.58)) * -1);
        return new(Hub.X - (r * Math.Sin(angle)), Hub.Y + a, Hub.Z + 0.035 + (r * Math.Cos(angle)));
    }

    private static double Hash(int n)
    {
        uint x = ((uint)n * 2654435761u) ^ 0x9E3779B9u;
        x ^= x >> 15;
        x *= 2246822519u;
        x ^= x >> 13;
        return ((x & 0xFFFF) / 32768.0) - 1;
    }
}
