namespace Cornerwright.Garage.Quantities;

/// <summary>The units a person may type, and how each may be spelled.</summary>
/// <remarks>
/// Source: NIST SP 811 (2008), Appendix B.8, and SI Brochure (9th ed.): inch 25.4 mm, foot 304.8 mm, mile 1609.344 m,
/// pound 0.453 592 37 kg, standard gravity 9.806 65 m/s², bar 100 kPa, all exact; the others are products of these.
/// "kg" and "lb" where a force is meant (8 kg/mm, 450 lb/in) are the trade's habit and are read as kgf and lbf.
/// Within a dimension no spelling belongs to two units.
/// </remarks>
public static class Units
{
    /// <summary>Standard gravity, m/s², exact by definition.</summary>
    public const double StandardGravity = 9.80665;

    /// <summary>Avoirdupois pound, kg, exact by definition.</summary>
    public const double PoundKg = 0.45359237;

    /// <summary>Pound-force, N: the exact product 0.45359237 · 9.80665, written out so that no rounding enters.</summary>
    public const double PoundForce = 4.4482216152605;

    public static Unit Millimetre { get; } = new(Dimension.Length, "mm", 1, 1000, "mm");
    public static Unit Centimetre { get; } = new(Dimension.Length, "cm", 1, 100, "cm");
    public static Unit Metre { get; } = new(Dimension.Length, "m", 1, 1, "m");
    public static Unit Inch { get; } = new(Dimension.Length, "in", 254, 10000, "in", "inch", "inches", "\"", "''");
    public static Unit Foot { get; } = new(Dimension.Length, "ft", 3048, 10000, "ft", "foot", "feet", "'");

    public static Unit NewtonPerMillimetre { get; } = new(Dimension.SpringRate, "N/mm", 1000, 1, "n/mm");
    public static Unit NewtonPerMetre { get; } = new(Dimension.SpringRate, "N/m", 1, 1, "n/m");
    public static Unit KilonewtonPerMetre { get; } = new(Dimension.SpringRate, "kN/m", 1000, 1, "kn/m");
    public static Unit KilogramForcePerMillimetre { get; } =
        new(Dimension.SpringRate, "kgf/mm", StandardGravity * 1000, 1, "kgf/mm", "kg/mm", "kp/mm");
    public static Unit PoundForcePerInch { get; } =
        new(Dimension.SpringRate, "lbf/in", PoundForce * 10000, 254, "lbf/in", "lb/in", "lbs/in", "lbf/inch", "lb/inch", "lbs/inch");

    public static Unit Newton { get; } = new(Dimension.Force, "N", 1, 1, "n");
    public static Unit Decanewton { get; } = new(Dimension.Force, "daN", 10, 1, "dan");
    public static Unit Kilonewton { get; } = new(Dimension.Force, "kN", 1000, 1, "kn");
    public static Unit KilogramForce { get; } = new(Dimension.Force, "kgf", StandardGravity, 1, "kgf", "kp", "kg");
    public static Unit PoundForceUnit { get; } = new(Dimension.Force, "lbf", PoundForce, 1, "lbf", "lb", "lbs");

    public static Unit Kilogram { get; } = new(Dimension.Mass, "kg", 1, 1, "kg");
    public static Unit Gram { get; } = new(Dimension.Mass, "g", 1, 1000, "g");
    public static Unit Tonne { get; } = new(Dimension.Mass, "t", 1000, 1, "t");
    public static Unit Pound { get; } = new(Dimension.Mass, "lb", PoundKg, 1, "lb", "lbs");

    public static Unit Degree { get; } = new(Dimension.Angle, "°", Math.PI, 180, "°", "deg", "degree", "degrees");
    public static Unit ArcMinute { get; } = new(Dimension.Angle, "'", Math.PI, 180 * 60, "'", "arcmin", "min");
    public static Unit ArcSecond { get; } = new(Dimension.Angle, "\"", Math.PI, 180 * 3600, "\"", "''", "arcsec");
    public static Unit Radian { get; } = new(Dimension.Angle, "rad", 1, 1, "rad");

