using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Web.Components.Linkages;

namespace Cornerwright.Web.Tests.Linkages;

/// <summary>The demo car with an invented strut table at its front left, and the right wheel mirrored.</summary>
internal static class LinkageCars
{
    public const string Block =
        "Point\tX\tY\tZ\tTolerance\nCentre of the hub's face\t2\t690\t311\t1\nLower arm, front pivot\t18.5\t371\t214\t2\nLower arm, rear "
            + "pivot\t-276\t388\t208.5\t2\n" +
        "Lower ball joint\t6\t703\t186\t2\nTie rod, inner joint\t-142\t352\t274\t2\nTie rod, outer "
            + "joint\t-128\t690\t262\t2\nStrut top\t-31\t583\t846\t2\nLower point on the strut\t-4\t668\t402\t2\n";

    public static HardpointTable Table { get; } =
        HardpointBlock.Read(new HardpointTable(), Block, Units.Millimetre, ReadingSource.Tape).Value;

    public static Car Car { get; } = Demo(DemoCar.Read());

    public static LinkageSetting Present { get; } = LinkageSetting.Of(Car, CornerPlace.FrontLeft, Car.Build(Car.MeasuredBuild), null).Value;

    private static Car Demo(Car car) => car
        .With(CornerPlace.FrontLeft, car.FrontLeft with { Hardpoints = Table })
        .With(CornerPlace.FrontRight, car.FrontRight with { Hardpoints = new HardpointTable { Mirrored = true } });
}
