using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Fitted;
using Kinds = Cornerwright.Workshop.Relations.RelationCatalogue;

namespace Cornerwright.Workshop.Relations;

/// <summary>
/// A corner's hardpoints beside what was read of the steering, the strut, the track and the tyre, and how they begin to move.
/// </summary>
internal sealed class PointRelations
{
    private const double Degree = Math.PI / 180;

    private readonly RelationBook _book;
    private readonly CornerPlace _place;
    private readonly HardpointTable _table;
    private readonly string _path;

    private PointRelations(RelationBook book, CornerPlace place, HardpointTable table) =>
        (_book, _place, _table, _path) = (book, place, table, CornerRelations.Path(place));

    private double Side => _place.IsLeft() ? 1 : -1;

    private Corner Corner => _book.Car.At(_place);

    public static void Look(RelationBook book, CornerPlace place, CornerParts? now)
    {
        if (book.Car.At(place).Hardpoints is { Mirrored: false } table)
        {
            var points = new PointRelations(book, place, table);
            points.Hub(WheelNow.Of(now));
            points.Axis();
            points.Strut();
            points.Motion();
            PointLinks.Look(book, table, points._path + "/hardpoints", points.Side);
        }
    }

    private void Hub(WheelNow? wheel)
    {
        if (PointVelocity.Place(_table.HubFace) is not { } hub)
        {
            return;
        }

        string path = _path + "/hardpoints/hubFace";
        var (x, y, z) = (Num.Of(path + "/x", "hub face, x", _table.HubFace!.X), Num.Of(path + "/y", "hub face, y", _table.HubFace.Y),
            Num.Of(path + "/z", "hub face, z", _table.HubFace.Z));
        if (wheel is { } on)
        {
            _book.Add(Kinds.PointHub, path + "/z", z.Si / on.Radius, new(0.7, 0.91, 1.015, 1.2),
                () => $"The {_place.Words()} hub stands {z.Typed} above the ground on a tyre of {Say.Mm(on.Radius, 0)} radius.", [z,
                    .. on.Ties]);
            var track = Num.Of(_place.Axle().Words() + "/track", "track", _book.Car.At(_place.Axle()).Track);
            double made = 2 * ((Side * hub.Y) - on.Offset);
            if (double.IsFinite(on.Offset))
            {
                _book.Add(Kinds.PointHub, path + "/y", made - track.Si, Bands.Around(0.03, 0.35),
                    () => $"The {_place.Words()} hub face and the wheel's offset make a track of {Say.Mm(made, 0)}; {track.Typed} was "
                        + $"read.", y, track);
            }
        }

        double wheelbase = _place.Axle() == AxlePlace.Front ? 0 : _book.Car.Wheelbase?.Si ?? double.NaN;
        if (double.IsFinite(wheelbase))
        {
            _book.Add(Kinds.PointHub, path + "/x", hub.X + wheelbase, Bands.Around(0.025, 0.4),
                () => $"The {_place.Words()} hub stands {Say.Mm(Math.Abs(hub.X + wheelbase), 0)} from where the wheelbase has it.",
                _place.Axle() == AxlePlace.Front ? [x] : [x, Num.Of("wheelbase", "wheelbase", _book.Car.Wheelbase)]);
        }
    }

    private void Axis()
    {
        bool strut = HardpointNeeds.IsStrut(_table.Kind);
        var top = PointVelocity.Place(strut ? _table.StrutTop : _table.UpperBall);
        if (top is not { } up || PointVelocity.Place(_table.LowerBall) is not { } low || PointVelocity.Place(_table.HubFace) is not { } hub
            || Corner.Steering is not { } read || !(up.Z > low.Z))
        {
            return;
        }

        var d = up - low;
        double kingpin = Math.Atan2(-Side * d.Y, d.Z), caster = Math.Atan2(-d.X, d.Z);
        double offset = Side * (hub.Y - (low.Y + (d.Y * (hub.Z - low.Z) / d.Z)));
        string path = _path + "/steering/", points = $"The {_place.Words()} points";
        var (k, c, o) = (Num.Of(path + "kingpin", "kingpin inclination", read.Kingpin), Num.Of(path + "caster", "caster", read.Caster),
            Num.Of(path + "hubOffset", "axis to hub face", read.HubOffset));
        double trail = low.X + (d.X * (hub.Z - low.Z) / d.Z) - hub.X;
        var t = Num.Of(path + "trailAtHub", "axis ahead of the hub", read.TrailAtHub);
        _book.Add(Kinds.PointAxis, t.Path, t.Si - trail, Bands.Around(0.012, 0.15),
            () => $"By the {_place.Words()} points the steering axis passes {Say.Mm(trail, 0)} ahead of the hub; {t.Typed} was read.", t);
        _book.Add(Kinds.PointAxis, k.Path, k.Si - kingpin, Bands.Around(2 * Degree, 20 * Degree),
            () => FormattableString.Invariant($"{points} have {kingpin / Degree:0.0}° of kingpin inclination; {k.Typed} was read."), k);
        _book.Add(Kinds.PointAxis, c.Path, c.Si - caster, Bands.Around(1.5 * Degree, 15 * Degree),
            () => FormattableString.Invariant($"{points} have {caster / Degree:0.0}° of caster; {c.Typed} was read."), c);
        _book.Add(Kinds.PointAxis, o.Path, o.Si - offset, Bands.Around(0.012, 0.15),
            () => $"By the {_place.Words()} points the steering axis passes {Say.Mm(offset, 0)} inboard of the hub face; {o.Typed} was "
                + $"read.", o);
    }

