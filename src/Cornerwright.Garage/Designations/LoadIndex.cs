namespace Cornerwright.Garage.Designations;

/// <summary>Load index and the load it stands for.</summary>
/// <remarks>
/// Source: UN Regulation No. 30, Annex 4, and No. 54, Annex 4 from memory; rows 0 to 119 agree with a printed
/// copy. The series steps by about 10^(1/80); a test holds every row to within 2 % of it, which catches a slip of a digit.
/// </remarks>
public static class LoadIndex
{
    public const int Least = 0;
    public const int Greatest = 150;

    private static readonly double[] LoadKg =
    [
        45, 46.2, 47.5, 48.7, 50, 51.5, 53, 54.5, 56, 58,
        60, 61.5, 63, 65, 67, 69, 71, 73, 75, 77.5,
        80, 82.5, 85, 87.5, 90, 92.5, 95, 97.5, 100, 103,
        106, 109, 112, 115, 118, 121, 125, 128, 132, 136,
        140, 145, 150, 155, 160, 165, 170, 175, 180, 185,
        190, 195, 200, 206, 212, 218, 224, 230, 236, 243,
        250, 257, 265, 272, 280, 290, 300, 307, 315, 325,
        335, 345, 355, 365, 375, 387, 400, 412, 425, 437,
        450, 462, 475, 487, 500, 515, 530, 545, 560, 580,
        600, 615, 630, 650, 670, 690, 710, 730, 750, 775,
        800, 825, 850, 875, 900, 925, 950, 975, 1000, 1030,
        1060, 1090, 1120, 1150, 1180, 1215, 1250, 1285, 1320, 1360,
        1400, 1450, 1500, 1550, 1600, 1650, 1700, 1750, 1800, 1850,
        1900, 1950, 2000, 2060, 2120, 2180, 2240, 2300, 2360, 2430,
        2500, 2575, 2650, 2725, 2800, 2900, 3000, 3075, 3150, 3250,
        3350,
    ];

    public static bool Exists(int index) => index is >= Least and <= Greatest;

    /// <summary>Greatest load on one tyre, kg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 to 150.</exception>
    public static double Kilograms(int index) => Exists(index)
        ? LoadKg[index]
        : throw new ArgumentOutOfRangeException(nameof(index), index, "A load index runs from 0 to 150.");

    /// <summary>Greatest load on one tyre, N, at standard gravity.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 to 150.</exception>
    public static double Newtons(int index) => Kilograms(index) * Quantities.Units.StandardGravity;
}
