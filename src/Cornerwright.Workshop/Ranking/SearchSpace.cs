using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Learning;
using Cornerwright.Workshop.Scanning;

namespace Cornerwright.Workshop.Ranking;

/// <summary>A choice of stack, perch, mount, damper and stop, by their places in the pool.</summary>
internal readonly record struct SuspensionChoice(int Stack, int Perch, int Mount, int Damper, int Stop);

/// <summary>A choice of wheel, tyre and spacer, by their places in the pool; below 0 for none.</summary>
internal readonly record struct WheelChoice(int Wheel, int Tyre, int Spacer);

/// <summary>
/// Everything a search needs of the car, the wishes and the pool, laid out once: what is wished as limits, perches, stations
/// and stacks ready for the quick evaluation, and how a choice is made into a build.
/// </summary>
internal sealed class SearchSpace
{
    private readonly Reading?[,] _slides;   // [mount, side]

    public SearchSpace(Car car, Wishes wishes, Build start, PartsPool pool, ScanShelf? scans = null)
    {
        (Car, Wishes, Pool, Axle, Scans) = (car, wishes, pool, wishes.Axle, scans ?? ScanShelf.Empty);
        Start = start with { Limits = Wished(start.Limits, LimitsInForce.Of(car, start), wishes) };
        Limits = LimitsInForce.Of(car, Start);
        Certainty = Say.Limit(Limits.Certainty);
        var target = Axle == AxlePlace.Front ? Limits.FrontHeight : Limits.RearHeight;
        HeightTarget = target?.Si ?? double.NaN;
        double band = wishes.CamberBand?.Si ?? UsualCamberBand;
        Camber = wishes.Camber is { } camber ? (camber.Si - band, camber.Si + band) : (double.NegativeInfinity, double.PositiveInfinity);
        Frequency = (wishes.FrequencyLow?.Si ?? double.NegativeInfinity, wishes.FrequencyHigh?.Si ?? double.PositiveInfinity);
        Left = new StaticCorner(left: true, Limits, HeightTarget, target is not null, Camber, Frequency.Low);
        Right = new StaticCorner(left: false, Limits, HeightTarget, target is not null, Camber, Frequency.Low);
        var pieces = Pieces();
        Stacks =
            [.. pool.Stacks.Select(parts => StaticStack.Of(parts, pieces, Say.Limit(Limits.FitTightest), Say.Limit(Limits.FitLoosest)))];
        Perches = [.. pool.Perches.Select(Perch)];
        _slides = new Reading?[pool.TopMounts.Count, 2];
        for (int i = 0; i < pool.TopMounts.Count; i++)
        {
            (_slides[i, 0], _slides[i, 1]) =
                (PlateSetting.Solve(this, pool.TopMounts[i], Axle.Left()), PlateSetting.Solve(this, pool.TopMounts[i], Axle.Right()));
        }

        LeftStations = Stations(Axle.Left());
        RightStations = Stations(Axle.Right());
    }

    /// <summary>
    /// Camber may miss the wish by this where nobody says, rad: half a degree, what an eye sees. Common practice, no source.
    /// </summary>
    private const double UsualCamberBand = 0.5 * Math.PI / 180;

    public Car Car { get; }
    public Wishes Wishes { get; }
    public PartsPool Pool { get; }

    /// <summary>The car's scans, placed.</summary>
    public ScanShelf Scans { get; }

    public AxlePlace Axle { get; }

    /// <summary>The starting build, with the wishes among its limits.</summary>
    public Build Start { get; }

    public Limits Limits { get; }
    public double Certainty { get; }

    /// <summary>Hub to arch, m; NaN for as measured.</summary>
    public double HeightTarget { get; }

    public (double Low, double High) Camber { get; }
    public (double Low, double High) Frequency { get; }
    public StaticCorner Left { get; }
    public StaticCorner Right { get; }
    public StaticStack[] Stacks { get; }
    public StaticPerch[] Perches { get; }
    public StaticStation[] LeftStations { get; }
    public StaticStation[] RightStations { get; }

    public int StationsCount => LeftStations.Length;

