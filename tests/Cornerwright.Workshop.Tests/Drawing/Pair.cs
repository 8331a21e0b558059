using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Workshop.Tests.Drawing;

/// <summary>What must follow for every clearance when a corner is changed in one way.</summary>
internal enum Follows
{
    /// <summary>No gap grows and no chance rises.</summary>
    NeverBetter,

    /// <summary>No chance above one half rises.</summary>
    NeverSurer,

    /// <summary>Whatever both tell of stays as it was, to the last digit.</summary>
    Same,

    /// <summary>What was known gets no better than it was, and what was unknown stays so.</summary>
    LessKnown,
}

/// <summary>One way to change a corner, and what must follow.</summary>
/// <param name="Change">Null where the corner has nothing to change so.</param>
internal sealed record Pair(string Name, Follows Follows, Func<DrawnCorner, RandomDraw, DrawnCorner?> Change)
{
    /// <summary>True for what can be changed on few corners, or matters most.</summary>
    public bool Rare => Name is "more lock" or "more bump at lock" or "metal later" or "droop further" or "taller tyre" or "wider tyre"
        or "wider tread" or "squarer shoulder" or "reading lost" or "steps in another order" || Follows == Follows.NeverSurer;

    public static IReadOnlyList<Pair> All { get; } =
    [
        new("more lock", Follows.NeverBetter, (d, r) => d.Corner.Steering is not { Lock: { } has } s ? null
            : d.With(d.Corner with { Steering = s with { Lock = Larger(has, r.Between(1, 12), Units.Degree) } })),
        new("more bump at lock", Follows.NeverBetter, (d, r) => d.Corner.Steering is not { BumpAtLock: { } has } s ? null
            : d.With(d.Corner with { Steering = s with { BumpAtLock = r.Maybe(0.5) ? null : Longer(has, r.Between(2, 40)) } })),
        new("metal later", Follows.NeverBetter, (d, r) => d.Corner.MetalContact is not { } has ? null
            : d.With(d.Corner with { MetalContact = Longer(has, r.Between(2, 40)) })),
        new("droop further", Follows.NeverBetter, (d, r) => d.Corner.DroopLimit is not { } has ? null
            : d.With(d.Corner with { DroopLimit = Longer(has, -r.Between(2, 40)) })),
        new("stop shorter", Follows.NeverBetter, (d, r) => Part<BumpStop>(d, d.Car.Parts.BumpStops, d.Fitted.BumpStop, p =>
            p with { SpentLength = p.SpentLength is { } l ? Longer(l, -r.Between(1, 6)) : null },
            (parts, list) => parts with { BumpStops = list })),
        new("taller tyre", Follows.NeverBetter, (d, r) => Tyre(d, t => t.OuterDiameter is not { } has ? null
            : t with { OuterDiameter = Longer(has, r.Between(1, 20)) })),
        new("wider tyre", Follows.NeverBetter, (d, r) => Tyre(d, t => t.SectionWidth is not { } has ? null
            : t with { SectionWidth = Longer(has, r.Between(1, 20)) })),
        new("wider tread", Follows.NeverBetter, (d, r) => Tyre(d, t => t.TreadWidth is not { } has ? null
            : t with { TreadWidth = Longer(has, r.Between(1, 6)) })),
        new("squarer shoulder", Follows.NeverBetter, (d, r) => Tyre(d, t => t.ShoulderDrop is not { } has ? null
            : t with { ShoulderDrop = Longer(has, -r.Between(0.5, 3)) })),
        new("one thing more", Follows.Same, (d, r) => d.With(d.Corner with
        {
            Obstacles = [.. d.Corner.Obstacles, r.Thing(7, d.Corner.Steering is not null)],
        })),
        new("one gap more", Follows.NeverBetter, (d, r) => d.With(d.Corner with
        {
            Obstacles = [.. d.Corner.Obstacles.Select(o => o with
            {
                Gaps = [.. o.Gaps, o.Gaps[^1] with { Clock = (o.Gaps[^1].Clock + 0.4) % 12 }],
            })],
        })),
        .. Allowances.Lines.Where(l => l.Words.Dimension == Dimension.Length).Select(AllowanceLine),
        new("coarser reading of the corner", Follows.NeverSurer, (d, r) => Changed(d, r, d.Corner, Coarser, c => d.With((Corner)c))),
        new("coarser reading of the axle", Follows.NeverSurer, (d, r) => Changed(d, r, d.Car.At(d.Place.Axle()), Coarser, a => d with
        {
            Car = d.Place.Axle() == AxlePlace.Front ? d.Car with { Front = (Axle)a } : d.Car with { Rear = (Axle)a },
        })),
        new("coarser reading of the parts", Follows.NeverSurer, (d, r) => CoarserPart(d, r)),
        new("coarser setting", Follows.NeverSurer, (d, r) => Changed(d, r, d.Fitted, Coarser, b =>
            d.With(d.Build.With(d.Place, (Garage.Builds.CornerBuild)b)))),
        new("reading lost", Follows.LessKnown, (d, r) => Lost(d, r)),
        new("no lock", Follows.LessKnown, (d, r) => d.Corner.Steering is not { } s ? null
            : d.With(d.Corner with { Steering = s with { Lock = null } })),
        new("no steering axis", Follows.LessKnown, (d, r) => d.Corner.Steering is null ? null
            : d.With(d.Corner with { Steering = null })),
        new("things in another order", Follows.Same, (d, r) => d.With(d.Corner with { Obstacles = [.. d.Corner.Obstacles.Reverse()] })),
        new("gaps read the other way round", Follows.Same, (d, r) => d.With(d.Corner with
        {
            Obstacles = [.. d.Corner.Obstacles.Select(o => o with { Gaps = [.. o.Gaps.Reverse()] })],
        })),
        new("a thing written twice", Follows.Same, (d, r) => d.With(d.Corner with
        {
            Obstacles = [.. d.Corner.Obstacles, d.Corner.Obstacles[0] with { Id = "again" }],
        })),
        new("a gap written twice", Follows.Same, (d, r) => d.With(d.Corner with
        {
            Obstacles = [.. d.Corner.Obstacles.Select(o => o with { Gaps = [.. o.Gaps, o.Gaps[^1]] })],
        })),
        new("parts and builds in another order", Follows.Same, (d, r) => d with
        {
            Car = d.Car with
            {
                Builds = [.. d.Car.Builds.Reverse()],
                Parts = d.Car.Parts with
                {
                    Tyres = [.. d.Car.Parts.Tyres.Reverse()], Wheels = [.. d.Car.Parts.Wheels.Reverse()],
                    Springs = [.. d.Car.Parts.Springs.Reverse()], Dampers = [.. d.Car.Parts.Dampers.Reverse()],
                },
            },
        }),
        new("steps in another order", Follows.Same, (d, r) => d.Corner.Motion.Steps.Count == 0 ? null
            : d.With(d.Corner with { Motion = d.Corner.Motion with { Steps = [.. d.Corner.Motion.Steps.Reverse()] } })),
    ];

