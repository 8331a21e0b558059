using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Garage.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Workshop.Scanning;

namespace Cornerwright.Web.Scans;

/// <summary>By what a scan is aligned.</summary>
public enum AlignBy
{
    /// <summary>Points round the edge of the rim of the wheel that is on the car.</summary>
    Rim,

    /// <summary>Points round a circle on the bare hub's face.</summary>
    Hub,

    /// <summary>Places whose gaps were read.</summary>
    Places,
}

/// <summary>
/// A point picked in the scan: in the file's frame, m, and the name of the place on the car that it shows, where it shows one.
/// </summary>
public sealed record ScanPick(Vec3 At, string Place = "");

/// <summary>
/// Work on one scan: what was picked, what was proposed. Knows nothing of
/// pages; the car is changed only by what <see cref="Accepted"/> returns.
/// </summary>
public sealed class ScanDesk
{
    /// <summary>Directions of a file's frame that can be its up.</summary>
    public static IReadOnlyList<(string Name, Vec3 Direction)> Ups { get; } =
        [("+Y", Vec3.UnitY), ("+Z", Vec3.UnitZ), ("+X", Vec3.UnitX), ("−Y", -Vec3.UnitY), ("−Z", -Vec3.UnitZ), ("−X", -Vec3.UnitX)];

    private readonly List<ScanPick> _picks = [];

    private ScanDesk(Scan scan, RawScan raw)
    {
        (Scan, Raw) = (scan, raw);
        Candidates = ScanUnits.Candidates(raw);
        Up = 0;
    }

    /// <summary>As it will be kept, without the alignment that is only proposed.</summary>
    public Scan Scan { get; private set; }

    public RawScan Raw { get; }

    public IReadOnlyList<UnitCandidate> Candidates { get; }

    public IReadOnlyList<ScanPick> Picks => _picks;

    public AlignBy By { get; private set; }

    /// <summary>The street lies on the other side of the hub's circle than was guessed.</summary>
    public bool OtherWay { get; private set; }

    /// <summary>Index into <see cref="Ups"/>.</summary>
    public int Up { get; private set; }

    /// <summary>Proposed; null before, and when something it stands on has changed.</summary>
    public ScanAligned? Proposed { get; private set; }

    /// <summary>Why nothing is proposed; empty if nothing was asked, or something is.</summary>
    public string WhyNot { get; private set; } = "";

    /// <summary>What is missing about the wheel, or keeps the scan from being placed.</summary>
    public IReadOnlyList<Problem> Problems { get; private set; } = [];

    /// <summary>The scan placed as proposed, or as it is kept; null when it is not aligned.</summary>
    public PlacedScan? Placed { get; private set; }

    /// <summary>Somebody has said that the unit is right; until then it is only this program's guess.</summary>
    public bool UnitConfirmed { get; private set; }

    public bool Aligned => Proposed is not null || Scan.Alignment is not null;

    /// <summary>Work on a scan of the car.</summary>
    public static ScanDesk Of(Car car, Scan scan, RawScan raw)
    {
        var desk = new ScanDesk(scan, raw) { UnitConfirmed = true };
        desk.Place(car);
        return desk;
    }

    /// <summary>Work on a file that has just come in: everything that can be guessed is, and shown to be confirmed.</summary>
    public static ScanDesk New(string id, string hash, string fileName, RawScan raw, CornerPlace corner)
    {
        ArgumentNullException.ThrowIfNull(raw);
        return new(
            new Scan
            {
                Id = id,
                Name = "arch " + corner.Words(),
                Corner = corner,
                FileName = fileName,
                ContentHash = hash,
                Format = raw.Format,
                Unit = ScanUnits.Candidates(raw)[0].Unit,
                Crop = new ScanCrop { Radius = Length("700 mm"), FloorLow = Length("-250 mm") },
                WheelTakenOut = Length("9 mm"),
            },
            raw);
    }

    /// <summary>Changes what the scan is said to be; a proposal that stood on it falls.</summary>
    public void Change(Car car, Func<Scan, Scan> change)
    {
        ArgumentNullException.ThrowIfNull(change);
        var before = Scan;
        Scan = change(before);
        if (Scan.Unit != before.Unit)
        {
            // The same points of the file, in other metres.
            double factor = Scan.Unit.Metres() / before.Unit.Metres();
            for (int i = 0; i < _picks.Count; i++)
            {
                _picks[i] = _picks[i] with { At = _picks[i].At * factor };
            }
        }

        if (Scan.Unit != before.Unit || Scan.Corner != before.Corner || Scan.Travel != before.Travel || Scan.Steer != before.Steer)
        {
            (Proposed, Scan) = (null, Scan with { Alignment = null });
        }

        Place(car);
    }

