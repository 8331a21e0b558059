namespace Cornerwright.Garage.Chassis;

/// <summary>A corner of the car.</summary>
public enum CornerPlace
{
    FrontLeft,
    FrontRight,
    RearLeft,
    RearRight,
}

/// <summary>Front or rear.</summary>
public enum AxlePlace
{
    Front,
    Rear,
}

/// <summary>Words and relations of places.</summary>
public static class Places
{
    public static IReadOnlyList<CornerPlace> Corners { get; } =
        [CornerPlace.FrontLeft, CornerPlace.FrontRight, CornerPlace.RearLeft, CornerPlace.RearRight];

    public static bool IsLeft(this CornerPlace corner) => corner is CornerPlace.FrontLeft or CornerPlace.RearLeft;

    public static AxlePlace Axle(this CornerPlace corner) =>
        corner is CornerPlace.FrontLeft or CornerPlace.FrontRight ? AxlePlace.Front : AxlePlace.Rear;

    /// <summary>The wheel across the axle.</summary>
    public static CornerPlace OtherSide(this CornerPlace corner) => corner switch
    {
        CornerPlace.FrontLeft => CornerPlace.FrontRight,
        CornerPlace.FrontRight => CornerPlace.FrontLeft,
        CornerPlace.RearLeft => CornerPlace.RearRight,
        _ => CornerPlace.RearLeft,
    };

    /// <summary>"front left" and so on.</summary>
    public static string Words(this CornerPlace corner) => corner switch
    {
        CornerPlace.FrontLeft => "front left",
        CornerPlace.FrontRight => "front right",
        CornerPlace.RearLeft => "rear left",
        _ => "rear right",
    };

    public static string Words(this AxlePlace axle) => axle == AxlePlace.Front ? "front" : "rear";
}
