using System.Buffers.Text;
using System.Text;

namespace Cornerwright.Garage.Scans;

/// <summary>Reads the points and faces of a Wavefront OBJ file; normals, textures, lines, groups and materials pass by.</summary>
/// <remarks>
/// Source: Wavefront Technologies, Advanced Visualizer Manual, Appendix B1,
/// "Object Files (.obj)" (1992): v, f, negative numbers, joined lines.
/// </remarks>
internal sealed class ObjReader(ScanBytes bytes, ScanGathering gathered)
{
    private long _line;

    private string Where => "line " + ScanGathering.Count(_line);

    public void Read()
    {
        gathered.Variant = "text";
        bool any = false;
        do
        {
            _line++;
            var word = bytes.WordOfLine("lines");
            if (word.SequenceEqual("v"u8))
            {
                any = true;
                Vertex();
            }
            else if (word.SequenceEqual("f"u8))
            {
                any = true;
                Face();
            }
            else if (!any && !IsKnown(word))
            {
                throw ScanFault.At(Where, Encoding.Latin1.GetString(word), "v, f and the other words of an OBJ file",
                    "This is no OBJ file: check its kind, or export it again.");
            }
        }
        while (bytes.EndLine());
    }

    private static bool IsKnown(ReadOnlySpan<byte> word) =>
        word.IsEmpty || word[0] == '#' || word.SequenceEqual("vn"u8) || word.SequenceEqual("vt"u8) || word.SequenceEqual("vp"u8)
            || word.SequenceEqual("g"u8)
        || word.SequenceEqual("o"u8) || word.SequenceEqual("s"u8) || word.SequenceEqual("mtllib"u8) || word.SequenceEqual("usemtl"u8)
        || word.SequenceEqual("l"u8) || word.SequenceEqual("p"u8);

    // Weight and colours behind the three numbers pass by.
    private void Vertex()
    {
        double x = Number(), y = Number(), z = Number();
        gathered.Point(x, y, z);
    }

    private double Number()
    {
        var word = bytes.WordOfLine("points");
        return word.IsEmpty
            ? throw ScanFault.At(Where, "too few numbers", "v X Y Z", "The file is damaged there: export it again.")
            : Utf8Parser.TryParse(word, out double value, out int used) && used == word.Length ? value
            : throw ScanFault.At(Where, Encoding.Latin1.GetString(word), "a number", "The file is damaged there: export it again.");
    }

    // A polygon becomes a fan of triangles about its first corner.
    private void Face()
    {
        int first = 0, last = 0, count = 0;
        for (var word = bytes.WordOfLine("faces"); !word.IsEmpty; word = bytes.WordOfLine("faces"))
        {
            int corner = Corner(word);
            if (++count > ScanLimits.MostFaceCorners)
            {
                throw ScanFault.At(Where, $"more than {ScanLimits.MostFaceCorners} corners",
                    $"at most {ScanLimits.MostFaceCorners} corners", "The file is damaged there: export it again.");
            }

            if (count >= 3)
            {
                gathered.Triangle(first, last, corner);
            }

            (first, last) = (count == 1 ? corner : first, corner);
        }

        if (count < 3)
        {
            throw ScanFault.At(Where, $"a face of {count} corners", "at least 3 corners", "The file is damaged there: export it again.");
        }
    }

    // 7, 7/1, 7//3, 7/1/3; -1 is the last point before this line.
    private int Corner(ReadOnlySpan<byte> word)
    {
        int slash = word.IndexOf((byte)'/');
        var number = slash < 0 ? word : word[..slash];
        if (!Utf8Parser.TryParse(number, out int index, out int used) || used != number.Length || index == 0)
        {
            throw ScanFault.At(Where, Encoding.Latin1.GetString(word), "numbers of points, from 1 or from -1",
                "The file is damaged there: export it again.");
        }

        int corner = index > 0 ? index - 1 : gathered.PointCount + index;
        return corner >= 0 ? corner : throw ScanFault.At(Where, Encoding.Latin1.GetString(word),
            $"1 to {gathered.PointCount}, or -1 to -{gathered.PointCount}", "It names a point that is not there: export the file again.");
    }
}
