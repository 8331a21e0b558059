using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Numerics;

namespace Cornerwright.Mechanics.Clearance.Scans;

/// <summary>Why a known wheel was or was not found among scanned points.</summary>
public enum WheelFitStop
{
    Fitted,

    /// <summary>Too few points lie on the wheel where it was looked for.</summary>
    TooFew,

    /// <summary>The points on it do not fix it: they cover too little of it, or it did not settle.</summary>
    NotSettled,
}

/// <summary>Where a known wheel stands in a scan.</summary>
/// <param name="HubFace">Centre of its hub face in the scan's frame, m.</param>
/// <param name="Spindle">Unit, to the street side, in the scan's frame.</param>
/// <param name="Points">How many scanned points lie on it.</param>
/// <param name="Deviation">
/// How far they lie off it, robust standard deviation, m: the scan's roughness and the profile's own error together.
/// </param>
/// <param name="Doubt">
/// Standard deviation of the wheel's surface against the scan, along the surface's normal plane, at the clock
/// position where it is largest, m.
/// </param>
/// <param name="Why">What came of it.</param>
/// <remarks>Source: docs/theory/scans.md §4.</remarks>
public readonly record struct WheelFitted(Vec3 HubFace, Vec3 Spindle, int Points, double Deviation, double Doubt, WheelFitStop Why);

/// <summary>Fits the wheel that is on the car, whose shape is known, to the points of a scan.</summary>
/// <remarks>
/// Unknown: hub face (3) and lean of the spindle (2); turning about itself changes nothing. The distance of a point from a solid of
/// revolution and its slope are exact (docs/theory/clearance.md §1), so each step is one linear least-squares problem; points far off count
/// less and then not at all (A. E. Beaton, J. W. Tukey, Technometrics 16 (1974) 147). Source: docs/theory/scans.md §4.
/// </remarks>
public static class WheelFit
{
    private const int Unknowns = 5, MostPoints = 6_000, StepsEach = 8, LeastPoints = 30;

    /// <summary>Points within this of the wheel take part, m: wide at first, for a start from a few picks, then close.</summary>
    private static readonly double[] Bands = [0.030, 0.018, 0.010, 0.007];

    /// <summary>
    /// Scans err in patches, not point by point: what lies in one cube of this edge counts as one reading, m. Common practice, no source.
    /// </summary>
    private const double Patch = 0.03;

    /// <summary>
    /// Share of the deviation that may be common to all points, the profile being not quite the tyre. Common practice, no source.
    /// </summary>
    private const double CommonShare = 0.5;

    /// <summary>Narrowest band, m: closer than this the tyre's lettering decides.</summary>
    private const double LeastBand = 0.003;

    /// <summary>Fits from a start that is right to about 20 mm and 3 degrees.</summary>
    /// <param name="wheel">The wheel that was on the car.</param>
    /// <param name="reach">Furthest point of the wheel from its hub face, m.</param>
    /// <param name="points">Scanned points, m, in the scan's frame.</param>
    /// <param name="hubFace">Start, m.</param>
    /// <param name="spindle">Start, unit, to the street side.</param>
    /// <remarks>Source: docs/theory/scans.md §4.</remarks>
    public static WheelFitted Fit(in WheelSolid wheel, double reach, ReadOnlySpan<Vec3> points, Vec3 hubFace, Vec3 spindle)
    {
        Require.Positive(reach);
        Vec3[] near = Near(points, hubFace, reach + (2 * Bands[0]));
        var at = new Place(hubFace, spindle.Unit());
        var equations = new NormalEquations(stackalloc double[Unknowns * Unknowns], stackalloc double[Unknowns]);
        ReadOnlySpan<double> b = equations.Unknowns;
        foreach (double wide in Bands)
        {
            double band = wide;
            if (wide == Bands[^1])
            {
                band = Math.Clamp(4.685 * Spread(wheel, near, at, wide), LeastBand, wide);
            }

            for (int step = 0; step < StepsEach; step++)
            {
                int count = Gather(wheel, near, at, band, equations);
                if (count < LeastPoints)
                {
                    return Without(at, count, WheelFitStop.TooFew);
                }

                if (!equations.Solve())
                {
                    return Without(at, count, WheelFitStop.NotSettled);
                }

                at = at.Moved(b);
                if (Math.Abs(b[0]) + Math.Abs(b[1]) + Math.Abs(b[2]) + (reach * (Math.Abs(b[3]) + Math.Abs(b[4]))) < 1e-7)
                {
                    break;
                }
            }
        }

        return (at.HubFace - hubFace).Length < 4 * Bands[0] ? Whole(wheel, near, at, reach) : Without(at, 0, WheelFitStop.NotSettled);
    }