    public int StationOf(in SuspensionChoice choice) =>
        (((choice.Mount * Pool.Dampers.Count) + choice.Damper) * Pool.BumpStops.Count) + choice.Stop;

    public SuspensionChoice ChoiceOf(int stack, int perch, int station)
    {
        int stop = station % Pool.BumpStops.Count, rest = station / Pool.BumpStops.Count;
        return new(stack, perch, rest / Pool.Dampers.Count, rest % Pool.Dampers.Count, stop);
    }

    public WheelChoice WheelSetOf(int index)
    {
        int spacer = index % Pool.Spacers.Count, rest = index / Pool.Spacers.Count;
        return new(rest / Pool.Tyres.Count, rest % Pool.Tyres.Count, spacer);
    }

    /// <summary>Still to be paid for both sides, in the car's currency; owned parts cost nothing, unpriced ones count as nothing.</summary>
    public decimal CostOf(in SuspensionChoice c) =>
        2 * (Pool.Stacks[c.Stack].Sum(Price) + Price(Pool.Perches[c.Perch]) + Price(Pool.TopMounts[c.Mount]) + Price(Pool.Dampers[c.Damper])
            + Price(Pool.BumpStops[c.Stop]));

    /// <inheritdoc cref="CostOf(in SuspensionChoice)"/>
    public decimal CostOf(in WheelChoice c) =>
        2 * (Price(Pool.Wheels[c.Wheel]) + Price(Pool.Tyres[c.Tyre]) + Price(Pool.Spacers[c.Spacer]));

    /// <summary>The parts of a choice in the order in which they are named.</summary>
    public IReadOnlyList<Part> PartsOf(in SuspensionChoice s, in WheelChoice w) =>
    [
        .. Pool.Stacks[s.Stack],
        .. new Part?[] { Pool.Perches[s.Perch], Pool.TopMounts[s.Mount], Pool.Dampers[s.Damper], Pool.BumpStops[s.Stop],
            Pool.Wheels[w.Wheel], Pool.Tyres[w.Tyre], Pool.Spacers[w.Spacer] }.OfType<Part>(),
    ];

    /// <summary>The choice as a build, its collars where they were solved.</summary>
    public Build Make(in SuspensionChoice s, in WheelChoice w, double leftPerch, double rightPerch, string id = "choice", string name = "")
    {
        var (left, right) = (Axle.Left(), Axle.Right());
        return (Start with { Id = id, Name = name.Length > 0 ? name : id })
            .With(left, Corner(Start.At(left), s, w, leftPerch, side: 0))
            .With(right, Corner(Start.At(right), s, w, rightPerch, side: 1));
    }

    private CornerBuild Corner(CornerBuild old, in SuspensionChoice s, in WheelChoice w, double perchHeight, int side) =>
        WithStation(WithWheel(old, w), s.Mount, s.Damper, s.Stop, side) with
        {
            Stack = [.. Pool.Stacks[s.Stack].Select(p => p.Id)],
            Perch = Pool.Perches[s.Perch]?.Id ?? "",
            PerchHeight = Perches[s.Perch].Turns ? HeightReading(perchHeight)
                : FixedHeight(Pool.Perches[s.Perch], side == 0 ? Axle.Left() : Axle.Right()),
        };

    /// <summary>A starting build with one wheel set on both sides, for the checks that wheels alone decide.</summary>
    public Build WithWheels(in WheelChoice w)
    {
        var (left, right) = (Axle.Left(), Axle.Right());
        return (Start with { Id = "choice" }).With(left, WithWheel(Start.At(left), w)).With(right, WithWheel(Start.At(right), w));
    }

    /// <summary>The starting build's corner on this mount, its plate not yet moved.</summary>
    public CornerBuild OnMount(CornerPlace place, TopMount? mount) => Start.At(place) with { TopMount = mount?.Id ?? "", Slide = null };

    private CornerBuild WithWheel(CornerBuild old, in WheelChoice w) =>
        old with { Wheel = IdOf(Pool.Wheels, w.Wheel), Tyre = IdOf(Pool.Tyres, w.Tyre), Spacer = IdOf(Pool.Spacers, w.Spacer) };

