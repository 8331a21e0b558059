using Cornerwright.Garage.Fields;
using T = Cornerwright.Garage.Chassis.HardpointTable;

namespace Cornerwright.Garage.Chassis;

/// <summary>Which points a linkage is made of, and which of them nobody has given yet.</summary>
public static class HardpointNeeds
{
    /// <summary>Every point a table can hold, in the order of the document.</summary>
    public static IReadOnlyList<FieldShape> Points { get; } =
        [.. RecordShape.Of<T>().Fields.Where(f => f.ElementType == typeof(BodyPoint))];

    /// <summary>The points that this table's kind and its stations ask for, in the order of the document.</summary>
    public static IReadOnlyList<FieldShape> Of(T table)
    {
        ArgumentNullException.ThrowIfNull(table);
        HashSet<string> names = [nameof(T.HubFace), .. Linkage(table.Kind)];
        Station(names, table.SpringOn, nameof(T.SpringMoving), nameof(T.SpringBody));
        Station(names, table.DamperOn, nameof(T.DamperMoving), nameof(T.DamperBody));
        if (table.SpringOn == StationCarrier.Rocker || table.DamperOn == StationCarrier.Rocker)
        {
            names.UnionWith([nameof(T.PushrodOuter), nameof(T.PushrodRocker), nameof(T.RockerPivot), nameof(T.RockerAxis)]);
        }

        return [.. Points.Where(f => names.Contains(f.PropertyName))];
    }

    /// <summary>Points that this table can use and do without, in the order of the document.</summary>
    public static IReadOnlyList<FieldShape> Extra(T table)
    {
        ArgumentNullException.ThrowIfNull(table);
        return [.. Points.Where(f => (f.PropertyName == nameof(T.PlateInner) && IsStrut(table.Kind))
            || (f.PropertyName is nameof(T.LateralBody) or nameof(T.LateralAxle) && table.Kind == LinkageKind.RigidAxle)
            || (f.PropertyName is nameof(T.BarFoot) or nameof(T.BarEnd) or nameof(T.BarPivot) && !IsAxle(table.Kind)))];
    }

    /// <summary>True for the two kinds with a strut.</summary>
    public static bool IsStrut(LinkageKind kind) => kind is LinkageKind.MacPherson or LinkageKind.MacPhersonTwoLinks;

    /// <summary>True where an anti-roll bar's three points are all given.</summary>
    public static bool HasBar(T table)
    {
        ArgumentNullException.ThrowIfNull(table);
        return !IsAxle(table.Kind) && Given(table.BarFoot) && Given(table.BarEnd) && Given(table.BarPivot);

        static bool Given(BodyPoint? point) => point is { X: not null, Y: not null, Z: not null };
    }

    /// <summary>Parts on which a bar's link can work.</summary>
    public static IReadOnlyList<StationCarrier> BarCarriers(LinkageKind kind) => kind switch
    {
        LinkageKind.MacPherson => [StationCarrier.Carrier, StationCarrier.Strut, StationCarrier.LowerArm],
        LinkageKind.MacPhersonTwoLinks => [StationCarrier.Carrier, StationCarrier.Strut],
        LinkageKind.DoubleWishbone => [StationCarrier.Carrier, StationCarrier.LowerArm, StationCarrier.UpperArm],
        _ => [StationCarrier.Carrier],
    };

    /// <summary>True for what carries both wheels of an axle at once.</summary>
    public static bool IsAxle(LinkageKind kind) => kind is LinkageKind.RigidAxle or LinkageKind.TwistBeam;

    /// <summary>True where spring or damper can stand on one of two lower links.</summary>
    public static bool OnLinks(LinkageKind kind) => kind is LinkageKind.FiveLink or LinkageKind.MacPhersonTwoLinks;

