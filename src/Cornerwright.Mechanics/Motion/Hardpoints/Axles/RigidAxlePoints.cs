using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Motion.Hardpoints.Axles;

/// <summary>A rod between body and axle, at the reference state, in the body frame, m.</summary>
/// <param name="Name">The rod's name, for answers that name it.</param>
/// <param name="OnBody">Its joint on the body.</param>
/// <param name="OnAxle">Its joint on the axle.</param>
/// <param name="Stiffness">
/// Of the rod with both bushings along its length, in any unit that all rods of the axle share; only ratios count.
/// </param>
public sealed record AxleRod(string Name, Vec3 OnBody, Vec3 OnAxle, double Stiffness = 1);

/// <summary>A spring or damper between a fixed point of the body and a point of the moving part, at the reference state, m.</summary>
/// <param name="OnBody">Upper end, in the body frame.</param>
/// <param name="OnMoving">Lower end, on the axle, the arm or the knuckle, in the body frame.</param>
public readonly record struct StationPoints(Vec3 OnBody, Vec3 OnMoving)
{
    /// <summary>The same on the other side of the car. Source: reflection in the plane Y = 0.</summary>
    public StationPoints Mirrored() => new(OnBody.Mirrored(), OnMoving.Mirrored());
}

/// <summary>What one end of an axle carries, at the reference state.</summary>
/// <param name="WheelCentre">In the body frame, m.</param>
/// <param name="Camber">rad, positive when the top leans outward.</param>
/// <param name="Toe">rad, positive toe-in.</param>
/// <param name="TyreRadius">m, of the rigid disc that finds the contact point.</param>
/// <param name="Spring">Null when there is none.</param>
/// <param name="Damper">Null when there is none.</param>
public sealed record AxleSide(
    Vec3 WheelCentre, double Camber, double Toe, double TyreRadius, StationPoints? Spring = null, StationPoints? Damper = null)
{
    /// <summary>The same on the other side of the car. Source: reflection in the plane Y = 0.</summary>
    public AxleSide Mirrored() =>
        this with { WheelCentre = WheelCentre.Mirrored(), Spring = Spring?.Mirrored(), Damper = Damper?.Mirrored() };

    internal void Check()
    {
        Require.Positive(TyreRadius);
        Require.Finite(Camber);
        Require.Finite(Toe);
        Require.Finite(WheelCentre.LengthSquared);
        Require.Finite(Spring is { } s ? s.OnBody.LengthSquared + s.OnMoving.LengthSquared : 0);
        Require.Finite(Damper is { } d ? d.OnBody.LengthSquared + d.OnMoving.LengthSquared : 0);
    }
}

/// <summary>A rigid axle that carries both wheels, held by rods. Left and right may differ.</summary>
/// <param name="Left">Its wheel centre has the larger Y.</param>
/// <param name="Right">The other end.</param>
/// <param name="Rods">At least 4: trailing links and a lateral rod, or a linkage that replaces it.</param>
/// <param name="BushingGive">
/// How much, m, a rod with its bushings may change in length before the pose counts as out of reach; used with more than 4 rods, where
/// no pose keeps all lengths. A guess of 5 mm, common practice, no source.
/// </param>
public sealed record RigidAxlePoints(AxleSide Left, AxleSide Right, IReadOnlyList<AxleRod> Rods, double BushingGive = 0.005);
