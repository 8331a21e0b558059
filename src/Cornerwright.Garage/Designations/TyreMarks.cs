namespace Cornerwright.Garage.Designations;

/// <summary>How the carcass plies run. The default is the radial of nearly every car.</summary>
public enum TyreConstruction
{
    Radial,
    Diagonal,
    BiasBelted,
}

/// <summary>What stands before the size.</summary>
public enum TyrePrefix
{
    None,

    /// <summary>Passenger car (P-metric).</summary>
    P,

    /// <summary>Light truck.</summary>
    LT,

    /// <summary>High load: more than extra load.</summary>
    HL,

    /// <summary>Temporary-use spare.</summary>
    T,
}

/// <summary>Reference pressure class.</summary>
public enum TyreLoadClass
{
    Standard,
    ExtraLoad,
    HighLoad,
}

/// <summary>Load index and speed symbol as marked.</summary>
/// <param name="LoadIndex">0 to 150, single mounting.</param>
/// <param name="DualLoadIndex">For tyres in pairs, if marked.</param>
/// <param name="SpeedSymbol">E.g. "W".</param>
/// <param name="Bracketed">(94Y): for more than the symbol's speed, see the tyre maker.</param>
public sealed record ServiceDescription(int LoadIndex, int? DualLoadIndex, string SpeedSymbol, bool Bracketed);
