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
    /// <param name="path">In the car document: "frontLeft/springAxisLength", "parts/springs/…/rate", "builds/…/frontLeft/perchHeight".</param>
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
            _ when RecordShape.Of<Car>().ByName.ContainsKey(steps[0]) => FieldPaths.Address(carId, path),
            _ => null,
        };
    }

    /// <summary>For a missing reading, which is told in words: a thing is chosen in the build, a thing's size stands with the part.</summary>
    public static string Missing(string carId, string buildId, Finding finding, string words)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(words);
        bool ofCorner = RecordShape.Of<Corner>().Fields.Any(f => f.Words.Label.Equals(words, StringComparison.OrdinalIgnoreCase));
        bool ofBuild = RecordShape.Of<CornerBuild>().Fields.Any(f => f.Words.Label.Equals(words, StringComparison.OrdinalIgnoreCase));
        return words switch
        {
            _ when words.StartsWith("corner load", StringComparison.Ordinal) || words.Contains("load case", StringComparison.Ordinal) => Addresses.Car(carId),
            _ when ofBuild || words.StartsWith("a ", StringComparison.Ordinal) => Addresses.Build(carId, buildId),
            _ when !ofCorner && words.Contains(" of ", StringComparison.Ordinal) => Addresses.Parts(carId),
            _ when finding.Corner is { } corner => Addresses.Corner(carId, corner),
            _ when finding.Axle is { } axle => Addresses.Corner(carId, axle == AxlePlace.Front ? CornerPlace.FrontLeft : CornerPlace.RearLeft),
            _ => Addresses.Car(carId),
        };
    }
}
