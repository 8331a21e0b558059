namespace Cornerwright.Web.Components.Linkages;

/// <summary>What one change does to one quantity.</summary>
/// <param name="Quantity">Which.</param>
/// <param name="Now">In its unit.</param>
/// <param name="Then">Null where the linkage cannot get there.</param>
public sealed record EffectRow(LinkageQuantity Quantity, double Now, double? Then)
{
    /// <summary>In the quantity's unit; null where there is no then.</summary>
    public double? Change => Then - Now;

    /// <summary>As a mechanic would say it.</summary>
    public string Words => Change is not { } change ? "out of the linkage's reach"
        : Math.Abs(change) < Quantity.Least ? "no change worth a name"
        : change > 0 ? Quantity.Grows : Quantity.Shrinks;

    /// <summary>Everything that the wheel's geometry says, before and after.</summary>
    /// <param name="setting">Before: at its ride height (where that is known) and plate.</param>
    /// <param name="lower">How much the body sinks, m: the wheel travels that much.</param>
    /// <param name="plate">How far the plate slides inward, m.</param>
    public static IReadOnlyList<EffectRow> Of(LinkageSetting setting, double lower, double plate)
    {
        ArgumentNullException.ThrowIfNull(setting);
        double ride = setting.Ride is { } known && double.IsFinite(known) ? known : 0;
        var mover = new LinkageMover(setting);
        if (mover.WheelAt(ride, 0, setting.Plate) is not { } now)
        {
            return [];
        }

        var then = mover.WheelAt(ride + lower, 0, setting.Plate + plate);
        return [.. LinkageQuantity.All.Select(q => (q, Now: q.Shown(now, setting))).Where(r => r.Now is not null)
            .Select(r => new EffectRow(r.q, r.Now!.Value, then is { } wheel ? r.q.Shown(wheel, setting) : null))];
    }
}
