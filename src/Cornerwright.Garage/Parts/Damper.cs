using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Parts;

/// <summary>One row of a damper's force against speed.</summary>
public sealed record DamperCurvePoint
{
    [Field("Rod speed", Dimension.Speed, "m/s", 0, 10, Needed = true)]
    public Reading? Speed { get; init; }

    [Field("Force in bump", Dimension.Force, "N", 0, 50_000)]
    public Reading? Bump { get; init; }

    [Field("Force in rebound", Dimension.Force, "N", 0, 50_000)]
    public Reading? Rebound { get; init; }
}

/// <summary>A damper or strut insert with its body. Lengths along its axis.</summary>
public sealed record Damper : Part
{
    [Field("Rod showing, pulled out", Dimension.Length, "mm", 20, 700,
        How = "From the body's top to the rod's shoulder with the rod fully out.")]
    public Reading? RodOpen { get; init; }

    [Field("Rod showing, pushed in", Dimension.Length, "mm", 0, 500, How = "The same with the rod pushed fully in, bump stop off.")]
    public Reading? RodClosed { get; init; }

    [Field("Body height", Dimension.Length, "mm", 30, 900, How = "From the lower reference (clamp bolt or lower eye) to the body's top.")]
    public Reading? BodyHeight { get; init; }

    [Field("Tube diameter", Dimension.Length, "mm", 20, 120)]
    public Reading? TubeDiameter { get; init; }

    [Field("Rod force", Dimension.Force, "N", 0, 3000, How = "Gas push on the rod at mid stroke; 0 when it does not come out by itself.")]
    public Reading? RodForce { get; init; }

    [Field("Collar thread begins", Dimension.Length, "mm", 0, 800,
        How = "Lower reference to the lowest place where the perch's seat can stand.")]
    public Reading? ThreadLow { get; init; }

    [Field("Collar thread ends", Dimension.Length, "mm", 0, 900,
        How = "Lower reference to the highest place where the perch's seat can stand, lock ring on the thread.")]
    public Reading? ThreadHigh { get; init; }

    [Field("Body height at least", Dimension.Length, "mm", 30, 900, How = "For a body that screws into its clamp: screwed fully in.")]
    public Reading? BodyLow { get; init; }

    [Field("Body height at most", Dimension.Length, "mm", 30, 900,
        How = "For a body that screws into its clamp: at the least engagement the maker allows.")]
    public Reading? BodyHigh { get; init; }

    [Field("Rod showing at ride, at least", Dimension.Length, "mm", 0, 700, How = "The maker's window.")]
    public Reading? WindowLow { get; init; }

    [Field("Rod showing at ride, at most", Dimension.Length, "mm", 0, 700, How = "The maker's window.")]
    public Reading? WindowHigh { get; init; }

    [Field("Force against speed")]
    public IReadOnlyList<DamperCurvePoint> Curve { get; init; } = [];

    public override IEnumerable<Problem> Contradictions(string path) =>
    [
        .. InOrder.Smaller(path + " / rod pushed in and pulled out", RodClosed, RodOpen),
        .. InOrder.Smaller(path + " / collar thread", ThreadLow, ThreadHigh),
        .. InOrder.Smaller(path + " / body height", BodyLow, BodyHigh),
        .. InOrder.Smaller(path + " / ride window", WindowLow, WindowHigh),
    ];
}
