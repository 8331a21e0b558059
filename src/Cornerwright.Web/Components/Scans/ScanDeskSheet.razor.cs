using System.Globalization;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Scans;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Web.Scans;
using Cornerwright.Workshop.Scanning;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Scans;

/// <summary>The desk on which one scan lies, as a person sees it.</summary>
public partial class ScanDeskSheet
{
    private static readonly string[] About = [nameof(Scan.Name), nameof(Scan.Corner), nameof(Scan.AttachedTo)];

    private static readonly string[] More = [nameof(Scan.Travel), nameof(Scan.Steer), nameof(Scan.TakenWith), nameof(Scan.TakenOn)];

    private static readonly string[] Counts =
        [nameof(Scan.WheelTakenOut), nameof(Scan.Thinning), nameof(Scan.Roughness), nameof(Scan.MirroredToo)];

    private static readonly string[] Cuts = [nameof(Scan.Crop)];

    private IReadOnlyList<StageDrawing> _drawings = [];
    private IReadOnlyList<Vec3> _marks = [];
    private RigidTransform _turn = RigidTransform.Identity;
    private string _typed = "", _typedWrong = "", _fileAddress = "", _placedAddress = "", _wheelAddress = "";
    private ScanDesk? _shown;
    private PlacedScan? _drawnPlaced;
    private ScanUnit? _drawnUnit;
    private double _bound;
    private bool _whole, _busy;

    [Inject] private ScanRoom Room { get; set; } = null!;

    [Parameter, EditorRequired] public ScanDesk Desk { get; set; } = null!;

    [Parameter, EditorRequired] public Car Car { get; set; } = null!;

    /// <summary>The scan as it shall stand in the car.</summary>
    [Parameter] public EventCallback<Scan> Accept { get; set; }

    [Parameter] public EventCallback Leave { get; set; }

    private bool ShowsFile => _whole || Desk.Placed is null;

    private string Summary
    {
        get
        {
            string kind = $"{Desk.Raw.Format.Ending().ToUpperInvariant()}, {Desk.Raw.Variant}";
            return Desk.Raw.IsCloud ? $"{kind}: {Count(Desk.Raw.PointCount)} points without a surface"
                : $"{kind}: {Count(Desk.Raw.TriangleCount)} triangles, {Count(Desk.Raw.PointCount)} points";
        }
    }

    private string HowToPick => Desk.By switch
    {
        AlignBy.Rim => "Six points, well spread round the outermost edge of the rim, the metal nearest to "
            + "the street. From there the whole tyre, whose size is known, is fitted to the scan.",
        AlignBy.Hub => "With the wheel off: points round one circle that lies on the hub's face.",
        _ => "At least three places, four or more show whether one is wrong. A place is where the tape touched the body, not the tyre.",
    };

    protected override void OnParametersSet()
    {
        if (!ReferenceEquals(_shown, Desk))
        {
            (_shown, _drawnUnit, _drawnPlaced, _whole, _typed, _typedWrong) = (Desk, null, null, false, "", "");
        }

        Draw();
    }

    private void Draw()
    {
        double scale = Desk.Scan.Unit.Metres();
        if (_drawnUnit != Desk.Scan.Unit)
        {
            _drawnUnit = Desk.Scan.Unit;
            var (bytes, bound) = ScanDrawing.Of(Desk.Raw, Desk.Scan.Unit);
            (_fileAddress, _bound) = (Room.Draw(bytes), bound);
        }

        if (Desk.Placed is { } placed && !ReferenceEquals(placed, _drawnPlaced))
        {
            _drawnPlaced = placed;
            _placedAddress = Room.Draw(ScanDrawing.Of(placed));
            _wheelAddress = PresentWheel.Of(Car, Desk.Scan.Corner) is { Ok: true } wheel
                ? Room.Draw(ScanDrawing.Of(wheel.Value, Desk.Scan.Travel?.Si ?? 0, Desk.Scan.Steer?.Si ?? 0)) : "";
        }

        if (ShowsFile)
        {
            _drawings = [new("scan", _fileAddress, "now", 1)];
            _turn = Desk.Upright();
            Vec3 origin = Desk.Raw.Origin * scale;
            _marks = [.. Desk.Picks.Select(p => p.At - origin)];
        }
        else
        {
            StageDrawing[] both = [new("placed", _placedAddress, "now", 1), new("wheel", _wheelAddress, "new", 0.45)];
            _drawings = [.. both.Where(d => d.Address.Length > 0)];
            (_turn, _marks) = (RigidTransform.Identity, []);
        }
    }

