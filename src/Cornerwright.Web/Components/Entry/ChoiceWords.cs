using System.Text;
using Cornerwright.Garage.Access;
using Cornerwright.Garage.Access.Starting;
using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Chassis;
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
        CarUse use => Of(use),
        SpringLayout.Coilover => "round the strut or damper",
        SpringLayout.Apart => "on an axis of their own",
        AxleKind.Independent => "each on its own links",
        AxleKind.RigidAxle => "on a rigid axle",
        AxleKind.TwistBeam => "on a twist beam",
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
        LinkageKind.RigidAxle => "rigid axle on links",
        LinkageKind.TwistBeam => "twist beam",
        StationCarrier.Strut => "the strut, along its axis",
        StationCarrier.LowerArm => "the lower arm or link",
        StationCarrier.UpperArm => "the upper arm",
        StationCarrier.Carrier => "the wheel carrier",
        StationCarrier.Rocker => "a rocker on a pushrod",
        RackRod.TieRod => "the tie rod",
        RackRod.LowerFrontLink => "the lower front link",
        RackRod.LowerRearLink => "the lower rear link",
        LinkOn.Strut => "the strut",
        LinkOn.Knuckle => "the knuckle",
        AttachedTo.Body => "the body",
        AttachedTo.Knuckle => "the wheel carrier",
        GapFrom.Crown => "middle of the tread",
        GapFrom.RimOuterLip => "outer lip of the rim",
        GapFrom.RimInnerLip => "inner lip of the rim",
        GapDirection.Nearest => "the shortest way",
        GapDirection.Radial => "straight away from the axle",
        GapDirection.Outboard => "level, toward the street",
        GapDirection.Inboard => "level, toward the car's middle",
        ComponentPlace.FrontSides => "at each front wheel",
        ComponentPlace.FrontMiddle => "once at the front axle",
        ComponentPlace.RearSides => "at each rear wheel",
        ComponentPlace.RearMiddle => "once at the rear axle",
        ComponentPlace.WholeCar => "once in the car",
        BuildRole.None => "none of them",
        BuildRole.Wheel => "wheel with its tyre",
        BuildRole.Stack => "spring stack",
        BuildRole.BumpStop => "bump stop and packers",
        BuildRole.AntiRollBar => "anti-roll bar",
        TighteningPattern.Star => "crosswise, in rounds",
        TighteningPattern.Alternate => "in turn, a little each",
        TighteningPattern.None => "no order",
        TightenedWhen.Unloaded => "unloaded: wheel hanging, or on the bench",
        TightenedWhen.OnItsWheels => "with the car on its wheels",
        Undone.Off => "right off",
        Undone.Loose => "slack",
        StartingKind.Strut => "strut over a lower arm",
        StartingKind.DoubleWishbone => "two arms, spring round the damper",
        StartingKind.SpringOnLink => "links, spring on one of them",
        StartingKind.RigidAxle => "rigid axle on rods",
        StartingKind.TwistBeam => "twist beam",
        SpringEnds.ClosedAndGround => "closed and ground",
        ToleranceKind.TwoSigma => "usually within",
        ToleranceKind.HalfRange => "never beyond",
        Preference or HelperWish => OfWish(choice),
        _ => Spread(choice?.ToString() ?? ""),
    };

    private static string OfWish(object choice) => choice switch
    {
        Preference.Cheapest => "cheapest",
        Preference.NearestHeight => "nearest to the height",
        HelperWish.With => "there must be one",
        HelperWish.Without => "none",
        HelperWish.Either => "with or without",
        _ => Spread(choice.ToString() ?? ""),
    };

    /// <summary>Where a reading of this dimension usually comes from, when nobody has said yet.</summary>
    public static ReadingSource UsualSource(Type owner, Dimension dimension) =>
        typeof(Part).IsAssignableFrom(owner) || owner == typeof(SpringCurvePoint) || owner == typeof(StopCurvePoint)
            || owner == typeof(DamperCurvePoint)
            ? ReadingSource.DataSheet
            : dimension switch
            {
                Dimension.Length => ReadingSource.Tape,
                Dimension.Mass or Dimension.Force => ReadingSource.Scale,
                Dimension.Angle => ReadingSource.Gauge,
                Dimension.Speed or Dimension.Torque => ReadingSource.DataSheet,
                Dimension.Distance => ReadingSource.Setting,
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

    private static string Of(CarUse use) => use switch
    {
        CarUse.Road => "level roads",
        CarUse.Track => "tracks",
        CarUse.Rough => "rough roads",
        _ => "as usual: a build as its car, a car on the road",
    };
}
