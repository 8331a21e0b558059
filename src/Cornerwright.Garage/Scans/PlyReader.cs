using System.Buffers.Binary;
using System.Globalization;

namespace Cornerwright.Garage.Scans;

/// <summary>Reads PLY: text and both byte orders, properties in any order, lists of any type.</summary>
/// <remarks>Source: G. Turk, "The PLY Polygon File Format" (1994).</remarks>
internal sealed class PlyReader(ScanBytes bytes, ScanGathering gathered)
{
    private PlyEncoding _encoding;

    public void Read()
    {
        var header = PlyHeader.Read(bytes);
        _encoding = header.Encoding;
        gathered.Variant = _encoding switch
        {
            PlyEncoding.Ascii => "text",
            PlyEncoding.LittleEndian => "binary, little endian",
            _ => "binary, big endian",
        };
        foreach (var element in header.Elements)
        {
            long least = element.LeastRow(_encoding);
            if (least == 0)
            {
                continue;   // no columns, so no bytes, whatever count it claims
            }

            // The last number of a text file needs no blank behind it, so one byte may be missing.
            if (element.Count > (bytes.Left + 1) / least)
            {
                throw ScanFault.At(
                    "header / element " + element.Name, element.Count.ToString(CultureInfo.InvariantCulture),
                    $"at most {(bytes.Left + 1) / least}, for which the file has bytes",
                    "The header claims more than there is: the file was cut off or is damaged. Export it again.");
            }

            gathered.Expect(element.Name == "vertex" ? element.Count : 0, element.Name == "face" ? element.Count : 0);
            ReadElement(element);
        }
    }

    private void ReadElement(PlyElement element)
    {
        if (element.Name == "vertex")
        {
            (int x, int y, int z) = (element.Find("x"), element.Find("y"), element.Find("z"));
            if (x < 0 || y < 0 || z < 0)
            {
                throw ScanFault.At("header / element vertex", string.Join(", ", element.Properties.Select(p => p.Name)),
                    "properties x, y and z", "The points have no places: export the file again.");
            }

            ReadVertices(element, x, y, z);
            return;
        }

        int list = element.Name == "face"
            ? element.Properties.FindIndex(p => p.ListCount is not null && p.Name is "vertex_indices" or "vertex_index") : -1;
        if (element.Name == "tristrips" && element.Count > 0)
        {
            gathered.Notes.Add("The file holds its triangles as strips, which are not read: its points alone count.");
        }

        for (long row = 0; row < element.Count; row++)
        {
            for (int p = 0; p < element.Properties.Count; p++)
            {
                if (p == list)
                {
                    Face(element.Properties[p], row);
                }
                else
                {
                    Pass(element, element.Properties[p], row);
                }
            }
        }
    }

    private void ReadVertices(PlyElement element, int x, int y, int z)
    {
        Span<double> values = stackalloc double[element.Properties.Count];
        Span<byte> bytesOfRow = stackalloc byte[8 * element.Properties.Count];
        bool fixedRow = _encoding != PlyEncoding.Ascii && element.Properties.All(p => p.ListCount is null);
        if (fixedRow)
        {
            bytesOfRow = bytesOfRow[..element.Properties.Sum(p => PlyHeader.SizeOf(p.Type))];
        }

        Span<int> offsets = stackalloc int[element.Properties.Count];
        for (int p = 1; p < offsets.Length; p++)
        {
            offsets[p] = offsets[p - 1] + PlyHeader.SizeOf(element.Properties[p - 1].Type);
        }

        var (tx, ty, tz) = (element.Properties[x].Type, element.Properties[y].Type, element.Properties[z].Type);
        for (long row = 0; row < element.Count; row++)
        {
            if (fixedRow)
            {
                bytes.Take(bytesOfRow, "vertices");
                gathered.Point(Decode(bytesOfRow[offsets[x]..], tx), Decode(bytesOfRow[offsets[y]..], ty),
                    Decode(bytesOfRow[offsets[z]..], tz));
                continue;
            }

            for (int p = 0; p < values.Length; p++)
            {
                var property = element.Properties[p];
                values[p] = 0;
                if (property.ListCount is null)
                {
                    values[p] = Scalar(property.Type, "vertices");
                }
                else
                {
                    Pass(element, property, row);
                }
            }

            gathered.Point(values[x], values[y], values[z]);
        }
    }

