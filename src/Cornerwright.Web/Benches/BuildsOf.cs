using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;

namespace Cornerwright.Web.Benches;

/// <summary>What is done to a car's builds.</summary>
public static class BuildsOf
{
    /// <summary>A copy at the end, under an id and a name of its own.</summary>
    public static Car Duplicate(Car car, string buildId, string id, string name)
    {
        ArgumentNullException.ThrowIfNull(car);
        return car.Build(buildId) is { } build ? car.With(build with { Id = id, Name = name }) : car;
    }

    /// <summary>Without that build; the build that the readings were taken on stays.</summary>
    public static Car Remove(Car car, string buildId)
    {
        ArgumentNullException.ThrowIfNull(car);
        return car.MeasuredBuild == buildId ? car : car with { Builds = [.. car.Builds.Where(b => b.Id != buildId)] };
    }

    /// <summary>One build changed; the car itself when it has no such build.</summary>
    public static Car Change(Car car, string buildId, Func<Build, Build> change)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(change);
        return car.Build(buildId) is { } build ? car.With(change(build)) : car;
    }

    /// <summary>"Copy of …", and a number where that is taken.</summary>
    public static string CopyName(Car car, string name)
    {
        ArgumentNullException.ThrowIfNull(car);
        var taken = car.Builds.Select(b => b.Name).ToHashSet(StringComparer.Ordinal);
        string made = "Copy of " + name;
        for (int i = 2; taken.Contains(made) && i <= taken.Count + 2; i++)
        {
            made = FormattableString.Invariant($"Copy {i} of {name}");
        }

        return made;
    }

    public static CornerPlace OtherSide(CornerPlace place) => place switch
    {
        CornerPlace.FrontLeft => CornerPlace.FrontRight,
        CornerPlace.FrontRight => CornerPlace.FrontLeft,
        CornerPlace.RearLeft => CornerPlace.RearRight,
        _ => CornerPlace.RearLeft,
    };
}
