using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Clearance.Certifying;

/// <summary>
/// A pose field over a box with what a certification has to know of it: how strongly it bends, and poses spread over the box.
/// </summary>
/// <remarks>
/// Measured once, it serves any number of wheels and obstacles. One instance belongs to one thread. Source:
/// docs/theory/certified-clearance.md §2.
/// </remarks>
public sealed class PoseRange
{
    private const int Spread = 7, ThirdSpread = 3;

    private PoseRange(IPoseField field, PoseBox box, PoseBends bends, IReadOnlyList<(PosePlace Place, WheelPose Pose)> seeds) =>
        (Field, Box, Bends, Seeds) = (field, box, bends, seeds);

    /// <summary>Where the wheel goes.</summary>
    public IPoseField Field { get; }

    /// <summary>Over what.</summary>
    public PoseBox Box { get; }

    /// <summary>Doubled by a certification that finds them too small.</summary>
    internal PoseBends Bends { get; set; }

    /// <summary>Allowed poses spread over the box, to start from.</summary>
    internal IReadOnlyList<(PosePlace Place, WheelPose Pose)> Seeds { get; }

    /// <summary>Measures a field over a box. Source: docs/theory/certified-clearance.md §2.</summary>
    /// <exception cref="ArgumentException">An unsound box: a caller's bug.</exception>
    public static PoseRange Measure(IPoseField field, PoseBox box)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(box);
        if (!box.IsSound)
        {
            throw new ArgumentException(
                "A box of poses is finite, with its corners in order and the limit's steers ascending.", nameof(box));
        }

        var seeds = new List<(PosePlace, WheelPose)>();
        for (int i = 0; i < Count(box, 0); i++)
        {
            for (int j = 0; j < Count(box, 1); j++)
            {
                for (int k = 0; k < Count(box, 2); k++)
                {
                    PosePlace place = new(At(box, 0, i), At(box, 1, j), At(box, 2, k));
                    place = place with { Travel = Math.Min(place.Travel, box.AllowedBump(place.Steer)) };
                    if (place.Travel >= box.Least.Travel && field.TryPose(place, out WheelPose pose))
                    {
                        seeds.Add((place, pose));
                    }
                }
            }
        }

        return new(field, box, PoseBends.Measured(field, box), seeds);
    }

    private static int Count(PoseBox box, int way) => box.Most[way] > box.Least[way] ? way == 2 ? ThirdSpread : Spread : 1;

    private static double At(PoseBox box, int way, int i)
    {
        int count = Count(box, way);
        return i == count - 1 ? box.Most[way] : box.Least[way] + ((box.Most[way] - box.Least[way]) * i / (count - 1));
    }
}
