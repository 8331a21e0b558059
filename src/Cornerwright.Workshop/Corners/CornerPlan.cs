using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Parts;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Workshop.Allowing;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Fitted;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <summary>A load case and where this corner's load stands in the row of inputs.</summary>
internal readonly record struct CornerLoad(LoadCase Case, Handle Load);

/// <summary>One corner of one build, looked up and laid out: which numbers there are, which are missing, which are assumed.</summary>
internal sealed class CornerPlan
{
    /// <summary>Travel is searched within this range round the reference state unless the motion reaches less far, m.</summary>
    private const double SearchRange = 0.25;

    private CornerPlan(Car car, Build build, CornerPlace place, LearnedState? learned, bool alone)
    {
        (Car, Build, Place) = (car, build, place);
        Path = JsonName(place);
        Inputs = new InputTable(learned);
        Corner = car.At(place);
        Axle = car.At(place.Axle());
        Limits = LimitsInForce.Of(car, build);
        Allowed = CornerAllowances.Of(car, build);
        Now = car.Build(car.MeasuredBuild);
        Parts = CornerParts.Of(car.Parts, build.At(place));
        PartsNow = Now is null ? null : CornerParts.Of(car.Parts, Now.At(place));
        BuildPath = $"builds/{build.Id}/{Path}";
        string nowPath = Now is null ? "now" : $"builds/{Now.Id}/{Path}";

        Station = StationPlan.Compile(Inputs, BuildPath, Corner, Path, build.At(place), Parts, car, Allowed);
        Motion = MotionPlan.Compile(Inputs, car, place, new(nowPath, (Now ?? build).At(place)), new(BuildPath, build.At(place)));
        Loads = [
            .. car.LoadCases.Select(c => new CornerLoad(c, Inputs.Add($"loadCases/{c.Id}/{Path}", $"corner load, {c.Name}", c.At(place))))];
        bool changed = PartsNow is null || PartsNow.Tyre?.Id != Parts.Tyre?.Id;
        Wheel = WheelPlan.Compile(Inputs, BuildPath, Parts, tallest: changed, PartsNow, Path, Allowed);
        WheelNow = PartsNow is null ? null : WheelPlan.Compile(Inputs, nowPath, PartsNow, tallest: false, PartsNow);
        Clearance = ClearancePlan.Compile(this);
        RideFriction = Allowed.RideFriction > 0
            ? Inputs.Assume(Path + "/allowances/rideFriction", "where in its friction the suspension stands", 0, Allowed.RideFriction,
                $"ride height: friction in the suspension, ± {Say.Mm(2 * Allowed.RideFriction)}")
            : Handle.None;
        HasMotion = Motion.Missing.Count == 0;
        HasDamper = HasMotion && All(Station.RodDrop, Station.Body, Station.RodOpen);
        HasSpring = HasMotion && Station.StackComplete && All(Station.SeatDrop, Station.Perch);
        CanRide = HasSpring && Station.Unsprung.IsGiven;
        FindRange();
        Motion.KnowWheel(WheelNow);
        Other = Motion.Paired && HasMotion && !alone
            ? OtherWheel.Compile(this, new CornerPlan(car, build, place.OtherSide(), learned, alone: true)) : null;
    }

    public Car Car { get; }
    public Build Build { get; }
    public CornerPlace Place { get; }

    /// <summary>The corner's name in the document: "frontLeft".</summary>
    public string Path { get; }

    public string BuildPath { get; }
    public Corner Corner { get; }
    public Axle Axle { get; }
    public Limits Limits { get; }
    public CornerAllowances Allowed { get; }

    /// <summary>By how much the wheel stands higher than springs and load say, m: friction holds it. None: not allowed for.</summary>
    public Handle RideFriction { get; }


    /// <summary>The build that was on the car when it was measured.</summary>
    public Build? Now { get; }

    public CornerParts Parts { get; }
    public CornerParts? PartsNow { get; }
    public InputTable Inputs { get; }
    public StationPlan Station { get; }
    public MotionPlan Motion { get; }
    public IReadOnlyList<CornerLoad> Loads { get; }
    public WheelPlan? Wheel { get; }
    public WheelPlan? WheelNow { get; }
    public ClearancePlan Clearance { get; }

    /// <summary>The other wheel of an axle that carries both; null where each wheel moves for itself.</summary>
    public OtherWheel? Other { get; }

    public bool HasMotion { get; }
    public bool HasDamper { get; }
    public bool HasSpring { get; }

    /// <summary>Spring, seats and unsprung mass are known: only a load is needed to find the ride height.</summary>
    public bool CanRide { get; }

    public double LowestTravel { get; private set; } = -SearchRange;
    public double HighestTravel { get; private set; } = SearchRange;

    /// <summary>The load case in which heights are wanted: the first.</summary>
    public const int Wanted = 0;

    /// <summary>Index of the load case with the heaviest load at this corner; -1 where none is known.</summary>
    public int Heaviest => Extreme(+1);

    /// <inheritdoc cref="Heaviest"/>
    public int Lightest => Extreme(-1);

