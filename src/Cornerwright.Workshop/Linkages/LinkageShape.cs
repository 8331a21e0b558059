using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using T = Cornerwright.Garage.Chassis.HardpointTable;

namespace Cornerwright.Workshop.Linkages;

/// <summary>Numbers of one corner besides its joints. Lengths m, angles rad.</summary>
/// <param name="HubFace">Centre of the hub's face, body frame.</param>
/// <param name="HubFaceOutboard">Of the wheel centre, along the spindle: offset (ET) less spacer.</param>
/// <param name="TyreRadius">Of the disc that finds the contact.</param>
/// <param name="SpringAlong">The spring's lower reference above the lower point on the strut; null takes the table's.</param>
/// <param name="DamperAlong">Likewise.</param>
internal readonly record struct LinkageNumbers(
    Vec3 HubFace, double HubFaceOutboard, double TyreRadius, double Camber, double Toe, double? SpringAlong = null,
    double? DamperAlong = null);

/// <summary>Which joints a table's linkage is made of and what ties them, without their places.</summary>
internal sealed class LinkageShape
{
    /// <summary>Name of the rocker's second point, which only gives its axis.</summary>
    public static readonly string RockerAxis = Words(HardpointNeeds.Points.First(f => f.PropertyName == nameof(T.RockerAxis)));

    private readonly List<FieldShape> _joints = [];
    private readonly List<LinkageTie> _ties = [];
    private readonly T _table;
    private readonly bool _steered;

    private readonly bool _bar;

    private LinkageShape(T table, bool steered, bool bar)
    {
        (_table, _steered, _bar) = (table, steered, bar && HardpointNeeds.HasBar(table));
        Tie();
        foreach (var field in HardpointNeeds.Of(table).Where(f => f.PropertyName != nameof(T.HubFace)))
        {
            Joint(field.PropertyName);
        }

        if (_bar)
        {
            foreach (string property in (string[])[nameof(T.BarFoot), nameof(T.BarEnd), nameof(T.BarPivot)])
            {
                Joint(property);
            }
        }
    }

    /// <summary>Fields of the table in the order of the linkage's joints.</summary>
    public IReadOnlyList<FieldShape> Joints => _joints;

    /// <param name="table">Every point that it needs is given, and carriers are such as its kind has.</param>
    /// <param name="steered">True when a rack moves the rod that the table names.</param>
    /// <param name="bar">True to take the anti-roll bar's points in, where they are given; no check of a corner asks for it.</param>
    public static LinkageShape Of(T table, bool steered, bool bar) => new(table, steered, bar);

    /// <summary>The linkage with its joints at these places, in the order of <see cref="Joints"/>.</summary>
    /// <param name="at">Body frame, m.</param>
    /// <param name="plate">Direction in which the plate slides, any length; zero where there is no strut.</param>
    /// <param name="numbers">The rest.</param>
    public CornerLinkage With(IReadOnlyList<Vec3> at, Vec3 plate, in LinkageNumbers numbers)
    {
        var side = numbers.HubFace.Y >= 0 ? WheelSide.Left : WheelSide.Right;
        var spindle = WheelPose.StraightAhead(default, side, new(numbers.Camber, numbers.Toe, 0), 0).Spindle;
        var joints = new MeasuredJoint[_joints.Count];
        for (int i = 0; i < joints.Length; i++)
        {
            joints[i] = new(Words(_joints[i]), at[i]);
        }

        return new(
            joints, _ties, numbers.HubFace - (spindle * numbers.HubFaceOutboard), numbers.Camber, numbers.Toe, numbers.TyreRadius,
            Station(_table.SpringOn, _table.SpringLink, nameof(T.SpringMoving), nameof(T.SpringBody),
                numbers.SpringAlong ?? _table.SpringAlong?.Si ?? 0, at),
            Station(_table.DamperOn, _table.DamperLink, nameof(T.DamperMoving), nameof(T.DamperBody),
                numbers.DamperAlong ?? _table.DamperAlong?.Si ?? 0, at), plate, Bar());
    }

    private LinkageBar? Bar()
    {
        if (!_bar)
        {
            return null;
        }

        var (pivot, end, foot) = (Joint(nameof(T.BarPivot)), Joint(nameof(T.BarEnd)), Joint(nameof(T.BarFoot)));
        if (_table.BarOn is not (StationCarrier.LowerArm or StationCarrier.UpperArm))
        {
            return new(pivot, Vec3.UnitY, end, foot);
        }

        var (first, second, ball) = ArmOf(_table.BarOn);
        return new(pivot, Vec3.UnitY, end, foot, first, second, ball);
    }

    /// <summary>A field's words inside a sentence.</summary>
    public static string Words(FieldShape field) => char.ToLowerInvariant(field.Label[0]) + field.Label[1..];

