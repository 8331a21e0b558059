using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Clearance.Certifying;

/// <summary>How strongly hub and spindle bend over a box: bounds on their second derivatives along and across the three ways.</summary>
/// <remarks>
/// Measured by second differences that together cover the whole box, times <see cref="Safety"/>; every cell of a certification checks them
/// again at a place of its own, and the first miss doubles them and starts anew. Source: docs/theory/certified-clearance.md §2.
/// </remarks>
internal sealed class PoseBends
{
    /// <summary>Times what was measured. Larger costs cells, smaller costs restarts.</summary>
    private const double Safety = 1.5;

    private const int Samples = 9;

    // hub[i, j] in m, spindle[i, j] in rad, per product of the two ways' units.
    private readonly double[,] hub = new double[3, 3];
    private readonly double[,] spindle = new double[3, 3];

    private PoseBends()
    {
    }

    /// <summary>Poses asked for.</summary>
    public int Poses { get; private set; }

    public static PoseBends Measured(IPoseField field, PoseBox box)
    {
        var bends = new PoseBends();
        Span<int> counts = stackalloc int[3];
        Span<double> half = stackalloc double[3];
        for (int way = 0; way < 3; way++)
        {
            double width = box.Most[way] - box.Least[way];
            counts[way] = width > 0 ? way == 2 ? 3 : Samples : 1;
            half[way] = width / (2 * counts[way]);
        }

        for (int i = 0; i < counts[0]; i++)
        {
            for (int j = 0; j < counts[1]; j++)
            {
                for (int k = 0; k < counts[2]; k++)
                {
                    var at = new PosePlace(
                        box.Least.Travel + (((2 * i) + 1) * half[0]), box.Least.Steer + (((2 * j) + 1) * half[1]),
                        box.Least.Third + (((2 * k) + 1) * half[2]));
                    bends.Measure(field, at, half);
                }
            }
        }

        return bends;
    }

    /// <summary>The same bounds, doubled.</summary>
    public PoseBends Doubled()
    {
        var twice = new PoseBends { Poses = Poses };
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j < 3; j++)
            {
                // A bound of nothing at all stays wrong when doubled.
                (twice.hub[i, j], twice.spindle[i, j]) = ((2 * hub[i, j]) + 1e-6, (2 * spindle[i, j]) + 1e-6);
            }
        }

        return twice;
    }

    /// <summary>
    /// The most that hub (m) and spindle (rad) may be off a straight line whose slopes were taken by differences over
    /// <paramref name="steps"/>, anywhere within <paramref name="extents"/> of where it touches.
    /// </summary>
    public (double Hub, double Spindle) Rest(ReadOnlySpan<double> extents, ReadOnlySpan<double> steps)
    {
        double h = 0, s = 0;
        for (int i = 0; i < 3; i++)
        {
            double own = 0.5 * extents[i] * (extents[i] + steps[i]);
            h += hub[i, i] * own;
            s += spindle[i, i] * own;
            for (int j = i + 1; j < 3; j++)
            {
                h += hub[i, j] * extents[i] * extents[j];
                s += spindle[i, j] * extents[i] * extents[j];
            }
        }

        // Poses themselves are right to some 1e-12 m; differences over the steps make of it at most this.
        return (h + 1e-9, s + 1e-9);
    }

    /// <summary>How much one way's own bend adds, m at the hub's distance of the tyre; to choose where to cut.</summary>
    public double OwnRest(int way, double extent, double reach) => 0.5 * extent * extent * (hub[way, way] + (reach * spindle[way, way]));

    private void Measure(IPoseField field, in PosePlace at, ReadOnlySpan<double> half)
    {
        if (!TryPose(field, at, out WheelPose middle))
        {
            return;
        }

        for (int i = 0; i < 3; i++)
        {
            if (half[i] > 0 && TryPose(field, at.With(i, at[i] - half[i]), out WheelPose low)
                && TryPose(field, at.With(i, at[i] + half[i]), out WheelPose high))
            {
                double square = half[i] * half[i] / Safety;
                hub[i, i] = Math.Max(hub[i, i], (low.HubFace + high.HubFace - (middle.HubFace * 2)).Length / square);
                spindle[i, i] = Math.Max(spindle[i, i], (low.Spindle + high.Spindle - (middle.Spindle * 2)).Length / square);
            }

            for (int j = i + 1; j < 3; j++)
            {
                if (half[i] > 0 && half[j] > 0)
                {
                    Across(field, at, i, j, half);
                }
            }
        }
    }

    private void Across(IPoseField field, in PosePlace at, int i, int j, ReadOnlySpan<double> half)
    {
        PosePlace low = at.With(i, at[i] - half[i]), high = at.With(i, at[i] + half[i]);
        if (TryPose(field, low.With(j, at[j] - half[j]), out WheelPose a) && TryPose(field, low.With(j, at[j] + half[j]), out WheelPose b)
            && TryPose(field, high.With(j, at[j] - half[j]), out WheelPose c)
            && TryPose(field, high.With(j, at[j] + half[j]), out WheelPose d))
        {
            double square = 4 * half[i] * half[j] / Safety;
            Vec3 h = a.HubFace + d.HubFace - b.HubFace - c.HubFace, s = a.Spindle + d.Spindle - b.Spindle - c.Spindle;
            hub[i, j] = Math.Max(hub[i, j], h.Length / square);
            spindle[i, j] = Math.Max(spindle[i, j], s.Length / square);
        }
    }

    private bool TryPose(IPoseField field, in PosePlace place, out WheelPose pose)
    {
        Poses++;
        return field.TryPose(place, out pose);
    }
}
