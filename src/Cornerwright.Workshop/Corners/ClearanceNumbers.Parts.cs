using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Clearance;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Workshop.Findings;

namespace Cornerwright.Workshop.Corners;

/// <content>
/// What a gap must be: tyre and rim have limits of their own, and the part that is nearest is not always the one that has least in hand.
/// </content>
internal sealed partial class ClearanceNumbers
{
    private readonly double[] _tyreAlone;   // by item; infinite where it was not asked for

    /// <summary>
    /// The gap that one item must have, m: that of the part that is nearest, and the tyre's larger one where a rim is nearest but the tyre
    /// stands so little further off that it has less in hand.
    /// </summary>
    public double Wanted(int item)
    {
        var (tyre, rim) = (TyreLimit(item), Say.Limit(_plan.Limits.RimToAnything));
        return _worst[item].Clearing.Part == WheelPart.Tyre || _tyreAlone[item] - tyre < _worst[item].Clearing.Gap - rim ? tyre : rim;
    }

    private double TyreLimit(int item) => Say.Limit(
        _clearance.Items[item].AttachedTo == AttachedTo.Body ? _plan.Limits.TyreToBody : _plan.Limits.TyreToKnuckle);

    // The least gap of the tyre where something of the rim is nearer; only where that can matter.
    private void SearchTyreAlone(int i, CornerReader poses, in WheelSolid wheel, PoseGrid? grid, double[] room)
    {
        _tyreAlone[i] = double.PositiveInfinity;
        var worst = _worst[i].Clearing;
        if (!double.IsFinite(worst.Gap) || worst.Part == WheelPart.Tyre || !(TyreLimit(i) > Say.Limit(_plan.Limits.RimToAnything)))
        {
            return;
        }

        WheelSolid tyre = wheel.TyreAlone();
        if (_clearance.Items[i].AttachedTo == AttachedTo.Knuckle)
        {
            _tyreAlone[i] = OfKnuckle(i, tyre).Worst.Clearing.Gap;
            return;
        }

        _tyreAlone[i] = new LeastPoses(_states[i], poses, grid!, tyre, LineOf(i)).Find(room, out _).Clearing.Gap;
    }
}
