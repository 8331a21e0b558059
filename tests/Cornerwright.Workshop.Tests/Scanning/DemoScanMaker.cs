using System.Text;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Workshop.Tests.Scanning;

/// <summary>
/// Makes the demo scan: an invented arch round the demo car's front left wheel, as a phone would scan it. Its edges run through the places
/// that the car's gap readings fix; those and the wheel stand here as numbers, so that the file stays what it is when the
/// demo car is changed. In a frame of its own, Y up and a little askew, in millimetres; rough to 0.5 mm, with holes.
/// </summary>
internal sealed class DemoScanMaker
{
    public const string FileName = "wagtail-front-left.ply";
    public const double Roughness = 0.0005;
    private const int Seed = 20260912;
    private const double Edge = 0.0078;

    private readonly List<Vec3> _points = [];
    private readonly List<(int A, int B, int C)> _triangles = [];
    private readonly Random _random = new(Seed);

    // From the corner's hub face on the body's axes, m.
    private static readonly Dictionary<string, Vec3> Known = new(StringComparer.Ordinal)
    {
        ["arch lip at 11 o'clock"] = new(0.2048, 0.0566, 0.3553),
        ["arch lip at 12 o'clock"] = new(0.0000, 0.0563, 0.4011),
        ["arch lip at 1 o'clock"] = new(-0.2037, 0.0570, 0.3535),
        ["arch liner at 10.5 o'clock"] = new(0.3012, -0.0484, 0.3007),
        ["arch liner at 12 o'clock"] = new(-0.0000, -0.0496, 0.4395),
        ["chassis leg at 3 o'clock"] = new(-0.1527, -0.3106, 0.0080),
    };

    private static readonly TyreSection Tyre = new(-0.045, 0.203, 0.1651, 0.628, 0.211, 0.176, 0.008);
    private static readonly RimSection Rim = new(-0.045, 0.1651, 0.2028, 0.0175, 0.0125, 0.010);

    // The wheel straight ahead (camber -0.6, toe 0.05 degrees), and steered by 35 degrees to the left.
    private static readonly SpindleFrame Frame =
        SpindleFrame.Of(new WheelPose(default, new Vec3(0.000872617, 0.999944789, 0.010471784).Unit()));
    private static readonly SpindleFrame AtLock =
        SpindleFrame.Of(new WheelPose(new Vec3(-0.0444, -0.0143, -0.0075), new Vec3(-0.5707766, 0.8166693, -0.0852367).Unit()));

    public DemoScanMaker()
    {
        Wheel();
        Lip();
        Liner();
        Leg();
        Tower();
        Ground();
        MakeHoles();
        Roughen();
    }

    /// <summary>From the file's points, in metres, to the corner's hub face on the body's axes: what aligning has to find.</summary>
    public static RigidTransform Truth => ToFile.Inverse();

    private static double OuterLip => Rim.AxialCentre + (Rim.OverallWidth / 2);

    public int TriangleCount => _triangles.Count;

    /// <summary>Car to file: X forward, Y left, Z up become -Z, -X, Y; then askew.</summary>
    private static RigidTransform ToFile
    {
        get
        {
            var upright = RigidTransform.FromAxes(-Vec3.UnitY, Vec3.UnitZ, -Vec3.UnitX);
            var askew = RigidTransform.From(Math.Cos(0.32), 0.0035, Math.Sin(0.32), -0.0025, new Vec3(0.41, 1.12, -0.27));
            return upright.Then(askew);
        }
    }

    /// <summary>A place of the corner in the file, in the file's millimetres.</summary>
    public static Vec3 InFile(Vec3 inCorner) => ToFile.Apply(inCorner) * 1000;

    /// <summary>A place on the edge of the rim's outer lip, at a clock position, in the file's millimetres.</summary>
    public static Vec3 LipPick(double hours) => InFile(Frame.ToBody(Clock.PointAt(OuterLip, Rim.LipRadius, hours)));

    /// <summary>Binary PLY, little endian: floats of hundredths of a millimetre.</summary>
    public byte[] Ply()
    {
        using var file = new MemoryStream();
        file.Write(Encoding.ASCII.GetBytes(
            $"ply\nformat binary_little_endian 1.0\ncomment an invented wheel arch, made by a program\nelement vertex "
                + $"{_points.Count}\nproperty float x\nproperty float y\nproperty float z\n"
            + $"element face {_triangles.Count}\nproperty list uchar int vertex_indices\nend_header\n"));
        foreach (var p in _points)
        {
            Vec3 f = InFile(p);
            foreach (double c in (double[])[f.X, f.Y, f.Z])
            {
                file.Write(BitConverter.GetBytes((float)Math.Round(c, 2)));
            }
        }

        foreach (var (a, b, c) in _triangles)
        {
            file.WriteByte(3);
            file.Write(BitConverter.GetBytes(a));
            file.Write(BitConverter.GetBytes(b));
            file.Write(BitConverter.GetBytes(c));
        }

        return file.ToArray();
    }

