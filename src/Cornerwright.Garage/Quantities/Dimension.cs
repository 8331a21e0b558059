namespace Cornerwright.Garage.Quantities;

/// <summary>What a number measures; says which units a field takes. The SI unit a value is kept in stands beside each.</summary>
public enum Dimension
{
    /// <summary>m</summary>
    Length,

    /// <summary>N/m</summary>
    SpringRate,

    /// <summary>N</summary>
    Force,

    /// <summary>kg</summary>
    Mass,

    /// <summary>rad</summary>
    Angle,

    /// <summary>N·m</summary>
    Torque,

    /// <summary>Pa, above the air's own</summary>
    Pressure,

    /// <summary>m/s</summary>
    Speed,

    /// <summary>1; a bare number or a percentage</summary>
    Ratio,

    /// <summary>whole turns of a collar, nut or tie rod</summary>
    Turns,

    /// <summary>1; coils, bolts, clicks</summary>
    Count,

    /// <summary>rad/m, e.g. camber gained per travel</summary>
    AnglePerLength,

    /// <summary>1/m, e.g. change of a ratio per travel</summary>
    InverseLength,

    /// <summary>Hz</summary>
    Frequency,

    /// <summary>N·s/m</summary>
    DampingRate,

    /// <summary>Pa</summary>
    Stress,

    /// <summary>N·m/rad, e.g. a bar</summary>
    RollStiffness,

    /// <summary>m, of a drive or an odometer</summary>
    Distance,
}
