using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Linkage;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;

namespace Cornerwright.Web.Components.Linkages;

/// <summary>
/// Moves a setting's linkage through travel, rack and plate as the verdict does: a knuckle turned in its clamp stays turned, wherever
/// the plate slides. Keeps the last pose, so one belongs to one user at a time.
/// </summary>
public sealed class LinkageMover
{
    private readonly LinkageSetting _setting;
    private KnuckleFollower _follower;
    private double _slide, _plate;

    public LinkageMover(LinkageSetting setting)
    {
        ArgumentNullException.ThrowIfNull(setting);
        _setting = setting;
        (_follower, _plate) = Made(0);
    }

    /// <summary>
    /// The wheel at a place, whose plate is the slide from where it stood when the car was measured; null where it cannot be reached.
    /// </summary>
    public WheelGeometry? WheelAt(double travel, double rack, double slide)
    {
        Slide(slide);
        return _follower.MoveTo(travel, rack, _plate) == Reach.Reached && WheelGeometry.TryRead(_follower, out var wheel) ? wheel : null;
    }

    /// <summary>As it is drawn; null only at a dead centre, where nothing can be read.</summary>
    public LinkagePose? PoseAt(in LinkagePlace asked)
    {
        Slide(asked.Plate);
        var goal = asked with { Plate = _plate };
        var stop = _follower.MoveTo(goal.Travel, goal.Rack, goal.Plate) == Reach.Reached ? null : _follower.Explain(goal);
        return WheelGeometry.TryRead(_follower, out var wheel)
            ? new(_follower.Place with { Plate = asked.Plate }, LinkageJoints.Now(_follower),
                wheel.Centre + (wheel.Spindle * _setting.Points.HubFaceOutboard), wheel, stop)
            : null;
    }

    /// <summary>Travel that the linkage lets through with the plate at a slide; null when not even travel 0.</summary>
    public LinkageRange? TravelRange(double slide)
    {
        Slide(slide);
        return LinkageRange.OfTravel(_follower.Linkage, 0, _plate);
    }

    /// <summary>Rack that the linkage lets through at a travel; null when not even straight ahead.</summary>
    public LinkageRange? RackRange(double travel, double slide)
    {
        Slide(slide);
        return LinkageRange.OfRack(_follower.Linkage, travel, _plate);
    }

    // Without a change at the clamp a slide is a place of the plate; with one, the way from the measured state is another for every slide.
    private void Slide(double slide)
    {
        if (_setting.Clamp == 0)
        {
            _plate = slide;
        }
        else if (_slide != slide)
        {
            (_follower, _plate) = Made(slide);
        }

        _slide = slide;
    }

    private (KnuckleFollower Follower, double Plate) Made(double slide)
    {
        if (_setting.Clamp == 0)
        {
            return (new(_setting.Points.Ready()), slide);
        }

        var points = _setting.Points;
        if (!points.Linkage.Ties.OfType<LinkageTie.Strut>().Any())
        {
            return (new(new KnuckleLinkage(LinkageSetting.Turned(points, _setting.Clamp), points.HubFaceOutboard)), 0);
        }

        var set = StrutSetting.Of(points.Linkage, slide, _setting.Clamp, points.HubFaceOutboard);
        return (new(new KnuckleLinkage(set.Linkage, points.HubFaceOutboard)), set.Plate);
    }
}
