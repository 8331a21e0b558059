namespace Cornerwright.Workshop.Findings;

/// <summary>What happens on a wheel's way from full droop to full bump.</summary>
public enum TravelEvent
{
    DroopStop,
    SpringSeats,
    HelperShuts,
    Ride,
    StopTouched,
    StopSpent,
    CoilBind,
    DamperShut,
    MetalMeets,
    TyreTouches,
}
