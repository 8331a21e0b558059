using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Builds;

/// <summary>
/// What "good enough" means. Left out: the car's own limit, then the default. The defaults are common practice, no source;
/// the maker's figures for the part or car in question come first.
/// </summary>
public sealed record Limits
{
    [Field("Preload at droop, at least", Dimension.Turns, "turns", 0, 30, How = "Collar turns in hand before the stack goes loose.")]
    public Reading? PreloadTurns { get; init; }

    [Field("Helper shut at ride by", Dimension.Force, "N", 0, 5000, How = "Force beyond what closes it.")]
    public Reading? HelperReserve { get; init; }

    [Field("Crossover off plan by at most", Dimension.Ratio, "%", 0, 100)]
    public Reading? CrossoverBand { get; init; }

    [Field("Coil room at full bump", Dimension.Length, "mm", 0, 100)]
    public Reading? CoilRoom { get; init; }

    [Field("Everything later than the spent stop by", Dimension.Length, "mm", 0, 50, How = "Of wheel travel.")]
    public Reading? StopLead { get; init; }

    [Field("Free bump travel at ride", Dimension.Length, "mm", 0, 200, How = "Wheel travel until the bump stop is touched.")]
    public Reading? BumpTravel { get; init; }

    [Field("Droop travel at ride", Dimension.Length, "mm", 0, 200)]
    public Reading? DroopTravel { get; init; }

    [Field("Bump stop used when standing loaded, at most", Dimension.Ratio, "%", 0, 100)]
    public Reading? StopUse { get; init; }

    [Field("Damper off its middle by at most", Dimension.Ratio, "%", 0, 50, How = "Of its stroke, at ride.")]
    public Reading? DamperOffMiddle { get; init; }

    [Field("Collar thread in hand", Dimension.Length, "mm", 0, 50)]
    public Reading? ThreadInHand { get; init; }

    [Field("Tightest fit allowed", Dimension.Length, "mm", 0, 5,
        How = "Register larger than the spring's bore by at most; goes on with anti-seize.")]
    public Reading? FitTightest { get; init; }

    [Field("Loosest fit allowed", Dimension.Length, "mm", 0, 15)]
    public Reading? FitLoosest { get; init; }

    [Field("Tyre to body", Dimension.Length, "mm", 0, 100)]
    public Reading? TyreToBody { get; init; }

    [Field("Tyre to strut and knuckle", Dimension.Length, "mm", 0, 100)]
    public Reading? TyreToKnuckle { get; init; }

    [Field("Rim to anything", Dimension.Length, "mm", 0, 100)]
    public Reading? RimToAnything { get; init; }

    [Field("Calliper to wheel", Dimension.Length, "mm", 0, 30)]
    public Reading? CalliperToWheel { get; init; }

    [Field("Scrub radius changed by at most", Dimension.Length, "mm", 0, 100)]
    public Reading? ScrubChange { get; init; }

    [Field("Track changed by at most", Dimension.Length, "mm", 0, 200)]
    public Reading? TrackChange { get; init; }

    [Field("Rolling circumference changed by at most", Dimension.Ratio, "%", 0, 20)]
    public Reading? CircumferenceChange { get; init; }

    [Field("Thread engaged, in thread diameters", Dimension.Ratio, "", 0.5, 3, How = "One diameter in steel.")]
    public Reading? ThreadEngagement { get; init; }

    [Field("Wheel stands out of its wing by at most", Dimension.Length, "mm", -50, 100,
        How = "Negative: so far inside. Left out, nobody asks, unless the wing's edge was measured: then 0.")]
    public Reading? Poke { get; init; }

    [Field("Load capacity in hand", Dimension.Ratio, "%", 0, 100)]
    public Reading? LoadReserve { get; init; }

    [Field("Ground clearance, at least", Dimension.Length, "mm", 20, 400)]
    public Reading? GroundClearance { get; init; }

    [Field("Height wanted, front", Dimension.Length, "mm", 150, 800, How = "Hub centre to arch edge.")]
    public Reading? FrontHeight { get; init; }