    /// <summary>How far the linkage lets the wheel go, and what ends it; null where no hardpoints say so.</summary>
    public LinkageRange? Linkage { get; private set; }

    /// <param name="car">With its readings and parts.</param>
    /// <param name="build">What is bolted on and how it is set.</param>
    /// <param name="place">Which corner.</param>
    /// <param name="learned">What readings after the work say about the car's numbers; null to go by what was typed alone.</param>
    public static CornerPlan Compile(Car car, Build build, CornerPlace place, LearnedState? learned) =>
        new(car, build, place, learned, alone: false);

    /// <summary>The same corner of a car that stands still: nothing is allowed for but what is not known of its springs.</summary>
    public CornerPlan AtRest() => new(Car, CornerAllowances.AtRest(Car, Build), Place, Inputs.Learned, alone: false);

    public bool HasLoad(int loadCase) => loadCase >= 0 && loadCase < Loads.Count && Loads[loadCase].Load.IsGiven;

    /// <summary>What keeps the spring from being computed.</summary>
    public IReadOnlyList<MissingReading> MissingForSpring() =>
    [
        .. Motion.Missing,
        .. Chosen(Parts.TopMount, "topMount", "a top mount", Station.SeatDrop),
        .. Inputs.Lacking(Station.Perch),
        .. MissingReading.If(!Station.Stack.Any(s => s.Spring is not null), BuildPath + "/stack", "a spring"),
        .. Station.Stack.Where(s => !s.Complete).SelectMany(LackingIn),
    ];

    /// <summary>What keeps the damper's travel from being computed.</summary>
    public IReadOnlyList<MissingReading> MissingForDamper() =>
    [
        .. Motion.Missing,
        .. Chosen(Parts.TopMount, "topMount", "a top mount", Station.RodDrop),
        .. Chosen(Parts.Damper, "damper", "a damper", Station.Body, Station.RodOpen),
    ];

    /// <summary>What keeps the ride height from being computed.</summary>
    public IReadOnlyList<MissingReading> MissingForRide(int loadCase) =>
    [
        .. MissingForSpring(),
        .. Inputs.Lacking(Station.Unsprung),
        .. loadCase >= 0 && loadCase < Loads.Count ? Inputs.Lacking(Loads[loadCase].Load) : [new("loadCases", "a load case")],
    ];

    public IReadOnlyList<MissingReading> MissingForStop() =>
        [.. MissingForDamper(), .. Chosen(Parts.BumpStop, "bumpStop", "a bump stop", Station.StopLength)];

    /// <summary>What keeps it from being known where the bump stop is fully compressed.</summary>
    public IReadOnlyList<MissingReading> MissingForSpent() =>
        [.. MissingForStop(), .. Parts.BumpStop is null ? [] : Inputs.Lacking(Station.StopSpent)];

    private IEnumerable<MissingReading> LackingIn(StackSlot slot)
    {
        var numbers = Inputs.Lacking(slot.Free, slot.Solid, slot.Rate).ToList();
        return numbers.Count > 0 ? numbers
            : [new($"parts/springs/{slot.Part.Id}/curve", $"a curve of {slot.Part.Name} whose force rises with its deflection")];
    }

    // A part that the build does not name is chosen first; then its numbers are asked for.
    private IEnumerable<MissingReading> Chosen(Part? part, string slot, string words, params IEnumerable<Handle> numbers) =>
        part is null ? [new($"{BuildPath}/{slot}", words)] : Inputs.Lacking(numbers);

    internal static string JsonName(CornerPlace place) => System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(place.ToString());

    private static bool All(params ReadOnlySpan<Handle> numbers)
    {
        foreach (Handle number in numbers)
        {
            if (!number.IsGiven)
            {
                return false;
            }
        }

        return true;
    }

    private int Extreme(int sign)
    {
        int best = -1;
        for (int i = 0; i < Loads.Count; i++)
        {
            if (HasLoad(i) && (best < 0 || sign * Inputs[Loads[i].Load].Value > sign * Inputs[Loads[best].Load].Value))
            {
                best = i;
            }
        }

        return best;
    }

    // A linkage that locks, or a table of readings that ends, narrows the search; a hair inside, so that moved inputs still fit.
    private void FindRange()
    {
        if (!HasMotion)
        {
            return;
        }

        const double Hair = 1e-3;
        var x = Inputs.Best();
        Linkage = Motion.LinkageRange(x, SearchRange);
        var (droop, bump) = Linkage is { } linkage ? (linkage.Least, linkage.Most)
            : Motion.Make(x).ReachableTravel(SearchRange, SearchRange);
        if (Motion.BothWheels)
        {
            // What was sampled ends a little inside the axle's reach.
            (LowestTravel, HighestTravel) = Motion.Make(x).ReachableTravel(SearchRange, SearchRange);
            return;
        }

        LowestTravel = Math.Min(-Hair, droop + (droop > -SearchRange ? Hair : 0));
        HighestTravel = Math.Max(Hair, bump - (bump < SearchRange ? Hair : 0));
    }
}
