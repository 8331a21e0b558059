using System.Text;
using System.Text.Json;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;

namespace Cornerwright.Web.Components.Entry;

/// <summary>
/// Where a field stands in the car document ("frontLeft/motion/springRatio"), the id of its row on a page, and the
/// address of that row: a finding can send a person to the very box.
/// </summary>
public static class FieldPaths
{
    public static string Of(CornerPlace place) => JsonNamingPolicy.CamelCase.ConvertName(place.ToString());

    public static string Join(string path, string name) => path.Length == 0 ? name : path + "/" + name;

    /// <summary>An id for HTML: letters, digits and dashes.</summary>
    public static string RowId(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        var id = new StringBuilder("at-");
        foreach (char c in path)
        {
            id.Append(char.IsAsciiLetterOrDigit(c) ? c : '-');
        }

        return id.ToString();
    }

    /// <summary>The address of the page and row where a number of the document is typed.</summary>
    public static string Address(string carId, string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        string[] steps = path.Split('/');
        string row = "#" + RowId(path);
        foreach (var place in Places.Corners)
        {
            if (steps[0] == Of(place))
            {
                return Addresses.Corner(carId, place) + row;
            }
        }

        return steps[0] switch
        {
            "parts" when steps.Length >= 3 => Addresses.Part(carId, steps[1], steps[2]) + row,
            "parts" => Addresses.Parts(carId),
            "scans" when steps.Length >= 2 => Addresses.Scans(carId, steps[1]),
            "builds" when steps.Length >= 2 => Addresses.Build(carId, steps[1]) + row,
            _ => Addresses.Car(carId) + row,
        };
    }
}
