using Cornerwright.Garage.Builds;

namespace Cornerwright.Web.Components.Pages;

/// <summary>A setting that can be moved in whole steps.</summary>
/// <param name="Name">For the page, without blanks: "perch-front".</param>
/// <param name="Words">For the undo button: "Perch height, front".</param>
/// <param name="Shown">The value in words.</param>
/// <param name="Step">Where it stands, 0 to <paramref name="Most"/>.</param>
/// <param name="Move">The build with the slider at another step.</param>
public sealed record SettingSlider(
    string Name,
    string Words,
    string Shown,
    int Step,
    int Most,
    string LowText,
    string HighText,
    Func<Build, int, Build> Move);
