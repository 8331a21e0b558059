using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Workshop.Linkages;

namespace Cornerwright.Workshop.Sweeps;

/// <summary>One column of a sweep.</summary>
/// <param name="Name">With its unit last, as it heads a column: "camber_deg".</param>
/// <param name="Unit">Of the written number.</param>
/// <param name="Decimals">Written; finer than any reading, coarser than the rounding of platforms.</param>
/// <param name="Si">The value, SI; null where there is none.</param>
public sealed record SweepColumn(string Name, Unit Unit, int Decimals, Func<SweepRow, double?> Si)
{
    /// <summary>In its unit, rounded as it is written; null where there is none.</summary>
    public double? Written(SweepRow row)
    {
        if (Si(row) is not { } si || !double.IsFinite(si))
        {
            return null;
        }

        double rounded = Math.Round(Unit.FromSi(si), Decimals, MidpointRounding.AwayFromZero);
        return rounded == 0 ? 0 : rounded;
    }
}

/// <summary>Everything that a sweep writes, in order. Signs: docs/frames.md.</summary>
public static class SweepColumns
{
    private const int Mm = 4, Deg = 6, Ratio = 7;

    public static IReadOnlyList<SweepColumn> All { get; } =
    [
        Length("travel_mm", r => r.Travel),
        Length("rack_mm", r => r.Rack),
        Length("plate_mm", r => r.Slide),
        Angle("camber_deg", r => r.Motion?.Camber),
        Angle("toe_deg", r => r.Motion?.Toe),
        Angle("steer_deg", r => r.Steer),
        Length("hub_out_mm", r => r.Motion?.LateralShift),
        Length("spring_length_mm", r => r.Spring?.Length),
        Plain("spring_ratio", r => r.Spring?.MotionRatio),
        new("spring_ratio_change_per_mm", Per(Dimension.InverseLength, "1/mm"), 9, r => r.Spring?.MotionRatioSlope),
        Length("damper_length_mm", r => r.Damper?.Length),
        Plain("damper_ratio", r => r.Damper?.MotionRatio),
        new("damper_ratio_change_per_mm", Per(Dimension.InverseLength, "1/mm"), 9, r => r.Damper?.MotionRatioSlope),
        Plain("bar_end_ratio", r => r.BarRatio),
        Angle("caster_deg", r => r.Wheel is { Steering.Exists: true } w ? w.Steering.Caster : null),
        Angle("kingpin_inclination_deg", r => r.Wheel is { Steering.Exists: true } w ? w.Steering.Inclination : null),
        Length("trail_mm", r => r.Wheel is { Steering.Exists: true } w ? w.Steering.Trail : null),
        Length("scrub_radius_mm", r => r.Wheel is { Steering.Exists: true } w ? w.Steering.Scrub : null),
        Length("caster_offset_mm", r => r.Wheel is { Steering.Exists: true } w ? w.Steering.CasterOffset : null),
        Length("kingpin_offset_mm", r => r.Wheel is { Steering.Exists: true } w ? w.Steering.KingpinOffset : null),
        .. Point("wheel_centre", r => r.Wheel?.Centre),
        .. Point("contact", r => r.Wheel?.Contact),
        new("camber_gain_deg_per_mm", Per(Dimension.AnglePerLength, "deg/mm"), 9, r => r.Wheel?.CamberByTravel),
        new("bump_steer_deg_per_mm", Per(Dimension.AnglePerLength, "deg/mm"), 9, r => r.Wheel?.ToeByTravel),
        new("toe_by_rack_deg_per_mm", Per(Dimension.AnglePerLength, "deg/mm"), 9, r => r.Rack is null ? null : r.Wheel?.SteerByRack),
        Length("roll_centre_height_mm", r => r.Wheel?.RollCentreHeight),
        Length("roll_centre_height_held_contact_mm", r => r.Wheel?.RollCentreHeightFixed),
        Plain("contact_ahead_per_rise", r => r.Wheel?.ContactByRiseAhead),
        Plain("wheel_centre_ahead_per_rise", r => r.Wheel?.CentreByRiseAhead),
        new("anti_brake_pct", Units.Percent, 6, r => r.AntiBrake),
        new("anti_drive_pct", Units.Percent, 6, r => r.AntiDrive),
        Angle("ackermann_deviation_deg", r => r.Ackermann?.Deviation),
        new("ackermann_share_pct", Units.Percent, 4, r => r.Ackermann?.Share),
    ];

    private static SweepColumn Length(string name, Func<SweepRow, double?> si) => new(name, Units.Millimetre, Mm, si);

    private static SweepColumn Angle(string name, Func<SweepRow, double?> si) => new(name, Units.Degree, Deg, si);

    private static SweepColumn Plain(string name, Func<SweepRow, double?> si) => new(name, Units.One, Ratio, si);

    private static SweepColumn[] Point(string name, Func<SweepRow, Vec3?> at) =>
        [Length(name + "_x_mm", r => at(r)?.X), Length(name + "_y_mm", r => at(r)?.Y), Length(name + "_z_mm", r => at(r)?.Z)];

    private static Unit Per(Dimension dimension, string symbol) =>
        Units.Find(symbol, dimension) ?? throw new InvalidOperationException(symbol);
}
