namespace Cornerwright.Mechanics.Clearance.Scans;

/// <summary>Why numbers do not make a mesh or a cloud.</summary>
public enum ScanFaultKind
{
    /// <summary>Nothing is wrong.</summary>
    None = 0,

    /// <summary>No point, or no triangle.</summary>
    Empty,

    /// <summary>The coordinates do not come in threes; Index is their count.</summary>
    NotThrees,

    /// <summary>A coordinate is not finite; Index is its place in the array.</summary>
    NotFinite,

    /// <summary>
    /// A coordinate is further from the origin than <see cref="ScanFault.FurthestCoordinate"/>; Index is its place in the array.
    /// </summary>
    TooFar,

    /// <summary>A corner index names no point; Index is its place in the array.</summary>
    NoSuchPoint,

    /// <summary>Every triangle is without area; Index is their count.</summary>
    OnlyDegenerate,
}

/// <summary>Why, and at which place of the array (see each kind).</summary>
/// <remarks>The default says that nothing is wrong. Source: definition of the types it guards.</remarks>
public readonly record struct ScanFault(ScanFaultKind Kind, int Index)
{
    /// <summary>
    /// m. A car's corner lies within a few metres of B's origin; further out a float stores less than 1 µm. A scan in
    /// millimetres read as metres is caught here.
    /// </summary>
    public const float FurthestCoordinate = 100f;

    /// <summary>The first coordinate that is no place. Source: definition.</summary>
    internal static ScanFault OfCoordinates(ReadOnlySpan<float> xyz)
    {
        if (xyz.Length == 0)
        {
            return new(ScanFaultKind.Empty, 0);
        }

        if (xyz.Length % 3 != 0)
        {
            return new(ScanFaultKind.NotThrees, xyz.Length);
        }

        for (int i = 0; i < xyz.Length; i++)
        {
            if (!(Math.Abs(xyz[i]) <= FurthestCoordinate))
            {
                return new(float.IsFinite(xyz[i]) ? ScanFaultKind.TooFar : ScanFaultKind.NotFinite, i);
            }
        }

        return default;
    }
}
