using System.Buffers.Binary;
using System.Text;

namespace Cornerwright.Garage.Tests.Scans;

/// <summary>Small whole files of every kind, made from one tetrahedron and from published examples.</summary>
internal static class ScanSamples
{
    public static readonly double[][] Points = [[0, 0, 0], [1.5, 0, 0], [0, 2.25, 0], [0, 0, -0.75]];
    public static readonly int[][] Faces = [[0, 2, 1], [0, 1, 3], [1, 2, 3], [2, 0, 3]];

    // Source: G. Turk, "The PLY Polygon File Format" (1994), the cube with which the description begins (from memory; the
    // numbers are a unit cube and can be checked by eye).
    public const string TurkCube =
        """
        ply
        format ascii 1.0
        comment made by anonymous
        comment this file is a cube
        element vertex 8
        property float32 x
        property float32 y
        property float32 z
        element face 6
        property list uint8 int32 vertex_index
        end_header
        0 0 0
        0 0 1
        0 1 1
        0 1 0
        1 0 0
        1 0 1
        1 1 1
        1 1 0
        4 0 1 2 3
        4 7 6 5 4
        4 0 4 5 1
        4 1 5 6 2
        4 2 6 7 3
        4 3 7 4 0

        """;

    // Source: Wavefront Technologies, "Object Files (.obj)", Appendix B1, examples: the cube with negative reference numbers
    // (from memory; a cube of edge 2 can be checked by eye).
    public const string WavefrontCube =
        """
        v 0.000000 2.000000 2.000000
        v 0.000000 0.000000 2.000000
        v 2.000000 0.000000 2.000000
        v 2.000000 2.000000 2.000000
        f -4 -3 -2 -1

        v 2.000000 2.000000 0.000000
        v 2.000000 0.000000 0.000000
        v 0.000000 0.000000 0.000000
        v 0.000000 2.000000 0.000000
        f -4 -3 -2 -1

        v 2.000000 2.000000 2.000000
        v 2.000000 0.000000 2.000000
        v 2.000000 0.000000 0.000000
        v 2.000000 2.000000 0.000000
        f -4 -3 -2 -1

        v 0.000000 2.000000 0.000000
        v 0.000000 2.000000 2.000000
        v 2.000000 2.000000 2.000000
        v 2.000000 2.000000 0.000000
        f -4 -3 -2 -1

        v 0.000000 2.000000 0.000000
        v 0.000000 0.000000 0.000000
        v 0.000000 0.000000 2.000000
        v 0.000000 2.000000 2.000000
        f -4 -3 -2 -1

        v 0.000000 0.000000 2.000000
        v 0.000000 0.000000 0.000000
        v 2.000000 0.000000 0.000000
        v 2.000000 0.000000 2.000000
        f -4 -3 -2 -1
        # 6 elements

        """;

    // Source: Khronos Group, glTF Tutorials, "A Minimal glTF File": one triangle, its buffer in base64 as printed there.
    public const string KhronosBuffer = "AAABAAIAAAAAAAAAAAAAAAAAAAAAAIA/AAAAAAAAAAAAAAAAAACAPwAAAAA=";

    public const string KhronosDescription =
        """
        {"scene":0,"scenes":[{"nodes":[0]}],"nodes":[{"mesh":0}],"meshes":[{"primitives":[{"attributes":{"POSITION":1},"indices":0}]}],
        "buffers":[{"byteLength":44}],"bufferViews":[{"buffer":0,"byteOffset":0,"byteLength":6,"target":34963},{"buffer":0,"byteOffset":8,"byteLength":36,"target":34962}],
        "accessors":[{"bufferView":0,"byteOffset":0,"componentType":5123,"count":3,"type":"SCALAR","max":[2],"min":[0]},
        {"bufferView":1,"byteOffset":0,"componentType":5126,"count":3,"type":"VEC3","max":[1.0,1.0,0.0],"min":[0.0,0.0,0.0]}],"asset":{"version":"2.0"}}
        """;

    public static byte[] Text(string text) => Encoding.ASCII.GetBytes(text);

