using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

/// <summary>Corners made up for tests, in mm, and random ones near them.</summary>
internal static class InventedCorners
{
    public static Vec3 Mm(double x, double y, double z) => new Vec3(x, y, z) / 1000;

    public static CornerLinkage Strut(Func<Vec3, Vec3>? moved = null) => Make(
        [
            ("arm front", Mm(20, 370, 210)), ("arm rear", Mm(-270, 385, 205)), ("ball", Mm(5, 700, 185)), ("strut top", Mm(-30, 585, 840)),
            ("strut low", Mm(-5, 665, 400)), ("tie rod inner", Mm(-140, 350, 270)), ("tie rod outer", Mm(-125, 690, 260)),
        ],
        [new LinkageTie.Rod(0, 2), new LinkageTie.Rod(1, 2), new LinkageTie.Strut(3, 4), new LinkageTie.Rod(5, 6, true)],
        new LinkageStation.OnStrut(3, 4, 0.2), new LinkageStation.OnStrut(3, 4, 0), Mm(0, 745, 310), moved, Mm(0.04, -0.985, -0.165));

    public static CornerLinkage StrutOnTwoLinks(Func<Vec3, Vec3>? moved = null) => Make(
        [
            ("front link inner", Mm(170, 380, 215)), ("front link outer", Mm(25, 690, 190)), ("rear link inner", Mm(-40, 372, 205)),
            ("rear link outer", Mm(-12, 705, 186)), ("strut top", Mm(-30, 585, 840)), ("strut low", Mm(-5, 665, 400)),
            ("tie rod inner", Mm(-140, 350, 270)), ("tie rod outer", Mm(-125, 690, 260)),
        ],
        [new LinkageTie.Rod(0, 1), new LinkageTie.Rod(2, 3), new LinkageTie.Strut(4, 5), new LinkageTie.Rod(6, 7, true)],
        new LinkageStation.OnStrut(4, 5, 0.2), new LinkageStation.OnStrut(4, 5, 0), Mm(0, 745, 310), moved);

    public static CornerLinkage Wishbones(Func<Vec3, Vec3>? moved = null) => Make(
        [
            ("lower front", Mm(140, 355, 180)), ("lower rear", Mm(-170, 370, 172)), ("lower ball", Mm(8, 710, 168)),
                ("upper front", Mm(90, 440, 440)),
            ("upper rear", Mm(-120, 450, 420)), ("upper ball", Mm(-24, 670, 450)), ("tie rod inner", Mm(-130, 350, 212)),
            ("tie rod outer", Mm(-122, 705, 209)), ("spring top", Mm(-12, 512, 566)), ("spring foot", Mm(2, 600, 182)),
        ],
        [new LinkageTie.Rod(0, 2), new LinkageTie.Rod(1, 2), new LinkageTie.Rod(3, 5), new LinkageTie.Rod(4, 5),
        new LinkageTie.Rod(6, 7, true)],
        new LinkageStation.OnArm(8, 9, 0, 1, 2), new LinkageStation.OnKnuckle(8, 2), Mm(0, 760, 304), moved);

    public static CornerLinkage FiveLinks(Func<Vec3, Vec3>? moved = null) => Make(
        [
            ("lower front inner", Mm(265, 410, 214)), ("lower front outer", Mm(38, 714, 186)), ("lower rear inner", Mm(-42, 392, 196)),
            ("lower rear outer", Mm(-6, 726, 178)), ("upper front inner", Mm(92, 492, 548)), ("upper front outer", Mm(-4, 694, 566)),
            ("upper rear inner", Mm(-196, 500, 534)), ("upper rear outer", Mm(-44, 690, 561)), ("tie rod inner", Mm(-138, 398, 240)),
            ("tie rod outer", Mm(-126, 718, 238)), ("spring top", Mm(-28, 618, 742)),
        ],
        [new LinkageTie.Rod(0, 1), new LinkageTie.Rod(2, 3), new LinkageTie.Rod(4, 5), new LinkageTie.Rod(6, 7),
        new LinkageTie.Rod(8, 9, true)],
        new LinkageStation.OnRod(10, 2, 3, 0.8), new LinkageStation.OnRod(10, 2, 3, 0.9), Mm(0, 784, 317), moved);

    public static CornerLinkage TrailingArm(Func<Vec3, Vec3>? moved = null) => Make(
        [
            ("outer bushing", Mm(430, 612, 282)), ("inner bushing", Mm(312, 228, 268)), ("spring top", Mm(40, 556, 516)),
            ("spring foot", Mm(52, 560, 262)),
        ],
        [new LinkageTie.Hinge(0, 1)], new LinkageStation.OnKnuckle(2, 3), new LinkageStation.OnKnuckle(2, 3), Mm(0, 758, 308), moved);

    private static CornerLinkage Make(
        (string Name, Vec3 At)[] joints, LinkageTie[] ties, LinkageStation spring, LinkageStation damper, Vec3 centre, Func<Vec3,
        Vec3>? moved,
        Vec3 plate = default) =>
        new([.. joints.Select(j => new MeasuredJoint(j.Name, moved is null ? j.At : moved(j.At)))], ties, centre, -0.015, 0.002, 0.31,
        spring, damper, plate);
}
