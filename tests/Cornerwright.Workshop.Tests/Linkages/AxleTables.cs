using System.Text.Json;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;

namespace Cornerwright.Workshop.Tests.Linkages;

/// <summary>The rigid axle R1 and the twist beam T1 of the mechanics tests' data, typed into both corners' tables of an axle.</summary>
internal static class AxleTables
{
    public static Car Rigid(Car car, AxlePlace axle = AxlePlace.Rear)
    {
        JsonElement inputs = OracleTables.Read("R1.json").GetProperty("inputs");
        BodyPoint Link(string name, string field) =>
            At(inputs.GetProperty("links").EnumerateArray().First(l => l.GetProperty("name").GetString() == name), field);
        return On(car, axle, inputs, new HardpointTable
        {
            Kind = LinkageKind.RigidAxle, LowerFrontInner = Link("lower_left", "b"), LowerFrontOuter = Link("lower_left", "k"),
                UpperFrontInner = Link("upper_left", "b"),
            UpperFrontOuter = Link("upper_left", "k"), LateralBody = Link("lateral_rod", "b"), LateralAxle = Link("lateral_rod", "k"),
        });
    }

    public static Car Twist(Car car, AxlePlace axle = AxlePlace.Rear)
    {
        JsonElement inputs = OracleTables.Read("T1.json").GetProperty("inputs"), pivot = inputs.GetProperty("pivot");
        return On(car, axle, inputs,
            new HardpointTable { Kind = LinkageKind.TwistBeam, ArmOuter = At(pivot, "b_bush"), ShearCentre = At(pivot, "shear_centre") });
    }

    /// <summary>The right side of the rigid axle as its rows have it, whose links are no mirror image of the left ones.</summary>
    public static HardpointTable RigidRight(HardpointTable left)
    {
        JsonElement inputs = OracleTables.Read("R1.json").GetProperty("inputs");
        BodyPoint Link(string name, string field) =>
            At(inputs.GetProperty("links").EnumerateArray().First(l => l.GetProperty("name").GetString() == name), field);
        BodyPoint Over(BodyPoint? p) => p! with { Y = OracleTables.Typed(-1000 * p!.Y!.Si, "mm", Dimension.Length) };
        return left with
        {
            LowerFrontInner = Link("lower_right", "b"), LowerFrontOuter = Link("lower_right", "k"),
            UpperFrontInner = Link("upper_right", "b"), UpperFrontOuter = Link("upper_right", "k"),
            LateralBody = null, LateralAxle = null, HubFace = Over(left.HubFace),
            SpringMoving = Over(left.SpringMoving), SpringBody = Over(left.SpringBody),
            DamperMoving = Over(left.DamperMoving), DamperBody = Over(left.DamperBody),
        };
    }

    private static Car On(Car car, AxlePlace axle, JsonElement inputs, HardpointTable table)
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
        var (l, r) = axle == AxlePlace.Front ? (CornerPlace.FrontLeft, CornerPlace.FrontRight)
            : (CornerPlace.RearLeft, CornerPlace.RearRight);
        return car.With(l, By(car.At(l), table)).With(r, By(car.At(r), right));
    }

    private static BodyPoint At(JsonElement row, string name) =>
        OracleTables.Point([.. row.GetProperty(name).EnumerateArray().Select(n => n.GetDouble())]);
}
