using Cornerwright.Garage.Files;
using Cornerwright.Garage.Scans;

namespace Cornerwright.Workshop.Tests.Scanning;

internal static class DemoScanRaw
{
    public static RawScan Read()
    {
        using var file = DemoCar.Scan();
        return ScanFile.Read(file, DemoCar.ScanName).Value;
    }
}
