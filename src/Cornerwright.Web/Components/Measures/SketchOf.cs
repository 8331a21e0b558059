using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Setting;

namespace Cornerwright.Web.Components.Measures;

/// <summary>Which sketch explains which reading. A test holds it complete over every reading of a corner, a car and a part.</summary>
public static class SketchOf
{
    /// <returns>Null where a limit is chosen and nothing is measured.</returns>
    public static Sketch? Field(Type owner, string property) =>
        PartSheets.Of(owner, property) is { } own ? own
        : owner == typeof(Car) ? OfCar(property)
        : owner == typeof(LoadCase) ? OfLoad(property)
        : owner == typeof(Axle) ? Sketch.Track
        : owner == typeof(Hub) ? OfHub(property)
        : owner == typeof(Corner) ? OfCorner(property)
        : owner == typeof(WheelMotion) ? OfMotion(property)
        : owner == typeof(FrontPoint) ? property == nameof(FrontPoint.Inboard) ? Sketch.PointInboard : Sketch.PointAbove
        : owner == typeof(BodyPoint)
        ? property switch { nameof(BodyPoint.X) => Sketch.BodyForward, nameof(BodyPoint.Y) => Sketch.BodyLeft, _ => Sketch.BodyUp }
        : owner == typeof(HardpointTable) ? Sketch.LowerReference
        : owner == typeof(CycledStep) ? OfStep(property)
        : owner == typeof(StrutPlace) ? OfStrut(property)
        : owner == typeof(SteeringAxis) ? OfSteering(property)
        : owner == typeof(Gap)
        ? property switch { nameof(Gap.Travel) => Sketch.TravelOfWheel, nameof(Gap.Steer) => Sketch.Lock, _ => Sketch.Gap }
        : owner == typeof(CornerBuild) ? OfSetting(property)
        : owner == typeof(CornerReadings) ? OfReadings(property)
        : owner == typeof(GapAtRide) ? Sketch.Gap
        : OfPart(owner, property);

    private static Sketch? OfCar(string property) => property switch
    {
        nameof(Car.Wheelbase) => Sketch.Wheelbase,
        nameof(Car.GroundClearance) => Sketch.GroundClearance,
        nameof(Car.TopSpeed) => Sketch.TopSpeed,
        _ => null,
    };

    private static Sketch? OfReadings(string property) => property switch
    {
        nameof(CornerReadings.Height) => Sketch.RideHeight,
        nameof(CornerReadings.Load) => Sketch.LoadFrontLeft,
        nameof(CornerReadings.Camber) => Sketch.Camber,
        nameof(CornerReadings.Toe) => Sketch.Toe,
        _ => null,
    };

    private static Sketch? OfLoad(string property) => property switch
    {
        nameof(LoadCase.FrontLeft) => Sketch.LoadFrontLeft,
        nameof(LoadCase.FrontRight) => Sketch.LoadFrontRight,
        nameof(LoadCase.RearLeft) => Sketch.LoadRearLeft,
        nameof(LoadCase.RearRight) => Sketch.LoadRearRight,
        _ => null,
    };

    private static Sketch? OfHub(string property) => property switch
    {
        nameof(Hub.BoltCircle) => Sketch.BoltCircle,
        nameof(Hub.Centring) => Sketch.Centring,
        nameof(Hub.Thread) => Sketch.ThreadDiameter,
        nameof(Hub.ThreadPitch) => Sketch.ThreadPitch,
        nameof(Hub.EngagedNow) => Sketch.Engagement,
        _ => null,
    };

    private static Sketch? OfCorner(string property) => property switch
    {
        nameof(Corner.RideHeight) => Sketch.RideHeight,
        nameof(Corner.UnsprungMass) => Sketch.UnsprungMass,
        nameof(Corner.Camber) => Sketch.Camber,
        nameof(Corner.Toe) => Sketch.Toe,
        nameof(Corner.SpringAxisLength) => Sketch.SpringAxisLength,
        nameof(Corner.DamperAxisLength) => Sketch.DamperAxisLength,
        nameof(Corner.DroopLimit) => Sketch.DroopHeld,
        nameof(Corner.MetalContact) => Sketch.MetalMeets,
        nameof(Corner.CalliperRadius) => Sketch.CalliperRadius,
        nameof(Corner.CalliperProud) => Sketch.CalliperProud,
        _ => null,
    };

