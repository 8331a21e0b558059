using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Parts;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <summary>One gap reading: where its numbers stand in the row of inputs.</summary>
internal readonly record struct GapSlot(WheelFeature From, Mechanics.Clearance.GapDirection Direction, double Clock, Handle Gap,
    Handle Travel, Handle Steer);

/// <summary>One thing that the wheel may touch.</summary>
/// <param name="Piece">A piece of the strut; null for an obstacle known by its gaps.</param>
/// <param name="Link">The drop link, which counts to the body though one end moves with the knuckle; null for all else.</param>
internal sealed record ClearanceItem(string Id, string Name, AttachedTo AttachedTo, IReadOnlyList<GapSlot> Gaps, StrutPiece? Piece,
    IReadOnlyList<MissingReading> Missing, DropLinkPlan? Link = null)
{
    /// <summary>How many corners its line has.</summary>
    public int Points => Link is null ? Gaps.Count : 2;
}

/// <summary>Everything near one wheel, and where its numbers stand in the corner's row of inputs.</summary>
internal sealed class ClearancePlan
{
    /// <summary>The bits of tube, perch, spring and helper, which stand first in the list of items.</summary>
    private const ulong StrutPieces = 0b1111;

    /// <summary>Most gaps that are joined to one line; more are refused in words.</summary>
    public const int MostGaps = NearWheelLimits.MostGaps;

    /// <summary>
    /// A perch or spring whose outer diameter nobody gave stands this much outside its bore or register, m. Common practice, no source.
    /// </summary>
    private const double WallEstimate = 0.013;

    private const double PerchDepthEstimate = 0.020;
    private const double TubeEstimate = 0.050;

    /// <summary>
    /// How much of its steer angle a wheel loses per metre of bump with the steering held, 1/m: the tie rod's swing moves a steered wheel
    /// more than a straight one. Invented linkages lose 0 to 1 a metre (docs/theory/motion.md §7); common practice has no figure.
    /// </summary>
    internal const double SteerFadeMiddle = 0.5, SteerFadeSigma = 0.4;

    /// <summary>Of where the axis passes the hub, fore and aft, m: common practice, no source.</summary>
    private const double TrailAtHubSigma = 0.005;

    private ClearancePlan(CornerPlan plan)
    {
        var (corner, table) = (plan.Corner, plan.Inputs);
        Side = plan.Place.IsLeft() ? WheelSide.Left : WheelSide.Right;
        Missing =
        [
            .. MissingReading.If(plan.WheelNow is null, plan.Now is null ? "measuredBuild" : $"builds/{plan.Now.Id}/{plan.Path}/wheel",
                "wheel (with offset), tyre and spacer of the build on which the car was measured"),
            .. MissingReading.If(plan.Wheel is null, plan.BuildPath + "/wheel", "wheel (with offset), tyre, and thickness of a spacer"),
            .. plan.Motion.Missing,
            .. TooMany(plan.Path + "/obstacles", corner.Obstacles.Count, NearWheelLimits.MostThings, "things near the wheel"),
        ];
        var strutItems = Strut(plan).ToList();
        Items = [.. strutItems, .. corner.Obstacles.Take(NearWheelLimits.MostThings).Select((o, i) => Item(plan, o, strutItems.Count + i))];
        var steering = plan.Axle.Steered ? corner.Steering : null;
        string path = plan.Path + "/steering";
        Kingpin = table.Add(path + "/kingpin", "kingpin inclination", steering?.Kingpin);
        Caster = table.Add(path + "/caster", "caster", steering?.Caster);
        HubOffset = table.Add(path + "/hubOffset", "steering axis to hub face", steering?.HubOffset);
        bool rack = plan.Axle.Steered && plan.Motion.ByHardpoints;
        bool axisKnown = rack || (Kingpin.IsGiven && Caster.IsGiven && HubOffset.IsGiven);
        var locks = rack ? SteeringLocks.Of(plan, steering) : axisKnown && steering!.Lock is { } known
            ? new SteeringLocks(known.Si, known.Si) : null;
        (LockLeft, LockRight, LockNote) = (locks?.Left ?? 0, locks?.Right ?? 0, locks?.Note ?? "");
        MissingAtLock = locks is null or { Short: true } ? [.. MissingToSteer(plan, steering, rack)] : [];
        TrailAtHub = !plan.Axle.Steered || rack || !axisKnown ? Handle.None
            : steering?.TrailAtHub is not null ? table.Add(path + "/trailAtHub", "steering axis ahead of the hub", steering.TrailAtHub)
            : table.Assume(path + "/trailAtHub", "steering axis ahead of the hub", 0, TrailAtHubSigma,
                "steering axis: taken to pass the hub's centre at hub height, ± 10 mm fore and aft");
        SteerFade = plan.Axle.Steered && !rack
            ? table.Assume(path + "/steerThroughTravel", "steer angle through travel", SteerFadeMiddle, SteerFadeSigma,
                "steer angle with the steering held: taken to fall by 0.5 ± 0.8 % per 10 mm of bump")
            : Handle.None;
        BumpAtLock = steering?.BumpAtLock?.Si ?? double.PositiveInfinity;
        if (DropLinkPlan.Compile(plan) is { } link)
        {
            Items = [.. Items, new("drop-link", "drop link", AttachedTo.Body, [], null, link.Missing, link)];
        }
    }

