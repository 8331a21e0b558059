using System.Text;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Garage.Scans;

/// <summary>Reads scan files: PLY, OBJ, STL, GLB.</summary>
public static class ScanFile
{
    /// <summary>
    /// Reads a whole file. What its first bytes say counts, not its name; the name decides only where the bytes leave it open.
    /// </summary>
    /// <param name="stream">At its beginning, with a known length and free to move in.</param>
    /// <param name="name">The file's name, for its ending.</param>
    /// <param name="progress">Told the share that has been read, 0 to 1, some hundred times.</param>
    /// <param name="cancel">Ends the reading.</param>
    /// <returns>The scan in its own unit and frame, or what is wrong and where.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static Checked<RawScan> Read(Stream stream, string name, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(name);
        try
        {
            if (stream.Length > ScanLimits.MostBytes)
            {
                throw ScanFault.At("size", $"{stream.Length / (1024 * 1024)} MB", $"at most {ScanLimits.MostBytes / (1024 * 1024)} MB",
                    "Crop the scan to the wheel arch, or export it coarser.");
            }

            var bytes = new ScanBytes(stream, progress, cancel);
            var format = Recognise(bytes, name);
            var gathered = new ScanGathering(format);
            switch (format)
            {
                case ScanFormat.Ply:
                    new PlyReader(bytes, gathered).Read();
                    break;
                case ScanFormat.Obj:
                    new ObjReader(bytes, gathered).Read();
                    break;
                case ScanFormat.Stl:
                    new StlReader(bytes, gathered).Read();
                    break;
                default:
                    new GlbReader(bytes, gathered, cancel).Read();
                    break;
            }

            return Checked<RawScan>.From(gathered.Finish());
        }
        catch (ScanFault fault)
        {
            return Checked<RawScan>.Wrong(fault.Problem);
        }
    }

    private static ScanFormat Recognise(ScanBytes bytes, string name)
    {
        if (bytes.Length == 0)
        {
            throw ScanFault.At("size", "0 bytes", "a scan", "The file is empty: export the scan again.");
        }

        Span<byte> head = stackalloc byte[(int)Math.Min(4, bytes.Length)];
        bytes.Take(head, "first bytes");
        bytes.Seek(0);
        if (head.SequenceEqual("glTF"u8))
        {
            return ScanFormat.Glb;
        }

        if (head.Length > 3 && head[..3].SequenceEqual("ply"u8) && head[3] is (byte)'\n' or (byte)'\r')
        {
            return ScanFormat.Ply;
        }

        // OBJ and STL have no mark of their own that is sure.
        return ScanFormats.OfName(name) is { } named and (ScanFormat.Obj or ScanFormat.Stl)
            ? named
            : throw ScanFault.At("kind", $"{name}, which begins with \"{Encoding.Latin1.GetString(head)}\"", ScanFormats.Names,
                "Export the scan in one of these, with the ending of its kind.");
    }
}
