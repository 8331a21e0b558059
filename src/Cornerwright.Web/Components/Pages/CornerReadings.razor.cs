using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Components.Entry;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Pages;

/// <summary>Everything that was measured at one corner.</summary>
public partial class CornerReadings
{
    private static readonly (string Title, string Note, string[] Fields)[] Groups =
    [
        ("Heights and angles now", "", [nameof(Corner.RideHeight), nameof(Corner.Camber), nameof(Corner.Toe), nameof(Corner.UnsprungMass)]),
        ("Spring and damper", "Along their own axes, at the height the car has now",
            [nameof(Corner.SpringAxisLength), nameof(Corner.DamperAxisLength)]),
        ("How the wheel moves", "Any one of four ways; better ones narrow the doubt", [nameof(Corner.Motion)]),
        ("Where the travel ends", "Only if something other than the damper and the bump stop ends it",
            [nameof(Corner.DroopLimit), nameof(Corner.MetalContact)]),
        ("Beside the wheel", "From the wheel that is on the car now",
            [nameof(Corner.Strut), nameof(Corner.DropLink), nameof(Corner.Obstacles)]),
        ("Brake calliper", "Whether a wheel goes over it", [nameof(Corner.CalliperRadius), nameof(Corner.CalliperProud)]),
        ("Steering axis", "For the scrub radius and for full lock", [nameof(Corner.Steering)]),
    ];

    /// <summary>"front-left" and so on.</summary>
    [Parameter] public string? Place { get; set; }

    private CornerPlace? At => Addresses.CornerOf(Place);

    private int Given =>
        At is { } place ? RecordShape.Of<Corner>().Fields.Count(f => f.Kind == FieldKind.Reading && f.Get(Car.At(place)) is not null) : 0;

    private int Askable => At is { } place
        ? RecordShape.Of<Corner>().Fields.Count(f => f.Kind == FieldKind.Reading && FieldSense.Needed(Car.At(place), f, Apart(place)))
        : 0;

    private bool Apart(CornerPlace place) => Car.At(place.Axle()).Layout == SpringLayout.Apart;

    private static CornerPlace Other(CornerPlace place) => BuildsOf.OtherSide(place);

    private void MendCorner(CornerPlace place, string words, Func<object?, object?> rework) =>
        Bench.Apply(words, car => car.With(place, (Corner)rework(car.At(place))!));

    /// <summary>What was read on the other side, with the height of this side kept: heights are what differs.</summary>
    private void CopyAcross(CornerPlace place) => Bench.Apply(
        $"Take over readings, {Other(place).Words()} to {place.Words()}",
        car => car.With(place, car.At(Other(place)) with { RideHeight = car.At(place).RideHeight ?? car.At(Other(place)).RideHeight }));
}
