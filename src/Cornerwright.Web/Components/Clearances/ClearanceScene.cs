using System.Buffers.Binary;
using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Surroundings;

namespace Cornerwright.Web.Components.Clearances;

/// <summary>A scan for the browser to fetch.</summary>
/// <param name="Name">For people.</param>
/// <param name="Address">Where its points are.</param>
/// <param name="Knuckle">It moves with the wheel.</param>
public sealed record SceneScan(string Name, string Address, bool Knuckle);

/// <summary>
/// What stands near one wheel, as the browser's view takes it. Lengths in m;
/// body things from the hub face at the reference state, knuckle things in S.
/// </summary>
public sealed record ClearanceScene(
    int Side,
    IReadOnlyList<double[]> Tyre,
    IReadOnlyList<double[]> Rim,
    IReadOnlyList<double[][]> Body,
    IReadOnlyList<double[][]> Knuckle,
    IReadOnlyList<SceneScan> Scans)
{
    /// <summary>The scene of a corner.</summary>
    /// <param name="corner">With nothing missing.</param>
    /// <param name="scans">Its scans with their addresses.</param>
    public static ClearanceScene Of(CornerClearance corner, IReadOnlyList<SceneScan> scans)
    {
        ArgumentNullException.ThrowIfNull(corner);
        var lines = corner.Lines();
        var outlines = corner.Outlines();
        double[][] Outline(string kind) => [.. outlines.First(o => o.Kind == kind).Points.Select(p => new[] { p.Axial, p.Radius })];
        double[][][] Lines(bool body) =>
            [.. lines.Where(l => l.Thing.OnBody == body).Select(l => l.Points.Select(p => new[] { p.X, p.Y, p.Z }).ToArray())];
        return new(corner.Place.IsLeft() ? 1 : -1, Outline("tyre"), Outline("rim"), Lines(true), Lines(false), scans);
    }

    /// <summary>
    /// One pose: hub face; 12, spindle, 3; whether there is a nearest place
    /// and its two ends; pieces of the strut. 32-bit floats, little-endian.
    /// </summary>
    /// <returns>Null where the wheel cannot be.</returns>
    public static byte[]? Pose(CornerClearance corner, double travel, double steer, PoseGap? nearest, double? other = null)
    {
        ArgumentNullException.ThrowIfNull(corner);
        if (!corner.TryPose(travel, steer, out WheelPose pose, other))
        {
            return null;
        }

        SpindleFrame frame = SpindleFrame.Of(pose);
        IReadOnlyList<CylinderObstacle> strut =
            [.. corner.Strut(travel), .. corner.Link(travel, steer, other) is { } link ? new[] { link } : []];
        List<double> numbers =
        [
            .. Parts(frame.Origin), .. Parts(frame.Twelve), .. Parts(frame.Axis), .. Parts(frame.Three),
            nearest is null ? 0 : 1,
            .. Parts(nearest is null ? default : frame.ToBody(nearest.OnThing)),
            .. Parts(nearest is null ? default : frame.ToBody(nearest.OnWheel)),
            strut.Count,
        ];
        foreach (CylinderObstacle piece in strut)
        {
            numbers.AddRange([.. Parts(piece.Foot), .. Parts(piece.Direction), piece.Length, piece.Radius]);
        }

        byte[] bytes = new byte[4 * numbers.Count];
        for (int i = 0; i < numbers.Count; i++)
        {
            BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(4 * i), (float)numbers[i]);
        }

        return bytes;
    }

    private static double[] Parts(in Vec3 v) => [v.X, v.Y, v.Z];
}
