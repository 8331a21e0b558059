using System.Diagnostics;
using System.Globalization;
using System.Text;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Tests.Clearance.Scans;

namespace Cornerwright.Bench;

/// <summary>
/// Ours beside a general-purpose mesh-distance library (FCL, peers/build.sh) in one run: the same scan, the same poses; the library
/// gets the wheel as a mesh. `peer` prints a table; `peer --write FILE` also stores the library's distances for the tests.
/// </summary>
internal static class PeerDistance
{
    /// <summary>Facets round the wheel: with the outer radius of 317 mm the mesh lies up to 24 µm inside the true wheel.</summary>
    private const int Facets = 256;

    /// <summary>All of it clear: the library has no depths for meshes.</summary>
    private static readonly PoseBox Clear = new(new(-0.08, -0.35, 0), new(0.02, 0.35, 0));

    public static int Run(string[] args)
    {
        string peer = Path.Combine(FolderOfBench(), "peers", "fcl_distance");
        if (!File.Exists(peer))
        {
            Console.Error.WriteLine("bench/peers/build.sh has not been run: apt-get install libfcl-dev g++, then bench/peers/build.sh");
            return 2;
        }

        string folder = Directory.CreateTempSubdirectory("cornerwright-peer").FullName;
        try
        {
            WriteWheel(Path.Combine(folder, "wheel"));
            Compare(peer, folder, 200_000, ScanPoses.Sweep(Clear, 9, 7), args);
            Compare(peer, folder, 2_000_000, ScanPoses.Sweep(Clear, 9, 7), []);
            Certify();
        }
        finally
        {
            Directory.Delete(folder, true);
        }

        return 0;
    }

    private static void Compare(string peer, string folder, int triangles, WheelPose[] poses, string[] args)
    {
        TriangleMesh mesh = InventedArch.Mesh(triangles);
        string scan = Path.Combine(folder, "scan"), list = Path.Combine(folder, "poses");
        WriteMesh(scan, mesh.Coordinates, mesh.Corners);
        WritePoses(list, poses);
        string[] lines = Output(peer, scan, Path.Combine(folder, "wheel"), list);
        foreach (string line in lines.Where(l => l.StartsWith("build", StringComparison.Ordinal)))
        {
            Console.WriteLine($"FCL {line}");
        }

        double[][] theirs = [.. lines.Where(l => !l.StartsWith("build", StringComparison.Ordinal))
            .Select(l => l.Split(' ').Select(x => double.Parse(x, CultureInfo.InvariantCulture)).ToArray())];

        var (tree, build) = Best(3, () => BoundTree.Of(mesh));
        WheelShape shape = ScanPoses.Wheel();
        double[] ours = [.. poses.Select(p => ScanClearing.Of(tree, shape, p).Gap)];
        WheelPose[] sweep = ScanPoses.Sweep(Clear, 101, 21);
        double warm = Sweep(tree, shape, sweep), same = Sweep(tree, shape, poses), cold = Cold(tree, shape, poses);
        double most = ours.Zip(theirs, (o, t) => t[0] - o).Max(), least = ours.Zip(theirs, (o, t) => t[0] - o).Min();
        double fcl = theirs.Average(t => t[1]);
        Console.WriteLine($"ours build {build:F0} ms, {mesh.TriangleCount} triangles");
        Console.WriteLine($"a pose: FCL {fcl:F0} µs; ours {cold:F1} µs from scratch, {same:F1} µs warm on the same "
            + $"{poses.Length} poses ({fcl / same:F0} times), {warm:F1} µs in a sweep of {sweep.Length} ({fcl / warm:F0} times)");
        Console.WriteLine($"FCL minus ours: {least * 1e6:F2} to {most * 1e6:F2} µm (facets of the "
            + $"wheel's mesh: 0 to {0.317 * (1 - Math.Cos(Math.PI / Facets)) * 1e6:F1} µm)");
        int write = Array.IndexOf(args, "--write");
        if (write >= 0 && write + 1 < args.Length)
        {
            Store(args[write + 1], poses, theirs);
        }
    }

    private static void Certify()
    {
        ClearanceObstacle arch = ClearanceObstacle.Of(InventedArch.Mesh(1_000_000));
        WheelShape shape = ScanPoses.Wheel();
        foreach (var (name, box) in new[] { ("clear everywhere", Clear),
            ("touching at lock", new PoseBox(new(-0.08, -0.6, 0), new(0.04, 0.6, 0))) })
        {
            var (gap, time) = Best(5, () => Certifying.Least(shape, [arch], ScanPoses.Field(), box, new(DeepEnough: 1)));
            Console.WriteLine($"certified box, 1,000,000 triangles, {name}: {time:F1} ms, "
                + $"{gap.Cells} cells, [{gap.Lower * 1000:F3}, {gap.Upper * 1000:F3}] mm, {gap.Why}");
        }
    }

