using Cornerwright.Garage.Chassis;

using T = Cornerwright.Garage.Chassis.HardpointTable;

namespace Cornerwright.Web.Components.Linkages;

/// <summary>What a piece of a linkage is, for drawing it.</summary>
public enum MemberKind
{
    Rod,
    Arm,
    Tie,
    Carrier,
    Strut,
    Spring,
    Damper,
    Pushrod,
    Rocker,
}

/// <summary>A piece of a linkage between two points of its table.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">In words.</param>
/// <param name="From">Property of the table: the lower, outer or moving end of springs, struts and dampers.</param>
/// <param name="To">The other end.</param>
/// <param name="Share">Where it begins between its ends, 0 to 1: a strut's spring stands on a perch.</param>
public sealed record LinkageMember(MemberKind Kind, string Name, string From, string To, double Share = 0)
{
    /// <summary>A strut's spring is drawn from here on where nobody knows better.</summary>
    private const double UsualPerch = 0.45;

    /// <summary>
    /// Everything between the points that this table's kind uses; ends that are not given are for the caller to leave out.
    /// </summary>
    public static IReadOnlyList<LinkageMember> Of(T table)
    {
        ArgumentNullException.ThrowIfNull(table);
        var all = new List<LinkageMember>();
        switch (table.Kind)
        {
            case LinkageKind.MacPherson:
                Arm(all, "lower arm", nameof(T.LowerFrontInner), nameof(T.LowerRearInner), nameof(T.LowerBall));
                break;
            case LinkageKind.DoubleWishbone:
                Arm(all, "lower arm", nameof(T.LowerFrontInner), nameof(T.LowerRearInner), nameof(T.LowerBall));
                Arm(all, "upper arm", nameof(T.UpperFrontInner), nameof(T.UpperRearInner), nameof(T.UpperBall));
                break;
            case LinkageKind.MacPhersonTwoLinks:
                Lower(all);
                break;
            case LinkageKind.FiveLink:
                Lower(all);
                Link(all, MemberKind.Rod, "upper front link", nameof(T.UpperFrontInner), nameof(T.UpperFrontOuter));
                Link(all, MemberKind.Rod, "upper rear link", nameof(T.UpperRearInner), nameof(T.UpperRearOuter));
                break;
            case LinkageKind.SemiTrailing:
                all.Add(new(MemberKind.Carrier, "trailing arm's axis", nameof(T.ArmOuter), nameof(T.ArmInner)));
                all.Add(new(MemberKind.Carrier, "trailing arm", nameof(T.ArmOuter), nameof(T.HubFace)));
                all.Add(new(MemberKind.Carrier, "trailing arm", nameof(T.ArmInner), nameof(T.HubFace)));
                break;
            case LinkageKind.RigidAxle:
                all.Add(new(MemberKind.Rod, "lower link", nameof(T.LowerFrontInner), nameof(T.LowerFrontOuter)));
                all.Add(new(MemberKind.Rod, "upper link", nameof(T.UpperFrontInner), nameof(T.UpperFrontOuter)));
                all.Add(new(MemberKind.Rod, "lateral rod", nameof(T.LateralBody), nameof(T.LateralAxle)));
                break;
            case LinkageKind.TwistBeam:
                all.Add(new(MemberKind.Carrier, "trailing arm", nameof(T.ArmOuter), nameof(T.HubFace)));
                all.Add(new(MemberKind.Carrier, "cross member", nameof(T.ArmOuter), nameof(T.ShearCentre)));
                break;
        }

        if (table.Kind != LinkageKind.SemiTrailing && !HardpointNeeds.IsAxle(table.Kind))
        {
            Link(all, MemberKind.Tie, "tie rod", nameof(T.TieInner), nameof(T.TieOuter));
        }

        if (HardpointNeeds.IsStrut(table.Kind))
        {
            all.Add(new(MemberKind.Strut, "strut", nameof(T.StrutLow), nameof(T.StrutTop)));
            Carrier(all, nameof(T.StrutLow));
        }

        Station(all, MemberKind.Spring, "spring", table.SpringOn, nameof(T.SpringMoving), nameof(T.SpringBody));
        Station(all, MemberKind.Damper, "damper", table.DamperOn, nameof(T.DamperMoving), nameof(T.DamperBody));
        if (table.SpringOn == StationCarrier.Rocker || table.DamperOn == StationCarrier.Rocker)
        {
            all.Add(new(MemberKind.Pushrod, "pushrod", nameof(T.PushrodOuter), nameof(T.PushrodRocker)));
            all.Add(new(MemberKind.Rocker, "rocker", nameof(T.PushrodRocker), nameof(T.RockerPivot)));
            all.Add(new(MemberKind.Rod, "rocker's axis", nameof(T.RockerPivot), nameof(T.RockerAxis)));
        }

        return all;
    }

