using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Readings;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Numerics;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Linkages;

namespace Cornerwright.Workshop.Corners;

/// <summary>Where the numbers of a corner's motion stand in its row of inputs, and how to make the motion from them.</summary>
internal sealed class MotionPlan
{
    /// <summary>How far an axle is followed either way, m: its motion is sampled once over the whole.</summary>
    private const double UsualAxleTravel = 0.16;

    /// <summary>
    /// Change of a motion ratio that was read at one height only, 1/m: struts gain 0.0006
    /// to 0.0009 a millimetre, springs on arms less or nothing (docs/theory/motion.md §7).
    /// </summary>
    internal const double RatioChange = 0.3, RatioChangeSigma = 0.3;

    /// <summary>
    /// Of a wheel on links of its own where nobody read it: camber gain -0.04 to 0.01 deg/mm, rad/m; and outboard, m/m, as of a roll centre
    /// 40 mm below the ground to 110 mm above it. Common practice, no source (docs/theory/motion.md §7).
    /// </summary>
    private const double Gain = -0.015 * Math.PI / 0.18, GainSigma = 0.0125 * Math.PI / 0.18, Outboard = 0.05, OutboardSigma = 0.05;

    private readonly MotionLevel _level;
    private readonly bool _coilover;
    private readonly Handle _camber, _toe, _clamp, _clampNow, _slide, _slideNow, _springLength, _damperLength;
    private readonly Handle _ratio, _ratioChange, _damperRatio, _damperRatioChange, _gain, _outboard;
    private readonly (Handle Inboard, Handle Above)[] _points;
    private readonly Handle[][] _steps;
    private readonly bool[] _smooth = new bool[7];

    private readonly HardpointPlan? _hardpoints;
    private readonly AxlePlan? _axle;
    private (double Droop, double Bump)? _axleRange;
    private readonly TapeUnknowns? _unknowns;
    private readonly TopMountPlan? _topMount;
    private readonly AxleRollPlan? _roll;