    /// <summary>Parts on which a pushrod can work.</summary>
    public static IReadOnlyList<StationCarrier> PushrodCarriers =>
        [StationCarrier.LowerArm, StationCarrier.UpperArm, StationCarrier.Carrier];

    /// <summary>
    /// The same table with what its kind does not have replaced by the usual: for a form in which the kind was just chosen.
    /// </summary>
    public static T Fitted(T table)
    {
        ArgumentNullException.ThrowIfNull(table);
        var carriers = Carriers(table.Kind);
        return table with
        {
            SpringOn = carriers.Contains(table.SpringOn) ? table.SpringOn : carriers[0],
            DamperOn = carriers.Contains(table.DamperOn) ? table.DamperOn : carriers[0],
            PushrodOn = PushrodCarriers.Contains(table.PushrodOn) ? table.PushrodOn : PushrodCarriers[0],
            BarOn = BarCarriers(table.Kind).Contains(table.BarOn) ? table.BarOn : StationCarrier.Carrier,
            RackOn = OnLinks(table.Kind) ? table.RackOn : RackRod.TieRod,
        };
    }

    /// <summary>The words of the points that are needed and not given; empty if the table is whole.</summary>
    public static IReadOnlyList<string> Missing(T table) =>
        [.. Of(table).Where(f => f.Get(table) is not BodyPoint { X: not null, Y: not null, Z: not null }).Select(f => f.Label)];

    /// <summary>Carriers that a linkage of this kind has; the first is the usual one.</summary>
    public static IReadOnlyList<StationCarrier> Carriers(LinkageKind kind) => kind switch
    {
        LinkageKind.MacPherson => [StationCarrier.Strut, StationCarrier.LowerArm],
        LinkageKind.MacPhersonTwoLinks => [StationCarrier.Strut, StationCarrier.LowerArm],
        LinkageKind.DoubleWishbone => [StationCarrier.LowerArm, StationCarrier.UpperArm, StationCarrier.Carrier, StationCarrier.Rocker],
        LinkageKind.FiveLink => [StationCarrier.Carrier, StationCarrier.LowerArm],
        _ => [StationCarrier.Carrier],
    };

    private static string[] Linkage(LinkageKind kind) => kind switch
    {
        LinkageKind.MacPherson => [.. LowerInner, nameof(T.LowerBall), .. Tie, nameof(T.StrutTop), nameof(T.StrutLow)],
        LinkageKind.MacPhersonTwoLinks => [.. LowerInner, .. LowerOuter, .. Tie, nameof(T.StrutTop), nameof(T.StrutLow)],
        LinkageKind.DoubleWishbone => [.. LowerInner, nameof(T.LowerBall), .. UpperInner, nameof(T.UpperBall), .. Tie],
        LinkageKind.FiveLink => [.. LowerInner, .. LowerOuter, .. UpperInner, nameof(T.UpperFrontOuter), nameof(T.UpperRearOuter), .. Tie],
        LinkageKind.RigidAxle =>
            [nameof(T.LowerFrontInner), nameof(T.LowerFrontOuter), nameof(T.UpperFrontInner), nameof(T.UpperFrontOuter)],
        LinkageKind.TwistBeam => [nameof(T.ArmOuter), nameof(T.ShearCentre)],
        _ => [nameof(T.ArmOuter), nameof(T.ArmInner)],
    };

    private static string[] LowerInner => [nameof(T.LowerFrontInner), nameof(T.LowerRearInner)];

    private static string[] LowerOuter => [nameof(T.LowerFrontOuter), nameof(T.LowerRearOuter)];

    private static string[] UpperInner => [nameof(T.UpperFrontInner), nameof(T.UpperRearInner)];

    private static string[] Tie => [nameof(T.TieInner), nameof(T.TieOuter)];

    private static void Station(HashSet<string> names, StationCarrier carrier, string moving, string body)
    {
        if (carrier != StationCarrier.Strut)
        {
            names.Add(moving);
            names.Add(body);
        }
    }
}
