using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Ranking;

namespace Cornerwright.Workshop.Corners;

/// <summary>The corners of an axle.</summary>
internal static class Axles
{
    public static CornerPlace Left(this AxlePlace axle) => axle == AxlePlace.Front ? CornerPlace.FrontLeft : CornerPlace.RearLeft;

    public static CornerPlace Right(this AxlePlace axle) => axle == AxlePlace.Front ? CornerPlace.FrontRight : CornerPlace.RearRight;

    public static AxlePlace Other(this AxlePlace axle) => axle == AxlePlace.Front ? AxlePlace.Rear : AxlePlace.Front;
}