    /// <summary>Three points each between which a sheet is drawn: arms and rockers.</summary>
    public static IReadOnlyList<(string A, string B, string C)> Plates(T table)
    {
        ArgumentNullException.ThrowIfNull(table);
        var plates = new List<(string, string, string)>();
        if (table.Kind is LinkageKind.MacPherson or LinkageKind.DoubleWishbone)
        {
            plates.Add((nameof(T.LowerFrontInner), nameof(T.LowerRearInner), nameof(T.LowerBall)));
        }

        if (table.Kind == LinkageKind.DoubleWishbone)
        {
            plates.Add((nameof(T.UpperFrontInner), nameof(T.UpperRearInner), nameof(T.UpperBall)));
        }

        if (table.Kind == LinkageKind.SemiTrailing)
        {
            plates.Add((nameof(T.ArmOuter), nameof(T.ArmInner), nameof(T.HubFace)));
        }

        if (table.SpringOn == StationCarrier.Rocker)
        {
            plates.Add((nameof(T.PushrodRocker), nameof(T.RockerPivot), nameof(T.SpringMoving)));
        }

        if (table.DamperOn == StationCarrier.Rocker)
        {
            plates.Add((nameof(T.PushrodRocker), nameof(T.RockerPivot), nameof(T.DamperMoving)));
        }

        return plates;
    }

    private static void Arm(List<LinkageMember> all, string name, string front, string rear, string ball)
    {
        all.Add(new(MemberKind.Arm, name + ", front leg", front, ball));
        all.Add(new(MemberKind.Arm, name + ", rear leg", rear, ball));
        Carrier(all, ball);
    }

    private static void Lower(List<LinkageMember> all)
    {
        Link(all, MemberKind.Rod, "lower front link", nameof(T.LowerFrontInner), nameof(T.LowerFrontOuter));
        Link(all, MemberKind.Rod, "lower rear link", nameof(T.LowerRearInner), nameof(T.LowerRearOuter));
    }

    private static void Link(List<LinkageMember> all, MemberKind kind, string name, string inner, string outer)
    {
        all.Add(new(kind, name, inner, outer));
        Carrier(all, outer);
    }

    private static void Carrier(List<LinkageMember> all, string joint) =>
        all.Add(new(MemberKind.Carrier, "wheel carrier", joint, nameof(T.HubFace)));

    private static void Station(List<LinkageMember> all, MemberKind kind, string name, StationCarrier on, string moving, string body)
    {
        if (on != StationCarrier.Strut)
        {
            all.Add(new(kind, name, moving, body));
        }
        else if (kind == MemberKind.Spring)
        {
            all.Add(new(kind, name, nameof(T.StrutLow), nameof(T.StrutTop), UsualPerch));
        }

        if (on == StationCarrier.Carrier)
        {
            all.Add(new(MemberKind.Carrier, "wheel carrier", moving, nameof(T.HubFace)));
        }
        else if (on == StationCarrier.Rocker)
        {
            all.Add(new(MemberKind.Rocker, "rocker", moving, nameof(T.RockerPivot)));
        }
    }
}
