using System.Buffers.Binary;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Scans;
using Cornerwright.Garage.Tests.Files;
using Xunit.Abstractions;

namespace Cornerwright.Garage.Tests.Scans;

/// <summary>Damaged files: an answer every time, and memory in proportion to the bytes that are there.</summary>
public class ScanFuzzTests(ITestOutputHelper output)
{
    private const int Seed = 20260918;
    private const int Each = 50_000;

    /// <summary>
    /// What one reading may allocate: a few kB for the window, the message and its trace, and this much for each byte of the file.
    /// </summary>
    private const long Floor = 20_000, PerByte = 100;

    public static TheoryData<string> Kinds => ["a.ply", "a.obj", "a.stl", "a.glb"];

    private static byte[][] Samples(string name) => name switch
    {
        "a.ply" => [ScanSamples.Text(ScanSamples.TurkCube), ScanSamples.BinaryPly(big: false), ScanSamples.BinaryPly(big: true)],
        "a.obj" => [ScanSamples.Text(ScanSamples.WavefrontCube),
            ScanSamples.Text("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1/1 2//2 3/3/3\nf -3 -2 \\\n-1\n")],
        "a.stl" => [ScanSamples.Text(ScanSamples.TextStl()), ScanSamples.BinaryStl()],
        _ => [ScanSamples.KhronosTriangle()],
    };

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Damaged_files_are_refused_with_a_reason_or_read_whole(string name)
    {
        var random = new Random(Seed);
        var mutations = new Mutations(random);
        byte[][] samples = Samples(name);
        int read = 0;
        long most = 0;
        for (int i = 0; i < Each; i++)
        {
            byte[] file = Damage(samples[i % samples.Length], random, mutations);
            var (result, used) = ReadMeasured(file, name);
            most = Math.Max(most, used);
            Assert.True(used <= Floor + (PerByte * file.Length), $"seed {Seed}, file {i}: {used} bytes allocated for {file.Length}");
            if (result.Ok)
            {
                read++;
                Sound(result.Value, i);
            }
            else
            {
                Assert.All(result.Problems, p =>
                    Assert.True(p.Field.Length > 0 && p.Allowed.Length > 0 && p.Cure.Length > 0 && p.Given.Length <= 60, p.ToString()));
            }
        }

        output.WriteLine($"seed {Seed}: {Each} files, {read} still read, at most {most} bytes allocated for one");
        Assert.InRange(read, 1, Each * 9 / 10);
    }

    /// <summary>Counts that would fill any memory if they were believed.</summary>
    [Fact]
    public void A_header_is_believed_only_as_far_as_there_are_bytes()
    {
        byte[] stl = ScanSamples.BinaryStl();
        BinaryPrimitives.WriteUInt32LittleEndian(stl.AsSpan(80), uint.MaxValue);
        byte[] huge =
            ScanSamples.Text("ply\nformat binary_little_endian 1.0\nelement vertex 9000000000000000000\nproperty float x\nproperty float "
                + "y\nproperty float z\nelement face 9000000000000000000\nproperty list uint int vertex_indices\nend_header\n123456789012");
        byte[] list = ScanSamples.Text("ply\nformat binary_little_endian 1.0\nelement face 1\nproperty list "
            + "uint int vertex_indices\nend_header\n\u007f\u007f\u007f\u007f123456789012");
        byte[] nothing = ScanSamples.Text("ply\nformat ascii 1.0\nelement vertex 9000000000000000000\nend_header\n");
        byte[] chunk = ScanSamples.KhronosTriangle();
        BinaryPrimitives.WriteUInt32LittleEndian(chunk.AsSpan(12), uint.MaxValue);
        foreach (var (name, file) in new[] { ("a.stl", stl), ("a.ply", huge), ("a.ply", list), ("a.ply", nothing), ("a.glb", chunk) })
        {
            var (result, used) = ReadMeasured(file, name);
            Assert.False(result.Ok, name);
            Assert.InRange(used, 0, Floor + (PerByte * file.Length));
        }
    }

    /// <summary>
    /// What reading allocates. Over the limit it reads once more and counts that: what the first reading of a process makes once (tables,
    /// culture data, the reader's own statics) is not the file's, and which test comes first is chance.
    /// </summary>
    private static (Checked<RawScan> Result, long Bytes) ReadMeasured(byte[] file, string name)
    {
        var (result, bytes) = Once();
        return bytes <= Floor + (PerByte * file.Length) ? (result, bytes) : Once();

        (Checked<RawScan>, long) Once()
        {
            using var stream = new MemoryStream(file);
            long before = GC.GetAllocatedBytesForCurrentThread();
            var read = ScanFile.Read(stream, name);
            return (read, GC.GetAllocatedBytesForCurrentThread() - before);
        }
    }

    private static byte[] Damage(byte[] sample, Random random, Mutations mutations)
    {
        switch (random.Next(5))
        {
            case 0:
                return sample[..random.Next(1, sample.Length)];
            case 1:
                // Text inserted, doubled, cut: bytes as characters, one for one.
                return System.Text.Encoding.Latin1.GetBytes(mutations.Of(System.Text.Encoding.Latin1.GetString(sample)));
            case 2:
            {
                // A number that is not one, or far too large, somewhere.
                byte[] copy = [.. sample];
                float poison = random.Next(4) switch { 0 => float.NaN, 1 => float.PositiveInfinity, 2 => float.MaxValue, _ => -1 };
                BitConverter.GetBytes(poison).CopyTo(copy, random.Next(copy.Length - 4));
                return copy;
            }

            default:
                return mutations.OfBytes(sample);
        }
    }

    private static void Sound(RawScan scan, int i)
    {
        foreach (float offset in scan.Offsets)
        {
            Assert.True(float.IsFinite(offset), $"seed {Seed}, file {i}");
        }

        foreach (int corner in scan.Corners)
        {
            Assert.InRange(corner, 0, scan.PointCount - 1);
        }

        Assert.True((scan.Greatest - scan.Least).Length > 0, $"seed {Seed}, file {i}");
    }
}
