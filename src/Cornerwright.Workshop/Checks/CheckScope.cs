namespace Cornerwright.Workshop.Checks;

/// <summary>What of a build has a part in a check: a search that varies one half of the parts asks the other half once.</summary>
internal enum CheckScope
{
    /// <summary>Springs, damper, stops, loads and the wheel's motion; no wheel.</summary>
    Suspension,

    /// <summary>Two parts of the suspension that go together or do not, whatever the car does.</summary>
    Fit,

    /// <summary>Wheel, tyre and spacer against hub, brake and load; no spring.</summary>
    Wheel,

    /// <summary>The wheel as the suspension carries it, among all that stands near it.</summary>
    WheelInCar,
}
