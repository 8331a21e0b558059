namespace Cornerwright.Architecture.Tests;

/// <summary>Finds the calls of one method that format, read or order in the current culture.</summary>
/// <remarks>
/// A whole number written without a format is let through: cultures differ in its minus sign alone, and what we
/// write so are counts and row numbers.
/// </remarks>
internal static class CultureOfCalls
{
    private const string Provider = "System.IFormatProvider", Optional = "System.Nullable`1<";

    private static readonly string[] WholeNumbers =
    [
        "System.SByte", "System.Int16", "System.Int32", "System.Int64", "System.Byte", "System.UInt16", "System.UInt32", "System.UInt64",
    ];

    private static readonly string[] Numbers =
    [
        .. WholeNumbers, "System.Double", "System.Single", "System.Half", "System.Decimal", "System.Numerics.BigInteger",
        "System.DateTime", "System.DateTimeOffset", "System.DateOnly", "System.TimeOnly", "System.TimeSpan",
    ];

    private static readonly string[] Orders = ["OrderBy", "OrderByDescending", "ThenBy", "ThenByDescending", "Order", "OrderDescending"];

    public static IEnumerable<(int Offset, string Offence)> Offences(IEnumerable<Instruction> instructions, TypeNames names)
    {
        // Interpolated strings nest, each from its constructor to the call that takes it: the innermost open one gets the next hole.
        var open = new Stack<bool>();
        string constrained = "";
        foreach (var (offset, code, token) in instructions)
        {
            if (code == System.Reflection.Emit.OpCodes.Constrained)
            {
                constrained = names.Of(token);
                continue;
            }

            var call = names.CallOf(token);
            if (call is null)
            {
                continue;
            }

            string? offence = call.Owner.EndsWith("InterpolatedStringHandler", StringComparison.Ordinal)
                ? Hole(call, open)
                : Plain(call, constrained);
            if (call.Parameters.Any(p => p.EndsWith("InterpolatedStringHandler&", StringComparison.Ordinal)) && open.Count > 0)
            {
                open.Pop();
            }

            constrained = "";
            if (offence is not null)
            {
                yield return (offset, offence);
            }
        }
    }

    private static string? Hole(Call call, Stack<bool> open)
    {
        switch (call.Name)
        {
            case ".ctor":
                open.Push(call.Parameters.Contains(Provider));
                return null;
            case "ToStringAndClear" or "ToString":
                open.Pop();
                return null;
            case "AppendFormatted" when call.Arguments is [var type] && open.TryPeek(out bool invariant) && !invariant:
                return IsBound(type) && !(call.Parameters.Length == 1 && WholeNumbers.Contains(Bare(type)))
                    ? $"an interpolated string takes {type}" : null;
            default:
                return null;
        }
    }

    private static string? Plain(Call call, string constrained)
    {
        string owner = call.Owner == "System.Object" && constrained.Length > 0 ? constrained : call.Owner;
        bool told = call.Parameters.Any(p => p is Provider or "System.Globalization.CultureInfo" or "System.StringComparison");
        if (told)
        {
            return null;
        }

        return call.Name switch
        {
            "ToString" or "Parse" or "TryParse" or "TryFormat" when IsBound(owner) && !IsPlainCount(call, owner) => $"{owner}.{call.Name}",
            "Format" or "ToUpper" or "ToLower" or "Compare" or "CompareTo" when owner == "System.String" => $"{owner}.{call.Name}",
            "StartsWith" or "EndsWith" or "IndexOf" or "LastIndexOf" when owner == "System.String"
                && call.Parameters[0] == "System.String" => $"{owner}.{call.Name}",
            "ToUpper" or "ToLower" when owner == "System.Char" => $"{owner}.{call.Name}",
            "Append" or "Insert" or "AppendFormat" or "AppendJoin" when owner == "System.Text.StringBuilder"
                && (call.Name == "AppendFormat" || IsBound(call.Parameters[0])) => $"{owner}.{call.Name}",
            "Join" or "Concat" when owner == "System.String" && call.Arguments.Any(p => IsBound(p)) => $"{owner}.{call.Name}",
            "ToString" when owner == "System.Convert" => $"{owner}.{call.Name}",
            _ when owner == "System.Linq.Enumerable" && Orders.Contains(call.Name) && call.Arguments[^1] == "System.String"
                && !call.Parameters.Any(p => p.Contains("IComparer", StringComparison.Ordinal)) =>
                    $"{call.Name} of strings without a comparer",
            _ => null,
        };
    }

    private static bool IsPlainCount(Call call, string owner) =>
        call.Name == "ToString" && call.Parameters.Length == 0 && WholeNumbers.Contains(Bare(owner));

    private static bool IsBound(string type) => Numbers.Contains(Bare(type));

    private static string Bare(string type) => type.StartsWith(Optional, StringComparison.Ordinal) ? type[Optional.Length..^1] : type;
}