    private MotionPlan(InputTable table, Car car, CornerPlace place, Settings now, Settings then)
    {
        var (corner, layout, path) = (car.At(place), car.At(place.Axle()).Layout, CornerPlan.JsonName(place));
        var motion = corner.Motion;
        (_level, _coilover) = (motion.Level, layout == SpringLayout.Coilover);
        _camber =
            Or(table, path + "/camber", "camber now", corner.Camber, "camber now: not measured, taken as 0 ± 1 deg", 0.5 * Math.PI / 180);
        _toe = Or(table, path + "/toe", "toe now", corner.Toe, "toe now: not measured, taken as 0 ± 0.3 deg", 0.15 * Math.PI / 180);

        // Camber and points were measured with the present build's settings in them: only the change counts.
        _clamp = Or(table, then.Path + "/clampCamber", "camber set at the clamp", then.Build.ClampCamber, "", 0);
        _clampNow = Or(table, now.Path + "/clampCamber", "camber set at the clamp now", now.Build.ClampCamber, "", 0);
        _slide = Or(table, then.Path + "/slide", "slide of the top plate", then.Build.Slide, "", 0);
        _slideNow = Or(table, now.Path + "/slide", "slide of the top plate now", now.Build.Slide, "", 0);
        _springLength = table.Add(path + "/springAxisLength", "spring axis length", corner.SpringAxisLength);
        _damperLength = _coilover ? _springLength : table.Add(path + "/damperAxisLength", "damper axis length", corner.DamperAxisLength);
        path += "/motion";
        _ratio = table.Add(path + "/springRatio", "motion ratio of the spring", motion.SpringRatio);
        string unknown = _level == MotionLevel.Ratios
            ? "change of the motion ratio through travel: not measured, taken as 0.0003 ± 0.0006 1/mm" : "";
        _ratioChange = Or(table, path + "/springRatioChange", "change of the motion ratio", motion.SpringRatioChange, unknown,
            RatioChangeSigma, RatioChange);
        _damperRatio = _coilover ? _ratio : table.Add(path + "/damperRatio", "motion ratio of the damper", motion.DamperRatio);
        _damperRatioChange = _coilover ? _ratioChange : Or(table, path + "/damperRatioChange", "change of the damper's motion ratio",
            motion.DamperRatioChange, unknown, RatioChangeSigma, RatioChange);
        (_gain, _outboard) = HubPath(table, path, motion, Axles.KindOf(car, place.Axle()));
        bool onStrut = _coilover && corner.Strut is not null
            && _level is MotionLevel.Ratios or MotionLevel.PlanarStrut or MotionLevel.Cycled;
        _topMount = _level is MotionLevel.Hardpoints ? null : new TopMountPlan(
            table, CornerPlan.JsonName(place), corner, onStrut, _springLength, now.Build, then.Build, _level != MotionLevel.PlanarStrut);
        _points = [.. new[] { ("lowerInner", motion.LowerInner), ("lowerOuter", motion.LowerOuter), ("upperInner", motion.UpperInner),
            ("upperOuter", motion.UpperOuter), ("strutTop", motion.StrutTop), ("springLower", motion.SpringLower),
            ("springUpper", motion.SpringUpper), ("damperLower", motion.DamperLower), ("damperUpper", motion.DamperUpper) }
            .Select(p => (
                table.Add($"{path}/{p.Item1}/inboard", p.Item1 + " inboard", p.Item2?.Inboard),
                table.Add($"{path}/{p.Item1}/above", p.Item1 + " above", p.Item2?.Above)))];
        _steps = [.. motion.Steps.Select((s, i) => new[]
        {
            table.Add($"{path}/steps/{i}/travel", $"travel of step {i + 1}", s.Travel),
            table.Add($"{path}/steps/{i}/springLength", $"spring axis at step {i + 1}", s.SpringLength),
            table.Add($"{path}/steps/{i}/damperLength", $"damper axis at step {i + 1}", s.DamperLength),
            table.Add($"{path}/steps/{i}/camber", $"camber at step {i + 1}", s.Camber),
            table.Add($"{path}/steps/{i}/toe", $"toe at step {i + 1}", s.Toe),
            table.Add($"{path}/steps/{i}/outboard", $"wheel out at step {i + 1}", s.Outboard),
            table.Add($"{path}/steps/{i}/forward", $"wheel forward at step {i + 1}", s.Forward),
        }).OrderBy(row => row[0].IsGiven ? table[row[0]].Value : 0)];
        bool axle = _level == MotionLevel.Hardpoints && LinkageOf.TableOf(car, place) is { } points && HardpointNeeds.IsAxle(points.Kind);
        _axle = axle ? AxlePlan.Compile(table, car, place) : null;
        _hardpoints = _level == MotionLevel.Hardpoints && !axle ? HardpointPlan.Compile(table, car, place) : null;
        Fore = ForePath.Compile(table, path, car, place);
        _unknowns = TapeUnknowns.Compile(table, path, motion, car.At(place.Axle()).Steered);
        ForeByMean = Axles.KindOf(car, place.Axle()) == AxleKind.RigidAxle;
        _roll = axle ? null : AxleRollPlan.Compile(table, car, place.Axle());
        Missing = axle ? AxlePlan.Missing(car, place) : _level == MotionLevel.Hardpoints ? HardpointPlan.Missing(car, place)
            : FindMissing(table, path);
        ChooseCurves(table);
    }

    /// <summary>Readings without which the motion of spring and damper is unknown.</summary>
    public IReadOnlyList<MissingReading> Missing { get; }

    public Handle ClampCamber => _clamp;

    public Handle Slide => _slide;

    /// <summary>How one corner of a build is set, and where that stands in the document.</summary>
    public readonly record struct Settings(string Path, CornerBuild Build);

    public static MotionPlan Compile(InputTable table, Car car, CornerPlace place, Settings now, Settings then) =>
        new(table, car, place, now, then);

