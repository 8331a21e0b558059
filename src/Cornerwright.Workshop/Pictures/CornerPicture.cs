using Cornerwright.Garage.Chassis;
using Cornerwright.Workshop.Findings;


namespace Cornerwright.Workshop.Pictures;

/// <summary>One event of the travel column.</summary>
/// <param name="Travel">m, bump positive.</param>
/// <param name="Doubt">Two standard deviations, m.</param>
/// <param name="Words">Short, as drawn: "ride, driver alone".</param>
public sealed record TravelMark(TravelEvent Event, double Travel, double Doubt, string Words);

/// <summary>A piece of the stack in one state.</summary>
/// <param name="Length">m along the axis.</param>
/// <param name="Outer">Outer diameter, m (an estimate where none was given).</param>
/// <param name="Coil">False for sheets and adapters.</param>
/// <param name="Shut">Coils touching.</param>
/// <param name="FreeLength">As it is bought, before it sets, m.</param>
/// <param name="SolidLength">m.</param>
public sealed record StackPiece(string Name, double Length, double Outer, bool Coil, bool Shut, double FreeLength, double SolidLength);

/// <summary>The whole stack in one state, from the perch upward.</summary>
/// <param name="State">"full droop", "ride", "full bump".</param>
/// <param name="Travel">Wheel travel, m.</param>
/// <param name="Space">Between the seats, m.</param>
/// <param name="Gap">What the stack does not fill, m.</param>
/// <param name="Force">N.</param>
/// <param name="RodShowing">m; null where the damper is unknown.</param>
public sealed record StackState(string State, double Travel, double Space, double Gap, double Force, double? RodShowing,
    IReadOnlyList<StackPiece> Pieces);

/// <summary>A point of the section through the wheel: m along the spindle (street side positive) and m from the spindle.</summary>
public readonly record struct SectionPoint(double Axial, double Radius);

/// <summary>An outline in the section.</summary>
/// <param name="Kind">"tyre now", "tyre", "rim now", "rim", "tube", "perch", "spring".</param>
public sealed record SectionOutline(string Kind, string Name, IReadOnlyList<SectionPoint> Points);

/// <summary>Something near the wheel, where it stands against the wheel at one travel.</summary>
/// <param name="Gap">To the proposed wheel, m, negative where they overlap.</param>
/// <param name="OnObstacle">Its place in the section.</param>
/// <param name="OnWheel">The nearest place on the wheel.</param>
/// <param name="Worst">True for the least gap of this obstacle over all states.</param>
public sealed record SectionGap(string Obstacle, string State, double Travel, double Steer, double Clock, double Gap,
    SectionPoint OnObstacle, SectionPoint OnWheel, bool Worst);

/// <summary>Section through one wheel.</summary>
public sealed record WheelSection(IReadOnlyList<SectionOutline> Outlines, IReadOnlyList<SectionGap> Gaps);

/// <summary>What the pictures of one corner are drawn from.</summary>
public sealed record CornerPicture(
    CornerPlace Corner,
    IReadOnlyList<TravelMark> Marks,
    IReadOnlyList<StackState> Stack,
    WheelSection? Wheel);