    public WheelSide Side { get; }

    public IReadOnlyList<ClearanceItem> Items { get; }

    /// <summary>What keeps every clearance from being computed, in words.</summary>
    public IReadOnlyList<MissingReading> Missing { get; }

    public Handle Kingpin { get; }
    public Handle Caster { get; }
    public Handle HubOffset { get; }

    /// <summary>Of the axis ahead of the hub's centre at hub height; none where the linkage itself says it.</summary>
    public Handle TrailAtHub { get; }

    /// <summary>
    /// Steering lock to the left, rad, at least 0; 0 where the wheel does not steer, its axis is unknown or no lock was given.
    /// </summary>
    public double LockLeft { get; }

    /// <summary>To the right, likewise. Both are the same unless a rack moves the wheel.</summary>
    public double LockRight { get; }

    /// <summary>What keeps the wheel from a lock that was read, in words; empty where nothing does.</summary>
    public string LockNote { get; }

    /// <summary>Share of the steer angle lost per metre of bump; none where the linkage itself says it.</summary>
    public Handle SteerFade { get; }

    public double BumpAtLock { get; }

    /// <summary>True where anything of the body is near the wheel.</summary>
    public bool OnBody => Items.Any(i => i.AttachedTo == AttachedTo.Body);

    /// <summary>
    /// Most travel at a steer, m: where bump at lock is limited, the limit runs in straight lines from full bump straight ahead.
    /// </summary>
    public double BumpAt(double steer, (double Droop, double Bump) range)
    {
        double atLock = Math.Clamp(BumpAtLock, range.Droop, range.Bump), end = steer > 0 ? LockLeft : LockRight;
        double share = end > 0 ? Math.Min(1, Math.Abs(steer) / end) : 0;

        // The line's end may lie a rounding below the limit it runs to.
        return Math.Clamp(range.Bump + ((atLock - range.Bump) * share), range.Droop, range.Bump);
    }

    /// <summary>
    /// What keeps gaps to the body from being known at lock, in words; empty where the wheel does not steer or all is known.
    /// </summary>
    public IReadOnlyList<MissingReading> MissingAtLock { get; }

    public Handle StrutGap { get; private set; }

    /// <summary>True where the strut's line beside the wheel was read.</summary>
    public bool HasStrutLine => StrutGap.IsGiven && StrutReference.IsGiven;

    public Handle StrutLean { get; private set; }
    public Handle StrutReference { get; private set; }
    public WheelFeature StrutFrom { get; private set; }
    public Handle TubeNow { get; private set; }
    public Handle Tube { get; private set; }
    public Handle PerchDiameter { get; private set; }
    public Handle PerchDepth { get; private set; }
    public Handle SpringDiameter { get; private set; }
    public Handle HelperDiameter { get; private set; }