    public static Unit NewtonMetre { get; } = new(Dimension.Torque, "N·m", 1, 1, "n·m", "nm");
    public static Unit PoundForceFoot { get; } = new(
        Dimension.Torque, "lbf·ft", PoundForce * 3048, 10000, "lbf·ft", "ft·lbf", "ft·lb", "lb·ft", "ft·lbs", "lbs·ft", "ftlb", "lbft",
        "ftlbs", "ftlbf", "lbfft");
    public static Unit PoundForceInch { get; } = new(
        Dimension.Torque, "lbf·in", PoundForce * 254, 10000, "lbf·in", "in·lbf", "in·lb", "lb·in", "in·lbs", "lbs·in", "inlb", "inlbs");
    public static Unit KilogramForceMetre { get; } =
        new(Dimension.Torque, "kgf·m", StandardGravity, 1, "kgf·m", "kgfm", "kg·m", "kgm", "kp·m", "kpm");

    public static Unit Bar { get; } = new(Dimension.Pressure, "bar", 100_000, 1, "bar");
    public static Unit Kilopascal { get; } = new(Dimension.Pressure, "kPa", 1000, 1, "kpa");
    public static Unit Pascal { get; } = new(Dimension.Pressure, "Pa", 1, 1, "pa");
    public static Unit MegapascalOfPressure { get; } = new(Dimension.Pressure, "MPa", 1_000_000, 1, "mpa");
    public static Unit PoundForcePerSquareInch { get; } =
        new(Dimension.Pressure, "psi", PoundForce * 100_000_000, 254 * 254, "psi", "lbf/in2", "lb/in2");
    public static Unit KilogramForcePerSquareCentimetre { get; } =
        new(Dimension.Pressure, "kgf/cm²", StandardGravity * 10_000, 1, "kgf/cm2", "kg/cm2");

    public static Unit KilometrePerHour { get; } = new(Dimension.Speed, "km/h", 10, 36, "km/h", "kmh", "kph");
    public static Unit MilePerHour { get; } = new(Dimension.Speed, "mph", 1609.344, 3600, "mph");
    public static Unit MetrePerSecond { get; } = new(Dimension.Speed, "m/s", 1, 1, "m/s");

    public static Unit One { get; } = new(Dimension.Ratio, "", 1, 1, "");
    public static Unit Percent { get; } = new(Dimension.Ratio, "%", 1, 100, "%");

    public static Unit Turn { get; } = new(Dimension.Turns, "turns", 1, 1, "turns", "turn", "rev", "revs");
    public static Unit Piece { get; } = new(Dimension.Count, "", 1, 1, "", "coils", "coil", "clicks", "click", "bolts", "bolt");

    public static Unit DegreePerMillimetre { get; } =
        new(Dimension.AnglePerLength, "°/mm", Math.PI * 1000, 180, "°/mm", "deg/mm");
    public static Unit DegreePerMetre { get; } = new(Dimension.AnglePerLength, "°/m", Math.PI, 180, "°/m", "deg/m");
    public static Unit DegreePerInch { get; } =
        new(Dimension.AnglePerLength, "°/in", Math.PI * 10000, 180 * 254, "°/in", "deg/in", "deg/inch", "°/\"");
    public static Unit RadianPerMetre { get; } = new(Dimension.AnglePerLength, "rad/m", 1, 1, "rad/m");

    public static Unit PerMillimetre { get; } = new(Dimension.InverseLength, "1/mm", 1000, 1, "1/mm", "/mm");
    public static Unit PerMetre { get; } = new(Dimension.InverseLength, "1/m", 1, 1, "1/m", "/m");
    public static Unit PerInch { get; } = new(Dimension.InverseLength, "1/in", 10000, 254, "1/in", "/in");

    public static Unit Hertz { get; } = new(Dimension.Frequency, "Hz", 1, 1, "hz");
    public static Unit PerMinute { get; } = new(Dimension.Frequency, "1/min", 1, 60, "1/min", "/min", "cpm");

    public static Unit NewtonSecondPerMetre { get; } = new(Dimension.DampingRate, "N·s/m", 1, 1, "n·s/m", "ns/m");
    public static Unit NewtonSecondPerMillimetre { get; } = new(Dimension.DampingRate, "N·s/mm", 1000, 1, "n·s/mm", "ns/mm");
    public static Unit PoundForceSecondPerInch { get; } =
        new(Dimension.DampingRate, "lbf·s/in", PoundForce * 10000, 254, "lbf·s/in", "lb·s/in", "lbs·s/in");

