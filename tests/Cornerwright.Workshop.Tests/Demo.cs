using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Workshop.Tests;

/// <summary>What the tests ask of the demo car.</summary>
internal static class Demo
{
    /// <summary>The build that fails in several ways.</summary>
    public const string FirstIdea = "gravel-1";

    /// <summary>The build that holds.</summary>
    public const string Holding = "gravel-3";

    /// <summary>The directory that holds the solution.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>The car with one corner's cycled lengths read so many times more coarsely.</summary>
    public static Car WithCoarseCycling(Car car, CornerPlace place, double times, int first, int count)
    {
        var corner = car.At(place);
        var steps = corner.Motion.Steps.Skip(first).Take(count)
            .Select(s => s with { SpringLength = Coarser(s.SpringLength, times) }).ToList();
        return car.With(place, corner with { Motion = corner.Motion with { Steps = steps } });
    }

    private static Reading? Coarser(Reading? reading, double times) =>
        reading is null ? null : reading with { Tolerance = new Tolerance(
            Quantity.Of(2 * times * 1000 * reading.StandardDeviation, Units.Millimetre), ToleranceKind.TwoSigma) };

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Cornerwright.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("The tests run outside the repository.");
    }
}
