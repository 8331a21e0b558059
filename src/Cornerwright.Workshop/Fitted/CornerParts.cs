using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Designations;
using Cornerwright.Garage.Parts;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Fitted;

/// <summary>The parts of one corner of a build, looked up on the shelf. Null where the build names none.</summary>
internal sealed record CornerParts
{
    public Wheel? Wheel { get; init; }
    public RimDesignation? Rim { get; init; }
    public Tyre? Tyre { get; init; }
    public TyreDesignation? TyreSize { get; init; }
    public Spacer? Spacer { get; init; }

    /// <summary>Springs and sheets from the perch upward.</summary>
    public IReadOnlyList<Part> Stack { get; init; } = [];

    public Perch? Perch { get; init; }
    public TopMount? TopMount { get; init; }
    public Damper? Damper { get; init; }
    public BumpStop? BumpStop { get; init; }
    public AntiRollBar? AntiRollBar { get; init; }

    public static CornerParts Of(PartsShelf shelf, CornerBuild corner)
    {
        var wheel = Find(shelf.Wheels, corner.Wheel);
        var tyre = Find(shelf.Tyres, corner.Tyre);
        return new CornerParts
        {
            Wheel = wheel,
            Rim = wheel is null ? null : Parsed(RimDesignation.Parse(wheel.Designation, "rim")),
            Tyre = tyre,
            TyreSize = tyre is null ? null : Parsed(TyreDesignation.Parse(tyre.Designation, "tyre")),
            Spacer = Find(shelf.Spacers, corner.Spacer),
            Stack = [.. corner.Stack.Select(id => (Part?)Find(shelf.Springs, id) ?? Find(shelf.Sheets, id)).OfType<Part>()],
            Perch = Find(shelf.Perches, corner.Perch),
            TopMount = Find(shelf.TopMounts, corner.TopMount),
            Damper = Find(shelf.Dampers, corner.Damper),
            BumpStop = Find(shelf.BumpStops, corner.BumpStop),
            AntiRollBar = Find(shelf.AntiRollBars, corner.AntiRollBar),
        };
    }

    private static T? Find<T>(IReadOnlyList<T> parts, string id)
        where T : Part => parts.FirstOrDefault(p => p.Id == id);

    private static T? Parsed<T>(Garage.Problems.Checked<T> text)
        where T : class => text.Try(out var value) ? value : null;
}
