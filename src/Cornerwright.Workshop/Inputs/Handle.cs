namespace Cornerwright.Workshop.Inputs;

/// <summary>
/// The place of one number in a corner's row of inputs, or, where nobody gave it, its place among what is missing. The default is none:
/// a number that has no part in this corner.
/// </summary>
internal readonly record struct Handle
{
    private readonly int _place;   // one more than the index; negative for what is missing, so that the default stands for none

    private Handle(int place) => _place = place;

    /// <summary>A number that has no part in this corner.</summary>
    public static Handle None => default;

    /// <summary>False for a number that nobody gave.</summary>
    public bool IsGiven => _place > 0;

    /// <summary>In the row, from 0.</summary>
    public int Index => _place - 1;

    /// <summary>True where the number was asked for and nobody gave it.</summary>
    public bool IsMissing => _place < 0;

    /// <summary>Among what is missing, from 0.</summary>
    public int MissingIndex => -_place - 1;

    public static Handle At(int index)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        return new(index + 1);
    }

    public static Handle Missing(int index)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        return new(-index - 1);
    }
}

/// <summary>The three coordinates of a point in a corner's row of inputs.</summary>
internal readonly record struct PointHandle(Handle X, Handle Y, Handle Z)
{
    public static PointHandle None => default;

    public bool IsGiven => X.IsGiven && Y.IsGiven && Z.IsGiven;
}
