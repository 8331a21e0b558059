using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Linkages;
using Cornerwright.Workshop.Ranking;

namespace Cornerwright.Workshop.Corners;

/// <summary>The corners of an axle.</summary>
internal static class Axles
{
    public static CornerPlace Left(this AxlePlace axle) => axle == AxlePlace.Front ? CornerPlace.FrontLeft : CornerPlace.RearLeft;

    public static CornerPlace Right(this AxlePlace axle) => axle == AxlePlace.Front ? CornerPlace.FrontRight : CornerPlace.RearRight;

    public static AxlePlace Other(this AxlePlace axle) => axle == AxlePlace.Front ? AxlePlace.Rear : AxlePlace.Front;

    /// <summary>What carries the wheels of an axle, by what was chosen or by a table of hardpoints at either corner.</summary>
    public static AxleKind KindOf(Car car, AxlePlace axle)
    {
        var chosen = car.At(axle).Kind;
        if (chosen != AxleKind.Independent)
        {
            return chosen;
        }

        foreach (var place in (ReadOnlySpan<CornerPlace>)[axle.Left(), axle.Right()])
        {
            if (LinkageOf.TableOf(car, place)?.Kind is LinkageKind.RigidAxle or LinkageKind.TwistBeam)
            {
                return LinkageOf.TableOf(car, place)!.Kind == LinkageKind.RigidAxle ? AxleKind.RigidAxle : AxleKind.TwistBeam;
            }
        }

        return AxleKind.Independent;
    }
}
