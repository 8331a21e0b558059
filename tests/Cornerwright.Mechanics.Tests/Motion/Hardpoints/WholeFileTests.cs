using System.Text.Json;
using System.Text.Json.Nodes;
using Cornerwright.Mechanics.Motion.Hardpoints.Axles;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

/// <summary>
/// Files of independent rows as a whole: inputs and every sweep, whatever the linkage's kind and whatever carries
/// spring, damper and pushrod. A folder of more such files is checked too where CORNERWRIGHT_KINEMATICS names it.
/// </summary>
public sealed class WholeFileTests
{
    private static readonly string[] Corners = ["M1", "M3", "W1", "W3", "F1", "S1"];

    [Fact]
    public void Every_sweep_of_every_file_within_its_tolerance()
    {
        // The files at hand: corners are put together from their inputs and rows; axles are stored whole.
        var files = Corners.Select(Together).Concat([OracleRows.File("R1.json"), OracleRows.File("T1.json")]).ToList();
        if (Environment.GetEnvironmentVariable("CORNERWRIGHT_KINEMATICS") is { Length: > 0 } folder)
        {
            files.AddRange(
                Directory.GetFiles(folder, "*.json").Order(StringComparer.Ordinal).Select(
                    f => JsonDocument.Parse(File.ReadAllText(f)).RootElement));
        }

        int rows = 0;
        foreach (JsonElement file in files)
        {
            int here = Check(file);
            Assert.True(here > 0, $"{Name(file)}: no row was compared");
            rows += here;
        }

        Assert.InRange(rows, 350, int.MaxValue);
    }

    private static int Check(JsonElement file)
    {
        JsonElement inputs = file.GetProperty("inputs");
        string id = Name(file);
        int rows = 0;
        switch (inputs.GetProperty("kind").GetString())
        {
            case "rigid_axle":
                var axle = new RigidAxle(RigidAxleTests.Points(inputs));
                foreach (JsonProperty sweep in file.GetProperty("results").EnumerateObject().Where(
                    s => s.Name is "heave_sweep" or "roll_sweep" or "one_wheel"))
                {
                    rows += RigidAxleTests.CheckSweep(id, axle, sweep.Name, sweep.Value);
                }

                return rows;
            case "twist_beam":
                var beam = new TwistBeam(TwistBeamTests.Points(inputs));
                foreach (JsonProperty sweep in file.GetProperty("results").EnumerateObject())
                {
                    rows += TwistBeamTests.CheckSweep(
                        id, beam, sweep.Name, sweep.Name == "heave_sweep" ? AxleMovement.Heave : AxleMovement.Roll, sweep.Value);
                }

                return rows;
            default:
                CornerLinkage corner = TracedCorners.Of(inputs);
                var (pairs, sweeps) = (new List<JsonProperty>(), new List<JsonProperty>());
                foreach (JsonProperty result in file.GetProperty("results").EnumerateObject())
                {
                    (result.Name.StartsWith("steering_pair", StringComparison.Ordinal) ? pairs : sweeps).Add(result);
                }

                rows += CornerRowsTests.CheckAll(
                    id, corner, sweeps, inputs.GetProperty("antis"), inputs.GetProperty("axle").GetString() == "front");
                return rows + pairs.Sum(p => SteeringTests.CheckPairs(id, new(corner, corner.Mirrored()), inputs, p.Value));
        }
    }

    private static string Name(JsonElement file) =>
        file.GetProperty("inputs") is var inputs && inputs.TryGetProperty("id", out JsonElement id)
        ? id.GetString()! : inputs.GetProperty("kind").GetString()!;

    private static JsonElement Together(string id)
    {
        JsonElement traced = TracedCorners.File.GetProperty(id);
        var inputs = JsonNode.Parse(traced.GetProperty("inputs").GetRawText())!.AsObject();
        var rows = JsonNode.Parse(OracleRows.File(id + ".json").GetRawText())!.AsObject();
        var results = rows["sweeps"]!.DeepClone().AsObject();
        if (traced.TryGetProperty("steering_pair_travel0", out JsonElement pair))
        {
            results["steering_pair_travel0"] = JsonNode.Parse(pair.GetRawText());
        }

        inputs["antis"] = rows["antis"]!.DeepClone();
        (inputs["id"], inputs["axle"]) = (id, rows["axle"]!.DeepClone());
        var file = new JsonObject { ["inputs"] = inputs, ["results"] = results };
        return JsonDocument.Parse(file.ToJsonString()).RootElement;
    }
}
