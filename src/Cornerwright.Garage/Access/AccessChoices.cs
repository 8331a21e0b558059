namespace Cornerwright.Garage.Access;

/// <summary>Where on the car a component is, and how many of it there are.</summary>
public enum ComponentPlace
{
    /// <summary>One at each front wheel.</summary>
    FrontSides,

    /// <summary>One for the whole front axle, e.g. its anti-roll bar.</summary>
    FrontMiddle,

    /// <summary>One at each rear wheel.</summary>
    RearSides,

    /// <summary>One for the whole rear axle.</summary>
    RearMiddle,

    /// <summary>One for the whole car, e.g. the battery.</summary>
    WholeCar,
}

/// <summary>Which part of a build a component is: a change of that part takes this component off.</summary>
public enum BuildRole
{
    None,

    /// <summary>Wheel with its tyre.</summary>
    Wheel,
    Spacer,
    Stack,
    Perch,
    TopMount,
    Damper,

    /// <summary>Bump stop and packers on the rod.</summary>
    BumpStop,
    AntiRollBar,
    BarLink,
}

/// <summary>How far a component must be undone.</summary>
public enum Undone
{
    /// <summary>Right off, out of the way.</summary>
    Off,

    /// <summary>Slackened or unclipped, still on the car.</summary>
    Loose,
}

/// <summary>In which order a ring of fasteners is tightened.</summary>
public enum TighteningPattern
{
    None,

    /// <summary>Crosswise, in two or three rounds.</summary>
    Star,

    /// <summary>A little on each in turn.</summary>
    Alternate,
}

/// <summary>In which state of the car a fastener gets its torque.</summary>
public enum TightenedWhen
{
    /// <summary>Wheel hanging, or on the bench.</summary>
    Unloaded,

    /// <summary>The car's weight on its wheels, at ride height.</summary>
    OnItsWheels,
}

/// <summary>What can hurt someone or break something at a step.</summary>
public enum HazardKind
{
    SpringEnergy,
    BrakeHose,
    SensorWire,
    BatteryNear,
    AirbagWiring,
    HeavyPart,
    DriveShaft,
    Other,
}

/// <summary>When a hazard is there.</summary>
public enum HazardTime
{
    TakingOff,
    Fitting,
    BothWays,
}