    private void Strut()
    {
        if (!HardpointNeeds.IsStrut(_table.Kind) || PointVelocity.Place(_table.StrutTop) is not { } top
            || PointVelocity.Place(_table.StrutLow) is not { } low || !(top.Z > low.Z))
        {
            return;
        }

        double along = _table.SpringAlong?.Si ?? 0, length = (top - low).Length - along;
        var axis = Num.Of(_path + "/springAxisLength", "spring axis length", Corner.SpringAxisLength);
        _book.Add(Kinds.PointStrut, axis.Path, axis.Si - length, Bands.Around(_table.SpringAlong is null ? 0.03 : 0.012, 0.35),
            () => $"The {_place.Words()} strut is {Say.Mm(length, 0)} long by its points; {axis.Typed} was read.", axis);
        double lean = Math.Atan2(Side * (low.Y - top.Y), top.Z - low.Z) + (Corner.Camber?.Si ?? 0);
        var read = Num.Of(_path + "/strut/lean", "strut lean", Corner.Strut?.Lean);
        _book.Add(Kinds.PointStrut, read.Path, read.Si - lean, Bands.Around(2.2 * Degree, 20 * Degree),
            () => FormattableString.Invariant($"The {_place.Words()} strut leans {lean / Degree:0.0}° against the wheel by its points; ")
                + $"{read.Typed} was read.", read);
        if (PointVelocity.Place(_table.HubFace) is { } hub)
        {
            var reference = Num.Of(_path + "/strut/lowerReference", "lower reference above hub centre", Corner.Strut?.LowerReference);
            double above = low.Z + (along * (top.Z - low.Z) / (top - low).Length) - hub.Z;
            _book.Add(Kinds.PointStrut, reference.Path, reference.Si - above, Bands.Around(_table.SpringAlong is null ? 0.03 : 0.012, 0.35),
                () => $"The {_place.Words()} strut's lower reference stands {Say.Mm(above, 0)} above the hub by its points; "
                    + $"{reference.Typed} was read.",
                reference);
        }
    }

    private void Motion()
    {
        Num[] points = Given();
        if (PointVelocity.Solve(_table) is not { } moves)
        {
            return;
        }

        string path = _path + "/hardpoints";
        double camber = -Side * moves.Turn.X, toe = -Side * moves.Turn.Z, out_ = Side * moves.Hub.Y, ahead = moves.Hub.X;
        Rate("camber", camber, new(-12, -1.3, 0.35, 6), $"{camber / Degree / 1000:0.000}° of camber a mm of bump");
        Rate("toe", toe, new(-4, -0.42, 0.42, 4), $"{toe / Degree / 1000:0.000}° of toe a mm of bump");
        Rate("outboard", out_, new(-2, -0.36, 0.36, 2), $"{out_:0.00} mm outboard a mm of bump");
        Rate("ahead", ahead, new(-2, -0.36, 0.36, 2), $"{ahead:0.00} mm forward a mm of bump");
        if (HardpointNeeds.IsStrut(_table.Kind) && _table.SpringOn == StationCarrier.Strut
            && PointVelocity.Place(_table.StrutTop) is { } top
            && PointVelocity.Place(_table.StrutLow) is { } low && (top - low).Length > 0.01)
        {
            double ratio = moves.Of(low).Dot((top - low).Unit());
            Rate("ratio", ratio, new(0.2, 0.72, 1.08, 1.8), $"{ratio:0.00} mm of strut a mm of bump");
            Beside("springRatio", Corner.Motion.SpringRatio, ratio, 0.05, 1);
        }

        Beside("camberGain", Corner.Motion.CamberGain, camber, 0.2, 8);
        Beside("outboardPerTravel", Corner.Motion.OutboardPerTravel, out_, 0.13, 1.5);
        Beside("forwardPerTravel", Corner.Motion.ForwardPerTravel, ahead, 0.1, 1.5);

        void Rate(string what, double value, Bands bands, FormattableString words) =>
            _book.Add(Kinds.PointMotion, $"{path}/{what}", value, bands,
                () => $"On its points the {_place.Words()} wheel takes {FormattableString.Invariant(words)}; a car's seldom does.", points);

        void Beside(string field, Garage.Readings.Reading? typed, double value, double fine, double hard)
        {
            var number = Num.Of($"{_path}/motion/{field}", field, typed);
            _book.Add(Kinds.PointRatios, number.Path, number.Si - value, Bands.Around(fine, hard),
                () => $"{number.Typed} was typed for the {_place.Words()} wheel; its points give "
                    + FormattableString.Invariant($"{(field == "camberGain" ? value / Degree / 1000 : value):0.000}."), [number,
                        .. points]);
        }
    }

    private Num[] Given() => [.. FieldWalk.Readings(_table, _path + "/hardpoints").Select(r => Num.Of(r.Path, r.Field.Label, r.Reading))];
}
