using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Tests.Clearance;

/// <summary>Random but sound wheels, poses and obstacles; all from one seeded source.</summary>
internal static class RandomCorner
{
    public static double Between(this Random random, double low, double high) => low + ((high - low) * random.NextDouble());

    public static (TyreSection Tyre, RimSection Rim) Wheel(Random random)
    {
        double code = random.Next(14, 21) * 0.0254;
        double bead = code / 2;
        double rimWidth = random.Between(5, 11) * 0.0254;
        double width = rimWidth + random.Between(-0.012, 0.045);
        double diameter = code + (2 * width * random.Between(0.30, 0.75));
        double centre = WheelPlacement.AxialCentre(random.Between(-0.02, 0.06), random.Between(0, 0.02));
        var tyre = TyreSection.WithEstimates(
            centre, bead, rimWidth, diameter, width, width * random.Between(0.7, 0.97),
            ((diameter / 2) - bead) * random.Between(0.02, 0.2));
        return (tyre, RimSection.WithEstimates(centre, rimWidth, bead + 0.002));
    }

    public static WheelPose Pose(Random random)
    {
        WheelSide side = random.Next(2) == 0 ? WheelSide.Left : WheelSide.Right;
        double out_ = side == WheelSide.Left ? 1 : -1;
        var wheel = new WheelMotionState(random.Between(-0.08, 0.05), random.Between(-0.02, 0.02), random.Between(-0.01, 0.01));
        WheelPose straight = WheelPose.StraightAhead(new(0.02, out_ * 0.75, 0.31), side, wheel, random.Between(-0.08, 0.08));
        SteeringLine axis = SteeringLine.AtHubHeight(straight, side, 0.2, 0.1, 0.09, 0.01);
        return straight.Steered(axis, random.Between(-0.6, 0.6));
    }

    /// <summary>A point near the wheel, in B.</summary>
    public static Vec3 Near(Random random, in WheelPose pose, double reach = 0.28) =>
        SpindleFrame.Of(pose).ToBody(Clock.PointAt(
            random.Between(-reach, reach), random.Between(0.02, 0.48), random.Between(0, 12)));

    public static Vec3 Direction(Random random)
    {
        while (true)
        {
            Vec3 v = new(random.Between(-1, 1), random.Between(-1, 1), random.Between(-1, 1));
            if (v.LengthSquared is > 0.01 and < 1)
            {
                return v.Unit();
            }
        }
    }
}
