namespace Cornerwright.Garage.Chassis;

/// <summary>What holds the wheel.</summary>
public enum LinkageKind
{
    /// <summary>A strut over one lower arm with one ball joint.</summary>
    MacPherson,

    /// <summary>A strut over two lower links, each with a joint of its own on the wheel carrier.</summary>
    MacPhersonTwoLinks,

    /// <summary>An upper and a lower arm.</summary>
    DoubleWishbone,

    /// <summary>Two upper links, two lower links and a tie rod or toe link.</summary>
    FiveLink,

    /// <summary>One arm that carries the wheel and turns about a slanted axis.</summary>
    SemiTrailing,

    /// <summary>A rigid axle for both wheels: a lower and an upper link at each side and a lateral rod.</summary>
    RigidAxle,

    /// <summary>Two trailing arms joined by a cross member that twists.</summary>
    TwistBeam,
}

/// <summary>What a spring, damper or pushrod works on.</summary>
public enum StationCarrier
{
    /// <summary>Along the strut's own axis.</summary>
    Strut,

    LowerArm,
    UpperArm,

    /// <summary>The wheel carrier; on a semi-trailing arm the arm itself.</summary>
    Carrier,

    /// <summary>A rocker that a pushrod turns.</summary>
    Rocker,
}

/// <summary>Which rod the steering rack carries.</summary>
public enum RackRod
{
    /// <summary>The tie rod or toe link.</summary>
    TieRod,

    /// <summary>The lower front link, where two lower links stand for an arm.</summary>
    LowerFrontLink,

    /// <summary>The lower rear link, where two lower links stand for an arm.</summary>
    LowerRearLink,
}

/// <summary>Which of two lower links a spring or damper stands on.</summary>
public enum LowerLink
{
    Rear,
    Front,
}
