using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Tests.Linkages;

namespace Cornerwright.Workshop.Tests.Drawing;

/// <summary>
/// Draws corners at random: how the wheel hangs and how that is known, steering, ends of travel, wheels and tyres now and then, what
/// stands near, what is allowed for. The demo car gives what all cars need: loads, springs, dampers, hubs.
/// </summary>
internal sealed class RandomDraw(int seed)
{
    private static readonly Car Demo = DemoCar.Read() with { UseLearned = false };
    private static readonly HangKind[] Kinds = Enum.GetValues<HangKind>();
    private readonly Random _random = new(seed);

    public DrawnCorner Next()
    {
        var kind = Kinds[_random.Next(Kinds.Length)];
        bool front = kind <= HangKind.WishbonePlanar, left = _random.Next(2) == 0;
        var place = front ? left ? CornerPlace.FrontLeft : CornerPlace.FrontRight
            : left ? CornerPlace.RearLeft : CornerPlace.RearRight;
        var car = Demo with { Allowances = Allowed() };
        car = Hung(car, kind, place);
        string build = One("gravel-1", "gravel-2", "gravel-3", "touring");
        car = Shod(car, build, place);
        var corner = car.At(place);
        corner = corner with
        {
            Steering = front ? Steering() : null,
            DroopLimit = Maybe(0.3) ? Mm(-30, -110) : null,
            MetalContact = Maybe(0.4) ? Mm(30, 110) : null,
            Obstacles = [.. Enumerable.Range(0, 1 + _random.Next(3)).Select(i => Thing(i, front))],
            Strut = kind is HangKind.WishbonePlanar ? null : corner.Strut,
        };
        return new(car.With(place, corner), build, place, kind);
    }

    /// <summary>
    /// The same with most things moved so that what is left lies near what is wanted: there a chance can change for better or worse.
    /// </summary>
    public DrawnCorner NextAimed()
    {
        var drawn = Next();
        var clear = drawn.Clearances();
        return drawn.With(drawn.Corner with
        {
            Obstacles = [.. drawn.Corner.Obstacles.Select(o =>
                clear.TryGetValue("clear-" + o.Id, out var f) && f.Margin is { } margin && Maybe(0.8)
                    ? Moved(o, Between(-0.003, 0.008) - margin.Si) : o)],
        });
    }

    private static Obstacle Moved(Obstacle thing, double by) => thing with
    {
        Gaps = [.. thing.Gaps.Select(g => g with
        {
            Distance = g.Distance! with
            {
                Value = Quantity.Of(Math.Clamp(1000 * (g.Distance!.Si + by), 0, 400), Units.Millimetre),
            },
        })],
    };

    public bool Maybe(double share) => _random.NextDouble() < share;

    public double Between(double from, double to) => from + ((to - from) * _random.NextDouble());

    public T One<T>(params T[] of) => of[_random.Next(of.Length)];

    public int Index(int count) => _random.Next(count);

    public Reading Mm(double from, double to) => Read(Between(from, to), "mm", Dimension.Length, Between(0.5, 3));

    public static Reading Read(double value, string unit, Dimension dimension, double tolerance) => Reading.Of(
        FormattableString.Invariant($"{value:0.0###} {unit}").Trim(), dimension,
        FormattableString.Invariant($"{tolerance:0.0####} {unit}").Trim(), ReadingSource.Tape);

    private Reading Degrees(double from, double to, double tolerance = 0.5) =>
        Read(Between(from, to), "deg", Dimension.Angle, tolerance);

    private Allowances Allowed()
    {
        if (Maybe(0.35))
        {
            return Allowances.None;
        }

        var allowed = new Allowances { Use = One(Enum.GetValues<CarUse>()) };
        foreach (var line in Allowances.Lines.Where(l => l.Words.Dimension == Dimension.Length))
        {
            double most = Math.Min(10, line.MaxSi * 1000);
            allowed = Maybe(0.2)
                ? RecordShape.Of<Allowances>().With(allowed, line, Read(Between(0, most), "mm", Dimension.Length, 0)) : allowed;
        }

        return allowed;
    }

    private SteeringAxis Steering() => new()
    {
        Kingpin = Degrees(4, 17, 1),
        Caster = Degrees(-1, 9),
        HubOffset = Mm(40, 105),
        TrailAtHub = Maybe(0.5) ? Mm(-12, 12) : null,
        Lock = Degrees(18, 44),
        BumpAtLock = Maybe(0.4) ? Mm(0, 70) : null,
    };

