using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Linkage;

/// <summary>What one condition on the knuckle is.</summary>
internal enum ConditionKind
{
    /// <summary>A point of the knuckle keeps its distance from a point of the body.</summary>
    Rod = 0,

    /// <summary>
    /// A point of the body keeps its distance along a direction of the knuckle: half of a strut's line, or half of a
    /// hinge's second bushing.
    /// </summary>
    AcrossLine,

    /// <summary>A point of the knuckle stays on a plane of the body: a third of a hinge's first bushing.</summary>
    Plane,
}

/// <summary>One scalar condition on the knuckle, ready for the solver.</summary>
/// <param name="Kind">How the rest is read.</param>
/// <param name="InKnuckle">Rod and plane: a point, from the knuckle's origin; line: a direction of length 1.</param>
/// <param name="OnBody">Rod and line: a point; plane: a direction of length 1.</param>
/// <param name="Constant">Rod: its length; line: the body point's coordinate; plane: the knuckle point's coordinate. m.</param>
/// <param name="ByRack">How far the body point goes along +Y per m of rack: 1, -1 on a mirrored corner, else 0.</param>
/// <param name="Slides">True when the plate carries the body point.</param>
/// <param name="Tie">Place of the tie it came from.</param>
/// <remarks>Source: docs/theory/hardpoints.md §2.</remarks>
internal readonly record struct KnuckleCondition(
    ConditionKind Kind, Vec3 InKnuckle, Vec3 OnBody, double Constant, double ByRack, bool Slides, int Tie);
