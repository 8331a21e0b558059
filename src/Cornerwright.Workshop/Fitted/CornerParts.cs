using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Designations;
using Cornerwright.Garage.Parts;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Fitted;

/// <summary>The parts of one corner of a build, looked up on the shelf. Null where the build names none.</summary>
internal sealed class CornerParts
{
    private readonly Part[] _all;

    private CornerParts(PartsShelf shelf, CornerBuild corner)
    {
        _all = [.. CornerSlot.All.Where(s => s.HoldsParts).SelectMany(s => s.Parts(shelf, corner))];
        Wheel = Held<Wheel>();
        Rim = Wheel is null ? null : Parsed(RimDesignation.Parse(Wheel.Designation, "rim"));
        Tyre = Held<Tyre>();
        TyreSize = Tyre is null ? null : Parsed(TyreDesignation.Parse(Tyre.Designation, "tyre"));
        Spacer = Held<Spacer>();
        Stack = [.. CornerSlot.Named(nameof(CornerBuild.Stack)).Parts(shelf, corner)];
        (Perch, TopMount, Damper) = (Held<Perch>(), Held<TopMount>(), Held<Damper>());
        (BumpStop, AntiRollBar) = (Held<BumpStop>(), Held<AntiRollBar>());
    }

    public Wheel? Wheel { get; }
    public RimDesignation? Rim { get; }
    public Tyre? Tyre { get; }
    public TyreDesignation? TyreSize { get; }
    public Spacer? Spacer { get; }

    /// <summary>Springs and sheets from the perch upward.</summary>
    public IReadOnlyList<Part> Stack { get; }

    public Perch? Perch { get; }
    public TopMount? TopMount { get; }
    public Damper? Damper { get; }
    public BumpStop? BumpStop { get; }
    public AntiRollBar? AntiRollBar { get; }

    public static CornerParts Of(PartsShelf shelf, CornerBuild corner) => new(shelf, corner);

    /// <summary>The part of a kind of which a corner has one at most.</summary>
    public T? Held<T>()
        where T : Part => _all.OfType<T>().FirstOrDefault();

    private static T? Parsed<T>(Garage.Problems.Checked<T> text)
        where T : class => text.Try(out var value) ? value : null;
}