    /// <summary>True where the wheel hangs on an axle that carries both and is known by its points.</summary>
    public bool BothWheels => _axle is not null;

    /// <summary>True where the wheel's pose hangs on the other wheel's travel too.</summary>
    public bool Paired => _axle is not null || _roll is not null;

    /// <summary>How the wheel moves along the car; null where the motion itself says it.</summary>
    public ForePath? Fore { get; }

    /// <summary>True where one straight axle moves both wheels along the car alike.</summary>
    public bool ForeByMean { get; }

    /// <summary>Where the hubs stand inside the track, by the wheel on the car now.</summary>
    public void KnowWheel(WheelPlan? now)
    {
        if (_roll is not null)
        {
            _roll.WheelNow = now;
        }
    }

    /// <summary>True when the wheel's way is that of its linkage in three dimensions, steering included.</summary>
    public bool ByHardpoints => _hardpoints is not null && Missing.Count == 0;

    /// <summary>How far the linkage goes and which of its ties ends it; null at other levels.</summary>
    public LinkageRange? LinkageRange(Reader x, double limit) =>
        _axle is not null ? RangeOfAxle(x, limit) : ByHardpoints
            ? _hardpoints!.Range(x, x[_camber], x[_toe], x[_slide] - x[_slideNow], ClampChange(x), limit) : null;

    /// <summary>
    /// How far the wheel is turned against its strut since then, rad. More than the camber changes: the strut leans back between its top
    /// and the ball joint while the wheel turns about the clamp.
    /// </summary>
    public double ClampTurn(Reader x)
    {
        double change = ClampChange(x);
        return change == 0 ? 0
            : _hardpoints is { } points ? points.ClampTurn(x, x[_camber], x[_toe], x[_slide] - x[_slideNow], change)
            : _topMount?.ClampTurn(x, change) ?? change;
    }

    /// <summary>Change of the camber set at the clamp against the measured state, rad.</summary>
    public double ClampChange(Reader x) => x[_clamp] - x[_clampNow];

    /// <summary>The motion with these numbers. Only to be asked when nothing is <see cref="Missing"/>.</summary>
    public CornerMotion Make(Reader x) => Make(x, ClampChange(x), x[_slide] - x[_slideNow]);

    /// <summary>The motion as it was when the car was measured.</summary>
    public CornerMotion MakeNow(Reader x) => Make(x, 0, 0);

    /// <summary>True when plate or clamp are to stand as they stood when the car was measured.</summary>
    public bool AsMeasured(Reader x) => ClampChange(x) == 0 && x[_slide] == x[_slideNow];

    private CornerMotion Make(Reader x, double clampChange, double slide)
    {
        var together = Together(x, clampChange, slide);
        return _roll is null ? together : new RollingMotion(together, _roll.Roll(x));
    }

    private CornerMotion Together(Reader x, double clampChange, double slide)
    {
        double camber = x[_camber] + clampChange;
        if (_topMount is null)
        {
            return Make(x, camber, clampChange, slide);
        }

        // A strut known from the front knows itself what its plate does.
        double taken = _level == MotionLevel.PlanarStrut ? 0 : slide;
        return _topMount.After(Make(x, camber + _topMount.CamberBySlide(x, taken), clampChange, slide), x, taken, clampChange);
    }

