using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Tests.Clearance.Certifying;
using Cornerwright.Mechanics.Tests.Clearance.Scans;

namespace Cornerwright.Bench;

/// <summary>The wheel and its poses in the invented arch, for the benches of scans.</summary>
internal static class ScanPoses
{
    public static readonly TyreSection Tyre = TyreSection.WithEstimates(-0.040, 0.2285, 0.203, 0.634, 0.233);
    public static readonly RimSection Rim = RimSection.WithEstimates(-0.040, 0.2032, 0.2285);

    public static WheelShape Wheel() => WheelShape.Of(Tyre, Rim, 6);

    /// <summary>Camber and track over travel, a leaning steering axis; no plate.</summary>
    public static IPoseField Field()
    {
        WheelPose rest = WheelPose.StraightAhead(InventedArch.Hub, WheelSide.Left, default, 0);
        return new RigidSteerPoses(
            new RatioMotion(new RatioWheel(-0.02, -0.35, LateralGain: -0.05), new RatioStation(0.40, 0.95, 0.1)),
            InventedArch.Hub, WheelSide.Left, SteeringLine.AtHubHeight(rest, WheelSide.Left, 0.2, 0.1, 0.09, 0.01));
    }

    /// <summary>A grid over travel and steer, to and fro, so that neighbours in the list are neighbours in space.</summary>
    public static WheelPose[] Sweep(PoseBox box, int travels, int steers)
    {
        IPoseField field = Field();
        var poses = new List<WheelPose>();
        for (int j = 0; j < steers; j++)
        {
            for (int i = 0; i < travels; i++)
            {
                double z = Between(box.Least.Travel, box.Most.Travel, j % 2 == 0 ? i : travels - 1 - i, travels);
                if (field.TryPose(new(z, Between(box.Least.Steer, box.Most.Steer, j, steers), 0), out WheelPose pose))
                {
                    poses.Add(pose);
                }
            }
        }

        return [.. poses];
    }

    private static double Between(double low, double high, int i, int count) => count == 1 ? low : low + ((high - low) * i / (count - 1));
}
