using System.Reflection;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Scanning;

namespace Cornerwright.Workshop.Judging;

/// <summary>All that one corner of one build is worked out from.</summary>
internal sealed class CornerSource(Car car, Build build, CornerPlace place, LearnedState? learned, ScanShelf? scans)
{
    private readonly LearnedState? _learned = learned;
    private readonly ScanShelf? _scans = scans;

    public Car Car => car;

    public Build Build => build;

    public CornerPlace Place => place;

    /// <summary>
    /// True where both give the same corner: car and build say the same, but for other builds, names, notes, and the corners of the other
    /// axle. A property that is added later counts as one that matters.
    /// </summary>
    public bool SameAs(CornerSource other) =>
        place == other.Place && ReferenceEquals(_learned, other._learned) && ReferenceEquals(_scans, other._scans)
        && Same(OfBuild[place.Axle()], build, other.Build)
        && (ReferenceEquals(car, other.Car)
            || (Same(OfCar, car, other.Car)
                && Same(OfBuild[place.Axle()], car.Build(car.MeasuredBuild), other.Car.Build(other.Car.MeasuredBuild))));

    private static readonly PropertyInfo[] OfCar = Read(typeof(Car), [nameof(Car.Builds), nameof(Car.Name), nameof(Car.Note)]);

    private static readonly Dictionary<AxlePlace, PropertyInfo[]> OfBuild = new()
    {
        [AxlePlace.Front] = Read(typeof(Build), [nameof(Build.Name), nameof(Build.Note), nameof(Build.RearLeft), nameof(Build.RearRight)]),
        [AxlePlace.Rear] = Read(typeof(Build), [nameof(Build.Name), nameof(Build.Note), nameof(Build.FrontLeft), nameof(Build.FrontRight)]),
    };

    private static PropertyInfo[] Read(Type type, string[] but) =>
        [.. type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.CanWrite && !but.Contains(p.Name))];

    // Lists are the same where they are the same object: a car that was read anew is worked out anew.
    private static bool Same(PropertyInfo[] properties, object? one, object? other) =>
        ReferenceEquals(one, other)
        || (one is not null && other is not null && Array.TrueForAll(properties, p => Equals(p.GetValue(one), p.GetValue(other))));
}