    private void TakeUnit(ScanUnit unit)
    {
        Desk.Change(Car, s => s with { Unit = unit });
        Draw();
    }

    private void Confirm() => Desk.ConfirmUnit();

    private void Mend(string words, Func<object?, object?> rework)
    {
        Desk.Change(Car, s => (Scan)rework(s)!);
        Draw();
    }

    private void ChooseBy(ChangeEventArgs e)
    {
        Desk.AlignsBy(Enum.TryParse(e.Value?.ToString(), out AlignBy by) ? by : AlignBy.Rim);
        _whole = true;
        Draw();
    }

    private void ChooseUp(ChangeEventArgs e)
    {
        Desk.TakeForUp(int.TryParse(e.Value?.ToString(), CultureInfo.InvariantCulture, out int up) ? up : 0);
        Draw();
    }

    private void Pick(Vec3 at)
    {
        if (Desk.UnitConfirmed && ShowsFile)
        {
            Desk.Pick(at + (Desk.Raw.Origin * Desk.Scan.Unit.Metres()));
            Draw();
        }
    }

    private void Unpick(int pick)
    {
        Desk.Unpick(pick);
        Draw();
    }

    private void Name(int pick, ChangeEventArgs e) => Desk.Name(pick, e.Value?.ToString() ?? "");

    private void Type(int pick, ChangeEventArgs e)
    {
        if (Read(e.Value?.ToString()) is { } at)
        {
            Desk.Move(pick, at);
            Draw();
        }
    }

    private void AddTyped()
    {
        if (Read(_typed) is { } at)
        {
            Desk.Pick(at);
            (_typed, _typedWrong) = ("", "");
            Draw();
        }
        else
        {
            _typedWrong = $"\"{_typed}\" is no point: type three numbers with blanks between them, with points for decimals.";
        }
    }

    private async Task Align()
    {
        _busy = true;
        StateHasChanged();
        var car = Car;
        await Task.Run(() => Desk.Align(car));
        (_busy, _whole) = (false, Desk.Placed is null);
        Draw();
    }

    private void TurnRound()
    {
        Desk.TurnRound(Car);
        Draw();
    }

    private void Look(bool whole)
    {
        _whole = whole;
        Draw();
    }

    /// <summary>Three numbers in the file's unit; null if they are not.</summary>
    private Vec3? Read(string? text)
    {
        string[] words = (text ?? "").Split([' ', ',', ';', '\t'], StringSplitOptions.RemoveEmptyEntries);
        Span<double> xyz = stackalloc double[3];
        if (words.Length != 3)
        {
            return null;
        }

        for (int i = 0; i < 3; i++)
        {
            if (!double.TryParse(words[i], NumberStyles.Float, CultureInfo.InvariantCulture, out xyz[i])
                || !(Math.Abs(xyz[i]) <= ScanLimits.MostCoordinate))
            {
                return null;
            }
        }

        return new Vec3(xyz[0], xyz[1], xyz[2]) * Desk.Scan.Unit.Metres();
    }

    private string Text(Vec3 metres)
    {
        Vec3 file = metres / Desk.Scan.Unit.Metres();
        string form = Desk.Scan.Unit is ScanUnit.Metre ? "0.0000" : "0.0";
        return string.Create(CultureInfo.InvariantCulture, $"{file.X.ToString(form, CultureInfo.InvariantCulture)} "
            + $"{file.Y.ToString(form, CultureInfo.InvariantCulture)} {file.Z.ToString(form, CultureInfo.InvariantCulture)}");
    }

    private static string Left(PlacedScan placed) =>
        placed.Mesh is null ? $"{Count(placed.PointCount)} points are left." : $"{Count(placed.TriangleCount)} triangles are left.";

    private static string Mm(double metres) => (metres * 1000).ToString("0.0", CultureInfo.InvariantCulture);

    private static string Count(int number) => number.ToString("#,0", CultureInfo.InvariantCulture).Replace(',', '\u202f');
}
