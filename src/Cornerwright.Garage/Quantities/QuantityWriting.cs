using System.Globalization;

namespace Cornerwright.Garage.Quantities;

public static partial class QuantityText
{
    private const int MostDecimals = 12;

    /// <summary>A value for people: rounded to decimals, with the unit ("187.5 mm", "-1.50°", "5 %").</summary>
    /// <param name="si">The value, SI; finite.</param>
    /// <param name="unit">The unit to show it in.</param>
    /// <param name="decimals">0 to 12; halves round away from zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or too many decimals: our own bug.</exception>
    public static string Write(double si, Unit unit, int decimals)
    {
        ArgumentNullException.ThrowIfNull(unit);
        ArgumentOutOfRangeException.ThrowIfNegative(decimals);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(decimals, MostDecimals);
        string number = Math.Round(unit.FromSi(Finite(si)), decimals, MidpointRounding.AwayFromZero)
            .ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return Join(WithoutNegativeZero(number), unit);
    }

    /// <summary>A length as workshop inches, to the nearest part: "7 3/4 in", "-1/8 in", "5 in".</summary>
    /// <param name="si">Length, m; finite. Halves of a part round away from zero.</param>
    /// <param name="parts">Parts of an inch: 2, 4, 8, 16, 32 or 64.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not finite or too large, or other parts: our own bug.</exception>
    public static string WriteInches(double si, int parts = 8)
    {
        if (parts is not (2 or 4 or 8 or 16 or 32 or 64))
        {
            throw new ArgumentOutOfRangeException(nameof(parts), parts, "Inches are parted by 2, 4, 8, 16, 32 or 64.");
        }

        double inches = Units.Inch.FromSi(Finite(si));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(Math.Abs(inches), 1e9, nameof(si));
        long all = (long)Math.Round(Math.Abs(inches) * parts, MidpointRounding.AwayFromZero);
        string sign = inches < 0 && all != 0 ? "-" : "";
        (long whole, long over, long under) = (all / parts, all % parts, parts);
        while (over != 0 && over % 2 == 0)
        {
            (over, under) = (over / 2, under / 2);
        }

        string text = (whole, over) switch
        {
            (_, 0) => Digits(whole),
            (0, _) => $"{Digits(over)}/{Digits(under)}",
            _ => $"{Digits(whole)} {Digits(over)}/{Digits(under)}",
        };
        return $"{sign}{text} in";
    }

    /// <summary>A torque both ways: "34 N·m (25 lbf·ft)"; one decimal below 10.</summary>
    /// <param name="newtonMetres">Torque, N·m; finite.</param>
    public static string WriteTorqueBothWays(double newtonMetres) =>
        $"{Torque(newtonMetres, Units.NewtonMetre)} ({Torque(newtonMetres, Units.PoundForceFoot)})";

    /// <summary>All digits, no exponent: what <see cref="Parse(string?, Dimension, string)"/> reads back as the same double.</summary>
    internal static string Plain(double number, Unit unit) => Join(PlainNumber(number), unit);

    /// <summary>A limit for a message: up to six significant digits, no trailing zeros.</summary>
    internal static string Short(double si, Unit unit)
    {
        double number = unit.FromSi(si);
        if (!double.IsFinite(number))
        {
            return number > 0 ? "any larger" : "any smaller";
        }

        double size = Math.Abs(number);
        int decimals = size switch { >= 1000 => 1, >= 10 => 3, >= 0.1 => 5, _ => 9 };
        return Join(PlainNumber(Math.Round(number, decimals, MidpointRounding.AwayFromZero)), unit);
    }

    internal static string PlainNumber(double number)
    {
        string shortest = number.ToString("R", CultureInfo.InvariantCulture);
        int mark = shortest.IndexOf('E', StringComparison.Ordinal);
        return number == 0 ? "0" : mark < 0 ? shortest : Expand(shortest, mark);
    }

    /// <summary>1.25E-07 becomes 0.000000125.</summary>
    private static string Expand(string shortest, int mark)
    {
        int exponent = int.Parse(shortest.AsSpan(mark + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        string sign = shortest[0] == '-' ? "-" : "";
        string mantissa = shortest[sign.Length..mark];
        int point = mantissa.IndexOf('.', StringComparison.Ordinal);
        string digits = mantissa.Replace(".", "", StringComparison.Ordinal);
        int place = (point < 0 ? digits.Length : point) + exponent;
        return place <= 0 ? $"{sign}0.{new string('0', -place)}{digits}"
            : place >= digits.Length ? $"{sign}{digits}{new string('0', place - digits.Length)}"
            : $"{sign}{digits[..place]}.{digits[place..]}";
    }

    private static string Join(string number, Unit unit) => unit.Symbol switch
    {
        "" => number,
        _ when unit.Dimension == Dimension.Angle && unit.Symbol != "rad" => number + unit.Symbol,
        _ => $"{number} {unit.Symbol}",
    };

    private static string Torque(double newtonMetres, Unit unit) =>
        Write(newtonMetres, unit, Math.Abs(unit.FromSi(newtonMetres)) < 10 ? 1 : 0);

    private static string WithoutNegativeZero(string number) =>
        number[0] == '-' && !number.AsSpan().ContainsAnyInRange('1', '9') ? number[1..] : number;

    private static string Digits(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static double Finite(double si) => double.IsFinite(si)
        ? si
        : throw new ArgumentOutOfRangeException(nameof(si), si, "Only finite values are written.");
}
