using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Weighing;

namespace Cornerwright.Workshop.Tests.Doubt;

/// <summary>
/// Draws the inputs of all four corners at once, each reading once however many
/// corners use it, and counts how often the checks of axles and car hold.
/// </summary>
internal static class WholeCarDraw
{
    public static IReadOnlyList<DrawnShare> Draw(Car car, Build build, int draws, int seed)
    {
        CornerResult[] corners =
            [.. Places.Corners.Select(p => CornerResult.Of(CornerPlan.Compile(car, build, p, CarLearning.InUse(car))))];
        var findings = WholeCarChecks.For(car, corners, 0.95).Where(f => f.Probability is not null).ToList();
        SolvedCorner[] numbers = [.. corners.Select(c => new SolvedCorner(c.Plan))];
        int[] holds = new int[findings.Count];
        var random = new Random(seed);
        for (int d = 0; d < draws; d++)
        {
            var drawn = new Dictionary<string, double>(StringComparer.Ordinal);
            for (int c = 0; c < 4; c++)
            {
                FillShared(corners[c].Plan.Inputs.Inputs, random, drawn, numbers[c].Values);
                numbers[c].Follow(corners[c].Numbers, ReadSet.All(numbers[c].Values.Length), null);
            }

            double ground = car.GroundClearance is { } g
                ? RandomCorner.One(new Input("groundClearance", "", g.Si, g.StandardDeviation, g.Spread), random) : double.NaN;
            for (int f = 0; f < findings.Count; f++)
            {
                double value = Value(findings[f], corners, [.. numbers.Select(n => n.Read)], ground);
                holds[f] += value >= (findings[f].Low?.Si ?? double.NegativeInfinity)
                    && value <= (findings[f].High?.Si ?? double.PositiveInfinity) ? 1 : 0;
            }
        }

        return [.. findings.Select((f, i) =>
            new DrawnShare($"{build.Id} {f.Where} {f.Check}", f.Probability!.Value, holds[i] / (double)draws, !f.FirstOrderEnough, 0, 0))];
    }

    private static void FillShared(IReadOnlyList<Input> inputs, Random random, Dictionary<string, double> drawn, double[] row)
    {
        for (int i = 0; i < row.Length; i++)
        {
            if (!drawn.TryGetValue(inputs[i].Path, out row[i]))
            {
                drawn[inputs[i].Path] = row[i] = inputs[i].Sigma > 0 ? RandomCorner.One(inputs[i], random) : inputs[i].Value;
            }
        }
    }

    // Worked out here from the corners' own values, not by the judge's weighted sums.
    private static double Value(Finding finding, CornerResult[] corners, CornerReader[] n, double ground)
    {
        int left = finding.Axle == AxlePlace.Rear ? 2 : 0;
        return finding.Check switch
        {
            "side-difference" => Height(corners[left], n[left]) - Height(corners[left + 1], n[left + 1]),
            "track-change" => Outward(corners[left], n[left]) + Outward(corners[left + 1], n[left + 1]),
            "ground-clearance" => ground + Math.Min(Grown(corners[0]) - ((n[0].Ride[0] + n[1].Ride[0]) / 2),
                Grown(corners[2]) - ((n[2].Ride[0] + n[3].Ride[0]) / 2)),
            "equal-rolling" => finding.Value!.Value.Si,
            _ => throw new InvalidOperationException($"No second way for {finding.Check}."),
        };
    }

    private static double Height(CornerResult corner, CornerReader n) =>
        n.X[corner.Plan.Inputs.Add(corner.Plan.Path + "/rideHeight", "", corner.Plan.Corner.RideHeight)] - n.Ride[0];

    private static double Outward(CornerResult corner, CornerReader n) =>
        corner.Plan.Wheel!.AxialCentre(n.X) - corner.Plan.WheelNow!.AxialCentre(n.X);

    private static double Grown(CornerResult corner) =>
        (WheelChecks.RollingDiameter(corner.Plan.Parts) - WheelChecks.RollingDiameter(corner.Plan.PartsNow!)) / 2;
}
