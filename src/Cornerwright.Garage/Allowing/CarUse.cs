namespace Cornerwright.Garage.Allowing;

/// <summary>How a car is driven: it picks the default of every allowance.</summary>
public enum CarUse
{
    /// <summary>Of a build: as its car. Of a car: on level roads.</summary>
    Usual,

    /// <summary>Level roads: 0.5 g in corners, 0.6 g of braking, 130 km/h.</summary>
    Road,

    /// <summary>1.2 g in corners, 1.1 g of braking, 220 km/h.</summary>
    Track,

    /// <summary>Rough roads: 0.5 g in corners, 100 km/h, hard bumps.</summary>
    Rough,
}
