using System.Globalization;
using System.Text;

namespace Cornerwright.Architecture.Tests;

/// <summary>Lines that the rule of <see cref="CultureTests"/> names, and lines that it lets through.</summary>
internal static class CultureSample
{
    /// <summary>Line and offence, as the rule writes them.</summary>
    public static readonly string[] Offending =
    [
        "24: an interpolated string takes System.Double",
        "25: an interpolated string takes System.Nullable`1<System.Double>",
        "26: an interpolated string takes System.Int32",
        "27: an interpolated string takes System.Double",
        "28: System.Double.ToString",
        "29: System.Double.Parse",
        "30: OrderBy of strings without a comparer",
    ];

#pragma warning disable CA1305, CA1307, CA1310 // These lines are wrong on purpose.
    public static IEnumerable<string> Wrong(double x, double? y, int count, string[] words)
    {
        yield return $"{x:0.0} mm";
        yield return $"{y} mm";
        yield return $"{count:N0} poses";
        yield return string.Create(CultureInfo.InvariantCulture, $"{count} of {(count > 1 ? $"{x} mm" : "none")} and {x:0} mm");
        yield return x.ToString("0.0");
        yield return words[(int)double.Parse("1")];
        yield return words.OrderBy(w => w).First();
    }
#pragma warning restore CA1305, CA1307, CA1310

    public static IEnumerable<string> Right(double x, double? y, int count, string[] words)
    {
        yield return FormattableString.Invariant($"{x:0.0} mm");
        yield return string.Create(CultureInfo.InvariantCulture, $"{y} mm");
        yield return $"{count} poses, {words[0]}";
        yield return new StringBuilder().Append(CultureInfo.InvariantCulture, $"{x:0.0} mm").Append('x').ToString();
        yield return x.ToString("0.0", CultureInfo.InvariantCulture);
        yield return words.Order(StringComparer.Ordinal).First();
    }
}