    /// <summary>A GLB container as in glTF 2.0 §4.4: header, description padded with blanks, buffer padded with zeros.</summary>
    public static byte[] Glb(string description, byte[] buffer)
    {
        byte[] json = Encoding.UTF8.GetBytes(description.PadRight((description.Length + 3) / 4 * 4));
        int padded = (buffer.Length + 3) / 4 * 4;
        byte[] file = new byte[12 + 8 + json.Length + 8 + padded];
        Encoding.ASCII.GetBytes("glTF").CopyTo(file, 0);
        BinaryPrimitives.WriteUInt32LittleEndian(file.AsSpan(4), 2);
        BinaryPrimitives.WriteUInt32LittleEndian(file.AsSpan(8), (uint)file.Length);
        BinaryPrimitives.WriteUInt32LittleEndian(file.AsSpan(12), (uint)json.Length);
        Encoding.ASCII.GetBytes("JSON").CopyTo(file, 16);
        json.CopyTo(file, 20);
        int at = 20 + json.Length;
        BinaryPrimitives.WriteUInt32LittleEndian(file.AsSpan(at), (uint)padded);
        Encoding.ASCII.GetBytes("BIN\0").CopyTo(file, at + 4);
        buffer.CopyTo(file, at + 8);
        return file;
    }

    public static byte[] KhronosTriangle(string? description = null) =>
        Glb(description ?? KhronosDescription, Convert.FromBase64String(KhronosBuffer));

    /// <summary>The tetrahedron with columns in an unusual order, doubles beside floats, a list before the points' last column.</summary>
    public static byte[] BinaryPly(bool big)
    {
        using var file = new MemoryStream();
        file.Write(Text($"ply\nformat binary_{(big ? "big" : "little")}_endian 1.0\nelement face 4\nproperty "
            + $"uchar red\nproperty list ushort uint vertex_indices\nproperty list uchar float weights\n"
            + "element vertex 4\nproperty short scan\nproperty double z\nproperty list uchar short seen_from\nproperty float x\nproperty "
            + "float y\nend_header\n"));
        foreach (int[] face in Faces)
        {
            file.WriteByte(200);
            Write(file, big, 2, BitConverter.GetBytes((ushort)3));
            foreach (int corner in face)
            {
                Write(file, big, 4, BitConverter.GetBytes((uint)corner));
            }

            file.WriteByte(1);
            Write(file, big, 4, BitConverter.GetBytes(0.5f));
        }

        foreach (double[] p in Points)
        {
            Write(file, big, 2, BitConverter.GetBytes((short)-7));
            Write(file, big, 8, BitConverter.GetBytes(p[2]));
            file.WriteByte(2);
            Write(file, big, 2, BitConverter.GetBytes((short)1));
            Write(file, big, 2, BitConverter.GetBytes((short)2));
            Write(file, big, 4, BitConverter.GetBytes((float)p[0]));
            Write(file, big, 4, BitConverter.GetBytes((float)p[1]));
        }

        return file.ToArray();
    }

    public static byte[] BinaryStl()
    {
        using var file = new MemoryStream();
        file.Write(new byte[80]);
        file.Write(BitConverter.GetBytes(Faces.Length));
        foreach (int[] face in Faces)
        {
            file.Write(new byte[12]);
            foreach (int corner in face)
            {
                foreach (double c in Points[corner])
                {
                    file.Write(BitConverter.GetBytes((float)c));
                }
            }

            file.Write(new byte[2]);
        }

        return file.ToArray();
    }

    public static string TextStl()
    {
        var text = new StringBuilder("solid tetrahedron\n");
        foreach (int[] face in Faces)
        {
            text.Append("  facet normal 0 0 0\n    outer loop\n");
            foreach (int corner in face)
            {
                text.Append(
                    FormattableString.Invariant($"      vertex {Points[corner][0]:E6} {Points[corner][1]:E6} {Points[corner][2]:E6}\n"));
            }

            text.Append("    endloop\n  endfacet\n");
        }

        return text.Append("endsolid tetrahedron\n").ToString();
    }

    private static void Write(MemoryStream file, bool big, int size, byte[] native)
    {
        Assert.Equal(size, native.Length);
        if (big == BitConverter.IsLittleEndian)
        {
            Array.Reverse(native);
        }

        file.Write(native);
    }
}