    // At this camber; what plate and clamp do beyond it comes on top unless the linkage itself is known.
    private CornerMotion Make(Reader x, double camber, double clampChange, double slide)
    {
        switch (_level)
        {
            case MotionLevel.Hardpoints when _axle is not null:
                var lengths = (x.Optional(_springLength), x.Optional(_coilover ? _springLength : _damperLength));
                return _axle.Motion(x, camber, x[_toe], lengths, _axleRange ?? AxleRange(RangeOfAxle(x, UsualAxleTravel)));
            case MotionLevel.Hardpoints:
                return _hardpoints!.Motion(
                    x, x[_camber], x[_toe], slide, clampChange, x.Optional(_springLength),
                    x.Optional(_coilover ? _springLength : _damperLength));
            case MotionLevel.PlanarStrut:
                var points = new PlanarStrutPoints(Point(x, 0), Point(x, 1), Point(x, 4), Has(5) ? Point(x, 5) : Point(x, 1));
                return new PlanarStrutMotion(points, camber, x[_toe], _unknowns!.BumpSteer(x), -slide, 0, x.Optional(_springLength));
            case MotionLevel.PlanarWishbone:
                return new PlanarWishboneMotion(
                    new PlanarWishbonePoints(Point(x, 2), Point(x, 3), Point(x, 0), Point(x, 1)),
                    camber,
                    new PlanarPickup(Point(x, 6), Point(x, 5), PickupPart.LowerArm, x.Optional(_springLength)),
                    _coilover || !Has(7) || !Has(8)
                        ? new PlanarPickup(Point(x, 6), Point(x, 5), PickupPart.LowerArm, x.Optional(_springLength))
                        : new PlanarPickup(Point(x, 8), Point(x, 7), PickupPart.LowerArm, x.Optional(_damperLength)),
                    x[_toe],
                    _unknowns!.BumpSteer(x));
            case MotionLevel.Cycled:
                return new CycledMotion(
                    Curve(x, 3, camber - x[_camber]), Curve(x, 4, 0) ?? ToeLine(x), Curve(x, 5, 0) ?? Line(0, x[_outboard]),
                    Curve(x, 1, 0), Curve(x, _coilover ? 1 : 2, 0), 0.02, Curve(x, 6, 0));
            default:
                var wheel = new RatioWheel(camber, x[_gain], _unknowns!.CamberBend(x), x[_toe], _unknowns.BumpSteer(x), x[_outboard],
                    _unknowns.PathBend(x));
                var spring = new RatioStation(x[_springLength], x[_ratio], x[_ratioChange]);
                var damper = _coilover || !_damperLength.IsGiven || !_damperRatio.IsGiven
                    ? spring : new RatioStation(x[_damperLength], x[_damperRatio], x[_damperRatioChange]);
                return new RatioMotion(wheel, spring, damper);
        }
    }

    private LinkageRange? RangeOfAxle(Reader x, double limit)
    {
        var range = _axle!.Range(x, x[_camber], x[_toe], Math.Min(limit, UsualAxleTravel));
        _axleRange = AxleRange(range);
        return range is { } r ? new(r.Least, r.Most, r.StopsLeast, r.StopsMost) : null;
    }

    // A little inside the axle's own reach, so that moved points still reach all of it.
    private static (double Droop, double Bump) AxleRange(LinkageRange? range)
    {
        const double Inside = 0.004, Least = 0.01;
        return (Math.Min(-Least, (range?.Least ?? -Least) + Inside), Math.Max(Least, (range?.Most ?? Least) - Inside));
    }

    // A wheel on links of its own goes sideways and leans as it rises, read or not.
    private static (Handle Gain, Handle Outboard) HubPath(InputTable table, string path, WheelMotion motion, AxleKind kind)
    {
        bool ratios = kind == AxleKind.Independent && motion.Level == MotionLevel.Ratios;
        bool cycled = kind == AxleKind.Independent && motion.Level == MotionLevel.Cycled
            && motion.Steps.Count(s => s.Travel is not null && s.Outboard is not null) < 2;
        return (
            Or(table, path + "/camberGain", "camber gain", motion.CamberGain,
                ratios ? "camber gain: not measured, taken as -0.015 ± 0.025 deg/mm" : "", GainSigma, ratios ? Gain : 0),
            Or(table, path + "/outboardPerTravel", "sideways move per travel", motion.OutboardPerTravel,
                ratios || cycled ? "wheel sideways with bump: not measured, taken as 5 ± 10 mm outboard per 100 mm" : "", OutboardSigma,
                ratios || cycled ? Outboard : 0));
    }

