using System.Text;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Web.Components.Entry;

/// <summary>Choices as people say them.</summary>
public static class ChoiceWords
{
    public static string Of(object choice) => choice switch
    {
        ReadingSource.DataSheet => "data sheet",
        ReadingSource.Setting => "chosen",
        SpringLayout.Coilover => "round the strut or damper",
        SpringLayout.Apart => "on an axis of their own",
        MotionLevel.Ratios => "motion ratio and camber gain",
        MotionLevel.PlanarStrut => "strut, three points from the front",
        MotionLevel.PlanarWishbone => "two arms, four points from the front",
        MotionLevel.Cycled => "cycled in steps, spring out",
        MotionLevel.Hardpoints => "hardpoints, in three dimensions",
        LinkageKind.MacPherson => "strut over a lower arm",
        LinkageKind.MacPhersonTwoLinks => "strut over two lower links",
        LinkageKind.DoubleWishbone => "upper and lower arm",
        LinkageKind.FiveLink => "five links",
        LinkageKind.SemiTrailing => "semi-trailing arm",
        StationCarrier.Strut => "the strut, along its axis",
        StationCarrier.LowerArm => "the lower arm or link",
        StationCarrier.UpperArm => "the upper arm",
        StationCarrier.Carrier => "the wheel carrier",
        StationCarrier.Rocker => "a rocker on a pushrod",
        RackRod.TieRod => "the tie rod",
        RackRod.LowerFrontLink => "the lower front link",
        RackRod.LowerRearLink => "the lower rear link",
        AttachedTo.Body => "the body",
        AttachedTo.Knuckle => "the wheel carrier",
        GapFrom.Crown => "middle of the tread",
        GapFrom.RimOuterLip => "outer lip of the rim",
        GapFrom.RimInnerLip => "inner lip of the rim",
        GapDirection.Nearest => "the shortest way",
        GapDirection.Radial => "straight away from the axle",
        GapDirection.Outboard => "level, toward the street",
        GapDirection.Inboard => "level, toward the car's middle",
        SpringEnds.ClosedAndGround => "closed and ground",
        ToleranceKind.TwoSigma => "usually within",
        ToleranceKind.HalfRange => "never beyond",
        _ => Spread(choice?.ToString() ?? ""),
    };

    /// <summary>Where a reading of this dimension usually comes from, when nobody has said yet.</summary>
    public static ReadingSource UsualSource(Type owner, Dimension dimension) =>
        typeof(Part).IsAssignableFrom(owner) || owner == typeof(SpringCurvePoint) || owner == typeof(StopCurvePoint) || owner == typeof(DamperCurvePoint)
            ? ReadingSource.DataSheet
            : dimension switch
            {
                Dimension.Length => ReadingSource.Tape,
                Dimension.Mass or Dimension.Force => ReadingSource.Scale,
                Dimension.Angle => ReadingSource.Gauge,
                Dimension.Speed => ReadingSource.DataSheet,
                _ => ReadingSource.Guess,
            };

    /// <summary>"usual for a tape": why a tolerance stands there that nobody typed.</summary>
    public static string AssumedFor(ReadingSource source) => source switch
    {
        ReadingSource.Guess => "a guess",
        ReadingSource.DataSheet => "a data sheet",
        _ => "a " + Of(source),
    };

    private static string Spread(string name)
    {
        var words = new StringBuilder();
        foreach (char c in name)
        {
            if (char.IsUpper(c) && words.Length > 0)
            {
                words.Append(' ');
            }

            words.Append(char.ToLowerInvariant(c));
        }

        return words.ToString();
    }
}
