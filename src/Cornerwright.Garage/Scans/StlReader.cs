using System.Buffers.Binary;
using System.Globalization;
using System.Text;

namespace Cornerwright.Garage.Scans;

/// <summary>Reads STL, text and binary, and joins the corners that fall on one place.</summary>
/// <remarks>
/// Source: 3D Systems, StereoLithography Interface Specification (1989), as given in M. Burns, Automated Fabrication (1993), §6.5.
/// </remarks>
internal sealed class StlReader(ScanBytes bytes, ScanGathering gathered)
{
    private const int Head = 84, Row = 50;

    // Where a corner's place was seen before: open addressing, numbers of points plus one.
    private int[] _seen = new int[256];
    private int _places;

    public void Read()
    {
        if (IsBinary(out uint count))
        {
            gathered.Variant = "binary";
            ReadBinary(count);
        }
        else
        {
            gathered.Variant = "text";
            ReadText();
        }
    }

    // Binary files too begin with "solid" at times; their length gives them away.
    private bool IsBinary(out uint count)
    {
        count = 0;
        Span<byte> head = stackalloc byte[(int)Math.Min(Head, bytes.Length)];
        bytes.Take(head, "header");
        bytes.Seek(0);
        bool solid = head.Length >= 5 && head[..5].SequenceEqual("solid"u8);
        if (head.Length < Head)
        {
            return solid ? false : throw ScanFault.Ends("header");
        }

        count = BinaryPrimitives.ReadUInt32LittleEndian(head[80..]);
        return !solid || bytes.Length == Head + ((long)Row * count);
    }

    private void ReadBinary(uint count)
    {
        bytes.Skip(Head, "header");
        long room = bytes.Left / Row;
        if (count > room)
        {
            throw ScanFault.At("header / triangles", count.ToString(CultureInfo.InvariantCulture),
                $"at most {room}, for which the file has bytes",
                "The header claims more than there is: the file was cut off or is damaged. Export it again.");
        }

        if (bytes.Left > (long)Row * count)
        {
            gathered.Notes.Add($"{bytes.Left - ((long)Row * count)} bytes behind the last triangle were left out.");
        }

        gathered.Expect(0, count);
        Span<byte> row = stackalloc byte[Row];
        Span<int> corners = stackalloc int[3];
        for (uint i = 0; i < count; i++)
        {
            bytes.Take(row, "triangles");
            for (int k = 0; k < 3; k++)
            {
                var at = row[(12 + (12 * k))..];
                corners[k] = Join(BinaryPrimitives.ReadSingleLittleEndian(at), BinaryPrimitives.ReadSingleLittleEndian(at[4..]),
                    BinaryPrimitives.ReadSingleLittleEndian(at[8..]));
            }

            gathered.Triangle(corners[0], corners[1], corners[2]);
        }
    }

    private void ReadText()
    {
        bytes.Line(100_000, "first line");
        Span<int> corners = stackalloc int[3];
        for (long facet = 1; ; facet++)
        {
            var word = bytes.Word("facets");
            if (Is(word, "endsolid"))
            {
                // Another solid may follow in the same file.
                bytes.EndLine();
                word = bytes.Word("facets");
                if (word.IsEmpty)
                {
                    return;
                }

                if (!Is(word, "solid"))
                {
                    throw Wrong(facet, word, "solid, or the end of the file");
                }

                bytes.EndLine();
                facet--;
                continue;
            }

            if (!Is(word, "facet"))
            {
                throw Wrong(facet, word, "facet or endsolid");
            }

            Expect(facet, "normal");
            for (int k = 0; k < 3; k++)
            {
                // Its direction is not needed, and may be nonsense.
                if (bytes.Word("facets").IsEmpty)
                {
                    throw ScanFault.Ends("facets");
                }
            }

            Expect(facet, "outer");
            Expect(facet, "loop");
            for (int k = 0; k < 3; k++)
            {
                Expect(facet, "vertex");
                double x = ScanBytes.Number(bytes.Word("facets"), "facets"), y = ScanBytes.Number(bytes.Word("facets"), "facets");
                corners[k] = Join(x, y, ScanBytes.Number(bytes.Word("facets"), "facets"));
            }

            Expect(facet, "endloop");
            Expect(facet, "endfacet");
            gathered.Triangle(corners[0], corners[1], corners[2]);
        }
    }

    private void Expect(long facet, string wanted)
    {
        var word = bytes.Word("facets");
        if (!Is(word, wanted))
        {
            throw Wrong(facet, word, wanted);
        }
    }

    private static bool Is(ReadOnlySpan<byte> word, string wanted) => Ascii.EqualsIgnoreCase(word, wanted);

    private static ScanFault Wrong(long facet, ReadOnlySpan<byte> word, string wanted) => word.IsEmpty
        ? ScanFault.Ends("facet " + ScanGathering.Count(facet))
        : ScanFault.At("facet " + ScanGathering.Count(facet), Encoding.Latin1.GetString(word), wanted,
            "The file is damaged there: export it again.");

    private int Join(double x, double y, double z)
    {
        gathered.Point(x, y, z);
        var (fx, fy, fz) = gathered.Last;
        int slot = Slot(fx, fy, fz, _seen);
        for (int probe = 0; probe < _seen.Length; probe++, slot = (slot + 1) & (_seen.Length - 1))
        {
            int known = _seen[slot] - 1;
            if (known < 0)
            {
                break;
            }

            if (gathered.SameAs(known, fx, fy, fz))
            {
                gathered.Drop();
                return known;
            }
        }

        int fresh = gathered.PointCount - 1;
        _seen[slot] = fresh + 1;
        _places++;
        if (_places > _seen.Length / 2)
        {
            Widen();
        }

        return fresh;
    }

    private void Widen()
    {
        int[] wider = new int[2 * _seen.Length];
        foreach (int entry in _seen)
        {
            if (entry > 0)
            {
                var (x, y, z) = gathered.Stored(entry - 1);
                int slot = Slot(x, y, z, wider);
                while (wider[slot] > 0)
                {
                    slot = (slot + 1) & (wider.Length - 1);
                }

                wider[slot] = entry;
            }
        }

        _seen = wider;
    }

    private static int Slot(float x, float y, float z, int[] table)
    {
        // -0 and 0 are one place.
        ulong h = Bits(x) * 0x9E3779B97F4A7C15UL;
        h = (h ^ (h >> 29) ^ Bits(y)) * 0xBF58476D1CE4E5B9UL;
        h = (h ^ (h >> 32) ^ Bits(z)) * 0x94D049BB133111EBUL;
        return (int)((h ^ (h >> 31)) & (ulong)(table.Length - 1));
    }

    private static ulong Bits(float value) => BitConverter.SingleToUInt32Bits(value + 0f);
}
