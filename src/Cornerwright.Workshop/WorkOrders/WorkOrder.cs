using Cornerwright.Garage.Access;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Workshop.WorkOrders;

/// <summary>The parts of a job, in order.</summary>
public enum OrderPhase
{
    Prepare,

    /// <summary>Car still on its wheels.</summary>
    Standing,
    TakeOff,
    Fit,

    /// <summary>Car on its wheels again.</summary>
    LetDown,
    Set,

    /// <summary>After the first kilometres.</summary>
    Later,
}

/// <summary>Fasteners of one kind at one place, as a step or the torque table shows them.</summary>
/// <param name="Count">Null where the graph does not say.</param>
/// <param name="Torque">"28 N·m (21 lbf·ft)", or "maker's figure".</param>
/// <param name="Warning">What is odd about the torque; empty if nothing.</param>
public sealed record FastenerLine(AccessNode Node, string Where, Fastener Fastener, int? Count, string Torque, string Warning);

/// <summary>One thing to do and to tick off.</summary>
public sealed record OrderStep
{
    /// <summary>Stands for what is done at which place, never for its row: it survives a new order of the same job.</summary>
    public required string Id { get; init; }

    public required OrderPhase Phase { get; init; }

    /// <summary>What to do, as a command.</summary>
    public required string Title { get; init; }

    /// <summary>"front left", "front axle"; empty for the whole car.</summary>
    public string Place { get; init; } = "";

    /// <summary>More about it, a sentence each.</summary>
    public IReadOnlyList<string> Details { get; init; } = [];

    /// <summary>What is undone or tightened in this step.</summary>
    public IReadOnlyList<FastenerLine> Fasteners { get; init; } = [];

    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Null where the graph does not say.</summary>
    public double? Minutes { get; init; }

    /// <summary>The component and wheel it is about; null for steps of the whole job.</summary>
    public AccessNode? Node { get; init; }
}

/// <summary>A part to lay ready.</summary>
public sealed record OrderPart(Part Part, int Count, decimal? Sum, string Where);

/// <summary>From one build to another, as a list of steps.</summary>
public sealed record WorkOrder
{
    public required Car Car { get; init; }
    public required Build From { get; init; }
    public required Build To { get; init; }
    public required IReadOnlyList<OrderStep> Steps { get; init; }
    public required IReadOnlyList<OrderPart> Parts { get; init; }
    public required IReadOnlyList<string> Tools { get; init; }
    public required IReadOnlyList<string> Consumables { get; init; }

    /// <summary>Everything that gets a torque, in the order of fitting.</summary>
    public required IReadOnlyList<FastenerLine> Torques { get; init; }

    /// <summary>What the order could not know: components that the graph lacks, figures that the maker must give, odd torques.</summary>
    public required IReadOnlyList<string> Gaps { get; init; }

    /// <summary>Sum of the steps whose time is known; null if none is.</summary>
    public double? Minutes { get; init; }

    /// <summary>Steps without a time: the sum is too small by these.</summary>
    public int Untimed { get; init; }
}