    private void Tie()
    {
        switch (_table.Kind)
        {
            case LinkageKind.MacPherson:
                Arm(nameof(T.LowerFrontInner), nameof(T.LowerRearInner), nameof(T.LowerBall));
                break;
            case LinkageKind.DoubleWishbone:
                Arm(nameof(T.LowerFrontInner), nameof(T.LowerRearInner), nameof(T.LowerBall));
                Arm(nameof(T.UpperFrontInner), nameof(T.UpperRearInner), nameof(T.UpperBall));
                break;
            case LinkageKind.MacPhersonTwoLinks or LinkageKind.FiveLink:
                Rod(nameof(T.LowerFrontInner), nameof(T.LowerFrontOuter), RackRod.LowerFrontLink);
                Rod(nameof(T.LowerRearInner), nameof(T.LowerRearOuter), RackRod.LowerRearLink);
                break;
            default:
                _ties.Add(new LinkageTie.Hinge(Joint(nameof(T.ArmOuter)), Joint(nameof(T.ArmInner))));
                return;
        }

        if (_table.Kind == LinkageKind.FiveLink)
        {
            Rod(nameof(T.UpperFrontInner), nameof(T.UpperFrontOuter), null);
            Rod(nameof(T.UpperRearInner), nameof(T.UpperRearOuter), null);
        }

        if (HardpointNeeds.IsStrut(_table.Kind))
        {
            _ties.Add(new LinkageTie.Strut(Joint(nameof(T.StrutTop)), Joint(nameof(T.StrutLow))));
        }

        Rod(nameof(T.TieInner), nameof(T.TieOuter), RackRod.TieRod);
    }

    private void Arm(string first, string second, string ball) =>
        _ties.AddRange([new LinkageTie.Rod(Joint(first), Joint(ball)), new LinkageTie.Rod(Joint(second), Joint(ball))]);

    private void Rod(string inner, string outer, RackRod? name) =>
        _ties.Add(new LinkageTie.Rod(Joint(inner), Joint(outer), _steered && name == _table.RackOn));

    private LinkageStation Station(StationCarrier carrier, LowerLink link, string moving, string body, double along, IReadOnlyList<Vec3> at)
    {
        switch (carrier)
        {
            case StationCarrier.Strut:
                return new LinkageStation.OnStrut(Joint(nameof(T.StrutTop)), Joint(nameof(T.StrutLow)), along);
            case StationCarrier.LowerArm when HardpointNeeds.OnLinks(_table.Kind):
                var (inner, outer) = link == LowerLink.Rear ? (nameof(T.LowerRearInner), nameof(T.LowerRearOuter))
                    : (nameof(T.LowerFrontInner), nameof(T.LowerFrontOuter));
                Vec3 rod = at[Joint(outer)] - at[Joint(inner)];
                double share = (at[Joint(moving)] - at[Joint(inner)]).Dot(rod) / rod.LengthSquared;
                return new LinkageStation.OnRod(Joint(body), Joint(inner), Joint(outer), share);
            case StationCarrier.LowerArm or StationCarrier.UpperArm:
                var (first, second, ball) = ArmOf(carrier);
                return new LinkageStation.OnArm(Joint(body), Joint(moving), first, second, ball);
            case StationCarrier.Rocker:
                const int Knuckle = LinkageStation.OnRocker.FromKnuckle;
                var (armFirst, armSecond, armBall) = _table.PushrodOn == StationCarrier.Carrier ? (Knuckle, Knuckle, Knuckle)
                    : ArmOf(_table.PushrodOn);
                Vec3 axis = at[Joint(nameof(T.RockerAxis))] - at[Joint(nameof(T.RockerPivot))];
                return new LinkageStation.OnRocker(
                    Joint(body), Joint(moving), Joint(nameof(T.RockerPivot)), axis, Joint(nameof(T.PushrodRocker)),
                    Joint(nameof(T.PushrodOuter)),
                    armFirst, armSecond, armBall);
            default:
                return new LinkageStation.OnKnuckle(Joint(body), Joint(moving));
        }
    }

    private (int First, int Second, int Ball) ArmOf(StationCarrier carrier) => carrier == StationCarrier.UpperArm
        ? (Joint(nameof(T.UpperFrontInner)), Joint(nameof(T.UpperRearInner)), Joint(nameof(T.UpperBall)))
        : (Joint(nameof(T.LowerFrontInner)), Joint(nameof(T.LowerRearInner)), Joint(nameof(T.LowerBall)));

    private int Joint(string property)
    {
        int at = _joints.FindIndex(f => f.PropertyName == property);
        if (at >= 0)
        {
            return at;
        }

        _joints.Add(HardpointNeeds.Points.First(f => f.PropertyName == property));
        return _joints.Count - 1;
    }
}
