using System.Globalization;

namespace Cornerwright.Garage.Scans;

/// <summary>Types of numbers in a PLY file, with both sets of names in use.</summary>
internal enum PlyType
{
    Int8,
    UInt8,
    Int16,
    UInt16,
    Int32,
    UInt32,
    Float32,
    Float64,
}

internal enum PlyEncoding
{
    Ascii,
    LittleEndian,
    BigEndian,
}

/// <summary>One column of an element; a list carries the type of its count.</summary>
internal sealed record PlyProperty(string Name, PlyType Type, PlyType? ListCount);

/// <summary>A table of the file. The count is what the header claims.</summary>
internal sealed record PlyElement(string Name, long Count, List<PlyProperty> Properties)
{
    /// <summary>Fewest bytes of a row: an empty list still has its count; as text a number has a digit and a blank.</summary>
    public long LeastRow(PlyEncoding encoding) =>
        Properties.Sum(p => encoding == PlyEncoding.Ascii ? 2 : PlyHeader.SizeOf(p.ListCount ?? p.Type));

    public int Find(string name) => Properties.FindIndex(p => p.Name == name && p.ListCount is null);
}

/// <summary>The lines before the data.</summary>
/// <remarks>
/// Source: G. Turk, "The PLY Polygon File Format" (1994), header section; the sized names (float32) are of its later description.
/// </remarks>
internal sealed record PlyHeader(PlyEncoding Encoding, IReadOnlyList<PlyElement> Elements)
{
    private const int LongestLine = 4096;
    private const int MostLines = 2000;
    private const int MostProperties = 256;

    public static int SizeOf(PlyType type) => type switch
    {
        PlyType.Int8 or PlyType.UInt8 => 1,
        PlyType.Int16 or PlyType.UInt16 => 2,
        PlyType.Float64 => 8,
        _ => 4,
    };

    public static PlyHeader Read(ScanBytes bytes)
    {
        PlyEncoding? encoding = null;
        var elements = new List<PlyElement>();
        for (int number = 1; number <= MostLines; number++)
        {
            string where = $"header line {number}";
            string line = bytes.Line(LongestLine, where) ?? throw ScanFault.Ends(where);
            string[] words = line.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries);
            switch (words.FirstOrDefault())
            {
                case "ply" when number == 1:
                case null or "comment" or "obj_info":
                    break;
                case "format" when words.Length == 3 && encoding is null:
                    encoding = EncodingOf(words[1]) ?? throw Wrong(where, line, "format ascii, binary_little_endian or binary_big_endian");
                    break;
                case "element" when words.Length == 3
                    && long.TryParse(words[2], NumberStyles.None, CultureInfo.InvariantCulture, out long count):
                    elements.Add(elements.Any(e => e.Name == words[1]) ? throw Wrong(where, line, "each element once")
                        : new PlyElement(words[1], count, []));
                    break;
                case "property" when elements.Count > 0 && elements[^1].Properties.Count < MostProperties:
                    elements[^1].Properties.Add(PropertyOf(words)
                        ?? throw Wrong(where, line, "property TYPE NAME or property list TYPE TYPE NAME"));
                    break;
                case "end_header":
                    return new PlyHeader(encoding ?? throw Wrong(where, line, "a line with the format before it"), elements);
                default:
                    throw Wrong(where, line, "format, element NAME COUNT, property, comment or end_header");
            }
        }

        throw Wrong("header", "no end_header", $"at most {MostLines} lines up to end_header");
    }

    private static ScanFault Wrong(string where, string given, string allowed) =>
        ScanFault.At(where, given, allowed, "The header is damaged: export the file again.");

    private static PlyEncoding? EncodingOf(string word) => word switch
    {
        "ascii" => PlyEncoding.Ascii,
        "binary_little_endian" => PlyEncoding.LittleEndian,
        "binary_big_endian" => PlyEncoding.BigEndian,
        _ => null,
    };

    private static PlyProperty? PropertyOf(string[] words) => words switch
    {
        [_, "list", var count, var item, var name] => TypeOf(count) is { } c and not (PlyType.Float32 or PlyType.Float64)
            && TypeOf(item) is { } t ? new PlyProperty(name, t, c) : null,
        [_, var type, var name] => TypeOf(type) is { } t ? new PlyProperty(name, t, null) : null,
        _ => null,
    };

    private static PlyType? TypeOf(string word) => word switch
    {
        "char" or "int8" => PlyType.Int8,
        "uchar" or "uint8" => PlyType.UInt8,
        "short" or "int16" => PlyType.Int16,
        "ushort" or "uint16" => PlyType.UInt16,
        "int" or "int32" => PlyType.Int32,
        "uint" or "uint32" => PlyType.UInt32,
        "float" or "float32" => PlyType.Float32,
        "double" or "float64" => PlyType.Float64,
        _ => null,
    };
}
