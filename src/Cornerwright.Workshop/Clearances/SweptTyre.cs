using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Workshop.Clearances;

/// <summary>
/// The room that the tyre takes over all its poses, as one closed surface in B: for looking at, sampled at poses and directions. Seen from
/// the middle of the wheel's path every tyre, taken as a full disc, is reached in one piece, so one distance a direction says it all.
/// </summary>
public sealed record SweptTyre(float[] Coordinates, int[] Corners)
{
    private const int Around = 84, Up = 42, Travels = 7, Steers = 9, Halvings = 14, ArcPoints = 4;

    /// <summary>Further than any tyre goes from the middle of its path, m.</summary>
    private const double Most = 1.2;

    /// <summary>Works it out.</summary>
    /// <param name="corner">With nothing missing.</param>
    /// <returns>Null where the wheel cannot be anywhere.</returns>
    public static SweptTyre? Of(CornerClearance corner)
    {
        ArgumentNullException.ThrowIfNull(corner);
        var poses = Poses(corner);
        if (poses.Count == 0)
        {
            return null;
        }

        WheelShape disc = Disc(corner);
        double middle = 0.5 * (disc.Corners[0].Min(p => p.A) + disc.Corners[0].Max(p => p.A));
        Vec3 centre = default;
        foreach (WheelPose pose in poses)
        {
            centre += (pose.HubFace + (pose.Spindle * middle)) * (1.0 / poses.Count);
        }

        var inside = poses.Where(p => disc.SignedDistance(p, centre) < 0).ToList();
        if (inside.Count == 0)
        {
            return null;
        }

        float[] xyz = new float[3 * (((Up - 1) * Around) + 2)];
        double hint = 0.3;
        for (int i = 0; i < xyz.Length / 3; i++)
        {
            Vec3 d = Direction(i);
            hint = Reach(disc, inside, centre, d, hint);
            Vec3 p = centre + (d * hint);
            (xyz[3 * i], xyz[(3 * i) + 1], xyz[(3 * i) + 2]) = ((float)p.X, (float)p.Y, (float)p.Z);
        }

        return new(xyz, Triangles());
    }

    private static List<WheelPose> Poses(CornerClearance corner)
    {
        var (box, poses) = (corner.Box, new List<WheelPose>());
        int steers = corner.Steers ? Steers : 1;
        for (int j = 0; j < steers; j++)
        {
            double steer = steers == 1 ? box.Least.Steer : box.Least.Steer + ((box.Most.Steer - box.Least.Steer) * j / (steers - 1));
            double top = Math.Min(box.Most.Travel, box.AllowedBump(steer));
            for (int i = 0; i < Travels; i++)
            {
                double travel = box.Least.Travel + ((top - box.Least.Travel) * i / (Travels - 1));
                foreach (double other in Others(box, travel))
                {
                    if (corner.TryPose(travel, steer, out WheelPose pose, other))
                    {
                        poses.Add(pose);
                    }
                }
            }
        }

        return poses;
    }

    // Of the axle's other wheel, where one axle carries both.
    private static double[] Others(PoseBox box, double travel) => box.Most.Third > box.Least.Third
        ? [box.Least.Third, 0.5 * (box.Least.Third + box.Most.Third), box.Most.Third] : [travel];

    private static WheelShape Disc(CornerClearance corner)
    {
        var (tyre, _) = corner.Numbers.Corner.Clearance.Sections(corner.Numbers, forBody: true);
        var outline = new ProfilePoint[TyreProfile.PointCount(ArcPoints)];
        int n = TyreProfile.Write(tyre, ArcPoints, outline);
        return WheelShape.Of([new WheelOutline(WheelPart.Tyre, [.. outline[..n], new(outline[n - 1].A, 0), new(outline[0].A, 0)])]);
    }

    // Poles first and last, rows between.
    private static Vec3 Direction(int i)
    {
        if (i == 0 || i == ((Up - 1) * Around) + 1)
        {
            return new(0, 0, i == 0 ? -1 : 1);
        }

        var (sin, cos) = Math.SinCos((-0.5 * Math.PI) + (Math.PI * (((i - 1) / Around) + 1) / Up));
        var (s, c) = Math.SinCos(2 * Math.PI * ((i - 1) % Around) / Around);
        return new(cos * c, cos * s, sin);
    }

    // Only poses that reach beyond what is known already are searched.
    private static double Reach(WheelShape disc, List<WheelPose> poses, in Vec3 centre, in Vec3 d, double hint)
    {
        double best = 0;
        foreach (WheelPose pose in poses)
        {
            if (best > 0 && disc.SignedDistance(pose, centre + (d * best)) >= 0)
            {
                continue;
            }

            double low = best, high = Most;
            if (hint > low && disc.SignedDistance(pose, centre + (d * hint)) < 0)
            {
                low = hint;
            }

            for (int k = 0; k < Halvings; k++)
            {
                double t = 0.5 * (low + high);
                (low, high) = disc.SignedDistance(pose, centre + (d * t)) < 0 ? (t, high) : (low, t);
            }

            best = low;
        }

        return best;
    }

    private static int[] Triangles()
    {
        int last = ((Up - 1) * Around) + 1;
        var list = new List<int>(6 * Up * Around);
        for (int k = 0; k < Around; k++)
        {
            int next = (k + 1) % Around;
            list.AddRange([0, 1 + next, 1 + k, last, last - Around + k, last - Around + next]);
            for (int row = 0; row + 2 < Up; row++)
            {
                int a = 1 + (row * Around) + k, b = 1 + (row * Around) + next;
                list.AddRange([a, b, a + Around, a + Around, b, b + Around]);
            }
        }

        return [.. list];
    }
}
