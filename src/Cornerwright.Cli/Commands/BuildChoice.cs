using Cornerwright.Cli.Text;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Cli.Commands;

/// <summary>Finds the builds, corners and verdicts that a person names.</summary>
internal static class BuildChoice
{
    /// <summary>A build by its id; no name is needed where the car has only one.</summary>
    public static Checked<Build> Find(Car car, string? typed)
    {
        string known = string.Join(", ", car.Builds.Select(b => b.Id));
        if (string.IsNullOrEmpty(typed))
        {
            return car.Builds.Count == 1
                ? Checked<Build>.From(car.Builds[0])
                : Checked<Build>.Wrong(new Problem("build", "", known.Length > 0 ? known : "a build of the file",
                    car.Builds.Count == 0 ? "The file has no build yet: add one." : "Name one of them after the file."));
        }

        return car.Build(typed) is { } build
            ? Checked<Build>.From(build)
            : Checked<Build>.Wrong(new Problem("build", typed, known.Length > 0 ? known : "(the file has no build)",
                "Name a build by its id as it stands in the file."));
    }

    /// <summary>Corners by name, axle or side; all four when nothing is named.</summary>
    public static Checked<IReadOnlyList<CornerPlace>> Corners(IReadOnlyList<string> typed)
    {
        var chosen = new HashSet<CornerPlace>();
        var problems = new List<Problem>();
        foreach (string name in typed.SelectMany(t => t.Split(',')))
        {
            string plain = name.Trim().Replace(' ', '-').ToUpperInvariant();
            var match = Places.Corners.Where(c => plain switch
            {
                "FRONT" => c.Axle() == AxlePlace.Front,
                "REAR" => c.Axle() == AxlePlace.Rear,
                "LEFT" => c.IsLeft(),
                "RIGHT" => !c.IsLeft(),
                _ => string.Equals(c.Name(), plain, StringComparison.OrdinalIgnoreCase)
                    || string.Equals(c.ToString(), plain, StringComparison.OrdinalIgnoreCase),
            }).ToList();
            if (match.Count == 0)
            {
                problems.Add(new Problem("--corner", name, string.Join(", ",
                    Places.Corners.Select(CornerNames.Name)) + ", front, rear, left, right", "Name a corner, an axle or a side."));
            }

            chosen.UnionWith(match);
        }

        return problems.Count > 0
            ? Checked<IReadOnlyList<CornerPlace>>.Wrong(problems)
            : Checked<IReadOnlyList<CornerPlace>>.From([.. Places.Corners.Where(c => chosen.Count == 0 || chosen.Contains(c))]);
    }
}
