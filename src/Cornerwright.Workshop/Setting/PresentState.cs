using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Setting;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;

namespace Cornerwright.Workshop.Setting;

/// <summary>Where the numbers of the present state come from.</summary>
public enum PresentFrom
{
    /// <summary>Read after the work.</summary>
    Occasion,

    /// <summary>Read when the car was measured.</summary>
    Measured,

    /// <summary>Nobody read them: where the parts should carry the car.</summary>
    Predicted,
}

/// <summary>One wheel as it stands.</summary>
/// <param name="Height">Hub centre to arch edge, m.</param>
/// <param name="Load">Contact load, N.</param>
/// <param name="Camber">rad; null where it was not read.</param>
/// <param name="Toe">rad; null where it was not read.</param>
public sealed record WheelState(double Height, double Load, double? Camber, double? Toe);

/// <summary>The car before anything is turned.</summary>
/// <param name="Build">Parts and settings then.</param>
/// <param name="Wheels">In the order of <see cref="Places.Corners"/>.</param>
internal sealed record PresentState(PresentFrom From, Build Build, IReadOnlyList<WheelState> Wheels, IReadOnlyList<PlacedLoad> Aboard,
    string LoadsFrom)
{
    private const double Gravity = Mechanics.Loads.RideRates.StandardGravity;

    /// <summary>Gathers the newest readings of a build, or says which are missing.</summary>
    public static Checked<PresentState> Of(Car car, Build build)
    {
        var occasion = Newest(car, build);
        var from = occasion is not null ? PresentFrom.Occasion : car.MeasuredBuild == build.Id ? PresentFrom.Measured
            : PresentFrom.Predicted;
        var problems = new List<Problem>();
        string caseId = occasion?.LoadCase is { Length: > 0 } named ? named
            : from == PresentFrom.Measured && car.MeasuredLoadCase.Length > 0 ? car.MeasuredLoadCase
            : car.LoadCases.FirstOrDefault()?.Id ?? "";
        var loadCase = car.LoadCases.FirstOrDefault(c => c.Id == caseId);
        bool scales = occasion is not null && Places.Corners.All(p => occasion.At(p).Load is not null);
        if (occasion is not null && !scales && Places.Corners.Any(p => occasion.At(p).Load is not null))
        {
            var missing = Places.Corners.Where(p => occasion.At(p).Load is null).Select(p => p.Words());
            problems.Add(new Problem($"readings {occasion.Name} / load on the scale", "", "all four wheels or none",
                $"Read {string.Join(", ", missing)} too, all four at once, or leave all four out."));
        }

        var wheels = new List<WheelState>();
        foreach (var place in Places.Corners)
        {
            string where = place.Words();
            var corner = car.At(place);
            if (corner.RideHeight is null)
            {
                problems.Add(
                    new Problem($"{where} / hub centre to arch edge", "", "150 to 800 mm", "Measure it: all travel counts from there."));
            }

            double load = scales ? occasion!.At(place).Load!.Si * Gravity : loadCase?.At(place) is { } kg
                ? (kg.Si * Gravity) + LoadAboard.ShareOf(car, place, occasion?.Aboard ?? []) : double.NaN;
            if (double.IsNaN(load))
            {
                problems.Add(new Problem($"{where} / load on the scale", "", "20 to 3000 kg",
                    "Put the car on scales, or give the load case its loads."));
            }

            double height = from switch
            {
                PresentFrom.Occasion => occasion!.At(place).Height?.Si ?? double.NaN,
                PresentFrom.Measured => corner.RideHeight?.Si ?? double.NaN,
                _ => Predicted(car, build, place, corner.RideHeight?.Si ?? double.NaN, load, problems),
            };
            if (from == PresentFrom.Occasion && double.IsNaN(height))
            {
                problems.Add(new Problem($"readings {occasion!.Name} / {where} / hub centre to arch edge", "", "150 to 800 mm",
                    "Roll the car, let it settle, and read all four heights."));
            }

            wheels.Add(from == PresentFrom.Occasion
                ? new WheelState(height, load, occasion!.At(place).Camber?.Si, occasion.At(place).Toe?.Si)
                : new WheelState(height, load, from == PresentFrom.Measured ? corner.Camber?.Si : null,
                    from == PresentFrom.Measured ? corner.Toe?.Si : null));
        }

        return problems.Count > 0 ? Checked<PresentState>.Wrong(problems)
            : Checked<PresentState>.From(new PresentState(from, occasion?.Fitted ?? build, wheels, occasion?.Aboard ?? [],
                scales ? "read on scales" : $"load case {loadCase!.Name}"));
    }

    /// <summary>
    /// The last readings taken with the parts that the build has now; settings may have changed since. Null where there are none.
    /// </summary>
    public static Occasion? Newest(Car car, Build build) =>
        car.Occasions.LastOrDefault(o => o.Fitted.Id == build.Id && Places.Corners.All(p => SameParts(o.Fitted.At(p), build.At(p))));

    private static bool SameParts(CornerBuild a, CornerBuild b) =>
        a.Stack.SequenceEqual(b.Stack, StringComparer.Ordinal) && Bare(a) == Bare(b) with { Stack = a.Stack };

    private static CornerBuild Bare(CornerBuild corner) =>
        corner with { PerchHeight = null, BodyHeight = null, Slide = null, ClampCamber = null, Pressure = null };

    private static double Predicted(Car car, Build build, CornerPlace place, double reference, double load, List<Problem> problems)
    {
        var plan = CornerPlan.Compile(car, build, place, CarLearning.InUse(car));
        IReadOnlyList<MissingReading> missing = plan.CanRide ? [] : plan.MissingForRide(CornerPlan.Wanted);
        if (missing.Count > 0 || !double.IsFinite(load))
        {
            problems.AddRange(missing.Distinct().Select(m => new Problem($"{place.Words()} / {m.Label}", "", "a reading",
                "Without it nobody can say where the car will stand; or read the heights after the work and enter them.")));
            return double.NaN;
        }

        var numbers = new SolvedCorner(plan);
        numbers.MakeMotion();
        double travel = numbers.Read.TravelUnder(load);
        if (double.IsNaN(travel))
        {
            problems.Add(new Problem($"{place.Words()} / ride height", "", "within the travel that the readings cover",
                "The springs of this build do not carry the car within reach: look at its verdict first."));
        }

        return reference - travel;
    }
}
