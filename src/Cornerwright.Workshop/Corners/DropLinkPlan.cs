using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Parts;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;
using Cornerwright.Workshop.Linkages;

namespace Cornerwright.Workshop.Corners;

/// <summary>Where the numbers of a corner's drop link stand in its row of inputs, and where the link is by them.</summary>
/// <remarks>Its outer end moves with the knuckle, its other end swings about the bar's bushes: docs/theory/clearance.md §10.</remarks>
internal sealed class DropLinkPlan
{
    /// <summary>
    /// Thickness of a link that nobody measured, and its standard deviation, m: common practice, no source.
    /// </summary>
    private const double UsualThickness = 0.014, ThicknessSigma = 0.002;

    /// <summary>An arm of a bar that nobody measured, m: common practice, no source.</summary>
    private const double UsualArm = 0.2;

    /// <summary>Of how far the bushes stand above the bar's end where nobody read it, m: common practice, no source.</summary>
    private const double AboveSigma = 0.015;

    private readonly PointHandle _outer, _barEnd, _pivot, _hub;
    private readonly Handle _ahead, _above, _bend, _thickness, _length, _lengthNow;
    private readonly bool _points, _mirrored, _onStrut;
    private readonly int _side;

    private DropLinkPlan(CornerPlan plan, HardpointTable? points, DropLinkPlace? place)
    {
        var table = plan.Inputs;
        _side = plan.Place.IsLeft() ? 1 : -1;
        string path = plan.Path + "/dropLink";
        if (points is not null)
        {
            _points = true;
            _mirrored = plan.Corner.Hardpoints!.Mirrored;
            _onStrut = points.BarOn == StationCarrier.Strut;
            string at = CornerPlan.JsonName(_mirrored ? plan.Place.OtherSide() : plan.Place) + "/hardpoints";
            (_outer, _barEnd, _pivot, _hub) = (Hard(nameof(HardpointTable.BarFoot)), Hard(nameof(HardpointTable.BarEnd)),
                Hard(nameof(HardpointTable.BarPivot)), Hard(nameof(HardpointTable.HubFace)));

            PointHandle Hard(string property) =>
                HardpointPlan.Point(table, at, points, HardpointNeeds.Points.First(f => f.PropertyName == property));
        }
        else if (place is not null)
        {
            _onStrut = place.On == LinkOn.Strut;
            _outer = Taped(table, path + "/outer", "drop link's end at the wheel", place.Outer);
            _barEnd = Taped(table, path + "/barEnd", "drop link's end at the bar", place.BarEnd);
            (_ahead, _above, _bend) = Bushes(plan, path, place);
        }

        var (link, linkNow) = (plan.Parts.Held<BarLink>(), plan.PartsNow?.Held<BarLink>());
        string part = "parts/barLinks/" + link?.Id;
        _thickness = link?.Thickness is { } thick ? table.Add(part + "/thickness", "thickness of the drop link", thick)
            : table.Assume(part + "/thickness", "thickness of the drop link", UsualThickness, ThicknessSigma,
                "drop link: thickness not measured, taken as 14 ± 4 mm");
        bool other = link is not null && linkNow is not null && link.Id != linkNow.Id;
        (_length, _lengthNow) = other
            ? (table.Add(part + "/length", "length of the drop link", link!.Length),
                table.Add($"parts/barLinks/{linkNow!.Id}/length", "length of the drop link now", linkNow.Length))
            : (Handle.None, Handle.None);
        bool turned = _onStrut && plan.Corner.Strut is not { TyreToTube: not null, LowerReference: not null }
            && plan.Motion.ClampChange(table.Best()) != 0;
        Missing =
        [
            .. MissingReading.If(points is null && place is null, path, "where the ends of the drop link are"),
            .. table.Lacking(_outer.X, _outer.Y, _outer.Z, _barEnd.X, _barEnd.Y, _barEnd.Z, _length, _lengthNow),
            .. MissingReading.If(place is { Outer: null }, path + "/outer", "drop link's end at the wheel"),
            .. MissingReading.If(place is { BarEnd: null }, path + "/barEnd", "drop link's end at the bar"),
            .. MissingReading.If(turned, plan.Path + "/strut", "the strut beside the wheel: its clamp turns the drop link's end"),
        ];
    }

    /// <summary>What keeps the link from being placed.</summary>
    public IReadOnlyList<MissingReading> Missing { get; }

