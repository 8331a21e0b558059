namespace Cornerwright.Mechanics.Loads;

/// <summary>
/// What spring, stop and gas do at one wheel, brought to the wheel by virtual work. The default is a wheel with nothing above it.
/// </summary>
/// <param name="Newtons">Pushes body and wheel apart, vertical at the wheel, N; negative where a droop stop holds the wheel.</param>
/// <param name="PerTravel">Its slope with the wheel's travel (bump positive), N/m.</param>
/// <param name="PerSeat">
/// Its slope with the rise of the lower spring seat along the spring's axis, N/m: motion ratio times tangent rate.
/// </param>
public readonly record struct CornerForce(double Newtons, double PerTravel, double PerSeat);

/// <summary>One corner's force at the wheel, whatever spring and linkage stand behind it.</summary>
public interface ICornerForce
{
    /// <summary>Force and slopes at a travel with the lower seat moved.</summary>
    /// <param name="travel">m, bump positive, 0 at the reference state.</param>
    /// <param name="seatRise">How far the lower seat stands above where it stood, m, along the spring's axis.</param>
    /// <param name="force">Numbers only where the answer is true.</param>
    /// <returns>False outside the travel that the motion covers.</returns>
    /// <remarks>Source: definition.</remarks>
    bool At(double travel, double seatRise, out CornerForce force);
}
