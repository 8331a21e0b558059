using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;

namespace Cornerwright.Web.Components.Linkages;

/// <summary>One thing that a wheel's geometry says, as it is drawn, written and compared.</summary>
/// <param name="Key">In addresses, files and tests.</param>
/// <param name="Title">As a mechanic calls it.</param>
/// <param name="Sign">What a positive value means.</param>
/// <param name="Unit">In which it is shown.</param>
/// <param name="Decimals">Shown.</param>
/// <param name="Grows">What a growing value does, in words: "top leans out".</param>
/// <param name="Shrinks">What a falling value does.</param>
/// <param name="Read">SI; null where there is no such thing.</param>
public sealed record LinkageQuantity(
    string Key, string Title, string Sign, Unit Unit, int Decimals, string Grows, string Shrinks,
    Func<WheelGeometry, LinkageSetting, double?> Read)
{
    /// <summary>Smaller changes than this are none to anybody under a car: half of the last decimal.</summary>
    public double Least => 0.5 * Math.Pow(10, -Decimals);

    /// <summary>"camber, °"; a ratio has no unit.</summary>
    public string TitleWithUnit => Unit.Symbol.Length > 0 ? $"{Title}, {Unit.Symbol}" : Title;

    /// <summary>In its unit; null where there is none or it is not finite.</summary>
    public double? Shown(in WheelGeometry wheel, LinkageSetting setting) =>
        Read(wheel, setting) is { } si && double.IsFinite(si) ? Unit.FromSi(si) : null;

    /// <summary>Everything that is drawn through travel and steer, in the order of the page.</summary>
    public static IReadOnlyList<LinkageQuantity> All { get; } =
    [
        new("camber", "camber", "positive: the top leans outward", Units.Degree, 2, "top leans further out", "top leans further in",
            (w, _) => w.Camber),
        new("toe", "toe", "positive: toe-in", Units.Degree, 2, "more toe-in", "more toe-out", (w, _) => w.Toe),
        new("caster", "caster", "positive: the steering axis leans rearward", Units.Degree, 2, "axis leans further back", "axis stands up",
            (w, _) => w.Steering.Exists ? w.Steering.Caster : null),
        new("inclination", "kingpin inclination", "positive: the axis leans inboard", Units.Degree, 2, "axis leans further in",
            "axis stands up", (w, _) => w.Steering.Exists ? w.Steering.Inclination : null),
        new("trail", "trail", "positive: the axis meets the ground ahead of the tyre", Units.Millimetre, 1,
            "axis meets the ground further ahead: steering heavier", "axis meets the ground less far ahead: steering lighter", (w, _) =>
                w.Steering.Exists ? w.Steering.Trail : null),
        new("scrub", "scrub radius", "positive: the axis meets the ground inboard of the tyre's middle", Units.Millimetre, 1,
            "axis meets the ground further in", "axis meets the ground further out", (w, _) => w.Steering.Exists ? w.Steering.Scrub : null),
        new("spring-ratio", "motion ratio of the spring", "spring travel per wheel travel", Units.One, 3,
            "spring works harder at the wheel", "spring works softer at the wheel", (w, _) => w.Spring?.MotionRatio),
        new("damper-ratio", "motion ratio of the damper", "damper travel per wheel travel", Units.One, 3,
            "damper works harder at the wheel", "damper works softer at the wheel", (w, _) => w.Damper?.MotionRatio),
        new("roll-centre", "roll-centre height", "above the ground, both wheels alike", Units.Millimetre, 1, "body leans less in bends",
            "body leans more in bends", (w, _) => w.RollCentreHeight),
        new("track", "track change at this wheel", "positive: the tyre's foot stands further out than when measured", Units.Millimetre, 1,
            "track grows", "track shrinks", (w, s) => Math.Abs(w.Contact.Y) - s.MeasuredFoot),
    ];
}
