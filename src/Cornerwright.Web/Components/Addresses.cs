using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;

namespace Cornerwright.Web.Components;

/// <summary>The addresses of the pages: one place that knows how a choice is written into a URL.</summary>
public static class Addresses
{
    public static string Car(string carId) => "/car/" + Uri.EscapeDataString(carId);

    public static string Corner(string carId, CornerPlace place) => $"{Car(carId)}/corner/{Slug(place)}";

    public static string Hardpoints(string carId, CornerPlace place) => Corner(carId, place) + "/hardpoints";

    public static string Scans(string carId, string scanId = "") =>
        Car(carId) + "/scans" + (scanId.Length > 0 ? "?scan=" + Uri.EscapeDataString(scanId) : "");

    public static string Parts(string carId, string kind = "") =>
        Car(carId) + "/parts" + (kind.Length > 0 ? "?kind=" + Uri.EscapeDataString(kind) : "");

    public static string Part(string carId, string kind, string partId) => Parts(carId, kind) + "&part=" + Uri.EscapeDataString(partId);

    public static string Builds(string carId) => Car(carId) + "/builds";

    public static string Choose(string carId) => Car(carId) + "/choose";

    public static string Build(string carId, string buildId) => $"{Car(carId)}/build/{Uri.EscapeDataString(buildId)}";

    public static string Verdict(string carId, string buildId) => Build(carId, buildId) + "/verdict";

    /// <summary>One wheel of a build against everything near it.</summary>
    public static string Clearance(string carId, string buildId, CornerPlace place) => $"{Clearance(carId, buildId)}?corner={Slug(place)}";

    public static string Clearance(string carId, string buildId) => Build(carId, buildId) + "/clearance";

    public static string Print(string carId, string buildId) => Build(carId, buildId) + "/print";

    /// <summary>The work order that leads to a build.</summary>
    public static string Order(string carId, string buildId) => Build(carId, buildId) + "/order";

    /// <summary>A job's list to tick off: a page of its own, which needs no live connection.</summary>
    public static string Job(string carId, string jobId) => $"{Car(carId)}/job/{Uri.EscapeDataString(jobId)}";

    public static string Access(string carId) => Car(carId) + "/access";

    public static string Log(string carId) => Car(carId) + "/log";

    public static string Compare(string carId, string left, string right) =>
        $"{Car(carId)}/compare?left={Uri.EscapeDataString(left)}&right={Uri.EscapeDataString(right)}";

    public static string Setting(string carId) => Car(carId) + "/setting";

    public static string Setting(string carId, string buildId) => Build(carId, buildId) + "/setting";

    public static string History(string carId) => Car(carId) + "/history";

    /// <summary>"front-left" and so on.</summary>
    public static string Slug(CornerPlace place) => place.Words().Replace(' ', '-');

    /// <returns>Null when the text names no corner.</returns>
    public static CornerPlace? CornerOf(string? slug)
    {
        foreach (var place in Places.Corners)
        {
            if (Slug(place) == slug)
            {
                return place;
            }
        }

        return null;
    }

    /// <summary>The car that a base-relative address is about; empty when it is about none.</summary>
    public static string CarOf(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        string[] steps = path.Split('?', '#')[0].Split('/', StringSplitOptions.RemoveEmptyEntries);
        return steps.Length >= 2 && steps[0] == "car" ? Uri.UnescapeDataString(steps[1]) : "";
    }
}
