using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Cars;

/// <summary>Where a limit comes from.</summary>
public enum LimitOrigin
{
    Default,
    Car,
    Build,
}

/// <summary>The limits that a build is judged by: its own, else its car's, else the default.</summary>
public static class LimitsInForce
{
    public static Limits Of(Car car, Build build)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(build);
        var (merged, usual) = (new Limits(), Limits.For(AllowancesInForce.UseOf(car, build)));
        foreach (var field in RecordShape.Of<Limits>().Fields)
        {
            field.Set(merged, field.Get(build.Limits) ?? field.Get(car.Limits) ?? field.Get(usual));
        }

        return merged;
    }

    /// <summary>Whose limit a field's value is.</summary>
    public static LimitOrigin OriginOf(FieldShape field, Car car, Build build)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(build);
        return field.Get(build.Limits) is Reading ? LimitOrigin.Build
            : field.Get(car.Limits) is Reading ? LimitOrigin.Car
            : LimitOrigin.Default;
    }
}
