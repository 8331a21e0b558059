using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Inputs;

/// <summary>What has to be worked out again when an input moves. What is not named here stays as it was.</summary>
/// <param name="Travel">Ends of travel and ride heights.</param>
/// <param name="Motion">The wheel's motion itself.</param>
/// <param name="Wheel">The outline of wheel or tyre, now or to come.</param>
/// <param name="Items">Things near the wheel whose place moves, one bit each.</param>
internal readonly record struct InputEffect(bool Travel = false, bool Motion = false, bool Wheel = false, ulong Items = 0)
{
    public const ulong AllItems = ulong.MaxValue;

    /// <summary>Anything may have moved.</summary>
    public static InputEffect Everything => new(true, true, true, AllItems);

    /// <summary>Nothing but checks that read the input directly.</summary>
    public bool IsNone => !Travel && !Motion && !Wheel && Items == 0;

    public InputEffect And(InputEffect other) =>
        new(Travel || other.Travel, Motion || other.Motion, Wheel || other.Wheel, Items | other.Items);
}
