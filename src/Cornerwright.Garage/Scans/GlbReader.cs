using System.Buffers.Binary;
using System.Globalization;
using System.Text.Json;
using System.Text.Unicode;
using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Garage.Scans;

/// <summary>Reads the triangles and points of a GLB file, with the places of its nodes; looks, skins and movements pass by.</summary>
/// <remarks>
/// Source: Khronos Group, glTF 2.0 Specification (2021), §3.5 (scenes and nodes), §3.6 (accessors), §3.7.2 (meshes), §4.4 (GLB).
/// </remarks>
internal sealed class GlbReader(ScanBytes bytes, ScanGathering gathered, CancellationToken cancel)
{
    private const uint JsonChunk = 0x4E4F534A, BinaryChunk = 0x004E4942;

    /// <summary>Longest description, bytes. Those of scans have some kB; it is held in memory while the file is read.</summary>
    private const uint LongestJson = 16 * 1024 * 1024;

    /// <summary>Deepest tree of nodes: a file that names a node within itself would have no end.</summary>
    private const int DeepestNode = 64;

    /// <summary>Most nodes visited: one that is named twice counts twice.</summary>
    private const int MostNodes = 10_000;

    /// <summary>Extensions that change how a file looks, not where its surfaces are.</summary>
    private static readonly string[] LooksOnly = ["KHR_texture_transform", "KHR_materials_unlit", "KHR_texture_basisu", "EXT_texture_webp"];

    private long _binaryAt;
    private long _binaryLength;
    private int _visited;

    public void Read()
    {
        gathered.Variant = "binary";
        Span<byte> head = stackalloc byte[12];
        bytes.Take(head, "header");
        uint version = BinaryPrimitives.ReadUInt32LittleEndian(head[4..]), length = BinaryPrimitives.ReadUInt32LittleEndian(head[8..]);
        if (version != 2)
        {
            throw ScanFault.At("header / version", version.ToString(CultureInfo.InvariantCulture), "2", "Export it as glTF 2.0 binary.");
        }

        if (length > bytes.Length)
        {
            throw ScanFault.At("header / length", length.ToString(CultureInfo.InvariantCulture),
                $"at most {bytes.Length}, the bytes of the file", "The file was cut off on its way: copy or export it again.");
        }

        byte[] json = Chunks();
        if (!Utf8.IsValid(json))
        {
            throw ScanFault.At("description", "bytes that are no text", "UTF-8 text", "The file is damaged: export it again.");
        }

        JsonDocument document;
        try
        {
            document = JsonDocument.Parse(json, new JsonDocumentOptions { MaxDepth = 64 });
        }
        catch (JsonException error)
        {
            throw ScanFault.At("description", $"line {(error.LineNumber ?? 0) + 1}, byte {error.BytePositionInLine ?? 0}", "JSON",
                "The file is damaged there: export it again.");
        }

        using (document)
        {
            var root = new GlbElement(document.RootElement, "description");
            CheckExtensions(root);
            Scenes(root);
        }
    }

    private byte[] Chunks()
    {
        Span<byte> head = stackalloc byte[8];
        bytes.Take(head, "first chunk");
        uint length = BinaryPrimitives.ReadUInt32LittleEndian(head), kind = BinaryPrimitives.ReadUInt32LittleEndian(head[4..]);
        if (kind != JsonChunk || length > LongestJson || length > bytes.Left)
        {
            throw ScanFault.At(
                "first chunk", FormattableString.Invariant($"{length} bytes of kind {kind:x8}"),
                FormattableString.Invariant($"a description (kind {JsonChunk:x8}) of at most {Math.Min(LongestJson, bytes.Left)} bytes"),
                "The file is damaged or cut off: export it again.");
        }

        byte[] json = new byte[length];
        bytes.Take(json, "description");
        if (bytes.Left >= 8)
        {
            bytes.Take(head, "second chunk");
            length = BinaryPrimitives.ReadUInt32LittleEndian(head);
            if (length > bytes.Left)
            {
                throw ScanFault.At("second chunk", $"{length} bytes", $"at most {bytes.Left} bytes",
                    "The file was cut off on its way: copy or export it again.");
            }

            if (BinaryPrimitives.ReadUInt32LittleEndian(head[4..]) == BinaryChunk)
            {
                (_binaryAt, _binaryLength) = (bytes.Position, length);
            }
        }

        return json;
    }

