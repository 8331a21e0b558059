using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Motion.Hardpoints.Tracing;
using Cornerwright.Workshop.Linkages;

namespace Cornerwright.Web.Components.Linkages;

/// <summary>One coordinate whose doubt makes a quantity doubtful.</summary>
/// <param name="Property">Of the point in the table.</param>
/// <param name="Words">"lower ball joint, Z".</param>
/// <param name="Own">Its own doubt, two standard deviations, m.</param>
/// <param name="Effect">What that does to the quantity, two standard deviations, SI.</param>
/// <param name="Share">Of the quantity's variance, 0 to 1.</param>
/// <param name="Aim">To how much it should be measured, two standard deviations, m.</param>
/// <param name="Left">The quantity's whole doubt once it is, two standard deviations, SI.</param>
public sealed record JointDoubt(string Property, string Words, double Own, double Effect, double Share, double Aim, double Left);

/// <summary>Which coordinates to measure better for the sake of one quantity.</summary>
/// <param name="Title">"camber".</param>
/// <param name="Unit">In which it is shown.</param>
/// <param name="Decimals">Shown.</param>
/// <param name="Whole">Its doubt from all coordinates, two standard deviations, SI.</param>
/// <param name="Worst">Largest first.</param>
public sealed record QuantityDoubt(string Title, Unit Unit, int Decimals, double Whole, IReadOnlyList<JointDoubt> Worst)
{
    /// <summary>
    /// As well as a point can be found with a straight edge, a square and patience, m, two standard deviations. Common practice, no source.
    /// </summary>
    public const double GoodMeasure = 0.0005;

    /// <summary>Rows of the list: more would hide the first ones.</summary>
    public const int Most = 4;

    private static readonly (TraceQuantity Quantity, string Title, Unit Unit, int Decimals)[] Asked =
    [
        (TraceQuantity.Camber, "camber", Units.Degree, 2), (TraceQuantity.Toe, "toe", Units.Degree, 2),
        (TraceQuantity.SpringRatio, "motion ratio of the spring", Units.One, 4),
        (TraceQuantity.DamperRatio, "motion ratio of the damper", Units.One, 4),
    ];

    /// <summary>
    /// Every quantity that is in doubt. At the height where the car was
    /// measured no coordinate moves camber or toe; the way from there does.
    /// </summary>
    /// <param name="points">With the doubts of its joints.</param>
    /// <param name="travels">m, over which is averaged.</param>
    public static IReadOnlyList<QuantityDoubt> Of(CornerHardpoints points, IReadOnlyList<double> travels)
    {
        ArgumentNullException.ThrowIfNull(points);
        var deviations = points.Deviations;
        var found = new List<QuantityDoubt>();
        bool one = points.Linkage.Spring == points.Linkage.Damper;
        foreach (var (quantity, title, unit, decimals) in Asked.Where(a => !(one && a.Quantity == TraceQuantity.DamperRatio)))
        {
            var shares = Sensitivity.Shares(points.Linkage, deviations, travels, quantity);
            double whole = Math.Sqrt(shares.Sum(s => s.Deviation * s.Deviation));
            if (whole > 0 && double.IsFinite(whole))
            {
                found.Add(new(title, unit, decimals, 2 * whole, [.. shares.Take(Most).Select(s => Row(points, s, whole))]));
            }
        }

        return found;
    }

    private static JointDoubt Row(CornerHardpoints points, JointShare share, double whole)
    {
        int joint = Enumerable.Range(0, points.Joints.Count).First(i => points.Linkage.Joints[i].Name == share.Joint);
        var deviation = points.Joints[joint].Deviation;
        double own = 2 * (share.Axis switch { 'X' => deviation.X, 'Y' => deviation.Y, _ => deviation.Z });
        double aim = own > 1.5 * GoodMeasure ? GoodMeasure : 0.5 * own, rest = 1 - ((aim / own) * (aim / own));
        double left = 2 * Math.Sqrt(Math.Max(0, (whole * whole) - (share.Deviation * share.Deviation * rest)));
        return new(points.Joints[joint].Field.PropertyName, $"{share.Joint}, {share.Axis}", own, 2 * share.Deviation,
            share.Share, aim, left);
    }
}