    private static double Sweep(BoundTree tree, WheelShape shape, WheelPose[] poses)
    {
        double best = double.PositiveInfinity;
        for (int n = 0; n < 5; n++)
        {
            int nearest = -1;
            long start = Stopwatch.GetTimestamp();
            foreach (WheelPose pose in poses)
            {
                ScanClearing.TryBelow(tree, shape, pose, ref nearest, out _);
            }

            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMicroseconds / poses.Length);
        }

        return best;
    }

    private static double Cold(BoundTree tree, WheelShape shape, WheelPose[] poses) =>
        Best(5, () => poses.Sum(p => ScanClearing.Of(tree, shape, p).Gap)).Milliseconds * 1000 / poses.Length;

    private static (T Result, double Milliseconds) Best<T>(int times, Func<T> work)
    {
        double best = double.PositiveInfinity;
        T result = default!;
        for (int i = 0; i < times; i++)
        {
            long start = Stopwatch.GetTimestamp();
            result = work();
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        return (result, best);
    }

    /// <summary>The wheel's convex pieces, each turned round the spindle in facets; a, 12, 3 as x, y, z.</summary>
    private static void WriteWheel(string path)
    {
        var xyz = new List<float>();
        var corners = new List<int>();
        foreach (IReadOnlyList<ProfilePoint> piece in ScanPoses.Wheel().Corners)
        {
            int first = xyz.Count / 3, n = piece.Count;
            for (int i = 0; i < Facets; i++)
            {
                var (sin, cos) = Math.SinCos(2 * Math.PI * i / Facets);
                foreach (ProfilePoint p in piece)
                {
                    xyz.AddRange([(float)p.A, (float)(p.R * cos), (float)(p.R * sin)]);
                }
            }

            for (int i = 0; i < Facets; i++)
            {
                for (int j = 0; j < n; j++)
                {
                    int a = first + (i * n) + j, b = first + (i * n) + ((j + 1) % n), c = first + ((i + 1) % Facets * n) + j,
                        d = first + ((i + 1) % Facets * n) + ((j + 1) % n);
                    corners.AddRange([a, b, c, c, b, d]);
                }
            }
        }

        WriteMesh(path, [.. xyz], [.. corners]);
    }

    private static void WriteMesh(string path, ReadOnlySpan<float> xyz, ReadOnlySpan<int> corners)
    {
        using var file = new BinaryWriter(File.Create(path));
        file.Write(xyz.Length / 3);
        file.Write(corners.Length / 3);
        file.Write(System.Runtime.InteropServices.MemoryMarshal.AsBytes(xyz));
        file.Write(System.Runtime.InteropServices.MemoryMarshal.AsBytes(corners));
    }

    private static void WritePoses(string path, WheelPose[] poses)
    {
        using var file = new BinaryWriter(File.Create(path));
        foreach (WheelPose pose in poses)
        {
            SpindleFrame f = SpindleFrame.Of(pose);
            Vec3 o = f.Origin;
            foreach (double x in new[] { f.Axis.X, f.Twelve.X, f.Three.X, f.Axis.Y, f.Twelve.Y, f.Three.Y, f.Axis.Z, f.Twelve.Z, f.Three.Z,
                o.X, o.Y, o.Z })
            {
                file.Write(x);
            }
        }
    }

    private static void Store(string path, WheelPose[] poses, double[][] theirs)
    {
        var text = new StringBuilder();
        text.AppendLine(
            "# Distances by FCL 0.7.0 (Debian 12, libfcl-dev; RSS trees) between the invented arch of 200,000 triangles and the wheel of");
        text.AppendLine("# bench/ScanPoses.cs as a mesh of 256 facets round: dotnet run -c Release --project bench -- peer --write FILE");
        text.AppendLine("hub x m,hub y m,hub z m,spindle x,spindle y,spindle z,distance m");
        for (int i = 0; i < poses.Length; i++)
        {
            Vec3 h = poses[i].HubFace, s = poses[i].Spindle;
            text.AppendLine(string.Join(',', new[] { h.X, h.Y, h.Z, s.X, s.Y, s.Z, theirs[i][0] }
                .Select(x => x.ToString("R", CultureInfo.InvariantCulture))));
        }

        File.WriteAllText(path, text.ToString());
    }

    private static string[] Output(string program, params string[] arguments)
    {
        using Process process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true })
            ?? throw new InvalidOperationException($"{program} does not start.");
        string all = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? all.Split('\n', StringSplitOptions.RemoveEmptyEntries)
            : throw new InvalidOperationException($"{program} ended with {process.ExitCode}.");
    }

    private static string FolderOfBench()
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "bench.csproj")))
            {
                return at.FullName;
            }
        }

        return Path.Combine(Environment.CurrentDirectory, "bench");
    }
}