    private static void CheckExtensions(GlbElement root)
    {
        foreach (var extension in root.List("extensionsRequired"))
        {
            string name = extension.Text();
            if (!LooksOnly.Contains(name, StringComparer.Ordinal))
            {
                throw ScanFault.At("description / extensionsRequired", name, "surfaces that are not packed",
                    "Export it again without compression (Draco, meshopt) and without quantizing.");
            }
        }
    }

    private void Scenes(GlbElement root)
    {
        var scenes = root.List("scenes");
        if (scenes.Count == 0)
        {
            // Without a scene every mesh counts where it stands.
            foreach (var mesh in root.List("meshes"))
            {
                Mesh(root, mesh, GlbPlace.Identity);
            }

            return;
        }

        int chosen = root.Whole("scene", 0);
        foreach (var node in scenes.At(chosen).List("nodes"))
        {
            Node(root, node.Index(), GlbPlace.Identity, 1);
        }
    }

    private void Node(GlbElement root, int index, GlbPlace above, int depth)
    {
        cancel.ThrowIfCancellationRequested();
        if (depth > DeepestNode || ++_visited > MostNodes)
        {
            throw ScanFault.At("description / nodes", $"node {index}",
                $"at most {DeepestNode} nodes within one another, {MostNodes} in all",
                "A node holds itself, or the file is damaged: export it again.");
        }

        var node = root.List("nodes").At(index);
        var place = above.Then(GlbPlace.Of(node));
        if (node.Has("mesh"))
        {
            Mesh(root, root.List("meshes").At(node.Whole("mesh", -1)), place);
        }

        foreach (var child in node.List("children"))
        {
            Node(root, child.Index(), place, depth + 1);
        }
    }

    private void Mesh(GlbElement root, GlbElement mesh, GlbPlace place)
    {
        foreach (var primitive in mesh.List("primitives"))
        {
            int mode = primitive.Whole("mode", 4);
            if (mode is 1 or 2 or 3)
            {
                continue;   // lines
            }

            if (!primitive.Has("attributes") || !primitive.Part("attributes").Has("POSITION"))
            {
                continue;   // §3.7.2.1: nothing to draw
            }

            int first = gathered.PointCount;
            int count = Points(root, primitive.Part("attributes").Whole("POSITION", -1), place);
            if (mode == 0)
            {
                continue;
            }

            var strip = new Fan(gathered, first, count, mode);
            if (primitive.Has("indices"))
            {
                Indices(root, primitive.Whole("indices", -1), strip);
            }
            else
            {
                for (int i = 0; i < count; i++)
                {
                    strip.Corner(i);
                }
            }
        }
    }

    private int Points(GlbElement root, int index, GlbPlace place)
    {
        var rows = Rows(root, index, "VEC3", [5126]);
        Span<byte> row = stackalloc byte[12];
        for (int i = 0; i < rows.Count; i++)
        {
            Move(rows, i);
            bytes.Take(row, "points");
            gathered.Point(place, BinaryPrimitives.ReadSingleLittleEndian(row), BinaryPrimitives.ReadSingleLittleEndian(row[4..]),
                BinaryPrimitives.ReadSingleLittleEndian(row[8..]));
        }

        return rows.Count;
    }