    [Field("Height wanted, rear", Dimension.Length, "mm", 150, 800, How = "Hub centre to arch edge.")]
    public Reading? RearHeight { get; init; }

    [Field("Height off target by at most", Dimension.Length, "mm", 0, 50)]
    public Reading? HeightBand { get; init; }

    [Field("Left and right differ by at most", Dimension.Length, "mm", 0, 50)]
    public Reading? SideDifference { get; init; }

    [Field("Shear stress of the spring, at most", Dimension.Ratio, "%", 10, 100,
        How = "Share of the wire's tensile strength at full bump; EN 13906-1 allows 56 % at solid height.")]
    public Reading? StressShare { get; init; }

    [Field("Certain enough", Dimension.Ratio, "%", 50, 99.9, How = "Probability above which a check holds rather than being tight.")]
    public Reading? Certainty { get; init; }

    /// <summary>Of files from before there were allowances; stands for the allowance of the same name.</summary>
    [Field("Tyre grows at speed by", Dimension.Length, "mm", 0, 40,
        How = "Older files; now an allowance. Added to the tyre's radius in every clearance.")]
    public Reading? TyreGrowth { get; init; }

    /// <summary>Of files from before there were allowances; stands for all of them that move the tyre sideways.</summary>
    [Field("Tyre leans sideways by", Dimension.Length, "mm", 0, 40,
        How = "Older files; now allowances. Added to each side of the tyre in every clearance to the body.")]
    public Reading? TyreShift { get; init; }

    /// <summary>Common practice, no source.</summary>
    public static Limits Default { get; } = new()
    {
        PreloadTurns = Reading.Of("2 turns", Dimension.Turns),
        HelperReserve = Reading.Of("200 N", Dimension.Force),
        CrossoverBand = Reading.Of("25 %", Dimension.Ratio),
        CoilRoom = Reading.Of("4 mm", Dimension.Length),
        StopLead = Reading.Of("3 mm", Dimension.Length),
        BumpTravel = Reading.Of("25 mm", Dimension.Length),
        DroopTravel = Reading.Of("30 mm", Dimension.Length),
        StopUse = Reading.Of("40 %", Dimension.Ratio),
        DamperOffMiddle = Reading.Of("20 %", Dimension.Ratio),
        ThreadInHand = Reading.Of("5 mm", Dimension.Length),
        FitTightest = Reading.Of("2 mm", Dimension.Length),
        FitLoosest = Reading.Of("3 mm", Dimension.Length),
        TyreToBody = Reading.Of("5 mm", Dimension.Length),
        TyreToKnuckle = Reading.Of("5 mm", Dimension.Length),
        RimToAnything = Reading.Of("4 mm", Dimension.Length),
        CalliperToWheel = Reading.Of("3 mm", Dimension.Length),
        ScrubChange = Reading.Of("15 mm", Dimension.Length),
        TrackChange = Reading.Of("60 mm", Dimension.Length),
        CircumferenceChange = Reading.Of("3 %", Dimension.Ratio),
        ThreadEngagement = Reading.Of("1", Dimension.Ratio),
        LoadReserve = Reading.Of("0 %", Dimension.Ratio),
        GroundClearance = Reading.Of("100 mm", Dimension.Length),
        HeightBand = Reading.Of("5 mm", Dimension.Length),
        SideDifference = Reading.Of("4 mm", Dimension.Length),
        StressShare = Reading.Of("56 %", Dimension.Ratio),
        Certainty = Reading.Of("95 %", Dimension.Ratio),
    };

    /// <summary>On rough roads more must be left over. Common practice, no source.</summary>
    private static readonly Limits Rough =
        Default with { TyreToBody = Reading.Of("8 mm", Dimension.Length), RimToAnything = Reading.Of("6 mm", Dimension.Length) };

    /// <summary>The defaults for a car driven so.</summary>
    public static Limits For(CarUse use) => use == CarUse.Rough ? Rough : Default;
}
