using System.Text.Json;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;

namespace Cornerwright.Workshop.Tests.Linkages;

/// <summary>The rigid axle R1 and the twist beam T1 of the mechanics tests' data, typed into both rear corners' tables.</summary>
internal static class AxleTables
{
    public static Car Rigid(Car car)
    {
        JsonElement inputs = OracleTables.Read("R1.json").GetProperty("inputs");
        BodyPoint Link(string name, string field) =>
            At(inputs.GetProperty("links").EnumerateArray().First(l => l.GetProperty("name").GetString() == name), field);
        return On(car, inputs, new HardpointTable
        {
            Kind = LinkageKind.RigidAxle, LowerFrontInner = Link("lower_left", "b"), LowerFrontOuter = Link("lower_left", "k"),
                UpperFrontInner = Link("upper_left", "b"),
            UpperFrontOuter = Link("upper_left", "k"), LateralBody = Link("lateral_rod", "b"), LateralAxle = Link("lateral_rod", "k"),
        });
    }

    public static Car Twist(Car car)
    {
        JsonElement inputs = OracleTables.Read("T1.json").GetProperty("inputs"), pivot = inputs.GetProperty("pivot");
        return On(car, inputs,
            new HardpointTable { Kind = LinkageKind.TwistBeam, ArmOuter = At(pivot, "b_bush"), ShearCentre = At(pivot, "shear_centre") });
    }

    private static Car On(Car car, JsonElement inputs, HardpointTable table)
    {
        table = table with
        {
            SpringOn = StationCarrier.Carrier, DamperOn = StationCarrier.Carrier, HubFace = At(inputs, "wheel_center"),
                SpringMoving = At(inputs.GetProperty("spring"), "p"),
            SpringBody = At(inputs.GetProperty("spring"), "b"), DamperMoving = At(inputs.GetProperty("damper"), "p"),
            DamperBody = At(inputs.GetProperty("damper"), "b"),
        };
        var right =
            new HardpointTable { Kind = table.Kind, SpringOn = StationCarrier.Carrier, DamperOn = StationCarrier.Carrier, Mirrored = true };
        Corner By(Corner corner, HardpointTable points) =>
            corner with { Hardpoints = points, Motion = corner.Motion with { Level = MotionLevel.Hardpoints } };
        return car.With(CornerPlace.RearLeft, By(car.RearLeft, table)).With(CornerPlace.RearRight, By(car.RearRight, right));
    }

    private static BodyPoint At(JsonElement row, string name) =>
        OracleTables.Point([.. row.GetProperty(name).EnumerateArray().Select(n => n.GetDouble())]);
}
