using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Setting;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Remembering;

/// <summary>One corner's height, as the verdict said it and as it was read.</summary>
/// <param name="Predicted">Hub centre to arch edge, m.</param>
/// <param name="Doubt">Two standard deviations of the prediction, m.</param>
/// <param name="Measured">m.</param>
public readonly record struct HeightPair(CornerPlace Corner, double Predicted, double Doubt, double Measured)
{
    /// <summary>Measured less predicted, m: positive where the car stands higher than it was said to.</summary>
    public double Miss => Measured - Predicted;
}

/// <summary>
/// Heights read at one time against those predicted from the readings on which the car was judged then, learned corrections left out.
/// </summary>
/// <param name="Date">The latest date of its readings; null where none has one.</param>
public sealed record HeightRecord(Occasion Occasion, DateOnly? Date, IReadOnlyList<HeightPair> Heights)
{
    /// <summary>
    /// In order of time. Occasions in another load case than the one in which heights are wanted have nothing to be compared with.
    /// </summary>
    public static IReadOnlyList<HeightRecord> Of(Car car)
    {
        ArgumentNullException.ThrowIfNull(car);
        string wanted = car.LoadCases.Count > 0 ? car.LoadCases[0].Id : "";

        // What was said before anything was read: of springs that had still to set, by the numbers as typed.
        var before = car with { UseLearned = false, Occasions = [] };
        return [.. car.Occasions
            .Where(o => (o.LoadCase.Length == 0 || o.LoadCase == wanted) && o.Aboard.Count == 0)
            .Select(o => At(before, o))
            .Where(r => r.Heights.Count > 0)
            .OrderBy(r => r.Date ?? DateOnly.MinValue)];
    }

    private static HeightRecord At(Car car, Occasion occasion)
    {
        var judged = Judge.Build(car, occasion.Fitted, JudgeOptions.FindingsOnly);
        var pairs = new List<HeightPair>();
        foreach (var corner in Places.Corners)
        {
            // The reference height and the figure of how much higher the body stands are both hub centre to arch edge.
            if (occasion.At(corner).Height is { } measured && car.At(corner).RideHeight is { } reference
                && judged.Figures.FirstOrDefault(f => f.Name == "height-change" && f.Corner == corner) is { } change)
            {
                pairs.Add(new HeightPair(corner, reference.Si + change.Value.Si, change.Doubt?.Si ?? 0, measured.Si));
            }
        }

        var dates = Places.Corners.Select(c => occasion.At(c).Height?.Date).Where(d => d is not null);
        return new HeightRecord(occasion, dates.Max(), pairs);
    }
}