    public void ConfirmUnit() => UnitConfirmed = true;

    public void AlignsBy(AlignBy by)
    {
        if (by != By)
        {
            (By, WhyNot) = (by, "");
            _picks.Clear();
        }
    }

    public void TakeForUp(int up) => (Up, Proposed) = (Math.Clamp(up, 0, Ups.Count - 1), null);

    /// <summary>Exchanges street side and car's side of the hub's circle.</summary>
    public void TurnRound(Car car)
    {
        OtherWay = !OtherWay;
        Align(car);
    }

    /// <summary>A point of the scan, m, in the file's frame.</summary>
    public void Pick(Vec3 at)
    {
        const int Most = 40;
        if (double.IsFinite(at.X + at.Y + at.Z) && _picks.Count < Most)
        {
            _picks.Add(new ScanPick(at));
        }
    }

    public void Unpick(int index) => _picks.RemoveAt(index);

    public void Name(int index, string place) => _picks[index] = _picks[index] with { Place = place };

    public void Move(int index, Vec3 at) => _picks[index] = _picks[index] with { At = at };

    /// <summary>The places that gap readings fix at this scan's corner.</summary>
    public IReadOnlyList<KnownPlace> KnownPlaces(Car car) =>
        PresentWheel.Of(car, Scan.Corner) is { Ok: true } wheel ? wheel.Value.KnownPlaces() : [];

    /// <summary>Works out an alignment from the picks.</summary>
    public void Align(Car car)
    {
        (Proposed, WhyNot, Problems) = (null, "", []);
        var found = PresentWheel.Of(car, Scan.Corner);
        if (!found.Try(out var wheel))
        {
            (Problems, WhyNot) = (found.Problems, "The wheel that was on the car is not known well enough:");
            return;
        }

        double travel = Scan.Travel?.Si ?? 0, steer = Scan.Steer?.Si ?? 0;
        var aligning = By == AlignBy.Places ? ByPlaces(wheel, travel, steer)
            : ScanAligning.ByWheel(
                wheel, ScanPlacing.InMetres(Raw, Scan.Unit), [.. _picks.Select(p => p.At)],
                By == AlignBy.Rim ? PickedCircle.OuterRimLip : PickedCircle.HubFace, Ups[Up].Direction, travel, steer, OtherWay);
        (Proposed, WhyNot) = (aligning.Aligned, aligning.WhyNot);
        if (Proposed is { } aligned)
        {
            Scan = Scan with { Roughness = aligned.Roughness > 0 ? ScanAligned.TwoSigma(aligned.Roughness)
                : Scan.Roughness ?? Length("3 mm") };
        }

        Place(car);
    }

    /// <summary>The scan with its proposed alignment, to be put into the car.</summary>
    public Scan Accepted() => Proposed is { } aligned ? Scan with { Alignment = aligned.Record() } : Scan;

    /// <summary>The turn that stands a view of the bare file upright: its up becomes Z.</summary>
    public RigidTransform Upright()
    {
        Vec3 up = Ups[Up].Direction, side = Math.Abs(up.X) > 0.5 ? Vec3.UnitY : Vec3.UnitX;
        return RigidTransform.FromAxes(side, up.Cross(side), up);
    }

    private Aligning ByPlaces(PresentWheel wheel, double travel, double steer)
    {
        if (!wheel.PoseAt(travel, steer, out var pose))
        {
            return Aligning.Not("The wheel cannot be at that travel: check what was given for the moment of the scan.");
        }

        var known = wheel.KnownPlaces();
        var pairs = _picks.Select(p => (p.At, Place: known.FirstOrDefault(k => k.Name == p.Place)))
            .Where(p => p.Place is not null).ToList();
        return ScanAligning.ByPairs(wheel, [.. pairs.Select(p => p.At)], [.. pairs.Select(p => p.Place!)], pose.HubFace);
    }

    private void Place(Car car)
    {
        (Placed, Problems) = (null, Proposed is null && Scan.Alignment is null ? Problems : []);
        if (Aligned)
        {
            var placed = ScanPlacing.Place(car, Accepted(), Raw);
            Placed = placed.Ok ? placed.Value : null;
            Problems = placed.Problems;
        }
    }

    private static Reading Length(string text) => Reading.Of(text, Dimension.Length);
}
