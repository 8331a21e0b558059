using Cornerwright.Workshop.Inputs;

namespace Cornerwright.Workshop.Corners;

/// <summary>What each step of solving a corner was worked out from, noted while it was solved at the best estimate.</summary>
internal sealed class CornerReads(int loads, int obstacles)
{
    public ReadSet Motion { get; } = new();
    public ReadSet MotionNow { get; } = new();
    public ReadSet Stack { get; } = new();
    public ReadSet Droop { get; } = new();
    public ReadSet Touch { get; } = new();
    public ReadSet Spent { get; } = new();
    public ReadSet Shut { get; } = new();
    public ReadSet Bind { get; } = new();
    public ReadSet Metal { get; } = new();

    /// <summary>By load case.</summary>
    public ReadSet[] Ride { get; } = Sets(loads);

    /// <summary>Tyre and rim of the build.</summary>
    public ReadSet Outline { get; } = new();

    /// <summary>By obstacle: where it stands.</summary>
    public ReadSet[] Place { get; } = Sets(obstacles);

    /// <summary>Where the wheel can be: its motion, the ends of its travel, its steering.</summary>
    public ReadSet Poses { get; } = new();

    /// <summary>By obstacle: the least gap to it.</summary>
    public ReadSet[] Gap { get; } = Sets(obstacles);

    /// <summary>Where the tyre first touches.</summary>
    public ReadSet TyreTouch { get; } = new();

    /// <summary>True if the wheel's motion, the ends of its travel or a height at which it rides was worked out from an input.</summary>
    public bool InTravel(int input) =>
        Motion.Has(input) || MotionNow.Has(input) || Stack.Has(input) || Droop.Has(input) || Touch.Has(input) || Spent.Has(input)
        || Shut.Has(input) || Bind.Has(input) || Metal.Has(input) || Array.Exists(Ride, ride => ride.Has(input));

    /// <summary>True if an end of the wheel's travel was worked out from an input.</summary>
    public bool InEnds(int input) =>
        Motion.Has(input) || Stack.Has(input) || Droop.Has(input) || Spent.Has(input) || Shut.Has(input) || Bind.Has(input)
        || Metal.Has(input);

    private static ReadSet[] Sets(int count)
    {
        var sets = new ReadSet[count];
        for (int i = 0; i < count; i++)
        {
            sets[i] = new ReadSet();
        }

        return sets;
    }
}