    public static Unit Megapascal { get; } = new(Dimension.Stress, "MPa", 1_000_000, 1, "mpa", "n/mm2");
    public static Unit Gigapascal { get; } = new(Dimension.Stress, "GPa", 1_000_000_000, 1, "gpa");
    public static Unit KilopoundForcePerSquareInch { get; } =
        new(Dimension.Stress, "ksi", PoundForce * 100_000_000_000, 254 * 254, "ksi");
    public static Unit PoundForcePerSquareInchOfStress { get; } =
        new(Dimension.Stress, "psi", PoundForce * 100_000_000, 254 * 254, "psi", "lbf/in2", "lb/in2");

    public static Unit NewtonMetrePerDegree { get; } =
        new(Dimension.RollStiffness, "N·m/°", 180, Math.PI, "n·m/°", "nm/°", "n·m/deg", "nm/deg");
    public static Unit NewtonMetrePerRadian { get; } = new(Dimension.RollStiffness, "N·m/rad", 1, 1, "n·m/rad", "nm/rad");
    public static Unit PoundForceFootPerDegree { get; } =
        new(Dimension.RollStiffness, "lbf·ft/°", PoundForce * 3048 * 180, 10000 * Math.PI, "lbf·ft/°", "lbf·ft/deg", "lb·ft/°", "lb·ft/deg",
            "ft·lb/°", "ft·lb/deg");

    public static Unit Kilometre { get; } = new(Dimension.Distance, "km", 1000, 1, "km");
    public static Unit Mile { get; } = new(Dimension.Distance, "mi", 1609.344, 1, "mi", "mile", "miles");

    private static readonly Unit[][] ByDimension = Gather();

    /// <summary>Every unit a field of this dimension takes, the usual one first.</summary>
    public static IReadOnlyList<Unit> Of(Dimension dimension) => ByDimension[(int)dimension];

    /// <summary>The unit of a dimension by any accepted spelling; null if there is none.</summary>
    public static Unit? Find(ReadOnlySpan<char> typed, Dimension dimension)
    {
        if (typed.Length > UnitFolding.Limit)
        {
            return null;
        }

        Span<char> room = stackalloc char[UnitFolding.Limit];
        return UnitFolding.TryFold(typed, room, out int length) ? FindFolded(room[..length], dimension) : null;
    }

    /// <summary>The usual unit written by a symbol, whatever it measures: tells a person what he typed instead.</summary>
    internal static Unit? FindAnywhere(ReadOnlySpan<char> folded)
    {
        for (int i = 0; i < ByDimension.Length; i++)
        {
            if (folded.Length > 0 && FindFolded(folded, (Dimension)i) is { } unit)
            {
                return unit;
            }
        }

        return null;
    }

    internal static Unit? FindFolded(ReadOnlySpan<char> folded, Dimension dimension)
    {
        foreach (Unit unit in ByDimension[(int)dimension])
        {
            foreach (string spelling in unit.Spellings)
            {
                if (folded.SequenceEqual(spelling))
                {
                    return unit;
                }
            }
        }

        return null;
    }

    private static Unit[][] Gather() =>
    [
        [Millimetre, Centimetre, Metre, Inch, Foot],
        [NewtonPerMillimetre, KilogramForcePerMillimetre, PoundForcePerInch, KilonewtonPerMetre, NewtonPerMetre],
        [Newton, Decanewton, Kilonewton, KilogramForce, PoundForceUnit],
        [Kilogram, Pound, Gram, Tonne],
        [Degree, ArcMinute, ArcSecond, Radian],
        [NewtonMetre, PoundForceFoot, PoundForceInch, KilogramForceMetre],
        [Bar, PoundForcePerSquareInch, Kilopascal, Pascal, MegapascalOfPressure, KilogramForcePerSquareCentimetre],
        [KilometrePerHour, MilePerHour, MetrePerSecond],
        [One, Percent],
        [Turn],
        [Piece],
        [DegreePerMillimetre, DegreePerMetre, DegreePerInch, RadianPerMetre],
        [PerMillimetre, PerMetre, PerInch],
        [Hertz, PerMinute],
        [NewtonSecondPerMetre, NewtonSecondPerMillimetre, PoundForceSecondPerInch],
        [Megapascal, Gigapascal, KilopoundForcePerSquareInch, PoundForcePerSquareInchOfStress],
        [NewtonMetrePerDegree, NewtonMetrePerRadian, PoundForceFootPerDegree],
        [Kilometre, Mile],
    ];
}
