using Cornerwright.Garage.Fields;

namespace Cornerwright.Garage.Access;

/// <summary>What can hurt someone or break something while a component is undone or fitted.</summary>
public sealed record Hazard
{
    [Field("Kind")]
    public HazardKind Kind { get; init; }

    [Field("When")]
    public HazardTime When { get; init; } = HazardTime.BothWays;

    [Field("In words", How = "Left empty, the usual sentence for its kind stands at the step.")]
    public string Words { get; init; } = "";

    /// <summary>What the order says at the step.</summary>
    public string Sentence => Words.Length > 0 ? Words : Kind switch
    {
        HazardKind.SpringEnergy => "A compressed spring is stored energy. Hold it with a proper spring compressor, both hooks "
            + "seated, until it is loose between its seats; never by the top nut alone. Keep out of its axis.",
        HazardKind.BrakeHose =>
            "The brake hose carries no weight and must not be stretched or twisted: unclip it first, and tie up whatever hangs on it.",
        HazardKind.SensorWire => "The sensor wire is short: unclip it, or unplug it with the ignition off, before anything drops.",
        HazardKind.BatteryNear => "A spanner here can bridge the battery: take its earth lead off first.",
        HazardKind.AirbagWiring => "Airbag wiring: ignition off, battery earth off, wait as the maker says, and leave its plugs alone.",
        HazardKind.HeavyPart => "Heavy: support it from below before the last bolt is out.",
        HazardKind.DriveShaft => "Do not pull the drive shaft apart: keep the carrier from swinging outward.",
        _ => "Take care.",
    };
}