    private static string IdOf<T>(IReadOnlyList<T?> parts, int place)
        where T : Part => place < 0 ? "" : parts[place]?.Id ?? "";

    private CornerBuild WithStation(CornerBuild old, int mount, int damper, int stop, int side) => old with
    {
        TopMount = Pool.TopMounts[mount]?.Id ?? "",
        Damper = Pool.Dampers[damper]?.Id ?? "",
        BumpStop = Pool.BumpStops[stop]?.Id ?? "",
        Slide = _slides[mount, side] ?? (Pool.TopMounts[mount]?.Id == old.TopMount ? old.Slide : null),
    };

    /// <summary>Every spring and sheet of the pool as the judge would have it, what was learned of it included.</summary>
    private Dictionary<string, StackElement> Pieces()
    {
        var place = Axle.Left();
        IReadOnlyList<string> all = [.. Pool.Springs.Select(s => s.Id), .. Pool.Sheets.Select(s => s.Id)];
        var plan = CornerPlan.Compile(Car, (Start with { Id = "choice" }).With(place, Start.At(place) with { Stack = all }), place,
            CarLearning.InUse(Car));
        var x = plan.Inputs.Best();
        return plan.Station.Stack.Where(s => s.Complete)
            .ToDictionary(s => s.Part.Id, s => SolvedCorner.ElementOf(s, x), StringComparer.Ordinal);
    }

    private StaticStation[] Stations(CornerPlace place)
    {
        int side = place.IsLeft() ? 0 : 1;
        var stations = new StaticStation[Pool.TopMounts.Count * Pool.Dampers.Count * Pool.BumpStops.Count];
        for (int i = 0; i < stations.Length; i++)
        {
            var choice = ChoiceOf(0, 0, i);
            var corner = WithStation(Start.At(place), choice.Mount, choice.Damper, choice.Stop, side);
            stations[i] = StaticStation.Compile(Car, (Start with { Id = "choice" }).With(place, corner), place, HeightTarget);
        }

        return stations;
    }

    private StaticPerch Perch(Perch? perch) => new(
        perch?.Pitch?.Si ?? 0, perch?.Register?.Si ?? double.NaN,
        (FixedHeight(perch, Axle.Left())?.Si ?? double.NaN, FixedHeight(perch, Axle.Right())?.Si ?? double.NaN));

    /// <summary>Where a seat that cannot be turned stands: as in the starting build, else in the first build that has it there.</summary>
    private Reading? FixedHeight(Perch? perch, CornerPlace place) =>
        perch is null ? null
        : new[] { Start }.Concat(Car.Builds).Select(b => b.At(place))
        .FirstOrDefault(c => c.Perch == perch.Id && c.PerchHeight is not null)?.PerchHeight;

    private static Reading? HeightReading(double height) => double.IsFinite(height) ? Setting(height, Units.Millimetre, 1) : null;

    /// <summary>A setting as a person would type it.</summary>
    internal static Reading Setting(double si, Unit unit, int decimals) =>
        new(Quantity.Of(Math.Round(unit.FromSi(si), decimals, MidpointRounding.AwayFromZero), unit), null, ReadingSource.Setting);

    private static decimal Price(Part? part) => part is null || part.Owned ? 0 : part.Price ?? 0;

    private static Limits Wished(Limits own, Limits inForce, Wishes wishes)
    {
        var limits = wishes.Height is not { } height ? own
            : wishes.Axle == AxlePlace.Front ? own with { FrontHeight = height } : own with { RearHeight = height };
        return wishes.LeastGap is not { } gap ? limits : limits with
        {
            TyreToBody = Larger(gap, inForce.TyreToBody),
            TyreToKnuckle = Larger(gap, inForce.TyreToKnuckle),
            RimToAnything = Larger(gap, inForce.RimToAnything),
        };
    }

    private static Reading Larger(Reading wished, Reading? limit) => limit is not null && limit.Si > wished.Si ? limit : wished;
}
