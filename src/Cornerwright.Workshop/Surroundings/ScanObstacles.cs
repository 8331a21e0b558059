using System.Runtime.CompilerServices;
using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Scanning;

namespace Cornerwright.Workshop.Surroundings;

/// <summary>A placed scan as an obstacle: its tree is built once and lives as long as the scan does.</summary>
internal static class ScanObstacles
{
    private static readonly ConditionalWeakTable<PlacedScan, ClearanceObstacle> Known = [];

    public static ClearanceObstacle Of(PlacedScan scan) => Known.GetValue(scan, Made);

    private static ClearanceObstacle Made(PlacedScan scan)
    {
        ObstacleFrame frame = scan.Scan.AttachedTo == AttachedTo.Knuckle ? ObstacleFrame.Knuckle : ObstacleFrame.Body;
        return scan.Mesh is { } mesh ? ClearanceObstacle.Of(mesh, frame) : ClearanceObstacle.Of(scan.Cloud!, frame);
    }
}