    // A polygon becomes a fan of triangles about its first corner.
    private void Face(PlyProperty list, long row)
    {
        int count = CountOf(list, "face", row);
        if (count > ScanLimits.MostFaceCorners)
        {
            throw ScanFault.At(Row("face", row), $"{count} corners", $"at most {ScanLimits.MostFaceCorners} corners",
                "The file is damaged there: export it again.");
        }

        int first = 0, last = 0;
        for (int i = 0; i < count; i++)
        {
            double value = Scalar(list.Type, "faces");
            int corner = value is >= 0 and <= int.MaxValue && value == Math.Floor(value) ? (int)value
                : throw ScanFault.At(Row("face", row), value.ToString(CultureInfo.InvariantCulture), "numbers of points",
                    "It names a point that is not there: export the file again.");
            if (i >= 2)
            {
                gathered.Triangle(first, last, corner);
            }

            (first, last) = (i == 0 ? corner : first, corner);
        }
    }

    private void Pass(PlyElement element, PlyProperty property, long row)
    {
        int count = property.ListCount is null ? 1 : CountOf(property, element.Name, row);
        if (_encoding != PlyEncoding.Ascii)
        {
            bytes.Skip((long)count * PlyHeader.SizeOf(property.Type), element.Name);
            return;
        }

        for (int i = 0; i < count; i++)
        {
            ScanBytes.Number(bytes.Word(element.Name), element.Name);
        }
    }

    private int CountOf(PlyProperty list, string name, long row)
    {
        double count = Scalar(list.ListCount!.Value, name);
        long room = bytes.Left / (_encoding == PlyEncoding.Ascii ? 1 : PlyHeader.SizeOf(list.Type));
        return count >= 0 && count <= room && count == Math.Floor(count) ? (int)Math.Min(count, int.MaxValue)
            : throw ScanFault.At(Row(name, row), $"{count.ToString(CultureInfo.InvariantCulture)} entries",
                $"at most {room}, for which the file has bytes", "The file is damaged or cut off there: export it again.");
    }

    private static string Row(string name, long row) => $"{name} {ScanGathering.Count(row + 1)}";

    private double Scalar(PlyType type, string where)
    {
        if (_encoding == PlyEncoding.Ascii)
        {
            return ScanBytes.Number(bytes.Word(where), where);
        }

        Span<byte> raw = stackalloc byte[8];
        raw = raw[..PlyHeader.SizeOf(type)];
        bytes.Take(raw, where);
        return Decode(raw, type);
    }

    private double Decode(ReadOnlySpan<byte> raw, PlyType type)
    {
        bool big = _encoding == PlyEncoding.BigEndian;
        return type switch
        {
            PlyType.Int8 => (sbyte)raw[0],
            PlyType.UInt8 => raw[0],
            PlyType.Int16 => big ? BinaryPrimitives.ReadInt16BigEndian(raw) : BinaryPrimitives.ReadInt16LittleEndian(raw),
            PlyType.UInt16 => big ? BinaryPrimitives.ReadUInt16BigEndian(raw) : BinaryPrimitives.ReadUInt16LittleEndian(raw),
            PlyType.Int32 => big ? BinaryPrimitives.ReadInt32BigEndian(raw) : BinaryPrimitives.ReadInt32LittleEndian(raw),
            PlyType.UInt32 => big ? BinaryPrimitives.ReadUInt32BigEndian(raw) : BinaryPrimitives.ReadUInt32LittleEndian(raw),
            PlyType.Float32 => big ? BinaryPrimitives.ReadSingleBigEndian(raw) : BinaryPrimitives.ReadSingleLittleEndian(raw),
            _ => big ? BinaryPrimitives.ReadDoubleBigEndian(raw) : BinaryPrimitives.ReadDoubleLittleEndian(raw),
        };
    }
}
