using Cornerwright.Garage.Cars;

namespace Cornerwright.Web.Components.Pictures;

/// <summary>From where a linkage is looked at.</summary>
public enum LinkageSide
{
    Front,
    Street,
    Above,
}

/// <summary>One line of a linkage on the sheet, in drawing units.</summary>
public readonly record struct LinkageLine(string Name, double X1, double Y1, double X2, double Y2);

/// <summary>One joint on the sheet, in drawing units.</summary>
public readonly record struct LinkageDot(string Name, double X, double Y);

/// <summary>A linkage's points and links laid out for one view; what is not given is left out.</summary>
public sealed record LinkageLayout(IReadOnlyList<LinkageLine> Lines, IReadOnlyList<LinkageDot> Dots)
{
    /// <summary>Width and height of the sheet, drawing units.</summary>
    public const double Size = 300;

    private const double Border = 26, SmallestSpread = 0.05;

    private static readonly (string Name, string From, string To)[] Links =
    [
        ("lower arm, front leg", nameof(HardpointTable.LowerFrontInner), nameof(HardpointTable.LowerBall)),
        ("lower arm, rear leg", nameof(HardpointTable.LowerRearInner), nameof(HardpointTable.LowerBall)),
        ("lower front link", nameof(HardpointTable.LowerFrontInner), nameof(HardpointTable.LowerFrontOuter)),
        ("lower rear link", nameof(HardpointTable.LowerRearInner), nameof(HardpointTable.LowerRearOuter)),
        ("upper arm, front leg", nameof(HardpointTable.UpperFrontInner), nameof(HardpointTable.UpperBall)),
        ("upper arm, rear leg", nameof(HardpointTable.UpperRearInner), nameof(HardpointTable.UpperBall)),
        ("upper front link", nameof(HardpointTable.UpperFrontInner), nameof(HardpointTable.UpperFrontOuter)),
        ("upper rear link", nameof(HardpointTable.UpperRearInner), nameof(HardpointTable.UpperRearOuter)),
        ("tie rod", nameof(HardpointTable.TieInner), nameof(HardpointTable.TieOuter)),
        ("strut", nameof(HardpointTable.StrutLow), nameof(HardpointTable.StrutTop)),
        ("trailing arm's axis", nameof(HardpointTable.ArmInner), nameof(HardpointTable.ArmOuter)),
        ("trailing arm", nameof(HardpointTable.ArmOuter), nameof(HardpointTable.HubFace)),
        ("spring", nameof(HardpointTable.SpringMoving), nameof(HardpointTable.SpringBody)),
        ("damper", nameof(HardpointTable.DamperMoving), nameof(HardpointTable.DamperBody)),
        ("pushrod", nameof(HardpointTable.PushrodOuter), nameof(HardpointTable.PushrodRocker)),
        ("rocker", nameof(HardpointTable.PushrodRocker), nameof(HardpointTable.RockerPivot)),
    ];

    /// <param name="table">Points in the body frame; only those its kind needs are drawn.</param>
    /// <param name="side">The view: from the front (left of the car on the right), from the left (forward on the left), from above (forward up).</param>
    public static LinkageLayout Of(HardpointTable table, LinkageSide side)
    {
        var points = new Dictionary<string, (double Across, double Up)>(StringComparer.Ordinal);
        var labels = new List<(string Name, string Label)>();
        foreach (var field in HardpointNeeds.Of(table))
        {
            if (field.Get(table) is BodyPoint { X: { } x, Y: { } y, Z: { } z })
            {
                points[field.PropertyName] = side switch
                {
                    LinkageSide.Front => (y.Si, z.Si),
                    LinkageSide.Street => (-x.Si, z.Si),
                    _ => (-y.Si, x.Si),
                };
                labels.Add((field.PropertyName, field.Label));
            }
        }

        if (points.Count == 0)
        {
            return new LinkageLayout([], []);
        }

        double left = points.Values.Min(p => p.Across), right = points.Values.Max(p => p.Across);
        double low = points.Values.Min(p => p.Up), high = points.Values.Max(p => p.Up);
        double scale = (Size - (2 * Border)) / Math.Max(SmallestSpread, Math.Max(right - left, high - low));
        (double X, double Y) On(string name) => (
            (Size / 2) + ((points[name].Across - (0.5 * (left + right))) * scale),
            (Size / 2) - ((points[name].Up - (0.5 * (low + high))) * scale));

        return new LinkageLayout(
            [.. Links.Where(l => points.ContainsKey(l.From) && points.ContainsKey(l.To)).Select(l => new LinkageLine(l.Name, On(l.From).X, On(l.From).Y, On(l.To).X, On(l.To).Y))],
            [.. labels.Select(l => new LinkageDot(l.Label, On(l.Name).X, On(l.Name).Y))]);
    }
}
