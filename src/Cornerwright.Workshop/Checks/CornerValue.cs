using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;

namespace Cornerwright.Workshop.Checks;

/// <summary>
/// Something worked out for one corner that changes smoothly with the inputs: a check, a figure, a mark of the travel column, or a
/// value that whole axles are made of. All go through the same doubt.
/// </summary>
internal abstract record CornerValue
{
    /// <summary>Readings without which the value cannot be computed; then nothing else of it is asked.</summary>
    public IReadOnlyList<MissingReading> Missing { get; init; } = [];

    /// <summary>SI; not finite where the state is out of the motion's reach.</summary>
    public required Func<CornerReader, double> Value { get; init; }

    public bool CanSpeak => Missing.Count == 0;
}

/// <summary>A value without a limit that is worth knowing.</summary>
internal sealed record CornerFigure(FigureKind Kind) : CornerValue;

/// <summary>A mark of the travel column: where on the wheel's way something happens, m.</summary>
/// <param name="Event">What happens.</param>
/// <param name="Words">As drawn.</param>
internal sealed record CornerMark(TravelEvent Event, string Words) : CornerValue;

/// <summary>What of a corner whole-axle and whole-car checks are made of.</summary>
internal enum CarriedKind
{
    /// <summary>Travel at ride in the load case in which heights are wanted, m.</summary>
    RideTravel,

    /// <summary>Hub to arch at ride in that load case, m.</summary>
    Height,
}

/// <inheritdoc cref="CarriedKind"/>
internal sealed record CarriedValue(CarriedKind Kind) : CornerValue;
