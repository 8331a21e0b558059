using Cornerwright.Garage.Chassis;


namespace Cornerwright.Web.Components.Linkages;

/// <summary>A member as the browser draws it: ends are joints by number, the hub's face coming after the last.</summary>
public sealed record Member3d(string Kind, string Name, int A, int B, double From, double Radius);

/// <summary>What the browser has to know of a linkage once, before its poses come.</summary>
/// <param name="Side">1 left, -1 right.</param>
/// <param name="Joints">Their names.</param>
/// <param name="Members">Rods, arms and so on.</param>
/// <param name="Plates">Three joints each.</param>
/// <param name="Tyre">Outline, m along the spindle from the hub's face (street side positive) and m from it.</param>
/// <param name="Rim">Likewise.</param>
public sealed record LinkagePlan3d(
    int Side, IReadOnlyList<string> Joints, IReadOnlyList<Member3d> Members, IReadOnlyList<int[]> Plates, IReadOnlyList<double[]> Tyre,
    IReadOnlyList<double[]> Rim)
{
    /// <summary>Half the width of the plain wheel that is drawn where no tyre is known, m.</summary>
    private const double PlainHalfWidth = 0.1;

    /// <summary>Radius of a drawn coil, m: a picture, not a part.</summary>
    private const double CoilRadius = 0.055;

    public static LinkagePlan3d Of(LinkageSetting setting)
    {
        ArgumentNullException.ThrowIfNull(setting);
        var joints = setting.Points.Joints;
        int Find(string property)
        {
            if (property == nameof(HardpointTable.HubFace))
            {
                return joints.Count;
            }

            int at = joints.ToList().FindIndex(j => j.Field.PropertyName == property);
            return at;
        }

        var table = setting.Points.Table;
        var members = LinkageMember.Of(table)
            .Select(m => new Member3d(Words(m.Kind), m.Name, Find(m.From), Find(m.To), m.Share, CoilRadius))
            .Where(m => m.A >= 0 && m.B >= 0).ToList();
        foreach (var rod in setting.Points.Linkage.Ties.OfType<Mechanics.Motion.Hardpoints.Linkage.LinkageTie.Rod>().Where(r => r.Steers))
        {
            members.Add(new("rack", "rack", rod.Body, rod.Body, 0, 0));
        }

        return new(
            setting.Side, [.. joints.Select(j => j.Field.Label)], members,
            [.. LinkageMember.Plates(table).Select(p => new[] { Find(p.A), Find(p.B), Find(p.C) }).Where(p => p.All(i => i >= 0))],
            Outline(setting, "tyre") ?? PlainTyre(setting), Outline(setting, "rim") ?? []);
    }

    private static string Words(MemberKind kind) => kind switch
    {
        MemberKind.Rod => "rod",
        MemberKind.Arm => "arm",
        MemberKind.Tie => "tie",
        MemberKind.Carrier => "carrier",
        MemberKind.Strut => "strut",
        MemberKind.Spring => "spring",
        MemberKind.Damper => "damper",
        MemberKind.Pushrod => "pushrod",
        _ => "rocker",
    };

    private static double[][]? Outline(LinkageSetting setting, string kind) =>
        setting.Wheel?.Outlines.FirstOrDefault(o => o.Kind == kind)?.Points is { Count: > 2 } points
            ? [.. points.Select(p => new[] { p.Axial, p.Radius })] : null;

    private static double[][] PlainTyre(LinkageSetting setting)
    {
        double r = setting.Points.Linkage.TyreRadius, a = -setting.Points.HubFaceOutboard;
        return [[a - PlainHalfWidth, 0.65 * r], [a + PlainHalfWidth, 0.65 * r], [a + PlainHalfWidth, 0.9 * r],
            [a + (0.7 * PlainHalfWidth), r], [a - (0.7 * PlainHalfWidth), r], [a - PlainHalfWidth, 0.9 * r]];
    }
}
