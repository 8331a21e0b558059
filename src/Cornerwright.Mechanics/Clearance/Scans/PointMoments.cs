using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Clearance.Scans;

/// <summary>Count, sums and sums of products of points: what a best plane needs, and what adds up from child to parent.</summary>
/// <remarks>Source: Pearson, Phil. Mag. 2 (1901) 559.</remarks>
internal struct PointMoments
{
    private double n, x, y, z, xx, xy, xz, yy, yz, zz;

    public void Add(double px, double py, double pz)
    {
        n++;
        x += px;
        y += py;
        z += pz;
        xx += px * px;
        xy += px * py;
        xz += px * pz;
        yy += py * py;
        yz += py * pz;
        zz += pz * pz;
    }

    public void Add(in PointMoments other)
    {
        n += other.n;
        x += other.x;
        y += other.y;
        z += other.z;
        xx += other.xx;
        xy += other.xy;
        xz += other.xz;
        yy += other.yy;
        yz += other.yz;
        zz += other.zz;
    }

    /// <summary>
    /// Unit normal of the plane with the least squared distance; any direction that fits when the points are a line or one point.
    /// </summary>
    /// <remarks>Smallest eigenvector by the trigonometric solution of the cubic. Source: Smith, Comm. ACM 4 (1961) 168.</remarks>
    public readonly Vec3 Normal()
    {
        double mx = x / n, my = y / n, mz = z / n;
        double a = (xx / n) - (mx * mx), b = (yy / n) - (my * my), c = (zz / n) - (mz * mz);
        double d = (xy / n) - (mx * my), e = (xz / n) - (mx * mz), f = (yz / n) - (my * mz);
        double q = (a + b + c) / 3, off = (d * d) + (e * e) + (f * f);
        double p = Math.Sqrt((((a - q) * (a - q)) + ((b - q) * (b - q)) + ((c - q) * (c - q)) + (2 * off)) / 6);
        if (!(p > 1e-15))
        {
            return Vec3.UnitZ;
        }

        double ba = (a - q) / p, bb = (b - q) / p, bc = (c - q) / p, bd = d / p, be = e / p, bf = f / p;
        double half = 0.5 * ((ba * ((bb * bc) - (bf * bf))) - (bd * ((bd * bc) - (bf * be))) + (be * ((bd * bf) - (bb * be))));
        double least = q + (2 * p * Math.Cos((Math.Acos(Math.Clamp(half, -1, 1)) / 3) + (2 * Math.PI / 3)));

        // The eigenvector is square to all rows of A - λI: the longest cross product of two rows.
        Vec3 r0 = new(a - least, d, e), r1 = new(d, b - least, f), r2 = new(e, f, c - least);
        Vec3 best = r0.Cross(r1), u = r0.Cross(r2), v = r1.Cross(r2);
        best = u.LengthSquared > best.LengthSquared ? u : best;
        best = v.LengthSquared > best.LengthSquared ? v : best;
        double length = best.Length;
        if (length > 1e-9 * p * p)
        {
            return best / length;
        }

        // A line: the longest row runs along it, and any direction square to that will do.
        Vec3 row = r1.LengthSquared > r0.LengthSquared ? r1 : r0;
        row = r2.LengthSquared > row.LengthSquared ? r2 : row;
        Vec3 square = row.Cross(Math.Abs(row.X) < 0.7 * row.Length ? Vec3.UnitX : Vec3.UnitY);
        return square.Length > 0 ? square.Unit() : Vec3.UnitZ;
    }
}