    private static WheelFitted Without(in Place at, int count, WheelFitStop why) =>
        new(at.HubFace, at.Spindle, count, double.PositiveInfinity, double.PositiveInfinity, why);

    private static WheelFitted Whole(in WheelSolid wheel, Vec3[] near, in Place at, double reach)
    {
        double deviation = Spread(wheel, near, at, Bands[^1]), band = Math.Max(LeastBand, 4.685 * deviation);
        var frame = at.Frame();
        var patches = new Dictionary<(int, int, int), int>();
        int count = 0;
        foreach (var p in near)
        {
            if (Math.Abs(wheel.SignedDistance(frame.ToSpindle(p))) < band)
            {
                count++;
                var key = Cube(p);
                patches[key] = patches.GetValueOrDefault(key) + 1;
            }
        }

        // Each patch counts as one reading, whatever the number of its points.
        var information = new NormalEquations(stackalloc double[Unknowns * Unknowns], stackalloc double[Unknowns]);
        Span<double> row = stackalloc double[Unknowns], covariance = stackalloc double[Unknowns * Unknowns];
        foreach (var p in near)
        {
            Vec3 s = frame.ToSpindle(p);
            if (Math.Abs(Distance(wheel, s, out Vec3 gradient)) < band)
            {
                Row(frame, s, gradient, row);
                information.Add(row, 0, 1.0 / patches[Cube(p)]);
            }
        }

        if (count < LeastPoints || !information.Covariance(covariance))
        {
            return Without(at, count, WheelFitStop.NotSettled);
        }

        double chance = deviation * Math.Sqrt(Worst(covariance, reach)), common = CommonShare * deviation;
        return new(at.HubFace, at.Spindle, count, deviation, Math.Sqrt((chance * chance) + (common * common)), WheelFitStop.Fitted);
    }

    // Every how-many-th of the points that could belong to the wheel.
    private static Vec3[] Near(ReadOnlySpan<Vec3> points, Vec3 hub, double reach)
    {
        int all = 0;
        foreach (var p in points)
        {
            all += (p - hub).LengthSquared < reach * reach ? 1 : 0;
        }

        int stride = 1 + (all / MostPoints), seen = 0;
        var near = new List<Vec3>();
        foreach (var p in points)
        {
            if ((p - hub).LengthSquared < reach * reach && seen++ % stride == 0)
            {
                near.Add(p);
            }
        }

        return [.. near];
    }

    private static int Gather(in WheelSolid wheel, Vec3[] near, in Place at, double band, NormalEquations equations)
    {
        equations.Clear();
        var frame = at.Frame();
        Span<double> row = stackalloc double[Unknowns];
        int count = 0;
        foreach (var p in near)
        {
            Vec3 s = frame.ToSpindle(p);
            double d = Distance(wheel, s, out Vec3 gradient), share = d / band;
            if (!(Math.Abs(share) < 1))
            {
                continue;
            }

            double w = (1 - (share * share)) * (1 - (share * share));
            Row(frame, s, gradient, row);
            equations.Add(row, -d, w);
            count++;
        }

        return count;
    }