    private static Pair AllowanceLine(FieldShape line) => new(
        "allowance " + line.Name, Allowances.IsDoubt(line) ? Follows.NeverSurer : Follows.NeverBetter, (d, r) =>
        {
            // What is in force, and more.
            var now = AllowancesInForce.Of(d.Car, d.Build).Line(line.PropertyName).Value;
            if (now is null)
            {
                return null;
            }

            double more = Math.Min(line.MaxSi, now.Si + (0.001 * r.Between(0.5, 6)));
            var allowed = RecordShape.Of<Allowances>().With(
                d.Car.Allowances, line, now with { Value = Quantity.Of(line.Unit!.FromSi(more), line.Unit) });
            return d with { Car = d.Car with { Allowances = allowed } };
        });

    private static Reading Larger(Reading reading, double by, Unit unit) =>
        reading with { Value = Quantity.Of(unit.FromSi(reading.Si) + by, unit) };

    private static Reading Longer(Reading reading, double byMm) => Larger(reading, byMm, Units.Millimetre);

    private static Reading? Coarser(Reading reading, RandomDraw r)
    {
        double sigma = Math.Max(reading.StandardDeviation, 1e-9), times = Math.Exp(r.Between(0.2, 4));
        return reading with
        {
            Tolerance = new Tolerance(Quantity.Of(reading.Value.Unit.FromSi(2 * sigma * times) - reading.Value.Unit.FromSi(0),
                reading.Value.Unit), ToleranceKind.TwoSigma),
        };
    }

    // One reading of a record, anywhere in it.
    private static DrawnCorner? Changed(DrawnCorner d, RandomDraw r, object record, Func<Reading, RandomDraw, Reading?> change,
        Func<object, DrawnCorner> put)
    {
        var ways = ReadingsIn.Of(record, reading => change(reading, r)).ToList();
        if (ways.Count == 0)
        {
            return null;
        }

        var (path, make) = ways[r.Index(ways.Count)];
        return put(make()) is { } drawn ? drawn with { Note = path } : null;
    }

    // Travel and steer of a gap left out mean that the car stood straight at its height: other words, and no reading less.
    private static DrawnCorner? Lost(DrawnCorner d, RandomDraw r)
    {
        var ways = ReadingsIn.Of(d.Corner, _ => null)
            .Where(w => !w.Path.StartsWith("obstacles", StringComparison.Ordinal) || w.Path.EndsWith("distance", StringComparison.Ordinal))
            .ToList();
        var (path, make) = ways[r.Index(ways.Count)];
        return d.With((Corner)make()) with { Note = path };
    }

    private static DrawnCorner? CoarserPart(DrawnCorner d, RandomDraw r)
    {
        var fitted = d.Fitted;
        var now = d.Car.Build(d.Car.MeasuredBuild)!.At(d.Place);
        string[] ids = [fitted.Tyre, fitted.Wheel, fitted.Damper, fitted.BumpStop, fitted.TopMount, fitted.Perch, fitted.Spacer, now.Tyre,
            now.Wheel, now.Damper, .. fitted.Stack];
        var ways = ReadingsIn.Of(
            d.Car.Parts, reading => Coarser(reading, r), of => of is not Garage.Parts.Part part || ids.Contains(part.Id)).ToList();
        var (path, make) = ways[r.Index(ways.Count)];
        return d with { Car = d.Car with { Parts = (PartsShelf)make() }, Note = path };
    }

    private static DrawnCorner? Tyre(DrawnCorner d, Func<Tyre, Tyre?> change)
    {
        var tyre = d.Car.Parts.Tyres.Single(t => t.Id == d.Fitted.Tyre);
        return change(tyre) is not { } changed ? null : d with
        {
            Car = d.Car with
            {
                Parts = d.Car.Parts with { Tyres = [.. d.Car.Parts.Tyres.Select(t => t.Id == tyre.Id ? changed : t)] },
            },
        };
    }

    private static DrawnCorner? Part<T>(DrawnCorner d, IReadOnlyList<T> shelf, string id, Func<T, T> change,
        Func<PartsShelf, IReadOnlyList<T>, PartsShelf> put)
        where T : Part => shelf.All(p => p.Id != id) ? null : d with
        {
            Car = d.Car with { Parts = put(d.Car.Parts, [.. shelf.Select(p => p.Id == id ? change(p) : p)]) },
        };
}
