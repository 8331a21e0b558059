using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Workshop.Inputs;

namespace Cornerwright.Workshop.Corners;

/// <summary>
/// What sliding the top mount or turning the knuckle in its clamp does to a wheel whose linkage nobody measured: camber, and with it the
/// hub's height and place. docs/theory/motion.md §8.
/// </summary>
internal sealed class TopMountPlan
{
    private const double Degree = Math.PI / 180;

    /// <summary>From the hub centre down to the lower ball joint where no points were measured, m: common practice, no source.</summary>
    private const double JointBelowHub = 0.11, JointBelowHubSigma = 0.015;

    /// <summary>From the hub centre up to the strut's lower reference where that was not measured, m; likewise.</summary>
    private const double ReferenceAboveHub = 0.08;

    /// <summary>Of a strut's axis, where it was not measured, m; likewise.</summary>
    private const double UsualAxisLength = 0.4;

    /// <summary>Of the line through ball joint and top mount, where the steering axis was not measured, rad; likewise.</summary>
    private const double UsualInclination = 12 * Degree, UsualInclinationSigma = 2 * Degree;

    /// <summary>Ball joint to hub face, where the steering axis was not measured, m; likewise.</summary>
    private const double UsualAcross = 0.08, UsualAcrossSigma = 0.02;

    /// <summary>The axis at hub height is read on the car; from there to the joint is a matter of <see cref="JointBelowHub"/>.</summary>
    private const double AcrossSigma = 0.006;

    private readonly double _usualClampRatio;
    private readonly Handle _springLength, _lever, _inclination, _across, _above;

    /// <param name="table">Takes the numbers.</param>
    /// <param name="path">Of the corner.</param>
    /// <param name="corner">With its strut and steering axis.</param>
    /// <param name="onStrut">True where the knuckle is clamped to a strut.</param>
    /// <param name="springLength">The strut's axis.</param>
    /// <param name="now">As the car was measured.</param>
    /// <param name="then">As it is to be.</param>
    /// <param name="slides">False where the motion itself knows what a slid mount does.</param>
    public TopMountPlan(InputTable table, string path, Corner corner, bool onStrut, Handle springLength, CornerBuild now, CornerBuild then,
        bool slides)
    {
        _springLength = springLength;
        double axisLength = corner.SpringAxisLength?.Si ?? UsualAxisLength,
            below = (corner.Strut?.LowerReference?.Si ?? ReferenceAboveHub) + JointBelowHub;
        _usualClampRatio = onStrut ? 1 + (below / axisLength) : 1;
        bool slid = slides && (then.Slide?.Si ?? 0) != (now.Slide?.Si ?? 0);

        // On a strut even where both stand as they stood: a cure may move them.
        if (!slid && !onStrut)
        {
            return;
        }

        _lever = table.Assume(path + "/motion/plateLever", "lever of the top plate", axisLength + below, 0.03, FormattableString.Invariant(
            $"camber by plate or clamp: the ball joint is taken to lie {1000 * below:0} mm below the lower reference"));
        _above = table.Assume(path + "/motion/jointBelowHub", "ball joint below the hub", JointBelowHub, JointBelowHubSigma,
            FormattableString.Invariant(
                $"plate or clamp moves the hub: the ball joint is taken to lie {1000 * JointBelowHub:0} mm below it"));
        double inclination = corner.Steering?.Kingpin?.Si ?? UsualInclination;
        _inclination = corner.Steering?.Kingpin is { } kingpin
            ? table.Add(path + "/steering/kingpin", "kingpin inclination", kingpin)
            : table.Assume(path + "/motion/inclination", "inclination of the steering axis", UsualInclination, UsualInclinationSigma,
                "plate moves the ride height: the steering axis is taken to lean inward by 12 ± 4 deg");
        double? across = corner.Steering?.HubOffset?.Si + (JointBelowHub * -Math.Tan(inclination));
        _across = table.Assume(path + "/motion/jointAcross", "ball joint to hub face", across ?? UsualAcross,
            across is null ? UsualAcrossSigma : AcrossSigma, FormattableString.Invariant(
                $"plate or clamp moves the hub: the ball joint is taken {1000 * (across ?? UsualAcross):0} mm inboard of the hub face"));
    }

    /// <summary>Change of camber by a slid mount, rad; the top going inward takes camber.</summary>
    public double CamberBySlide(Reader x, double slide) => slide != 0 && _lever.IsGiven ? -Math.Atan2(slide, x[_lever]) : 0;

    /// <summary>How far the wheel is turned against its strut where the clamp changes its camber by so much, rad.</summary>
    public double ClampTurn(Reader x, double camberChange) => camberChange * (!_lever.IsGiven || _usualClampRatio == 1 ? _usualClampRatio
        : x[_lever] / (x.Optional(_springLength) ?? UsualAxisLength));

    /// <summary>The motion after the mount was slid and the knuckle turned.</summary>
    /// <param name="motion">As it was measured, but for its camber.</param>
    /// <param name="x">Row of inputs.</param>
    /// <param name="slide">m, inward.</param>
    /// <param name="clampChange">Change of camber at the clamp, rad.</param>
    public CornerMotion After(CornerMotion motion, Reader x, double slide, double clampChange) =>
        !_lever.IsGiven || (slide == 0 && clampChange == 0) ? motion
            : new ShiftedMotion(
                motion, TopMountShift.Of(slide, -clampChange, x[_lever], x[_inclination], x[_across], x[_above]));
}