    private static double Distance(in WheelSolid wheel, in Vec3 inSpindle, out Vec3 gradient)
    {
        double r = Math.Sqrt((inSpindle.Y * inSpindle.Y) + (inSpindle.Z * inSpindle.Z));
        double d = wheel.SignedDistance(inSpindle.X, r, out _, out double ga, out double gr);
        gradient = Clearing.Gradient(inSpindle, r, ga, gr);
        return d;
    }

    // How the distance changes when the wheel moves along a, 12, 3 and leans about 12 and 3.
    private static void Row(in SpindleFrame frame, in Vec3 s, in Vec3 gradient, Span<double> row)
    {
        // In S the frame's own axes are left-handed when 3 o'clock is 12 × a: keep to B for the turns.
        Vec3 g = (frame.Axis * gradient.X) + (frame.Twelve * gradient.Y) + (frame.Three * gradient.Z);
        Vec3 p = (frame.Axis * s.X) + (frame.Twelve * s.Y) + (frame.Three * s.Z);
        Vec3 turn = g.Cross(p);
        row[0] = -gradient.X;
        row[1] = -gradient.Y;
        row[2] = -gradient.Z;
        row[3] = turn.Dot(frame.Twelve);
        row[4] = turn.Dot(frame.Three);
    }

    // Largest variance, for unit errors, of a place on the tread's circle along the spindle, away from it, or between the two.
    private static double Worst(ReadOnlySpan<double> covariance, double reach)
    {
        double worst = 0;
        Span<double> along = stackalloc double[Unknowns], away = stackalloc double[Unknowns];
        for (int hour = 0; hour < 12; hour++)
        {
            var (sin, cos) = Math.SinCos(hour * (Math.PI / 6));

            // A lean about 12 o'clock moves what stands at 3 along the spindle, and the other way about.
            (along[0], along[1], along[2], along[3], along[4]) = (1, 0, 0, -reach * sin, reach * cos);
            (away[0], away[1], away[2], away[3], away[4]) = (0, cos, sin, 0, 0);
            double a = Form(covariance, along, along), b = Form(covariance, along, away), d = Form(covariance, away, away);
            worst = Math.Max(worst, SymmetricEigen.LargerOfTwo(a, b, d));
        }

        return worst;
    }

    private static double Form(ReadOnlySpan<double> c, ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        double sum = 0;
        for (int i = 0; i < Unknowns; i++)
        {
            for (int k = 0; k < Unknowns; k++)
            {
                sum += x[i] * c[(i * Unknowns) + k] * y[k];
            }
        }

        return sum;
    }

    private static (int, int, int) Cube(in Vec3 p) =>
        ((int)Math.Floor(p.X / Patch), (int)Math.Floor(p.Y / Patch), (int)Math.Floor(p.Z / Patch));

    // 1.4826 times the median: the standard deviation if errors are normal.
    private static double Spread(in WheelSolid wheel, Vec3[] near, in Place at, double band)
    {
        var frame = at.Frame();
        var off = new List<double>();
        foreach (var p in near)
        {
            double d = Math.Abs(wheel.SignedDistance(frame.ToSpindle(p)));
            if (d < band)
            {
                off.Add(d);
            }
        }

        off.Sort();
        return off.Count == 0 ? band : 1.4826 * off[off.Count / 2];
    }

    private readonly record struct Place(Vec3 HubFace, Vec3 Spindle)
    {
        // Any two directions square to the spindle serve: the wheel is round.
        public SpindleFrame Frame()
        {
            Vec3 s = Spindle, other = Math.Abs(s.X) < 0.7 ? Vec3.UnitX : Vec3.UnitY;
            Vec3 twelve = (other - (s * other.Dot(s))).Unit();
            return new(HubFace, s, twelve, twelve.Cross(s));
        }

        public Place Moved(ReadOnlySpan<double> step)
        {
            var frame = Frame();
            Vec3 lean = (frame.Twelve * step[3]) + (frame.Three * step[4]);
            return new(
                HubFace + (frame.Axis * step[0]) + (frame.Twelve * step[1]) + (frame.Three * step[2]),
                (Spindle + lean.Cross(Spindle)).Unit());
        }
    }
}