    private static Sketch? OfMotion(string property) => property switch
    {
        nameof(WheelMotion.SpringRatio) or nameof(WheelMotion.DamperRatio) or nameof(WheelMotion.BarRatio) => Sketch.MotionRatio,
        nameof(WheelMotion.SpringRatioChange) or nameof(WheelMotion.DamperRatioChange) => Sketch.RatioChange,
        nameof(WheelMotion.CamberGain) => Sketch.CamberGain,
        nameof(WheelMotion.OutboardPerTravel) => Sketch.Sideways,
        nameof(WheelMotion.ForwardPerTravel) => Sketch.ForeAndAft,
        nameof(WheelMotion.SwingArm) => Sketch.SwingArm,
        _ => null,
    };

    private static Sketch? OfStep(string property) => property switch
    {
        nameof(CycledStep.Travel) => Sketch.TravelOfWheel,
        nameof(CycledStep.SpringLength) => Sketch.SpringAxisLength,
        nameof(CycledStep.DamperLength) => Sketch.DamperAxisLength,
        nameof(CycledStep.Camber) => Sketch.Camber,
        nameof(CycledStep.Toe) => Sketch.Toe,
        nameof(CycledStep.Outboard) => Sketch.Sideways,
        nameof(CycledStep.Forward) => Sketch.ForeAndAft,
        _ => null,
    };

    private static Sketch? OfStrut(string property) => property switch
    {
        nameof(StrutPlace.TyreToTube) => Sketch.TyreToTube,
        nameof(StrutPlace.Lean) => Sketch.StrutLean,
        nameof(StrutPlace.LowerReference) => Sketch.LowerReference,
        _ => null,
    };

    private static Sketch? OfSteering(string property) => property switch
    {
        nameof(SteeringAxis.Kingpin) => Sketch.Kingpin,
        nameof(SteeringAxis.Caster) => Sketch.Caster,
        nameof(SteeringAxis.HubOffset) => Sketch.HubOffset,
        nameof(SteeringAxis.TrailAtHub) => Sketch.TrailAtHub,
        nameof(SteeringAxis.Lock) => Sketch.Lock,
        nameof(SteeringAxis.RackTravel) => Sketch.Lock,
        nameof(SteeringAxis.BumpAtLock) => Sketch.TravelOfWheel,
        _ => null,
    };

    private static Sketch? OfSetting(string property) => property switch
    {
        nameof(CornerBuild.PerchHeight) => Sketch.PerchHeight,
        nameof(CornerBuild.BodyHeight) => Sketch.BodyHeight,
        nameof(CornerBuild.Slide) => Sketch.Slide,
        nameof(CornerBuild.ClampCamber) => Sketch.Camber,
        nameof(CornerBuild.Packer) => Sketch.Packer,
        nameof(CornerBuild.Pressure) => Sketch.Pressure,
        _ => null,
    };

