using Cornerwright.Garage.Access;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Parts;

/// <summary>The shape of the face on which a wheel bolt or nut presses the wheel, and of the wheel's hole for it.</summary>
public enum BoltSeat
{
    /// <summary>Tapered; most are 60° across.</summary>
    Cone,

    /// <summary>Rounded.</summary>
    Ball,

    /// <summary>Flat, with or without a washer: it does not centre the wheel.</summary>
    Flat,
}

/// <summary>What holds a wheel: a bolt into the hub, or a nut on a stud that belongs to the hub or to a spacer.</summary>
public sealed record WheelBolt : Part
{
    [Field("A nut, for studs")]
    public bool Nut { get; init; }

    [Field("Thread", How = "M12x1.5; without a pitch the coarse one is meant.")]
    public string Thread { get; init; } = "";

    [Field("Length of the bolt", Dimension.Length, "mm", 8, 150,
        How = "From where its seat bears on the wheel to its end: under the head for a flat seat. Not for a nut.")]
    public Reading? Length { get; init; }

    [Field("Thread in the nut", Dimension.Length, "mm", 4, 80, How = "From its seat to the end of its thread. Only for a nut.")]
    public Reading? ThreadDepth { get; init; }

    [Field("A closed nut", How = "Nothing can come through: a stud that is too long stops it before the wheel is tight.")]
    public bool Closed { get; init; }

    [Field("Seat", How = "The face that lies on the wheel. It must be the wheel's own: a ball in a cone bears on a thin line.")]
    public BoltSeat? Seat { get; init; }

    [Field("Property class", How = "The mark on the head or nut: 8.8, 10.9, 10.")]
    public string Class { get; init; } = "";

    public override IEnumerable<Problem> Contradictions(string path) =>
    [
        .. Thread.Length > 0 ? ThreadDesignation.Parse(Thread, path + " / thread").Problems : [],
        .. AccessCheck.ClassProblem(Class, path + " / property class") is { } problem ? new[] { problem } : [],
    ];
}
