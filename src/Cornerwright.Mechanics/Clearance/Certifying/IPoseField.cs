using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Clearance.Certifying;

/// <summary>Where a wheel can be: travel (m, bump positive), steer, and a third way, both in the field's own units.</summary>
/// <param name="Travel">m, bump positive.</param>
/// <param name="Steer">What the field steers by: rad at the kingpin, or m of rack.</param>
/// <param name="Third">
/// Whatever else moves the wheel: the slide of its top mount, the travel of the axle's other wheel; 0 for a field that has no third way.
/// </param>
/// <remarks>The default is the reference state. Source: docs/theory/certified-clearance.md §1.</remarks>
public readonly record struct PosePlace(double Travel, double Steer, double Third)
{
    /// <summary>By number: 0 travel, 1 steer, 2 the third. Source: layout of this type.</summary>
    internal double this[int way] => way == 0 ? Travel : way == 1 ? Steer : Third;

    internal PosePlace With(int way, double value) => way switch
    {
        0 => this with { Travel = value },
        1 => this with { Steer = value },
        _ => this with { Third = value },
    };
}

/// <summary>
/// The pose of a wheel as a function of travel, steer and a third way: twice differentiable or nearly so, from any level of knowledge.
/// </summary>
/// <remarks>May keep its last pose: one instance belongs to one thread. Source: docs/theory/certified-clearance.md §1.</remarks>
public interface IPoseField
{
    /// <summary>The pose at a place; false where the wheel cannot go or nothing is known. Source: the implementer's.</summary>
    bool TryPose(in PosePlace place, out WheelPose pose);
}