    private Car Hung(Car car, HangKind kind, CornerPlace place)
    {
        var corner = car.At(place) with { Camber = Degrees(-2.5, 0.5, 0.15), Toe = Degrees(-0.2, 0.3, 0.05) };
        WheelMotion rates = car.FrontRight.Motion with
        {
            SpringRatio = Read(Between(0.85, 1), "", Dimension.Ratio, 0.015),
            CamberGain = Read(Between(-0.03, 0.005), "deg/mm", Dimension.AnglePerLength, 0.004),
            OutboardPerTravel = Read(Between(-0.1, 0.15), "", Dimension.Ratio, 0.03),
            ForwardPerTravel = Maybe(0.6) ? Read(Between(-0.06, 0.06), "", Dimension.Ratio, 0.01) : null,
            SwingArm = Maybe(0.6) ? Mm(600, 15000) : null,
        };
        switch (kind)
        {
            case HangKind.StrutRatios:
                return car.With(place, corner with { Motion = rates });
            case HangKind.StrutHardpoints:
                return car.With(place, corner with { Motion = corner.Motion with { Level = MotionLevel.Hardpoints } });
            case HangKind.StrutPlanar:
                return car.With(place, corner with
                {
                    Motion = new WheelMotion
                    {
                        Level = MotionLevel.PlanarStrut,
                        LowerInner = At(393, -82), LowerOuter = At(51, -115), StrutTop = At(237, 608),
                    },
                });
            case HangKind.WishbonePlanar:
                return car.With(place, corner with
                {
                    Motion = new WheelMotion
                    {
                        Level = MotionLevel.PlanarWishbone,
                        LowerInner = At(393, -82), LowerOuter = At(51, -115), UpperInner = At(330, 150), UpperOuter = At(80, 170),
                        SpringLower = At(110, -100), SpringUpper = At(190, 400),
                    },
                });
            case HangKind.ArmCycled:
                return car.With(place, corner with { Motion = car.RearLeft.Motion });
            case HangKind.ArmRatios:
                return car.With(place, corner with { Motion = Arm(car, rates) });
            case HangKind.RigidHardpoints:
                return AxleTables.Rigid(car);
            case HangKind.TwistHardpoints:
                return AxleTables.Twist(car);
            default:
                car = car with
                {
                    Rear = car.Rear with { Kind = kind == HangKind.RigidRatios ? AxleKind.RigidAxle : AxleKind.TwistBeam },
                };
                foreach (var side in new[] { CornerPlace.RearLeft, CornerPlace.RearRight })
                {
                    var together = Arm(car, rates) with { CamberGain = null, OutboardPerTravel = null };
                    car = car.With(side, car.At(side) with { Motion = together });
                }

                return car;
        }
    }

    private static WheelMotion Arm(Car car, WheelMotion rates) => car.RearRight.Motion with
    {
        CamberGain = rates.CamberGain, OutboardPerTravel = rates.OutboardPerTravel, ForwardPerTravel = rates.ForwardPerTravel,
        SwingArm = rates.SwingArm,
    };

    private FrontPoint At(double inboard, double above) =>
        new() { Inboard = Mm(inboard - 8, inboard + 8), Above = Mm(above - 8, above + 8) };

    // Wheels and tyres of the car as it was measured, and of the build.
    private Car Shod(Car car, string build, CornerPlace place)
    {
        foreach (string id in new[] { car.MeasuredBuild, build })
        {
            double code = 0.5 * (12 + _random.Next(6));
            int offset = 20 + _random.Next(35), size = One(195, 205, 215, 225), aspect = One(45, 50, 55, 60);
            var wheel = car.Parts.Wheels[0] with
            {
                Id = "wheel-" + id, Name = "wheel " + id,
                Designation = FormattableString.Invariant($"{code:0.#}Jx16 ET{offset} 5x110"),
            };
            bool measured = Maybe(0.5);
            double width = size + (10 * (code - 7)) + Between(-4, 6), across = 406.4 + (2 * size * aspect / 100.0) + Between(-6, 4);
            var tyre = new Tyre
            {
                Id = "tyre-" + id, Name = "tyre " + id,
                Designation = FormattableString.Invariant($"{size}/{aspect} R16 91V"),
                SectionWidth = measured ? Read(width, "mm", Dimension.Length, 1) : null,
                OuterDiameter = measured ? Read(across, "mm", Dimension.Length, 1.5) : null,
                TreadWidth = measured && Maybe(0.7) ? Read(width * Between(0.8, 0.9), "mm", Dimension.Length, 2) : null,
                ShoulderDrop = measured && Maybe(0.7) ? Read(Between(5, 11), "mm", Dimension.Length, 1) : null,
            };
            var parts = car.Parts with { Wheels = [.. car.Parts.Wheels, wheel], Tyres = [.. car.Parts.Tyres, tyre] };
            var of = car.Build(id)!;
            car = (car with { Parts = parts }).With(of.With(place, of.At(place) with
            {
                Wheel = wheel.Id, Tyre = tyre.Id, Spacer = id == build ? One("", "", "sp-5", "sp-8") : "",
            }));
        }

        return car;
    }

    /// <summary>One to four gaps of one thing, at any clock position, feature, direction, height and steer.</summary>
    public Obstacle Thing(int index, bool steered)
    {
        double clock = Between(0, 12);
        bool knuckle = Maybe(0.2);
        return new Obstacle
        {
            Id = FormattableString.Invariant($"thing-{index}"), Name = FormattableString.Invariant($"thing {index}"),
            AttachedTo = knuckle ? AttachedTo.Knuckle : AttachedTo.Body,
            Gaps =
            [
                .. Enumerable.Range(0, One(1, 1, 2, 3, 4)).Select(_ => new Gap
                {
                    From = One(Enum.GetValues<GapFrom>()),
                    Direction = One(Enum.GetValues<GapDirection>()),
                    Clock = Math.Round((clock + Between(0, 1.5)) % 12, 2),
                    Distance = Mm(10, knuckle ? 40 : 110),
                    Travel = Maybe(0.5) ? null : Mm(-30, 30),
                    Steer = steered && !knuckle && Maybe(0.3) ? Degrees(-20, 20, 1) : null,
                }),
            ],
        };
    }
}
