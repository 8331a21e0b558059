using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Web.Components.Entry;

/// <summary>Which fields a person can leave alone: they stay reachable, folded away, and are never lost.</summary>
public static class FieldSense
{
    /// <param name="owner">The record as it is.</param>
    /// <param name="field">Of that record.</param>
    /// <param name="apart">Springs and dampers of this axle stand on axes of their own.</param>
    public static bool Needed(object owner, FieldShape field, bool apart)
    {
        ArgumentNullException.ThrowIfNull(field);
        return owner switch
        {
            WheelMotion motion => OfMotion(motion.Level, field.PropertyName, apart),
            HardpointTable table when field.ElementType == typeof(BodyPoint) => !table.Mirrored && HardpointNeeds.Of(table).Contains(field),
            HardpointTable table when field.PropertyName == nameof(HardpointTable.PushrodOn) =>
                table.SpringOn == StationCarrier.Rocker || table.DamperOn == StationCarrier.Rocker,
            HardpointTable table => field.PropertyName switch
            {
                nameof(HardpointTable.RackOn) => HardpointNeeds.OnLinks(table.Kind),
                nameof(HardpointTable.SpringLink) => HardpointNeeds.OnLinks(table.Kind) && table.SpringOn == StationCarrier.LowerArm,
                nameof(HardpointTable.DamperLink) => HardpointNeeds.OnLinks(table.Kind) && table.DamperOn == StationCarrier.LowerArm,
                nameof(HardpointTable.BarOn) => HardpointNeeds.HasBar(table),
                nameof(HardpointTable.SpringAlong) => table.SpringOn == StationCarrier.Strut,
                nameof(HardpointTable.DamperAlong) => table.DamperOn == StationCarrier.Strut && apart,
                _ => true,
            },
            Corner => apart || field.PropertyName != nameof(Corner.DamperAxisLength),
            CycledStep => apart || field.PropertyName != nameof(CycledStep.DamperLength),
            Spring spring => field.PropertyName switch
            {
                nameof(Spring.PlannedCrossover) => spring.Role == SpringRole.Tender,
                nameof(Spring.Curve) => spring.Rate is null,
                _ => true,
            },
            _ => true,
        };
    }

    /// <summary>True if there is something in it that a person would miss.</summary>
    public static bool Filled(object? value) => value switch
    {
        null => false,
        string text => text.Length > 0,
        bool yes => yes,
        Reading => true,
        System.Collections.IEnumerable list => list.GetEnumerator().MoveNext(),
        _ => !value.GetType().IsEnum,
    };

    private static bool OfMotion(MotionLevel level, string name, bool apart) => name switch
    {
        nameof(WheelMotion.Level) => true,
        nameof(WheelMotion.SpringRatio) or nameof(WheelMotion.SpringRatioChange) or nameof(WheelMotion.CamberGain) or nameof(
            WheelMotion.OutboardPerTravel) => level == MotionLevel.Ratios,
        nameof(WheelMotion.DamperRatio) or nameof(WheelMotion.DamperRatioChange) => level == MotionLevel.Ratios && apart,
        nameof(WheelMotion.LowerInner) or nameof(WheelMotion.LowerOuter) => level is MotionLevel.PlanarStrut or MotionLevel.PlanarWishbone,
        nameof(WheelMotion.UpperInner) or nameof(WheelMotion.UpperOuter) => level == MotionLevel.PlanarWishbone,
        nameof(WheelMotion.StrutTop) => level == MotionLevel.PlanarStrut,
        nameof(WheelMotion.SpringLower) or nameof(WheelMotion.SpringUpper) =>
            level is MotionLevel.PlanarWishbone || (level == MotionLevel.PlanarStrut && apart),
        nameof(WheelMotion.DamperLower) or nameof(WheelMotion.DamperUpper) => level == MotionLevel.PlanarWishbone && apart,
        nameof(WheelMotion.ForwardPerTravel) or nameof(WheelMotion.SwingArm) => level != MotionLevel.Hardpoints,
        nameof(WheelMotion.Steps) => level == MotionLevel.Cycled,
        _ => true,
    };
}
