using System.Text.Json;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Workshop.Tests.Linkages;

/// <summary>The corners of the mechanics tests' data/corner-traces.json, typed into a car's hardpoint table as a person would.</summary>
internal static class OracleTables
{
    private static readonly JsonElement Traces = Read("corner-traces.json");

    public static JsonElement Read(string name)
    {
        string path = Path.Combine(Demo.Root, "tests", "Cornerwright.Mechanics.Tests", "Motion", "Hardpoints", "data", name);
        return JsonDocument.Parse(File.ReadAllText(path)).RootElement;
    }

    /// <summary>A car whose front left corner is the oracle's; wheel and tyre are left out.</summary>
    public static Car Car(string id)
    {
        JsonElement inputs = Traces.GetProperty(id).GetProperty("inputs");
        var table = Linkage(inputs);
        table = Station(table, inputs, "spring", (t, on, along, moving, body) =>
            t with { SpringOn = on, SpringAlong = along, SpringMoving = moving, SpringBody = body });
        table = Station(table, inputs, "damper", (t, on, along, moving, body) =>
            t with { DamperOn = on, DamperAlong = along, DamperMoving = moving, DamperBody = body });
        if (inputs.TryGetProperty("rocker", out JsonElement rocker))
        {
            var (pivot, axis) = (Triple(rocker, "b_pivot"), Triple(rocker, "axis"));
            table = table with
            {
                PushrodOuter = Point(Triple(rocker, "pushrod_arm")), PushrodRocker = Point(Triple(rocker, "r_pushrod")),
                    RockerPivot = Point(pivot),
                RockerAxis = Point([pivot[0] + (100 * axis[0]), pivot[1] + (100 * axis[1]), pivot[2] + (100 * axis[2])]),
            };
        }

        var corner = new Corner
        {
            Camber = Typed(inputs.GetProperty("camber_deg").GetDouble(), "deg", Dimension.Angle),
            Toe = Typed(inputs.GetProperty("toe_deg").GetDouble(), "deg", Dimension.Angle),
            Hardpoints = table with { HubFace = Point(Triple(inputs, "wheel_center")) },
        };
        return new Car { Id = id, Name = id, Front = new Axle { Steered = true }, FrontLeft = corner };
    }

    public static Reading Typed(double value, string unit, Dimension dimension) =>
        Reading.Of(FormattableString.Invariant($"{value:R} {unit}"), dimension, source: ReadingSource.Tape);

    public static BodyPoint Point(double[] mm) => new()
    {
        X = Typed(mm[0], "mm", Dimension.Length), Y = Typed(mm[1], "mm", Dimension.Length), Z = Typed(mm[2], "mm", Dimension.Length),
    };

    private static HardpointTable Linkage(JsonElement inputs)
    {
        BodyPoint At(string part, string field) => Point(Triple(inputs.GetProperty(part), field));
        BodyPoint Link(int i, string field) => Point(Triple(inputs.GetProperty("links")[i], field));
        HardpointTable table = inputs.GetProperty("kind").GetString() switch
        {
            "macpherson" => new()
            {
                Kind = LinkageKind.MacPherson, LowerFrontInner = At("arm", "b_front"), LowerRearInner = At("arm", "b_rear"),
                    LowerBall = At("arm", "k_ball"),
                StrutTop = At("strut", "b_top"), StrutLow = At("strut", "k_low"),
            },
            "double_wishbone" => new()
            {
                Kind = LinkageKind.DoubleWishbone, LowerFrontInner = At("lower", "b_front"), LowerRearInner = At("lower", "b_rear"),
                    LowerBall = At("lower", "k_ball"),
                UpperFrontInner = At("upper", "b_front"), UpperRearInner = At("upper", "b_rear"), UpperBall = At("upper", "k_ball"),
            },
            "five_link" => new()
            {
                Kind = LinkageKind.FiveLink, LowerFrontInner = Link(0, "b"), LowerFrontOuter = Link(0, "k"), LowerRearInner = Link(1, "b"),
                    LowerRearOuter = Link(1, "k"),
                UpperFrontInner = Link(2, "b"), UpperFrontOuter = Link(2, "k"), UpperRearInner = Link(3, "b"),
                UpperRearOuter = Link(3, "k"),
            },
            _ => new() { Kind = LinkageKind.SemiTrailing, ArmOuter = At("pivot", "b_outer"), ArmInner = At("pivot", "b_inner") },
        };
        if (inputs.TryGetProperty("tierod", out _))
        {
            table = table with { TieInner = At("tierod", "b_inner"), TieOuter = At("tierod", "k_outer") };
        }

        if (inputs.TryGetProperty("camber_plate", out JsonElement plate))
        {
            double[] top = Triple(inputs.GetProperty("strut"), "b_top"), d = Triple(plate, "direction");
            table = table with { PlateInner = Point([top[0] + (50 * d[0]), top[1] + (50 * d[1]), top[2] + (50 * d[2])]) };
        }

        return table;
    }

    private static HardpointTable Station(
        HardpointTable table, JsonElement inputs, string name,
        Func<HardpointTable, StationCarrier, Reading?, BodyPoint?, BodyPoint?, HardpointTable> put)
    {
        JsonElement s = inputs.GetProperty(name);
        string mount = s.GetProperty("mount").GetString()!;
        if (mount == "strut")
        {
            return put(table, StationCarrier.Strut, Typed(s.GetProperty("along").GetDouble(), "mm", Dimension.Length), null, null);
        }

        BodyPoint body = Point(Triple(s, "b"));
        if (mount != "link")
        {
            var on = mount switch { "knuckle" => StationCarrier.Carrier, "rocker" => StationCarrier.Rocker, "upper" =>
                StationCarrier.UpperArm, _ => StationCarrier.LowerArm };
            return put(table, on, null, Point(Triple(s, "p")), body);
        }

        JsonElement link = inputs.GetProperty("links").EnumerateArray()
            .First(l => l.GetProperty("name").GetString() == s.GetProperty("link").GetString());
        double share = s.GetProperty("fraction").GetDouble();
        double[] from = Triple(link, "b"), to = Triple(link, "k");
        return put(table, StationCarrier.LowerArm, null, Point([.. from.Zip(to, (a, b) => a + (share * (b - a)))]), body);
    }

    private static double[] Triple(JsonElement row, string name) => [.. row.GetProperty(name).EnumerateArray().Select(n => n.GetDouble())];
}
