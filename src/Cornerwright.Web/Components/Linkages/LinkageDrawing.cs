using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Web.Components.Linkages;

/// <summary>Wheel and tyre as turned about the spindle. Body frame, m.</summary>
/// <param name="HubFace">Centre of the hub's face.</param>
/// <param name="Spindle">Length 1, to the street side.</param>
/// <param name="Outline">Along the spindle from the hub's face, and from it.</param>
public sealed record DrawnWheel(Vec3 HubFace, Vec3 Spindle, IReadOnlyList<double[]> Outline);

/// <summary>What three plain views of a linkage are drawn from. Body frame, m.</summary>
/// <param name="Points">By property of the table; those that are not given are missing.</param>
/// <param name="Members">Between them.</param>
/// <param name="Fixed">Points that settle scale and middle of the sheet, so that a moving linkage moves and the sheet does not.</param>
/// <param name="Wheel">Null where it is not known.</param>
/// <param name="Left">True on the left of the car.</param>
public sealed record LinkageDrawing(
    IReadOnlyDictionary<string, Vec3> Points, IReadOnlyList<LinkageMember> Members, IReadOnlyList<Vec3> Fixed, DrawnWheel? Wheel, bool Left)
{
    /// <summary>Words of a point.</summary>
    public static string Label(string property) => HardpointNeeds.Points.First(p => p.PropertyName == property).Label;

    /// <summary>A table as far as it goes: nothing moves.</summary>
    public static LinkageDrawing Of(HardpointTable table, bool left)
    {
        ArgumentNullException.ThrowIfNull(table);
        var points = new Dictionary<string, Vec3>(StringComparer.Ordinal);
        foreach (var field in HardpointNeeds.Of(table))
        {
            if (field.Get(table) is BodyPoint { X: { } x, Y: { } y, Z: { } z })
            {
                points[field.PropertyName] = new(x.Si, y.Si, z.Si);
            }
        }

        return new(points, LinkageMember.Of(table), [.. points.Values], null, left);
    }

    /// <summary>A linkage at a pose, on the sheet of its reference state.</summary>
    public static LinkageDrawing Of(LinkageSetting setting, LinkagePose pose)
    {
        ArgumentNullException.ThrowIfNull(setting);
        ArgumentNullException.ThrowIfNull(pose);
        var linkage = setting.Points.Linkage;
        double r = linkage.TyreRadius;
        Vec3 c = linkage.WheelCentre;
        return new(
            pose.ByProperty(setting), LinkageMember.Of(setting.Points.Table),
            [.. linkage.Joints.Select(j => j.At), c + new Vec3(r, 0, r), c - new Vec3(r, 0, r), c + new Vec3(0, setting.Side * 0.12, 0)],
            new(pose.HubFace, pose.Wheel.Spindle, LinkagePlan3d.Of(setting).Tyre), setting.Side > 0);
    }
}