    /// <summary>Place of the helper in the stack; -1 where there is none at either end.</summary>
    public int HelperSlot { get; private set; } = -1;

    public bool HelperBelow { get; private set; }

    private IEnumerable<MissingReading> MissingToSteer(CornerPlan plan, Garage.Chassis.SteeringAxis? steering, bool rack)
    {
        var car = plan.Car;
        if (!plan.Axle.Steered)
        {
            // Some wheels of a car steer: while nobody said which, the front ones may.
            bool nobodySaid = !car.Front.Steered && !car.Rear.Steered && plan.Place.Axle() == AxlePlace.Front;
            return MissingReading.If(nobodySaid, "front/steered", "which axle steers: neither is ticked as steered");
        }

        bool noLock = steering?.Lock is null;
        return rack
            ? [new(plan.Path + "/steering/lock",
                noLock && steering?.RackTravel is null ? "steering lock or rack travel" : "a steering lock that the hardpoints can reach")]
            :
            [
                .. plan.Inputs.Lacking(Kingpin, Caster, HubOffset),
                .. MissingReading.If(noLock, plan.Path + "/steering/lock", "steering lock"),
            ];
    }

    public static ClearancePlan Compile(CornerPlan plan) => new(plan);

    private IEnumerable<ClearanceItem> Strut(CornerPlan plan)
    {
        if (plan.Corner.Strut is not { } strut)
        {
            yield break;
        }

        var (table, parts, path) = (plan.Inputs, plan.Parts, plan.Path + "/strut");
        StrutGap = table.Add(path + "/tyreToTube", "gap tyre to strut tube", strut.TyreToTube);
        StrutLean = strut.Lean is null
            ? table.Assume(path + "/lean", "strut lean", 0, 0.0175, "strut lean against the wheel: not measured, taken as 0 ± 2 deg")
            : table.Add(path + "/lean", "strut lean", strut.Lean);
        StrutReference = table.Add(path + "/lowerReference", "lower reference above the hub", strut.LowerReference);
        StrutFrom = (WheelFeature)strut.From;
        TubeNow = Diameter(table, "parts/dampers/" + plan.PartsNow?.Damper?.Id + "/tubeDiameter", plan.PartsNow?.Damper?.TubeDiameter,
            TubeEstimate, "strut tube on the car");
        Tube =
            Diameter(table, "parts/dampers/" + parts.Damper?.Id + "/tubeDiameter", parts.Damper?.TubeDiameter, TubeEstimate, "strut tube");
        var main = parts.Stack.OfType<Spring>().FirstOrDefault(s => s.Role == SpringRole.Main)
            ?? parts.Stack.OfType<Spring>().FirstOrDefault();
        double coil = (main?.InnerDiameter?.Si ?? TubeEstimate) + (2 * (main?.WireDiameter?.Si ?? WallEstimate));
        SpringDiameter = Diameter(table, "parts/springs/" + main?.Id + "/outerDiameter", main?.OuterDiameter, coil, main?.Name ?? "spring");
        PerchDiameter = Diameter(table, "parts/perches/" + parts.Perch?.Id + "/outerDiameter", parts.Perch?.OuterDiameter,
            (parts.Perch?.Register?.Si ?? coil) + (2 * WallEstimate), parts.Perch?.Name ?? "perch");
        PerchDepth = parts.Perch?.Depth is { } depth ? table.Add($"parts/perches/{parts.Perch.Id}/depth", "depth of the perch", depth)
            : table.Assume($"parts/perches/{parts.Perch?.Id}/depth", "depth of the perch", PerchDepthEstimate, 0.003,
                "perch with its lock ring: taken as 20 mm deep");
        FindHelper(plan);
        var missing = table.Lacking(StrutGap, StrutReference).ToList();
        yield return new("strut-tube", "strut tube", AttachedTo.Knuckle, [], StrutPiece.Tube,
            [.. missing, .. table.Lacking(plan.Station.Body)]);
        List<MissingReading> perch = [.. missing, .. table.Lacking(plan.Station.Perch)];
        yield return new("perch", "perch", AttachedTo.Knuckle, [], StrutPiece.Perch, perch);
        yield return new("spring", "spring", AttachedTo.Knuckle, [], StrutPiece.Spring,
            [.. perch, .. MissingReading.If(!plan.Station.StackComplete, plan.BuildPath + "/stack", "a complete spring stack")]);
        if (HelperSlot >= 0)
        {
            yield return new("helper", "helper spring", AttachedTo.Knuckle, [], StrutPiece.Helper,
                [.. perch, .. MissingReading.If(!plan.Station.StackComplete, plan.BuildPath + "/stack", "a complete spring stack")]);
        }
    }

