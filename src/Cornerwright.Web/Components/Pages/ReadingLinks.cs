using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Web.Components.Entry;
using Cornerwright.Workshop.Findings;

namespace Cornerwright.Web.Components.Pages;

/// <summary>The page on which a reading is entered.</summary>
public static class ReadingLinks
{
    /// <param name="carId">Whose.</param>
    /// <param name="path">In the car document: "frontLeft/springAxisLength",
    /// "parts/springs/…/rate", "builds/…/frontLeft/perchHeight".</param>
    /// <returns>Null for a number that nobody can type.</returns>
    public static string? ByPath(string carId, string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        string[] steps = path.Split('/');
        return steps[0] switch
        {
            "parts" when steps.Length > 2 => FieldPaths.Address(carId, path),
            "builds" when steps.Length > 1 => FieldPaths.Address(carId, path),
            _ when SettingPath.CornerOf(steps[0]) is not null => FieldPaths.Address(carId, path),
            "scans" when steps.Length > 1 => FieldPaths.Address(carId, path),
            _ when RecordShape.Of<Car>().ByName.ContainsKey(steps[0]) => FieldPaths.Address(carId, path),
            _ => null,
        };
    }
}
