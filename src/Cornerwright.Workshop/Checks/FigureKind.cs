using Cornerwright.Garage.Quantities;

namespace Cornerwright.Workshop.Checks;

/// <summary>What is fixed about a figure of a corner.</summary>
/// <param name="Id">In files and scripts.</param>
/// <param name="Title">For people.</param>
/// <param name="Unit">In which it is told.</param>
/// <param name="Decimals">Shown after the point.</param>
internal sealed record FigureKind(string Id, string Title, Unit Unit, int Decimals)
{
    public static FigureKind WheelRate { get; } = new("wheel-rate", "Wheel rate at ride", Units.NewtonPerMillimetre, 1);
    public static FigureKind RideFrequency { get; } = new("ride-frequency", "Ride frequency", Units.Hertz, 2);
    public static FigureKind StaticDeflection { get; } = new("static-deflection", "Main spring squeezed at ride", Units.Millimetre, 1);
    public static FigureKind SpringForce { get; } = new("spring-force", "Spring force at ride", Units.Newton, 0);
    public static FigureKind Preload { get; } = new("preload", "Spring force at full droop", Units.Newton, 0);
    public static FigureKind MotionRatio { get; } = new("motion-ratio", "Motion ratio at ride (spring per wheel)", Units.One, 3);
    public static FigureKind CamberAtRide { get; } = new("camber-ride", "Camber at ride", Units.Degree, 2);
    public static FigureKind HeightChange { get; } = new("height-change", "Body higher than as measured", Units.Millimetre, 1);
    public static FigureKind RodShowing { get; } = new("rod-showing", "Rod showing at ride", Units.Millimetre, 1);
}
