using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Web.Components.Pages;

/// <summary>Changes one setting of a build by its path below the build: "frontLeft/perchHeight".</summary>
public static class SettingPath
{
    /// <summary>The build with the setting as typed, or what is wrong with the path or the text.</summary>
    /// <param name="build">Before.</param>
    /// <param name="path">Corner and setting.</param>
    /// <param name="typed">With its unit.</param>
    /// <param name="bothSides">Also at the other side of the axle, if that side now reads the same.</param>
    public static Checked<Build> Set(Build build, string path, string typed, bool bothSides = false)
    {
        ArgumentNullException.ThrowIfNull(build);
        ArgumentNullException.ThrowIfNull(path);
        string[] steps = path.Split('/');
        if (steps.Length != 2
            || CornerOf(steps[0]) is not { } corner
            || !RecordShape.Of<CornerBuild>().ByName.TryGetValue(steps[1], out var field)
            || field.Kind != FieldKind.Reading)
        {
            return Checked<Build>.Wrong(new Problem(path, typed, "a setting of one corner, such as frontLeft/perchHeight",
                "Choose the setting on the build's own page."));
        }

        string where = corner.Words() + ", " + field.Words.Label.ToLowerInvariant();
        var reading = Reading.Parse(where, field.Words.Dimension, typed, source: ReadingSource.Setting);
        if (!reading.Try(out var value))
        {
            return Checked<Build>.Wrong(reading.Problems);
        }

        if (field.RangeProblem(where, value) is { } problem)
        {
            return Checked<Build>.Wrong(problem);
        }

        var other = OtherSide(corner);
        bool alike = bothSides && (field.Get(build.At(corner)) as Reading)?.Si == (field.Get(build.At(other)) as Reading)?.Si;
        build = build.With(corner, With(build.At(corner), field, value));
        return Checked<Build>.From(alike ? build.With(other, With(build.At(other), field, value)) : build);
    }

    /// <summary>The corner across the same axle.</summary>
    public static CornerPlace OtherSide(CornerPlace corner) => corner switch
    {
        CornerPlace.FrontLeft => CornerPlace.FrontRight,
        CornerPlace.FrontRight => CornerPlace.FrontLeft,
        CornerPlace.RearLeft => CornerPlace.RearRight,
        _ => CornerPlace.RearLeft,
    };

    /// <summary>The corner by its name in the document: "frontLeft".</summary>
    public static CornerPlace? CornerOf(string name)
    {
        foreach (var corner in Places.Corners)
        {
            if (string.Equals(corner.ToString(), name, StringComparison.OrdinalIgnoreCase))
            {
                return corner;
            }
        }

        return null;
    }

    // The doubt of the old setting stays: whoever sets a collar to half a millimetre still does.
    private static CornerBuild With(CornerBuild corner, FieldShape field, Reading value) =>
        RecordShape.Of<CornerBuild>().With(corner, field, value with { Tolerance = (field.Get(corner) as Reading)?.Tolerance });
}
