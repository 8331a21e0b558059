namespace Cornerwright.Mechanics.Motion.Hardpoints.Poses;

/// <summary>What a linkage is asked for. The default is the reference state.</summary>
/// <param name="Travel">m, bump positive.</param>
/// <param name="Rack">m along +Y.</param>
/// <param name="Plate">m along the plate's direction.</param>
public readonly record struct LinkagePlace(double Travel, double Rack, double Plate)
{
    internal bool IsFinite => double.IsFinite(Travel) && double.IsFinite(Rack) && double.IsFinite(Plate);

    internal double DistanceTo(in LinkagePlace other) =>
        Math.Abs(Travel - other.Travel) + Math.Abs(Rack - other.Rack) + Math.Abs(Plate - other.Plate);

    internal LinkagePlace Towards(in LinkagePlace goal, double share) => new(
        Travel + (share * (goal.Travel - Travel)), Rack + (share * (goal.Rack - Rack)), Plate + (share * (goal.Plate - Plate)));
}