    private void FindHelper(CornerPlan plan)
    {
        var stack = plan.Station.Stack;
        for (int i = 0; i < stack.Count; i++)
        {
            if (stack[i].Spring is { Role: not SpringRole.Main } helper)
            {
                (HelperSlot, HelperBelow) = (i, i < stack.Count - 1 && stack.Take(i).All(s => s.Spring is null));
                double coil = (helper.InnerDiameter?.Si ?? TubeEstimate) + (2 * (helper.WireDiameter?.Si ?? WallEstimate / 2));
                HelperDiameter =
                    Diameter(plan.Inputs, "parts/springs/" + helper.Id + "/outerDiameter", helper.OuterDiameter, coil, helper.Name);
                return;
            }
        }
    }

    private static ClearanceItem Item(CornerPlan plan, Obstacle obstacle, int place)
    {
        string path = $"{plan.Path}/obstacles/{obstacle.Id}";
        // The same gap written twice in a row is one reading, not two that agree.
        var gaps = obstacle.Gaps.Take(MostGaps).Select((g, i) => (g, i)).Where(n => n.i == 0 || n.g != obstacle.Gaps[n.i - 1]).Select(n =>
        {
            var (g, i) = n;
            return new GapSlot(
            (WheelFeature)g.From,
            g.Direction switch
            {
                Garage.Chassis.GapDirection.Nearest => Mechanics.Clearance.GapDirection.Nearest,
                Garage.Chassis.GapDirection.Radial => Mechanics.Clearance.GapDirection.Radial,
                Garage.Chassis.GapDirection.Outboard => Mechanics.Clearance.GapDirection.AxialOutboard,
                _ => Mechanics.Clearance.GapDirection.AxialInboard,
            },
            g.Clock,
            plan.Inputs.Add($"{path}/gaps/{i}/distance",
                $"gap to {obstacle.Name}{(obstacle.Gaps.Count > 1 ? FormattableString.Invariant($" at {g.Clock:0.#} o'clock") : "")}",
                g.Distance),
            plan.Inputs.Add($"{path}/gaps/{i}/travel", $"travel at which the gap to {obstacle.Name} was read", g.Travel),
            plan.Inputs.Add($"{path}/gaps/{i}/steer", $"steer at which the gap to {obstacle.Name} was read", g.Steer));
        }).ToList();
        return new ClearanceItem(obstacle.Id, obstacle.Name, obstacle.AttachedTo, gaps, null,
            [
                .. MissingReading.If(gaps.Count == 0 || gaps.Any(g => !g.Gap.IsGiven), path, $"a gap to {obstacle.Name}"),
                .. TooMany(path, obstacle.Gaps.Count, MostGaps, $"gaps to {obstacle.Name}"),
            ]);
    }

    // A car file with so many is refused already; a car that comes another way is not judged without them in silence.
    private static IEnumerable<MissingReading> TooMany(string path, int given, int most, string what) =>
        MissingReading.If(given > most, path, $"a shorter list of {what}: {given} are given, {most} can be judged");

    private static Handle Diameter(InputTable table, string path, Garage.Readings.Reading? reading, double estimate, string name) =>
        reading is not null ? table.Add(path, "outer diameter of " + name, reading)
        : table.Assume(path, "outer diameter of " + name, estimate, 0.002,
            FormattableString.Invariant($"outer diameter of {name}: not given, taken as {estimate * 1000:0} mm"));
}