    private void Wheel()
    {
        Span<ProfilePoint> profile = stackalloc ProfilePoint[TyreProfile.PointCount(12)];
        int corners = TyreProfile.Write(Tyre, 12, profile);
        var seen = new List<ProfilePoint>();
        for (int i = 0; i < corners * 2 / 3; i++)
        {
            seen.Add(profile[i]);
        }

        Turned(seen);

        // The lip's face and edge, a step down, and a dished face with a cap.
        double lip = Rim.LipRadius, a = OuterLip;
        Turned([new(a - 0.010, lip), new(a, lip), new(a, lip - 0.016), new(a - 0.02, lip - 0.024), new(a - 0.028, 0.09),
            new(a - 0.05, 0.075), new(a - 0.05, 0.035), new(a - 0.03, 0.03), new(a - 0.03, 0.004)]);
    }

    private void Turned(IReadOnlyList<ProfilePoint> profile)
    {
        for (int i = 0; i + 1 < profile.Count; i++)
        {
            var (p, q) = (profile[i], profile[i + 1]);
            double length = Math.Sqrt(((q.A - p.A) * (q.A - p.A)) + ((q.R - p.R) * (q.R - p.R))), r = Math.Max(p.R, q.R);
            Patch(Steps(2 * Math.PI * r), Steps(length), (u, v) =>
                Frame.ToBody(Clock.PointAt(p.A + (v * (q.A - p.A)), p.R + (v * (q.R - p.R)), 12 * u)));
        }
    }

    /// <summary>An arch with flats: straight between the places where the gap was read, falling away from the wheel beyond them.</summary>
    private void Lip()
    {
        var knots = new List<(double Clock, double R)>();
        double a = 0;
        foreach (double clock in (double[])[11, 12, 13])
        {
            Vec3 s = Frame.ToSpindle(Known[FormattableString.Invariant($"arch lip at {(clock > 12 ? clock - 12 : clock):0.#} o'clock")]);
            a = s.X;
            knots.Add((clock, Math.Sqrt((s.Y * s.Y) + (s.Z * s.Z))));
        }

        Extend(knots, 8.5, 15.5);
        Strip(knots, [(0, 0), (-0.012, 0.008), (-0.020, 0.012)], a);            // the flange, turned in
        Strip(knots, [(0, 0), (0.006, 0.012), (0.010, 0.06), (-0.006, 0.13)], a);   // the wing
    }

    /// <summary>A liner with a fold along the middle of the tread.</summary>
    private void Liner()
    {
        var knots = new List<(double Clock, double R)>();
        foreach (double clock in (double[])[10.5, 12])
        {
            Vec3 s = Frame.ToSpindle(Known[FormattableString.Invariant($"arch liner at {clock:0.#} o'clock")]);
            knots.Add((clock, Math.Sqrt((s.Y * s.Y) + (s.Z * s.Z))));
        }

        Extend(knots, 9, 15);
        Strip(knots, [(0.085, 0.032), (0, 0), (-0.11, 0.045), (-0.16, 0.065)], Tyre.AxialCentre);
    }

    /// <summary>A round rail beside the wheel's rear half at full lock.</summary>
    private void Leg()
    {
        const double Radius = 0.03;
        Vec3 near = Known["chassis leg at 3 o'clock"], toWheel = AtLock.Axis, along = AtLock.Twelve, side = AtLock.Three;
        Vec3 middle = near - (toWheel * Radius);
        Patch(Steps(0.4), Steps(3.4 * Radius), (u, v) =>
        {
            var (sin, cos) = Math.SinCos(3.4 * (v - 0.5));
            return middle + (along * (-0.15 + (0.4 * u))) + (toWheel * (Radius * cos)) + (side * (Radius * sin));
        });
    }

    /// <summary>The strut tower, high up and inboard.</summary>
    private void Tower()
    {
        Vec3 foot = new(-0.01, -0.24, 0.49);
        Patch(Steps(2 * Math.PI * 0.085), Steps(0.13), (u, v) =>
            foot + new Vec3(0.085 * Math.Cos(2 * Math.PI * u), 0.085 * Math.Sin(2 * Math.PI * u), 0.13 * v));
        Patch(Steps(2 * Math.PI * 0.085), Steps(0.06), (u, v) =>
            foot + (new Vec3(Math.Cos(2 * Math.PI * u), Math.Sin(2 * Math.PI * u), 0) * (0.025 + (0.06 * v))));
    }