    private void Indices(GlbElement root, int index, Fan strip)
    {
        var rows = Rows(root, index, "SCALAR", [5121, 5123, 5125]);
        Span<byte> row = stackalloc byte[4];
        row = row[..rows.Size];
        for (int i = 0; i < rows.Count; i++)
        {
            Move(rows, i);
            bytes.Take(row, "indices");
            strip.Corner(rows.Size switch
            {
                1 => row[0],
                2 => BinaryPrimitives.ReadUInt16LittleEndian(row),
                _ => BinaryPrimitives.ReadUInt32LittleEndian(row),
            });
        }
    }

    private void Move(in AccessorRows rows, int i)
    {
        long wanted = rows.At + ((long)i * rows.Stride);
        if (bytes.Position != wanted)
        {
            if (wanted > bytes.Position && i > 0)
            {
                bytes.Skip(wanted - bytes.Position, "buffer");
            }
            else
            {
                bytes.Seek(wanted);
            }
        }
    }

    /// <summary>Where an accessor's rows lie in the file, checked against its bytes.</summary>
    private AccessorRows Rows(GlbElement root, int index, string type, ReadOnlySpan<int> components)
    {
        var accessor = root.List("accessors").At(index);
        int component = accessor.Whole("componentType", -1), count = accessor.Whole("count", 0);
        if (accessor.TextOf("type") != type || !components.Contains(component))
        {
            string allowed = string.Join(", ", components.ToArray().Select(c => c.ToString(CultureInfo.InvariantCulture)));
            throw ScanFault.At(
                accessor.Where, FormattableString.Invariant($"{accessor.TextOf("type")} of component type {component}"),
                $"{type} of component type {allowed}", "Export it again with plain numbers.");
        }

        if (accessor.Has("sparse") || !accessor.Has("bufferView"))
        {
            throw ScanFault.At(accessor.Where, "sparse", "numbers in a buffer", "Export it again without sparse accessors.");
        }

        var view = root.List("bufferViews").At(accessor.Whole("bufferView", -1));
        if (view.Whole("buffer", -1) != 0 || root.List("buffers").At(0).Has("uri") || _binaryLength == 0)
        {
            throw ScanFault.At(view.Where, "a buffer outside of the file", "the file's own buffer",
                "Export it as one GLB file with everything inside.");
        }

        int size = component switch
        {
            5121 => 1,
            5123 => 2,
            _ => 4,
        } * (type == "VEC3" ? 3 : 1);
        int stride = view.Whole("byteStride", size);
        long viewAt = view.Whole("byteOffset", 0), viewLength = view.Whole("byteLength", 0), at = accessor.Whole("byteOffset", 0);
        bool fits = stride >= size && viewAt + viewLength <= _binaryLength
            && (count == 0 || at + ((count - 1L) * stride) + size <= viewLength);
        return fits
            ? new AccessorRows(_binaryAt + viewAt + at, stride, size, count)
            : throw ScanFault.At(accessor.Where, $"{count} rows of {stride} bytes from {at}",
                $"what fits into the {viewLength} bytes of its view and the {_binaryLength} of the file",
                "The file is damaged or cut off: export it again.");
    }

    private readonly record struct AccessorRows(long At, int Stride, int Size, int Count);

    /// <summary>Turns a row of corners into triangles: apart, as a strip or as a fan. Source: glTF 2.0 §3.7.2.1.</summary>
    private sealed class Fan(ScanGathering gathered, int first, int count, int mode)
    {
        private int _a, _b, _seen;

        public void Corner(long corner)
        {
            if (corner >= count)
            {
                throw ScanFault.At("indices", corner.ToString(CultureInfo.InvariantCulture),
                    FormattableString.Invariant($"0 to {count - 1}"), "It names a point that is not there: export the file again.");
            }

            int c = first + (int)corner;
            int place = mode == 4 ? _seen % 3 : Math.Min(_seen, 2);
            _seen++;
            switch (place)
            {
                case 0:
                    _a = c;
                    break;
                case 1:
                    _b = c;
                    break;
                default:
                    gathered.Triangle(_a, _b, c);
                    (_a, _b) = mode == 5 ? (_b, c) : (_a, c);
                    break;
            }
        }
    }
}
