using Cornerwright.Mechanics.Motion.Hardpoints.Following;


namespace Cornerwright.Web.Components.Linkages;

/// <summary>Which way a linkage is moved while the other stands still.</summary>
public enum SweepAlong
{
    Travel,
    Rack,
}

/// <summary>The wheel at one pose of a sweep.</summary>
/// <param name="At">Travel or rack, m.</param>
/// <param name="Wheel">Null where the linkage cannot reach it.</param>
public readonly record struct SweepPoint(double At, WheelGeometry? Wheel);

/// <summary>One setting swept through travel or steer.</summary>
/// <param name="Setting">What was moved.</param>
/// <param name="Along">Which way.</param>
/// <param name="Held">Travel that is held while the rack moves, m; 0 in a sweep of travel, where the rack stands straight ahead.</param>
/// <param name="Points">In order, evenly spaced.</param>
public sealed record LinkageSweep(LinkageSetting Setting, SweepAlong Along, double Held, IReadOnlyList<SweepPoint> Points)
{
    /// <summary>Poses of a sweep: 2 to 3 mm apart, finer than any curve bends.</summary>
    public const int Count = 81;

    /// <summary>How far a travel is looked at where nothing known ends it, m.</summary>
    public const double UsualTravel = 0.08;

    /// <summary>
    /// How far the rack is looked at, m, where the linkage lets it. Common
    /// practice: racks of passenger cars go 60 to 80 mm a side; no source.
    /// </summary>
    public const double UsualRack = 0.075;

    /// <summary>A stop's own doubt and a little more is shown beyond it, m.</summary>
    private const double Beyond = 0.01;

    /// <summary>
    /// The way of travel that is worth showing for these settings: to their stops where they are known, and never where no linkage follows.
    /// </summary>
    public static (double Least, double Most) TravelOf(IReadOnlyList<LinkageSetting> settings)
    {
        double least = settings.Min(s => s.Droop is { } droop && double.IsFinite(droop) ? droop - Beyond : -UsualTravel);
        double most = settings.Max(s => s.Bump is { } bump && double.IsFinite(bump) ? bump + Beyond : UsualTravel);
        (least, most) = (Math.Clamp(least, -0.3, -0.02), Math.Clamp(most, 0.02, 0.3));
        var reach = settings.Select(s => new LinkageMover(s).TravelRange(s.Plate)).OfType<LinkageRange>().ToList();
        return reach.Count == 0 ? (least, most) : (Math.Max(least, reach.Min(r => r.Least)), Math.Min(most, reach.Max(r => r.Most)));
    }

    /// <summary>The way of the rack that is worth showing, m.</summary>
    public static (double Least, double Most) RackOf(IReadOnlyList<LinkageSetting> settings)
    {
        var reach = settings.Select(s => new LinkageMover(s).RackRange(s.Ride ?? 0, s.Plate)).OfType<LinkageRange>().ToList();
        double shown = settings.Max(s => s.RackShown);
        return reach.Count == 0 ? (-shown, shown) : (Math.Max(-shown, reach.Min(r => r.Least)), Math.Min(shown, reach.Max(r => r.Most)));
    }

    /// <summary>Sweeps a setting.</summary>
    /// <param name="setting">With its plate where it stands.</param>
    /// <param name="along">Which way.</param>
    /// <param name="least">m.</param>
    /// <param name="most">m, above <paramref name="least"/>.</param>
    public static LinkageSweep Of(LinkageSetting setting, SweepAlong along, double least, double most)
    {
        ArgumentNullException.ThrowIfNull(setting);
        double held = along == SweepAlong.Rack ? setting.Ride ?? 0 : 0;
        var mover = new LinkageMover(setting);
        var points = new SweepPoint[Count];
        for (int i = 0; i < Count; i++)
        {
            double at = least + ((most - least) * i / (Count - 1));
            points[i] = new(at, along == SweepAlong.Travel ? mover.WheelAt(at, 0, setting.Plate) : mover.WheelAt(held, at, setting.Plate));
        }

        return new(setting, along, held, points);
    }
}