    private static Sketch? OfPart(Type owner, string property) => (owner.Name, property) switch
    {
        (nameof(Wheel), nameof(Wheel.CentreBore)) => Sketch.CentreBore,
        (nameof(Wheel), nameof(Wheel.SeatThickness)) => Sketch.SeatThickness,
        (nameof(Wheel), nameof(Wheel.FlangeThickness)) => Sketch.FlangeThickness,
        (nameof(Wheel), nameof(Wheel.BarrelRadius)) => Sketch.BarrelRadius,
        (nameof(Wheel), nameof(Wheel.SpokeRoom)) => Sketch.SpokeRoom,
        (nameof(Wheel), nameof(Wheel.Pockets)) => Sketch.Pockets,
        (nameof(Wheel), nameof(Wheel.LoadRating)) => Sketch.LoadRating,
        (_, "Mass") => Sketch.PartMass,
        (nameof(Tyre), nameof(Tyre.SectionWidth)) => Sketch.SectionWidth,
        (nameof(Tyre), nameof(Tyre.OuterDiameter)) => Sketch.TyreDiameter,
        (nameof(Tyre), nameof(Tyre.TreadWidth)) => Sketch.TreadWidth,
        (nameof(Tyre), nameof(Tyre.ShoulderDrop)) => Sketch.ShoulderDrop,
        (nameof(Tyre), nameof(Tyre.RimMin) or nameof(Tyre.RimMax) or nameof(Tyre.MeasuredOnRim)) => Sketch.RimWidth,
        (nameof(Spring), nameof(Spring.Rate)) => Sketch.SpringRate,
        (nameof(Spring), nameof(Spring.FreeLength)) => Sketch.FreeLength,
        (nameof(Spring), nameof(Spring.SolidHeight)) => Sketch.SolidHeight,
        (nameof(Spring), nameof(Spring.InnerDiameter)) => Sketch.InnerDiameter,
        (nameof(Spring), nameof(Spring.OuterDiameter)) => Sketch.OuterDiameter,
        (nameof(Spring), nameof(Spring.GreatestDeflection)) => Sketch.Deflection,
        (nameof(Spring), nameof(Spring.WireDiameter)) => Sketch.WireDiameter,
        (nameof(Spring), nameof(Spring.ActiveCoils)) => Sketch.ActiveCoils,
        (nameof(Spring), nameof(Spring.TensileStrength)) => Sketch.WireStrength,
        (nameof(Spring), nameof(Spring.PlannedCrossover)) => Sketch.Force,
        (nameof(SpringCurvePoint), nameof(SpringCurvePoint.Deflection)) => Sketch.Deflection,
        (nameof(SpringCurvePoint), nameof(SpringCurvePoint.Force)) => Sketch.Force,
        (nameof(Sheet), nameof(Sheet.Thickness)) => Sketch.SheetThickness,
        (nameof(Sheet), nameof(Sheet.LowerRegister)) => Sketch.RegisterBelow,
        (nameof(Sheet), nameof(Sheet.UpperRegister)) => Sketch.RegisterAbove,
        (nameof(Sheet), nameof(Sheet.CollarHeight)) => Sketch.CollarHeight,
        (nameof(Perch), nameof(Perch.Register)) => Sketch.PerchRegister,
        (nameof(Perch), nameof(Perch.OuterDiameter)) => Sketch.PerchOuter,
        (nameof(Perch), nameof(Perch.Depth)) => Sketch.PerchDepth,
        (nameof(Perch), nameof(Perch.Pitch)) => Sketch.CollarPitch,
        (nameof(TopMount), nameof(TopMount.SeatDrop)) => Sketch.SeatDrop,
        (nameof(TopMount), nameof(TopMount.RodDrop)) => Sketch.RodDrop,
        (nameof(TopMount), nameof(TopMount.Register)) => Sketch.MountRegister,
        (nameof(TopMount), nameof(TopMount.SlideIn) or nameof(TopMount.SlideOut)) => Sketch.Slide,
        (nameof(Damper), nameof(Damper.RodOpen)) => Sketch.RodOut,
        (nameof(Damper), nameof(Damper.RodClosed)) => Sketch.RodIn,
        (nameof(Damper), nameof(Damper.WindowLow) or nameof(Damper.WindowHigh)) => Sketch.RodOut,
        (nameof(Damper), nameof(Damper.BodyHeight) or nameof(Damper.BodyLow) or nameof(Damper.BodyHigh)) => Sketch.BodyHeight,
        (nameof(Damper), nameof(Damper.TubeDiameter)) => Sketch.TubeDiameter,
        (nameof(Damper), nameof(Damper.RodForce)) => Sketch.RodForce,
        (nameof(Damper), nameof(Damper.ThreadLow)) => Sketch.ThreadLow,
        (nameof(Damper), nameof(Damper.ThreadHigh)) => Sketch.ThreadHigh,
        (nameof(DamperCurvePoint), nameof(DamperCurvePoint.Speed)) => Sketch.RodSpeed,
        (nameof(DamperCurvePoint), _) => Sketch.RodForce,
        (nameof(BumpStop), nameof(BumpStop.Length)) => Sketch.StopLength,
        (nameof(BumpStop), nameof(BumpStop.SpentLength)) => Sketch.StopSpent,
        (nameof(StopCurvePoint), nameof(StopCurvePoint.Deflection)) => Sketch.StopSqueeze,
        (nameof(StopCurvePoint), nameof(StopCurvePoint.Force)) => Sketch.Force,
        (nameof(AntiRollBar), nameof(AntiRollBar.Rate)) => Sketch.BarRate,
        (nameof(AntiRollBar), nameof(AntiRollBar.Diameter)) => Sketch.BarDiameter,
        (nameof(AntiRollBar), nameof(AntiRollBar.Bore)) => Sketch.BarBore,
        (nameof(AntiRollBar), nameof(AntiRollBar.StraightLength)) => Sketch.BarLength,
        (nameof(AntiRollBar), nameof(AntiRollBar.Arm)) => Sketch.BarArm,
        _ => null,
    };
}
