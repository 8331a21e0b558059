namespace Cornerwright.Garage.Scans;

/// <summary>The kinds of file a scan can come in.</summary>
public enum ScanFormat
{
    Ply,
    Obj,
    Stl,
    Glb,
}

/// <summary>Names of the kinds.</summary>
public static class ScanFormats
{
    public const string Names = "PLY, OBJ, STL or GLB";

    /// <summary>"ply" and so on: the ending of the file's name.</summary>
    public static string Ending(this ScanFormat format) => format switch
    {
        ScanFormat.Ply => "ply",
        ScanFormat.Obj => "obj",
        ScanFormat.Stl => "stl",
        _ => "glb",
    };

    /// <returns>Null where the name's ending is none of the four.</returns>
    public static ScanFormat? OfName(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        foreach (var format in Enum.GetValues<ScanFormat>())
        {
            if (name.EndsWith("." + format.Ending(), StringComparison.OrdinalIgnoreCase))
            {
                return format;
            }
        }

        return null;
    }
}
