namespace Cornerwright.Workshop.Inputs;

/// <summary>The place of one number in a corner's row of inputs. The default is none: nobody gave the number.</summary>
internal readonly record struct Handle
{
    private readonly int _place;   // one more than the index, so that the default stands for none

    private Handle(int place) => _place = place;

    /// <summary>Nobody gave this number.</summary>
    public static Handle None => default;

    /// <summary>False for a number that nobody gave.</summary>
    public bool IsGiven => _place > 0;

    /// <summary>In the row, from 0; -1 for none.</summary>
    public int Index => _place - 1;

    public static Handle At(int index)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        return new(index + 1);
    }
}

/// <summary>The three coordinates of a point in a corner's row of inputs.</summary>
internal readonly record struct PointHandle(Handle X, Handle Y, Handle Z)
{
    public static PointHandle None => default;

    public bool IsGiven => X.IsGiven && Y.IsGiven && Z.IsGiven;
}
