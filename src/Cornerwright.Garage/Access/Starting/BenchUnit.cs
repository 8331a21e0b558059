namespace Cornerwright.Garage.Access.Starting;

/// <summary>Spring round a damper, taken apart on the bench: top mount, bump stop, spring.</summary>
internal static class BenchUnit
{
    public static Component TopMount(AxleWords a, string unit) => new()
    {
        Id = a.Id("mount"), Name = "Top mount", Place = a.Sides, Role = BuildRole.TopMount, OnBench = true, MinutesOff = 10, MinutesOn = 12,
            Source = StartingGraph.Practice,
        OffWords = "Compress the spring until it is loose between its seats; only then undo the rod's top nut and lift the top mount off",
        LooseWords = "Slacken the plate's bolts",
        OnWords = "Set spring and top mount on with the coil ends against their stops, screw on a new top nut, hold the rod, then let the "
            + "compressor off evenly",
        BeforeOff = [a.Off(unit)],
        BeforeLoose = [a.Off("brace")],
        Fasteners = [AxleWords.TopNut],
        Hazards = [AxleWords.Danger(HazardKind.SpringEnergy)],
        Tools = "spring compressor",
        MovesAlignment = true,
    };

    public static Component Spring(AxleWords a) => new()
    {
        Id = a.Id("spring"), Name = "Spring stack", Place = a.Sides, Role = BuildRole.Stack, OnBench = true, MinutesOff = 5, MinutesOn = 6,
            Source = StartingGraph.Practice,
        BeforeOff = [a.Off("mount", "it holds the spring down")],
        Hazards =
        [
            AxleWords.Danger(HazardKind.SpringEnergy, HazardTime.TakingOff,
                "The spring is still held by the compressor: let it off evenly before you put it away."),
            AxleWords.Danger(HazardKind.SpringEnergy, HazardTime.Fitting,
                "Compress it evenly, hooks opposite each other, and no further than the top nut needs."),
        ],
        Tools = "spring compressor",
    };

    public static Component BumpStop(AxleWords a) => new()
    {
        Id = a.Id("stop"), Name = "Bump stop on the rod", Place = a.Sides, Role = BuildRole.BumpStop, OnBench = true, MinutesOff = 1,
            MinutesOn = 2, Source = StartingGraph.Practice,
        OffWords = "Slide bump stop and packers off the rod",
        OnWords = "Slide packers and bump stop on the rod",
        BeforeOff = [a.Off("mount")],
    };
}
