using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Pictures;

namespace Cornerwright.Web.Tests.Pictures;

/// <summary>Hand-made records, as a judgement would give them.</summary>
internal static class PictureSamples
{
    public static IReadOnlyList<TravelMark> Marks { get; } =
    [
        new(TravelEvent.DroopStop, -0.080, 0.002, "full droop"),
        new(TravelEvent.SpringSeats, -0.062, 0.003, "spring seats"),
        new(TravelEvent.HelperShuts, -0.020, 0.003, "helper shuts"),
        new(TravelEvent.Ride, 0.001, 0.004, "ride, driver alone"),
        new(TravelEvent.Ride, 0.012, 0.004, "ride, full"),
        new(TravelEvent.StopTouched, 0.033, 0.002, "bump stop touched"),
        new(TravelEvent.StopSpent, 0.064, 0.002, "bump stop spent"),
        new(TravelEvent.TyreTouches, 0.070, 0.006, "tyre touches arch lip"),
        new(TravelEvent.CoilBind, 0.350, 0.002, "coils touch"),
    ];

    public static CornerPicture Corner { get; } = new(CornerPlace.FrontLeft, Marks, [Loose, Seated], Section);

    public static StackState Loose => new("full droop", -0.080, 0.260, 0.012, 0, 0.150,
    [
        new("Helper 60", 0.060, 0.075, true, false, 0.060, 0.018),
        new("Adapter", 0.005, 0.078, false, false, 0.005, 0.005),
        new("Main 180", 0.183, 0.082, true, false, 0.183, 0.078),
    ]);

    public static StackState Seated => new("ride", 0.001, 0.170, 0, 3210, 0.072,
    [
        new("Helper 60", 0.018, 0.075, true, true, 0.060, 0.018),
        new("Adapter", 0.005, 0.078, false, false, 0.005, 0.005),
        new("Main 180", 0.147, 0.082, true, false, 0.183, 0.078),
    ]);

    public static WheelSection Section => new(
        [
            Box("tyre now", -0.112, 0.112, 0.230, 0.316), Box("rim now", -0.100, 0.100, 0.200, 0.235),
            Box("tyre", -0.110, 0.130, 0.225, 0.320), Box("rim", -0.095, 0.118, 0.195, 0.230),
            Box("tube", -0.170, -0.118, 0.100, 0.290),
        ],
        [
            new("strut tube", "ride", 0, 0, 12, 0.008, new(-0.118, 0.280), new(-0.110, 0.280), false),
            new("strut tube", "worst", 0.05, 0, 12, 0.006, new(-0.116, 0.280), new(-0.110, 0.280), true),
            new("arch lip", "ride", 0, 0, 12, 0.040, new(0.120, 0.360), new(0.120, 0.320), false),
            new("arch lip", "worst", 0.064, 0.5, 10.5, -0.0032, new(0.120, 0.3168), new(0.120, 0.320), true),
        ]);

    public static Finding Failing { get; } = new()
    {
        Check = "seated-at-droop",
        Title = "Seated at full droop",
        Where = "front left",
        Corner = CornerPlace.FrontLeft,
        Verdict = Verdict.Fails,
        Value = Turns(-3.5),
        Low = Turns(2),
        Margin = Turns(-5.5),
        Doubt = Turns(1.2),
        Probability = 0.004,
        Worst = new WorstState("at full droop"),
        Sentence = "The stack is 3.5 turns loose when the wheel hangs.",
        Cures = [new Cure("Turn the collar up 5.5 turns.", Turns(5.5), Turns(0), "Changes ride height to 348 mm.", "frontLeft/perchHeight",
            "218.25 mm")],
        Deciding = [new DecidingReading("frontLeft/springAxisLength", "spring axis length", 0.71),
            new DecidingReading("parts/springs/main/freeLength", "free length of Main 180", 0.2)],
        Assumptions = ["packer on the rod: none"],
    };

    public static Finding Waiting { get; } = new()
    {
        Check = "bore",
        Title = "Centre bore",
        Where = "front axle",
        Axle = AxlePlace.Front,
        Verdict = Verdict.Unknown,
        Sentence = "The hub's centring diameter is missing.",
        Missing = [new("front/hub/centring", "centring diameter")],
    };

    public static Measure Turns(double turns) => new(Units.Turn.ToSi(turns), Units.Turn, 2);

    private static SectionOutline Box(string kind, double left, double right, double low, double high) =>
        new(kind, kind, [new(left, low), new(left, high), new(right, high), new(right, low)]);
}
