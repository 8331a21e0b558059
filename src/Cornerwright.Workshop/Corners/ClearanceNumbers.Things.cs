using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <content>What stands near the wheel, for those who ask with other wheels or over all poses.</content>
internal sealed partial class ClearanceNumbers
{
    /// <summary>
    /// Everything near the wheel whose place is known, where <see cref="Search"/> found it: body things in B, knuckle things in S; a drop
    /// link as all that it passes, in S, at rest and under each load.
    /// </summary>
    public IEnumerable<(ClearanceItem Item, ClearanceObstacle Obstacle)> Things(CornerReader n) =>
        Standing().Concat(Passing(n).Select(p => (p.Item, p.Obstacle)));

    private IEnumerable<(ClearanceItem Item, ClearanceObstacle Obstacle)> Passing(CornerReader n)
    {
        for (int i = 0; i < _worst.Length; i++)
        {
            var item = _clearance.Items[i];
            if (item.Link is not null && item.Missing.Count == 0 && double.IsFinite(_worst[i].Clearing.Gap))
            {
                var grid = new PoseGrid(_places, n, _clearance, Range(n));
                foreach (LoadState state in _states[i])
                {
                    if (SweptLink.Of(state, n, grid, LineOf(i).In(state)) is { } swept)
                    {
                        yield return (item, swept);
                    }
                }
            }
        }
    }

    private IEnumerable<(ClearanceItem Item, ClearanceObstacle Obstacle)> Standing()
    {
        for (int i = 0; i < _worst.Length; i++)
        {
            var item = _clearance.Items[i];
            if (item.Missing.Count == 0 && item.Link is null && double.IsFinite(_worst[i].Clearing.Gap))
            {
                var frame = item.AttachedTo == AttachedTo.Body ? ObstacleFrame.Body : ObstacleFrame.Knuckle;
                yield return (item, item.Piece is not null ? ClearanceObstacle.OfCylinder(_cylinders[i], frame)
                    : _points[i].Length == 1 ? ClearanceObstacle.OfPoints(_points[i], frame)
                    : ClearanceObstacle.OfBar(_points[i], 0, frame));
            }
        }
    }

    /// <summary>What moves with the wheel, in S, as the leaning tyre meets it; nothing where no lean is allowed for.</summary>
    public IEnumerable<ClearanceObstacle> Leaning()
    {
        for (int i = 0; i < _worst.Length && _lean.In > 0; i++)
        {
            var item = _clearance.Items[i];
            if (item.AttachedTo == AttachedTo.Knuckle && item.Missing.Count == 0 && double.IsFinite(_worst[i].Clearing.Gap))
            {
                Vec3[] points = [.. _points[i].Select(p => _lean.Meets(p))];
                yield return item.Piece is not null ? ClearanceObstacle.OfCylinder(_lean.Meets(_cylinders[i]), ObstacleFrame.Knuckle)
                    : points.Length == 1 ? ClearanceObstacle.OfPoints(points, ObstacleFrame.Knuckle)
                    : ClearanceObstacle.OfBar(points, 0, ObstacleFrame.Knuckle);
            }
        }
    }

    /// <summary>Of these, those that stand on the body, with the loads under which each counts.</summary>
    public IEnumerable<(ClearanceItem Item, ClearanceObstacle Obstacle, IReadOnlyList<LoadState> States)> BodyThings() =>
        Standing().Where(t => t.Item.AttachedTo == AttachedTo.Body)
            .Select(t => (t.Item, t.Obstacle, StatesOf(_clearance.Items.ToList().IndexOf(t.Item))));

    /// <summary>Tyre and rim of the row, with the growth and, toward the body, the lean that the limits ask for.</summary>
    public (TyreSection Tyre, RimSection Rim) Sections(CornerReader n, bool forBody) =>
        _plan.Wheel is { } wheel ? (wheel.Tyre(n.X, _growth, forBody ? _shift : 0), wheel.Rim(n.X)) : default;
}