    private void Ground() => Patch(40, 22, (u, v) => new Vec3(-0.55 + (1.1 * u), -0.25 + (0.7 * v), -0.304));

    // Beyond the readings, every half hour a little further from the wheel, more than the chord's rise.
    private static void Extend(List<(double Clock, double R)> knots, double from, double to)
    {
        double gain = 0;
        for (double clock = knots[0].Clock - 0.5; clock >= from; clock -= 0.5)
        {
            gain += 0.011;
            knots.Insert(0, (clock, knots[0].R + gain));
        }

        gain = 0;
        for (double clock = knots[^1].Clock + 0.5; clock <= to; clock += 0.5)
        {
            gain += 0.011;
            knots.Add((clock, knots[^1].R + gain));
        }
    }

    // Straight from knot to knot; across, in steps of (along the spindle, away from it).
    private void Strip(List<(double Clock, double R)> knots, (double A, double R)[] across, double a)
    {
        for (int i = 0; i + 1 < knots.Count; i++)
        {
            for (int k = 0; k + 1 < across.Length; k++)
            {
                Vec3 At(double u, (double A, double R) step)
                {
                    Vec3 p = Clock.PointAt(a + step.A, knots[i].R + step.R, knots[i].Clock),
                        q = Clock.PointAt(a + step.A, knots[i + 1].R + step.R, knots[i + 1].Clock);
                    return Frame.ToBody(p + ((q - p) * u));
                }

                var (from, to) = (across[k], across[k + 1]);
                double width = Math.Sqrt(((to.A - from.A) * (to.A - from.A)) + ((to.R - from.R) * (to.R - from.R)));
                double length = (At(1, from) - At(0, from)).Length;
                Patch(Steps(length), Steps(width), (u, v) => At(u, from) + ((At(u, to) - At(u, from)) * v));
            }
        }
    }

    private static int Steps(double length) => Math.Max(1, (int)Math.Ceiling(length / Edge));

    private void Patch(int nu, int nv, Func<double, double, Vec3> at)
    {
        int first = _points.Count;
        for (int v = 0; v <= nv; v++)
        {
            for (int u = 0; u <= nu; u++)
            {
                _points.Add(at((double)u / nu, (double)v / nv));
            }
        }

        for (int v = 0; v < nv; v++)
        {
            for (int u = 0; u < nu; u++)
            {
                int a = first + (v * (nu + 1)) + u, b = a + nu + 1;
                _triangles.Add((a, a + 1, b));
                _triangles.Add((a + 1, b + 1, b));
            }
        }
    }

    // Where the phone saw nothing: patches here and there, but not where a gap was read; and no point that no triangle uses.
    private void MakeHoles()
    {
        var holes = new List<(Vec3 Middle, double Radius)>();
        for (int tries = 0; holes.Count < 26 && tries < 1000; tries++)
        {
            Vec3 middle = _points[_random.Next(_points.Count)];
            double radius = 0.012 + (0.03 * _random.NextDouble());
            if (Known.Values.All(k => (k - middle).Length > radius + 0.06))
            {
                holes.Add((middle, radius));
            }
        }

        bool Gone(int i) => holes.Any(h => (_points[i] - h.Middle).Length < h.Radius);
        bool[] gone = [.. Enumerable.Range(0, _points.Count).Select(Gone)];
        _triangles.RemoveAll(t => gone[t.A] || gone[t.B] || gone[t.C]);
        int[] number = new int[_points.Count];
        bool[] used = new bool[_points.Count];
        foreach (var (a, b, c) in _triangles)
        {
            used[a] = used[b] = used[c] = true;
        }

        var left = new List<Vec3>();
        for (int i = 0; i < number.Length; i++)
        {
            number[i] = left.Count;
            if (used[i])
            {
                left.Add(_points[i]);
            }
        }

        for (int i = 0; i < _triangles.Count; i++)
        {
            var (a, b, c) = _triangles[i];
            _triangles[i] = (number[a], number[b], number[c]);
        }

        _points.Clear();
        _points.AddRange(left);
    }

    // Two waves of the scanner's own, and noise at every point.
    private void Roughen()
    {
        for (int i = 0; i < _points.Count; i++)
        {
            Vec3 p = _points[i];
            double wave = 0.0003 * Math.Sin((31 * p.X) + (17 * p.Y)) * Math.Cos(23 * p.Z);
            _points[i] = p + new Vec3(wave + Noise(), Noise(), wave + Noise());
        }
    }

    private double Noise() => Roughness * Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());
}
