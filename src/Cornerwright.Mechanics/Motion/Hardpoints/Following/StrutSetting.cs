using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Following;

/// <summary>A strut whose plate was slid and whose knuckle was turned in its clamp since the joints were measured.</summary>
/// <param name="Linkage">To be followed with the plate at <paramref name="Plate"/>.</param>
/// <param name="Plate">m along the linkage's plate direction; 0 when nothing was changed.</param>
/// <param name="Turn">How far the knuckle was turned against its strut, rad, positive when the wheel's top goes outward.</param>
/// <remarks>
/// The measured pose closes with the turned strut if its top is thought where the turned axis leads; from there the top is carried to where
/// the plate really holds it. So the change is a slide of an imagined plate, and is followed like one: exactly, and on the branch.
/// Source: docs/theory/hardpoints.md §9.
/// </remarks>
public sealed record StrutSetting(CornerLinkage Linkage, double Plate, double Turn)
{
    private const int SecantLimit = 12;
    private const double CamberDone = 1e-12;

    /// <summary>The linkage as it is set; travel 0 stays where the wheel stood when it was measured.</summary>
    /// <param name="corner">As measured.</param>
    /// <param name="slide">How far the strut's top was carried along the plate's direction, m.</param>
    /// <param name="clamp">
    /// How much the wheel's camber was changed at the clamp, rad, at travel 0 and beyond what the slide does. With a
    /// strut the knuckle is turned against it about the lower point on the strut until the wheel leans so; without
    /// one it is added to the camber.
    /// </param>
    /// <param name="travelPointOutboard">As <see cref="KnuckleLinkage"/> takes it.</param>
    /// <exception cref="ArgumentException">
    /// A number is not finite, or the strut cannot stand so: where the setting comes from a user, <see cref="Create"/> says so instead.
    /// </exception>
    /// <remarks>Source: docs/theory/hardpoints.md §9.</remarks>
    public static StrutSetting Of(CornerLinkage corner, double slide, double clamp, double travelPointOutboard = 0) =>
        Create(corner, slide, clamp, out LinkageFlaw? flaw, travelPointOutboard)
        ?? throw new ArgumentException(flaw!.ToString(), nameof(corner));

    /// <summary>The linkage as a user set it; travel 0 stays where the wheel stood when it was measured.</summary>
    /// <param name="corner">As measured.</param>
    /// <param name="slide">As <see cref="Of"/> takes it, m.</param>
    /// <param name="clamp">As <see cref="Of"/> takes it, rad.</param>
    /// <param name="flaw">Null, or why the strut cannot stand so.</param>
    /// <param name="travelPointOutboard">As <see cref="KnuckleLinkage"/> takes it, m.</param>
    /// <returns>Null where <paramref name="flaw"/> says why.</returns>
    /// <exception cref="ArgumentException">A number is not finite: our own bug.</exception>
    /// <remarks>Secant on the exact camber. Source: docs/theory/hardpoints.md §9.</remarks>
    public static StrutSetting? Create(
        CornerLinkage corner, double slide, double clamp, out LinkageFlaw? flaw, double travelPointOutboard = 0)
    {
        Require.Finite(slide);
        Require.Finite(clamp);
        flaw = null;
        if (corner.Ties.OfType<LinkageTie.Strut>().FirstOrDefault() is not { } strut)
        {
            return new(clamp == 0 ? corner : corner with { Camber = corner.Camber + clamp }, 0, clamp);
        }

        if (clamp == 0)
        {
            return Turned(corner, strut, slide, 0);
        }

        // The strut leans back as the knuckle turns, so the clamp turns further than the wheel leans: by about 1.4 on usual struts.
        if (CamberOf(Turned(corner, strut, slide, 0), strut, travelPointOutboard, out flaw) is not { } unturned)
        {
            return null;
        }

        double wanted = unturned + clamp;
        double before = 0, missedBefore = -clamp, turn = clamp;
        for (int i = 0; i < SecantLimit; i++)
        {
            StrutSetting setting = Turned(corner, strut, slide, turn);
            if (CamberOf(setting, strut, travelPointOutboard, out flaw) is not { } camber)
            {
                return null;
            }

            double missed = camber - wanted, rise = missed - missedBefore;
            if (Math.Abs(missed) <= CamberDone || rise == 0)
            {
                return setting;
            }

            double next = turn - (missed * (turn - before) / rise);
            (before, missedBefore, turn) = (turn, missed, next);
        }

        flaw = OutOfReach(corner, strut);
        return null;
    }

    private static double? CamberOf(StrutSetting setting, LinkageTie.Strut strut, double travelPointOutboard, out LinkageFlaw? flaw)
    {
        if (HardpointMotion.Create(setting.Linkage, out flaw, travelPointOutboard, setting.Plate) is not { } motion)
        {
            return null;
        }

        if (motion.WheelAt(0, out WheelMotionState wheel) == Reach.Reached)
        {
            return wheel.Camber;
        }

        flaw = OutOfReach(setting.Linkage, strut);
        return null;
    }

    private static LinkageFlaw OutOfReach(CornerLinkage corner, LinkageTie.Strut strut) =>
        new(LinkageFault.SettingOutOfReach, [corner.Joints[strut.Top].Name, corner.Joints[strut.Low].Name]);

    private static StrutSetting Turned(CornerLinkage corner, LinkageTie.Strut strut, double slide, double turn)
    {
        // The knuckle's strut axis leans inward by as much as the wheel is turned outward against the strut.
        Vec3 top = corner.Joints[strut.Top].At, low = corner.Joints[strut.Low].At;
        Vec3 turned = turn == 0 ? top : low + (top - low).RotatedAbout(Vec3.UnitX, corner.Side * turn);
        double plate = corner.PlateDirection.Length;
        Vec3 carried = (plate > 0 ? top + (corner.PlateDirection * (slide / plate)) : top) - turned;
        double length = carried.Length;
        if (!(length > 1e-12))
        {
            return new(corner, 0, 0);
        }

        MeasuredJoint[] joints = [.. corner.Joints];
        joints[strut.Top] = joints[strut.Top] with { At = turned };
        return new(corner with { Joints = joints, PlateDirection = carried }, length, turn);
    }
}
