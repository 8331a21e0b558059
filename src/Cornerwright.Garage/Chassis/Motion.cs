using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Chassis;

/// <summary>How the wheel's way through travel is known.</summary>
public enum MotionLevel
{
    /// <summary>Motion ratio and camber gain, measured or known.</summary>
    Ratios,

    /// <summary>A strut seen from the front, from three measured points.</summary>
    PlanarStrut,

    /// <summary>Two arms seen from the front, from four measured points.</summary>
    PlanarWishbone,

    /// <summary>Spring out, wheel lifted in steps, readings at each.</summary>
    Cycled,

    /// <summary>The corner's table of points between which its links run.</summary>
    Hardpoints,
}

/// <summary>A point seen from the front, from the centre of the hub's face.</summary>
public sealed record FrontPoint
{
    [Field("Inboard", Dimension.Length, "mm", -400, 1200, How = "From the hub face toward the car's middle, level.", Needed = true)]
    public Reading? Inboard { get; init; }

    [Field("Above", Dimension.Length, "mm", -600, 1200, How = "Above the centre of the hub face; below is negative.", Needed = true)]
    public Reading? Above { get; init; }
}

/// <summary>One step of a cycled wheel.</summary>
public sealed record CycledStep
{
    [Field("Travel", Dimension.Length, "mm", -300, 300, How = "Wheel centre above its reference height.", Needed = true)]
    public Reading? Travel { get; init; }

    [Field("Spring axis length", Dimension.Length, "mm", 50, 1200, How = "Mount plane to lower reference along the spring's axis.")]
    public Reading? SpringLength { get; init; }

    [Field("Damper axis length", Dimension.Length, "mm", 50, 1200,
        How = "Mount plane to lower reference along the damper's axis; leave out where the spring sits round the damper.")]
    public Reading? DamperLength { get; init; }

    [Field("Camber", Dimension.Angle, "deg", -15, 15)]
    public Reading? Camber { get; init; }

    [Field("Toe", Dimension.Angle, "deg", -10, 10)]
    public Reading? Toe { get; init; }

    [Field("Wheel out by", Dimension.Length, "mm", -100, 100, How = "How far the hub face moved outboard against its reference place.")]
    public Reading? Outboard { get; init; }

    [Field("Wheel forward by", Dimension.Length, "mm", -150, 150,
        How = "How far the hub's centre moved toward the front of the car against its reference place; back is negative.")]
    public Reading? Forward { get; init; }
}

/// <summary>The wheel's motion at one corner. Only what its level needs has to be filled in.</summary>
public sealed record WheelMotion
{
    [Field("Known by")]
    public MotionLevel Level { get; init; }

    [Field("Motion ratio of the spring", Dimension.Ratio, "", 0.1, 1.6, How = "Spring travel per wheel travel: lift the wheel 20 mm and "
        + "see how much the spring's space shortens. Some people quote the reciprocal.")]
    public Reading? SpringRatio { get; init; }

    [Field("Its change with bump", Dimension.InverseLength, "1/mm", -0.02, 0.02,
        How = "Change of the motion ratio per millimetre of bump; 0 if unknown.")]
    public Reading? SpringRatioChange { get; init; }

    [Field("Motion ratio of the damper", Dimension.Ratio, "", 0.1, 1.6, How = "Leave out where the spring sits round the damper.")]
    public Reading? DamperRatio { get; init; }

    [Field("Its change with bump", Dimension.InverseLength, "1/mm", -0.02, 0.02)]
    public Reading? DamperRatioChange { get; init; }

    [Field("Motion ratio of the bar's end", Dimension.Ratio, "", 0.05, 1.6,
        How = "Travel of the anti-roll bar's end, along its link, per wheel travel.")]
    public Reading? BarRatio { get; init; }

    [Field("Camber gain", Dimension.AnglePerLength, "deg/mm", -0.3, 0.3,
        How = "Change of camber per millimetre of bump; usually negative: the top leans in as the wheel rises.")]
    public Reading? CamberGain { get; init; }

    [Field("Sideways move", Dimension.Ratio, "", -1, 1, How = "Millimetres that the hub moves outboard per millimetre of bump.")]
    public Reading? OutboardPerTravel { get; init; }

    [Field("Fore-and-aft move", Dimension.Ratio, "", -1, 1, How = "Millimetres that the hub's centre moves toward the front of the car per "
        + "millimetre of bump, near the reference height; back is negative.")]
    public Reading? ForwardPerTravel { get; init; }

    [Field("Swing arm seen from the side", Dimension.Length, "mm", -20000, 20000,
        How = "Level distance from the hub's centre forward to the pivot of a trailing arm, or to where the lines of both arms meet; "
            + "negative where that is behind the wheel.")]
    public Reading? SwingArm { get; init; }

    [Field("Lower arm, inner pivot")]
    public FrontPoint? LowerInner { get; init; }

    [Field("Lower ball joint")]
    public FrontPoint? LowerOuter { get; init; }

    [Field("Upper arm, inner pivot")]
    public FrontPoint? UpperInner { get; init; }

    [Field("Upper ball joint")]
    public FrontPoint? UpperOuter { get; init; }

    [Field("Strut top")]
    public FrontPoint? StrutTop { get; init; }

    [Field("Spring's lower point on its arm")]
    public FrontPoint? SpringLower { get; init; }

    [Field("Spring's upper point on the body")]
    public FrontPoint? SpringUpper { get; init; }

    [Field("Damper's lower point on its arm")]
    public FrontPoint? DamperLower { get; init; }

    [Field("Damper's upper point on the body")]
    public FrontPoint? DamperUpper { get; init; }

    [Field("Cycled readings")]
    public IReadOnlyList<CycledStep> Steps { get; init; } = [];
}
