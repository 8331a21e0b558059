using System.Reflection;

namespace Cornerwright.Web.Components.Measures;

/// <summary>What a sketch shows: which way the car is seen and which distance is measured.</summary>
/// <remarks>
/// Those named here belong to the car or are shared by kinds of parts. A kind's own stand with their drawing in a file of the kind:
/// see <see cref="PartSheets"/>.
/// </remarks>
public sealed class Sketch
{
    private Sketch(string name) => Name = name;

    /// <param name="name">Unlike all others.</param>
    /// <param name="drawing">Into a field of 160 by 112.</param>
    internal Sketch(string name, Action<Pen> drawing) => (Name, Drawing) = (name, drawing);

    public string Name { get; }

    /// <summary>Null for those that the sketches of car, strut and parts draw.</summary>
    internal Action<Pen>? Drawing { get; }

    public static Sketch RideHeight { get; } = new(nameof(RideHeight));
    public static Sketch GroundClearance { get; } = new(nameof(GroundClearance));
    public static Sketch Wheelbase { get; } = new(nameof(Wheelbase));
    public static Sketch Track { get; } = new(nameof(Track));
    public static Sketch LoadFrontLeft { get; } = new(nameof(LoadFrontLeft));
    public static Sketch LoadFrontRight { get; } = new(nameof(LoadFrontRight));
    public static Sketch LoadRearLeft { get; } = new(nameof(LoadRearLeft));
    public static Sketch LoadRearRight { get; } = new(nameof(LoadRearRight));
    public static Sketch UnsprungMass { get; } = new(nameof(UnsprungMass));
    public static Sketch TopSpeed { get; } = new(nameof(TopSpeed));
    public static Sketch Camber { get; } = new(nameof(Camber));
    public static Sketch Toe { get; } = new(nameof(Toe));
    public static Sketch SpringAxisLength { get; } = new(nameof(SpringAxisLength));
    public static Sketch DamperAxisLength { get; } = new(nameof(DamperAxisLength));
    public static Sketch PerchHeight { get; } = new(nameof(PerchHeight));
    public static Sketch BodyHeight { get; } = new(nameof(BodyHeight));
    public static Sketch RodOut { get; } = new(nameof(RodOut));
    public static Sketch RodIn { get; } = new(nameof(RodIn));
    public static Sketch SeatDrop { get; } = new(nameof(SeatDrop));
    public static Sketch RodDrop { get; } = new(nameof(RodDrop));
    public static Sketch Slide { get; } = new(nameof(Slide));
    public static Sketch ThreadLow { get; } = new(nameof(ThreadLow));
    public static Sketch ThreadHigh { get; } = new(nameof(ThreadHigh));
    public static Sketch RodForce { get; } = new(nameof(RodForce));
    public static Sketch TubeDiameter { get; } = new(nameof(TubeDiameter));
    public static Sketch DroopHeld { get; } = new(nameof(DroopHeld));
    public static Sketch MetalMeets { get; } = new(nameof(MetalMeets));
    public static Sketch TravelOfWheel { get; } = new(nameof(TravelOfWheel));
    public static Sketch MotionRatio { get; } = new(nameof(MotionRatio));
    public static Sketch RatioChange { get; } = new(nameof(RatioChange));
    public static Sketch CamberGain { get; } = new(nameof(CamberGain));
    public static Sketch Sideways { get; } = new(nameof(Sideways));
    public static Sketch ForeAndAft { get; } = new(nameof(ForeAndAft));
    public static Sketch SwingArm { get; } = new(nameof(SwingArm));
    public static Sketch PointInboard { get; } = new(nameof(PointInboard));
    public static Sketch PointAbove { get; } = new(nameof(PointAbove));
    public static Sketch BodyForward { get; } = new(nameof(BodyForward));
    public static Sketch BodyLeft { get; } = new(nameof(BodyLeft));
    public static Sketch BodyUp { get; } = new(nameof(BodyUp));
    public static Sketch TyreToTube { get; } = new(nameof(TyreToTube));
    public static Sketch LowerReference { get; } = new(nameof(LowerReference));
    public static Sketch StrutLean { get; } = new(nameof(StrutLean));
    public static Sketch Gap { get; } = new(nameof(Gap));
    public static Sketch Kingpin { get; } = new(nameof(Kingpin));
    public static Sketch Caster { get; } = new(nameof(Caster));
    public static Sketch HubOffset { get; } = new(nameof(HubOffset));
    public static Sketch TrailAtHub { get; } = new(nameof(TrailAtHub));
    public static Sketch Lock { get; } = new(nameof(Lock));
    public static Sketch CalliperRadius { get; } = new(nameof(CalliperRadius));
    public static Sketch CalliperProud { get; } = new(nameof(CalliperProud));
    public static Sketch BoltCircle { get; } = new(nameof(BoltCircle));
    public static Sketch Centring { get; } = new(nameof(Centring));
    public static Sketch ThreadDiameter { get; } = new(nameof(ThreadDiameter));
    public static Sketch ThreadPitch { get; } = new(nameof(ThreadPitch));
    public static Sketch Engagement { get; } = new(nameof(Engagement));
    public static Sketch Pockets { get; } = new(nameof(Pockets));
    public static Sketch CentreBore { get; } = new(nameof(CentreBore));
    public static Sketch SeatThickness { get; } = new(nameof(SeatThickness));
    public static Sketch FlangeThickness { get; } = new(nameof(FlangeThickness));
    public static Sketch BarrelRadius { get; } = new(nameof(BarrelRadius));
    public static Sketch SpokeRoom { get; } = new(nameof(SpokeRoom));
    public static Sketch LoadRating { get; } = new(nameof(LoadRating));
    public static Sketch PartMass { get; } = new(nameof(PartMass));
    public static Sketch SectionWidth { get; } = new(nameof(SectionWidth));
    public static Sketch TyreDiameter { get; } = new(nameof(TyreDiameter));
    public static Sketch TreadWidth { get; } = new(nameof(TreadWidth));
    public static Sketch ShoulderDrop { get; } = new(nameof(ShoulderDrop));
    public static Sketch RimWidth { get; } = new(nameof(RimWidth));
    public static Sketch FreeLength { get; } = new(nameof(FreeLength));
    public static Sketch SolidHeight { get; } = new(nameof(SolidHeight));
    public static Sketch InnerDiameter { get; } = new(nameof(InnerDiameter));
    public static Sketch OuterDiameter { get; } = new(nameof(OuterDiameter));
    public static Sketch WireDiameter { get; } = new(nameof(WireDiameter));
    public static Sketch ActiveCoils { get; } = new(nameof(ActiveCoils));
    public static Sketch WireStrength { get; } = new(nameof(WireStrength));
    public static Sketch Deflection { get; } = new(nameof(Deflection));
    public static Sketch SpringRate { get; } = new(nameof(SpringRate));
    public static Sketch Force { get; } = new(nameof(Force));
    public static Sketch SheetThickness { get; } = new(nameof(SheetThickness));
    public static Sketch RegisterBelow { get; } = new(nameof(RegisterBelow));
    public static Sketch RegisterAbove { get; } = new(nameof(RegisterAbove));
    public static Sketch CollarHeight { get; } = new(nameof(CollarHeight));
    public static Sketch PerchRegister { get; } = new(nameof(PerchRegister));
    public static Sketch PerchOuter { get; } = new(nameof(PerchOuter));
    public static Sketch PerchDepth { get; } = new(nameof(PerchDepth));
    public static Sketch CollarPitch { get; } = new(nameof(CollarPitch));
    public static Sketch MountRegister { get; } = new(nameof(MountRegister));
    public static Sketch StopLength { get; } = new(nameof(StopLength));
    public static Sketch StopSpent { get; } = new(nameof(StopSpent));
    public static Sketch StopSqueeze { get; } = new(nameof(StopSqueeze));
    public static Sketch Packer { get; } = new(nameof(Packer));
    public static Sketch RodSpeed { get; } = new(nameof(RodSpeed));
    public static Sketch BarRate { get; } = new(nameof(BarRate));
    public static Sketch BarDiameter { get; } = new(nameof(BarDiameter));
    public static Sketch BarBore { get; } = new(nameof(BarBore));
    public static Sketch BarLength { get; } = new(nameof(BarLength));
    public static Sketch BarArm { get; } = new(nameof(BarArm));
    public static Sketch Pressure { get; } = new(nameof(Pressure));

    /// <summary>Every sketch there is.</summary>
    public static IReadOnlyList<Sketch> All =>
    [
        .. typeof(Sketch).GetProperties(BindingFlags.Public | BindingFlags.Static).Where(p => p.PropertyType == typeof(Sketch))
            .Select(p => (Sketch)p.GetValue(null)!),
        .. PartSheets.Own,
    ];

    public override string ToString() => Name;
}
