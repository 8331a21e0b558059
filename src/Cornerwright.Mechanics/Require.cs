using System.Runtime.CompilerServices;

namespace Cornerwright.Mechanics;

/// <summary>Refuses numbers that would be our own bug: the user's data is checked before it comes here.</summary>
internal static class Require
{
    /// <summary>A finite value above 0.</summary>
    public static void Positive(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value > 0) || !double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(name, value, "Finite and above 0.");
        }
    }

    /// <summary>A finite value of at least 0.</summary>
    public static void NotNegative(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value >= 0) || !double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(name, value, "Finite and at least 0.");
        }
    }

    /// <summary>Any finite value.</summary>
    public static void Finite(double value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(name, value, "Finite.");
        }
    }
}
