using System.Text.Json;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

/// <summary>The corners of data/corner-traces.json as linkages.</summary>
internal static class TracedCorners
{
    public static readonly JsonElement File = OracleRows.File("corner-traces.json");

    public static CornerLinkage Linkage(string id) => Of(File.GetProperty(id).GetProperty("inputs"));

    /// <summary>The inputs of any file of this kind, whatever carries spring, damper and pushrod.</summary>
    public static CornerLinkage Of(JsonElement inputs) => new Reading(inputs).Linkage();

    private sealed class Reading(JsonElement inputs)
    {
        private readonly List<MeasuredJoint> joints = [];
        private readonly List<LinkageTie> ties = [];
        private readonly Dictionary<string, (int Body, int Knuckle)> links = [];
        private (int First, int Second, int Ball) lower, upper;
        private (int Top, int Low) strut;

        public CornerLinkage Linkage()
        {
            Ties();
            LinkageStation spring = Station("spring"), damper = Station("damper");
            Vec3 plate = inputs.TryGetProperty("camber_plate", out JsonElement slide) ? slide.Triple("direction") : default;
            return new(
                joints, ties, inputs.Point("wheel_center"), inputs.Radians("camber_deg"), inputs.Radians("toe_deg"),
                inputs.Metres("tyre_radius"), spring, damper, plate);
        }

        private void Ties()
        {
            switch (inputs.GetProperty("kind").GetString())
            {
                case "macpherson":
                    if (inputs.TryGetProperty("arm", out _))
                    {
                        lower = Arm("arm");
                    }
                    else
                    {
                        Links();
                    }

                    JsonElement ends = inputs.GetProperty("strut");
                    strut = (Joint("strut top", ends, "b_top"), Joint("strut low", ends, "k_low"));
                    ties.Add(new LinkageTie.Strut(strut.Top, strut.Low));
                    break;
                case "double_wishbone":
                    lower = Arm("lower");
                    upper = Arm("upper");
                    break;
                case "five_link":
                    Links();
                    break;
                default:
                    JsonElement pivot = inputs.GetProperty("pivot");
                    ties.Add(new LinkageTie.Hinge(Joint("outer bushing", pivot, "b_outer"), Joint("inner bushing", pivot, "b_inner")));
                    break;
            }

            if (inputs.TryGetProperty("tierod", out JsonElement tieRod))
            {
                bool steers = !inputs.TryGetProperty("steerable", out JsonElement steerable) || steerable.GetBoolean();
                ties.Add(new LinkageTie.Rod(
                    Joint("tie rod inner", tieRod, "b_inner"), Joint("tie rod outer", tieRod, "k_outer"), steers));
            }
        }

        private int Joint(string name, JsonElement part, string field)
        {
            joints.Add(new(name, part.Point(field)));
            return joints.Count - 1;
        }

        private (int First, int Second, int Ball) Arm(string name)
        {
            JsonElement arm = inputs.GetProperty(name);
            var a = (Joint($"{name} front", arm, "b_front"), Joint($"{name} rear", arm, "b_rear"), Joint($"{name} ball", arm, "k_ball"));
            ties.AddRange([new LinkageTie.Rod(a.Item1, a.Item3), new LinkageTie.Rod(a.Item2, a.Item3)]);
            return a;
        }

        private void Links()
        {
            foreach (JsonElement link in inputs.GetProperty("links").EnumerateArray())
            {
                string name = link.GetProperty("name").GetString()!;
                links[name] = (Joint($"{name} inner", link, "b"), Joint($"{name} outer", link, "k"));
                ties.Add(new LinkageTie.Rod(links[name].Body, links[name].Knuckle));
            }
        }

        private LinkageStation Station(string name)
        {
            JsonElement s = inputs.GetProperty(name);
            string mount = s.GetProperty("mount").GetString()!;
            if (mount == "strut")
            {
                return new LinkageStation.OnStrut(strut.Top, strut.Low, s.Metres("along"));
            }

            int body = Joint($"{name} top", s, "b");
            if (mount == "link")
            {
                var (inner, outer) = links[s.GetProperty("link").GetString()!];
                return new LinkageStation.OnRod(body, inner, outer, s.Number("fraction"));
            }

            int moving = Joint($"{name} foot", s, "p");
            var arm = mount == "upper" ? upper : lower;
            return mount switch
            {
                "rocker" => Rocker(name, body, moving),
                "knuckle" => new LinkageStation.OnKnuckle(body, moving),
                _ => new LinkageStation.OnArm(body, moving, arm.First, arm.Second, arm.Ball),
            };
        }

        private LinkageStation.OnRocker Rocker(string name, int body, int moving)
        {
            const int Knuckle = LinkageStation.OnRocker.FromKnuckle;
            JsonElement rocker = inputs.GetProperty("rocker");
            var (first, second, ball) = rocker.GetProperty("pushrod_on").GetString() switch
            {
                "upper" => upper,
                "lower" => lower,
                _ => (Knuckle, Knuckle, Knuckle),
            };
            return new(
                body, moving, Joint($"{name} rocker pivot", rocker, "b_pivot"), rocker.Triple("axis"),
                Joint($"{name} pushrod at rocker", rocker, "r_pushrod"), Joint($"{name} pushrod at arm", rocker, "pushrod_arm"),
                first, second, ball);
        }
    }
}
