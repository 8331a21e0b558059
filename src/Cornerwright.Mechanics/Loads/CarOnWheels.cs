namespace Cornerwright.Mechanics.Loads;

/// <summary>
/// One wheel under the car. Places in the body's axes: X forward, Y left, from any point of the body that serves all wheels.
/// </summary>
/// <param name="X">m, forward.</param>
/// <param name="Y">m, left.</param>
/// <param name="UnsprungWeight">N, at least 0.</param>
/// <param name="TyreRate">N/m, above 0.</param>
/// <param name="LoadAtReference">Contact load with the hub at its reference height, N.</param>
public readonly record struct WheelUnderCar(double X, double Y, double UnsprungWeight, double TyreRate, double LoadAtReference);

/// <summary>An anti-roll bar between the wheels of one axle. The default is no bar.</summary>
/// <param name="RateOneEnd">Force per difference of height of its ends, N/m: <see cref="Bars.AntiRollBar.RateOneEnd"/>.</param>
/// <param name="LeftRatio">Bar-end travel per wheel travel, left.</param>
/// <param name="RightRatio">The same, right.</param>
/// <param name="Twist">
/// Difference of the ends' heights (left minus right) that the bar has when both wheels stand at travel 0, m: what
/// unequal links leave in it.
/// </param>
public readonly record struct BarUnderCar(double RateOneEnd, double LeftRatio, double RightRatio, double Twist);

/// <summary>A weight on the sprung body: a driver, ballast, or the body itself.</summary>
/// <param name="Newtons">N; negative for something taken out.</param>
/// <param name="X">m, forward, in the wheels' axes.</param>
/// <param name="Y">m, left.</param>
public readonly record struct WeightOnBody(double Newtons, double X, double Y);

/// <summary>
/// A rigid body on four corners and four tyres on a level floor. Wheels in the order front left, front right, rear left, rear right.
/// </summary>
/// <param name="Wheels">Four.</param>
/// <param name="Front">The front bar.</param>
/// <param name="Rear">The rear bar.</param>
/// <param name="Weights">All that the sprung body carries, itself included.</param>
/// <remarks>Source: docs/theory/setting.md §1.</remarks>
public sealed record CarOnWheels(
    IReadOnlyList<WheelUnderCar> Wheels, BarUnderCar Front, BarUnderCar Rear, IReadOnlyList<WeightOnBody> Weights)
{
    /// <summary>
    /// The weight that stands for a body whose four corners carry these forces, N. Source: statics (resultant of parallel forces).
    /// </summary>
    /// <param name="wheels">Where the forces act.</param>
    /// <param name="carried">What each corner holds up, N; together above 0.</param>
    public static WeightOnBody Resultant(IReadOnlyList<WheelUnderCar> wheels, ReadOnlySpan<double> carried)
    {
        ArgumentNullException.ThrowIfNull(wheels);
        double sum = 0, x = 0, y = 0;
        for (int i = 0; i < wheels.Count; i++)
        {
            sum += carried[i];
            x += carried[i] * wheels[i].X;
            y += carried[i] * wheels[i].Y;
        }

        Require.Positive(sum);
        return new(sum, x / sum, y / sum);
    }
}