    /// <summary>Null where the corner has no link, or one to an arm.</summary>
    public static DropLinkPlan? Compile(CornerPlan plan)
    {
        HardpointTable? points = LinkageOf.TableOf(plan.Car, plan.Place) is { HubFace: not null } table && HardpointNeeds.HasBar(table)
            ? table : null;
        bool onArm = points?.BarOn is StationCarrier.LowerArm or StationCarrier.UpperArm;
        var place = plan.Corner.DropLink;
        bool fitted = plan.Parts.Held<BarLink>() is not null && plan.Parts.AntiRollBar is not null;
        return onArm || (points is null && place is null && !fitted) ? null : new DropLinkPlan(plan, points, points is null ? place : null);
    }

    /// <summary>The link as it stood when the car was measured, in B, with the length that it has now.</summary>
    /// <param name="n">The corner, with nothing missing.</param>
    public SwingingLink Stand(CornerReader n)
    {
        var x = n.X;
        double thickness = x[_thickness], change = x.Or(_length, 0) - x.Or(_lengthNow, 0);
        Vec3 outer, end;
        double ahead, above;
        if (_points)
        {
            Vec3 hub = At(x, _hub), pivot = At(x, _pivot) - hub;
            (outer, end) = (At(x, _outer) - hub, At(x, _barEnd) - hub);
            (ahead, above) = (pivot.X - end.X, pivot.Z - end.Z);
        }
        else
        {
            (outer, end) = (new(x[_outer.X], x[_outer.Y] * -_side, x[_outer.Z]), new(x[_barEnd.X], x[_barEnd.Y] * -_side, x[_barEnd.Z]));
            (ahead, above) = _ahead.IsGiven ? (x[_ahead], x.Or(_above, 0)) : (1 / x.Or(_bend, 0), 0);
        }

        return new(outer, end, ahead, above, Math.Max(1e-3, (outer - end).Length + change), Math.Max(0, thickness / 2));
    }

    /// <summary>The outer end in S, with the wheel straight ahead at the reference state and the clamp as it is set now.</summary>
    /// <param name="n">The corner.</param>
    /// <param name="places">Where its wheel is.</param>
    /// <param name="link">As it stood.</param>
    /// <param name="outer">Takes the end.</param>
    /// <returns>False where the wheel could not be there.</returns>
    public bool Outer(CornerReader n, ThingPlaces places, in SwingingLink link, out Vec3 outer)
    {
        outer = default;
        if (!places.Pose(n, n.MotionNow, new PosePlace(0, 0, 0), out var then))
        {
            return false;
        }

        outer = SpindleFrame.Of(then).ToSpindle(link.Outer);

        // Where the strut's line is unknown the clamp stands as it stood: else it is missing.
        double turn = _onStrut && n.Plan.Clearance.HasStrutLine ? n.Plan.Motion.ClampTurn(n.X) : 0;
        if (turn != 0)
        {
            Vec3 clamp = places.StrutAxis(n).LowerReference;
            outer = clamp + (outer - clamp).RotatedAbout(Vec3.UnitZ, turn);
        }

        return true;
    }

    // The bar's arm says how far its end swings fore and aft; which way it points nobody knows until it is read.
    private static (Handle Ahead, Handle Above, Handle Bend) Bushes(CornerPlan plan, string path, DropLinkPlace place)
    {
        var table = plan.Inputs;
        if (place.BushesAhead is { } read)
        {
            Handle above = place.BushesAbove is { } up ? table.Add(path + "/bushesAbove", "bar's bushes above its end", up)
                : table.Assume(path + "/bushesAbove", "bar's bushes above its end", 0, AboveSigma,
                    "anti-roll bar: its arm taken as level where the drop link was read, ± 30 mm");
            return (table.Add(path + "/bushesAhead", "bar's bushes ahead of its end", read), above, Handle.None);
        }

        double arm = plan.Parts.AntiRollBar?.Arm?.Si ?? UsualArm;
        Handle bend = table.Assume(path + "/bushesAhead", "bar's bushes ahead of its end", 0, 1 / arm,
            FormattableString.Invariant($"drop link's end at the bar: taken to swing about an arm of {arm * 1000:0} mm, ahead or behind"));
        return (Handle.None, Handle.None, bend);
    }

    private Vec3 At(Reader x, PointHandle point) => new(x[point.X], _mirrored ? -x[point.Y] : x[point.Y], x[point.Z]);

    // X ahead, Y inboard, Z above.
    private static PointHandle Taped(InputTable table, string path, string label, HubPoint? point) => point is null ? PointHandle.None
        : new(table.Add(path + "/ahead", label + ", ahead", point.Ahead), table.Add(path + "/inboard", label + ", inboard", point.Inboard),
            table.Add(path + "/above", label + ", above", point.Above));
}