    private List<MissingReading> FindMissing(InputTable table, string path)
    {
        var missing = new List<MissingReading>();
        void Need(bool there, string field, string words)
        {
            if (!there)
            {
                missing.Add(new($"{path}/{field}", words));
            }
        }

        switch (_level)
        {
            case MotionLevel.Ratios:
                missing.AddRange(table.Lacking(_springLength, _ratio));
                missing.AddRange(_coilover ? [] : table.Lacking(_damperLength, _damperRatio));
                break;
            case MotionLevel.PlanarStrut:
                Need(Has(0), "lowerInner", "lower arm, inner pivot");
                Need(Has(1), "lowerOuter", "lower ball joint");
                Need(Has(4), "strutTop", "strut top");
                break;
            case MotionLevel.PlanarWishbone:
                Need(Has(0) && Has(1) && Has(2) && Has(3), "lowerInner", "both arms' pivots and ball joints");
                Need(Has(5) && Has(6), "springLower", "the spring's two points");
                Need(_coilover || (Has(7) && Has(8)), "damperLower", "the damper's two points");
                break;
            default:
                Need(Rows(1).Count() >= 2, "steps", "at least two cycled readings with the spring axis length");
                Need(_coilover || Rows(2).Count() >= 2, "steps", "at least two cycled readings with the damper axis length");
                break;
        }

        return missing;
    }

    private static Handle Or(InputTable table, string path, string label, Reading? reading, string words, double sigma, double value = 0) =>
        reading is not null ? table.Add(path, label, reading)
        : words.Length > 0 ? table.Assume(path, label, value, sigma, words)
        : table.Define(path, label, 0);

    private bool Has(int point) => _points[point].Inboard.IsGiven && _points[point].Above.IsGiven;

    private PlanarPoint Point(Reader x, int point) => new(-x[_points[point].Inboard], x[_points[point].Above]);

    private IEnumerable<Handle[]> Rows(int column) =>
        _steps.Where(s => s[0].IsGiven && s[column].IsGiven);

    // Readings carry errors, so a curve among them is better than one through them, as long as it misses none by more than
    // three standard deviations: then the readings hold a bend that a cubic cannot follow. Chosen once, at the best estimate.
    private void ChooseCurves(InputTable table)
    {
        const double Misses = 3;
        var x = table.Best();
        for (int column = 1; column < _smooth.Length && _level == MotionLevel.Cycled; column++)
        {
            Handle[][] rows = [.. Rows(column)];
            if (SmoothCurve.Create([.. rows.Select(r => x[r[0]])], [.. rows.Select(r => x[r[column]])]) is not { } curve)
            {
                continue;
            }

            _smooth[column] = rows.All(r =>
            {
                var (value, slope, _) = curve.At(x[r[0]]);
                double sigma = Math.Sqrt(Square(table[r[column]].Sigma) + Square(slope * table[r[0]].Sigma));
                return Math.Abs(x[r[column]] - value) <= Math.Max(Misses * sigma, 1e-9);
            });
        }

        static double Square(double a) => a * a;
    }

    // Toe that was not read at the steps: a straight line through the one reading.
    private MonotoneCurve? ToeLine(Reader x) => Line(x[_toe], _unknowns!.BumpSteer(x));

    private static MonotoneCurve? Line(double at, double slope)
    {
        const double Far = 0.5;
        return MonotoneCurve.Create([-Far, Far], [at - (Far * slope), at + (Far * slope)], out _);
    }

    private SampledCurve? Curve(Reader x, int column, double shift)
    {
        var at = new List<double>();
        var value = new List<double>();
        foreach (var row in Rows(column))
        {
            at.Add(x[row[0]]);
            value.Add(x[row[column]] + shift);
        }

        return at.Count < 2 ? null : _smooth[column] ? SmoothCurve.Create([.. at], [.. value])
            : MonotoneCurve.Create([.. at], [.. value], out _);
    }
}
