using System.Buffers.Binary;
using System.Runtime.InteropServices;
using Cornerwright.Garage.Scans;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Scanning;

namespace Cornerwright.Web.Scans;

/// <summary>
/// A mesh or a cloud as the browser's view fetches it: little-endian, two 32-bit counts (points, indices), then the points as 32-bit
/// floats in metres, then the indices as 32-bit whole numbers.
/// </summary>
public static class ScanDrawing
{
    /// <summary>More triangles than this make a view on a phone stutter.</summary>
    public const int MostTriangles = 250_000;

    /// <summary>More points than this, of a cloud.</summary>
    public const int MostPoints = 500_000;

    public static byte[] Of(ReadOnlySpan<float> coordinates, ReadOnlySpan<int> corners)
    {
        byte[] bytes = new byte[8 + (4 * coordinates.Length) + (4 * corners.Length)];
        BinaryPrimitives.WriteInt32LittleEndian(bytes, coordinates.Length / 3);
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(4), corners.Length);
        if (BitConverter.IsLittleEndian)
        {
            MemoryMarshal.AsBytes(coordinates).CopyTo(bytes.AsSpan(8));
            MemoryMarshal.AsBytes(corners).CopyTo(bytes.AsSpan(8 + (4 * coordinates.Length)));
            return bytes;
        }

        int at = 8;
        foreach (float c in coordinates)
        {
            BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(at), c);
            at += 4;
        }

        foreach (int c in corners)
        {
            BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(at), c);
            at += 4;
        }

        return bytes;
    }

    /// <summary>
    /// A file's points in metres, from its <see cref="RawScan.Origin"/>, in its own frame; thinned where it is too much to draw.
    /// </summary>
    /// <returns>The bytes, and how far drawing moved anything, m: 0 where nothing was thinned.</returns>
    public static (byte[] Bytes, double Bound) Of(RawScan raw, ScanUnit unit)
    {
        ArgumentNullException.ThrowIfNull(raw);
        float scale = (float)unit.Metres();
        float[] metres = new float[raw.Offsets.Length];
        for (int i = 0; i < metres.Length; i++)
        {
            metres[i] = raw.Offsets[i] * scale;
        }

        double size = (raw.Greatest - raw.Least).Length * scale;
        return Thinned(metres, raw.Corners, size);
    }

    /// <summary>A placed scan, as it lies at its corner.</summary>
    public static byte[] Of(PlacedScan placed)
    {
        ArgumentNullException.ThrowIfNull(placed);
        return placed.Mesh is { } mesh ? Thinned(mesh.Coordinates, mesh.Corners, 1.5).Bytes
            : Thinned(placed.Cloud!.Coordinates, [], 1.5).Bytes;
    }

    /// <summary>The wheel that was on the car, at a travel (m) and steer (rad), from the corner's hub face on the body's axes.</summary>
    public static byte[] Of(PresentWheel wheel, double travel, double steer)
    {
        ArgumentNullException.ThrowIfNull(wheel);
        const int Round = 72;
        Span<ProfilePoint> profile = stackalloc ProfilePoint[TyreProfile.PointCount(6)];
        int count = TyreProfile.Write(wheel.Tyre, 6, profile);
        wheel.PoseAt(travel, steer, out var pose);
        var frame = SpindleFrame.Of(pose);
        float[] xyz = new float[3 * count * Round];
        int[] corners = new int[6 * (count - 1) * Round];
        int at = 0;
        for (int i = 0; i < Round; i++)
        {
            for (int k = 0; k < count; k++)
            {
                Vec3 p = frame.ToBody(Clock.PointAt(profile[k].A, profile[k].R, 12.0 * i / Round));
                int row = 3 * ((i * count) + k);
                (xyz[row], xyz[row + 1], xyz[row + 2]) = ((float)p.X, (float)p.Y, (float)p.Z);
                if (k + 1 < count)
                {
                    int a = (i * count) + k, b = (((i + 1) % Round) * count) + k;
                    foreach (int c in (ReadOnlySpan<int>)[a, a + 1, b, a + 1, b + 1, b])
                    {
                        corners[at++] = c;
                    }
                }
            }
        }

        return Of(xyz, corners);
    }

    private static (byte[] Bytes, double Bound) Thinned(ReadOnlySpan<float> metres, ReadOnlySpan<int> corners, double size)
    {
        bool much = corners.Length / 3 > MostTriangles || (corners.IsEmpty && metres.Length / 3 > MostPoints);
        if (!much)
        {
            return (Of(metres, corners), 0);
        }

        // A surface in cells of edge e has about size²/e² of them and twice as many triangles.
        var thin = ScanThinning.Thin(metres, corners, size / Math.Sqrt(MostTriangles / 4.0));
        return (Of(thin.Coordinates, thin.Corners), thin.Bound);
    }
}
