using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Readings;
using Cornerwright.Workshop.Corners;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Inputs;

namespace Cornerwright.Workshop.Checks;

/// <summary>What holds the wheel of a corner, and how deep its thread is engaged: as far as the readings say.</summary>
/// <remarks>
/// Two ways. From the present: what is engaged now, less what wheel seat and spacer take, plus what a longer bolt gives. By lengths
/// alone: bolt or stud less seat and spacer. The first is taken where it can be, since it holds the thread's true beginning.
/// Source: lengths along one axis; docs/theory/wheel-on-hub.md.
/// </remarks>
internal sealed class WheelFixing
{
    private readonly CornerPlan _plan;
    private readonly Handle _now, _length, _lengthNow, _seat, _seatNow, _spacer, _spacerNow, _nut;
    private readonly bool _fromNow, _sameWheel, _sameBolt;

    public WheelFixing(CornerPlan plan)
    {
        _plan = plan;
        var (hub, now) = (plan.Axle.Hub, plan.PartsNow);
        Present = now?.Held<WheelBolt>();
        Chosen = plan.Parts.Held<WheelBolt>();
        OnSpacer = plan.Parts.Spacer is { Bolted: true };
        OnStuds = OnSpacer || hub.Studs;
        HasPresent = now?.Wheel is not null && !OnSpacer && now.Spacer is not { Bolted: true };
        _sameBolt = Bolt?.Id == Present?.Id;
        _sameWheel = plan.Parts.Wheel?.Id == now?.Wheel?.Id;
        bool changeKnown = _sameBolt || OnStuds || (Bolt?.Length is not null && Present?.Length is not null);
        _fromNow = HasPresent && (Total is null || (hub.EngagedNow is not null && changeKnown));
        _now = HasPresent ? plan.Inputs.Add(HubChecks.HubPath(plan, "engagedNow"), "thread engaged now", hub.EngagedNow) : Handle.None;
        (_seat, _seatNow) = (Seat(plan.Parts.Wheel), Seat(now?.Wheel));
        _spacer = HubChecks.Thickness(plan);
        _spacerNow = now?.Spacer is { } was
            ? plan.Inputs.Add($"parts/spacers/{was.Id}/thickness", "thickness of the present spacer", was.Thickness) : Handle.None;
        _length = OnSpacer ? plan.Inputs.Add(
                HubChecks.SpacerPath(plan, "studLength"), "how far the spacer's studs stand out", plan.Parts.Spacer!.StudLength)
            : OnStuds ? plan.Inputs.Add(HubChecks.HubPath(plan, "studLength"), "how far the hub's studs stand out", hub.StudLength)
            : BoltLength(Bolt);
        _lengthNow = BoltLength(Present);
        _nut = OnStuds && Bolt is { } nut && (nut.ThreadDepth is not null || !_sameBolt)
            ? plan.Inputs.Add($"parts/wheelBolts/{nut.Id}/threadDepth", "thread in the nut", nut.ThreadDepth) : Handle.None;
    }

    /// <summary>A wheel is on the car now, on the hub itself, so that it is known what changes.</summary>
    public bool HasPresent { get; }

    /// <summary>On the car now; null where it is not described.</summary>
    public WheelBolt? Present { get; }

    /// <summary>That the build names; null where it names none.</summary>
    public WheelBolt? Chosen { get; }

    /// <summary>What will hold the wheel: a build that names none keeps the present ones. Null where they are not described.</summary>
    public WheelBolt? Bolt => Chosen ?? (OnSpacer ? null : Present);

    /// <summary>The wheel stands on a spacer that is bolted to the hub by itself.</summary>
    public bool OnSpacer { get; }

    public bool OnStuds { get; }

    public string BoltPath => Bolt is { } bolt ? "parts/wheelBolts/" + bolt.Id : _plan.BuildPath + "/wheelBolt";

    /// <summary>"bolts", "nuts".</summary>
    public string Words => OnStuds ? "nuts" : "bolts";

    /// <summary>Without these the engagement is not known.</summary>
    public IReadOnlyList<MissingReading> Missing =>
    [
        .. _fromNow ? [.. _plan.Inputs.Lacking(_now), .. MissingForGain] : MissingByLengths,
        .. _plan.Inputs.Lacking(_nut),
        .. MissingReading.If(OnSpacer && Bolt is null, BoltPath, "the wheel nuts"),
    ];

    /// <summary>Without these the lengths alone do not say how far a bolt or stud reaches.</summary>
    public IReadOnlyList<MissingReading> MissingByLengths =>
    [
        .. MissingReading.If(Bolt is null && !OnStuds, BoltPath, "the wheel bolts"), .. _plan.Inputs.Lacking(_length, _seat, OwnSpacer),
    ];

    /// <summary>Without these it is not known how much deeper the thread goes than now.</summary>
    public IReadOnlyList<MissingReading> MissingForGain =>
    [
        .. MissingReading.If(!HasPresent, "measuredBuild", "the wheel that is on the car now"),
        .. _sameWheel ? [] : _plan.Inputs.Lacking(_seat, _seatNow),
        .. _plan.Inputs.Lacking(_spacer, _spacerNow),
        .. _sameBolt || OnStuds ? [] : _plan.Inputs.Lacking(_length, _lengthNow),
        .. MissingReading.If(!OnStuds && !_sameBolt && Present is null, NowPath, "the wheel bolts that are on the car now"),
    ];

    /// <summary>
    /// True where what is on the car now shows that a thread that goes no deeper touches nothing: the same bolts or nuts, or bolts
    /// whose lengths are known. Another nut may be closed where the present one lets the stud through.
    /// </summary>
    public bool PresentShows => HasPresent && (_sameBolt || !OnStuds) && MissingForGain.Count == 0;

    /// <summary>Where the present bolts or nuts are chosen.</summary>
    public string NowPath => _plan.Now is { } now ? $"builds/{now.Id}/{_plan.Path}/wheelBolt" : "measuredBuild";

    /// <summary>True where the lengths alone say it, so that the thread's beginning is not known.</summary>
    public bool ByLengths => !_fromNow;

    /// <summary>Thread of a bolt past the hub's face, of a stud past the wheel's seat, m.</summary>
    public double Reach(Reader x) => _fromNow ? x[_now] + Gain(x) : ReachByLengths(x);

    /// <summary>The same by lengths alone: turns counted at a nut end where the nut does, however far the stud goes on.</summary>
    public double ReachByLengths(Reader x) => x[_length] - x[_seat] - (OwnSpacer.IsGiven ? x[OwnSpacer] : 0);

    /// <summary>Thread that carries, m: in a nut at most what it has.</summary>
    public double Engaged(Reader x) => _nut.IsGiven ? Math.Min(Reach(x), x[_nut]) : Reach(x);

    /// <summary>How much deeper the thread goes than now, m.</summary>
    public double Gain(Reader x) =>
        (_sameBolt || OnStuds ? 0 : x[_length] - x[_lengthNow])
        - (_sameWheel ? 0 : x[_seat] - x[_seatNow]) - (x[_spacer] - (_spacerNow.IsGiven ? x[_spacerNow] : 0));

    /// <summary>What a bolt or stud has for wheel, spacer and thread; null where nobody gave it.</summary>
    private Reading? Total => OnSpacer ? _plan.Parts.Spacer!.StudLength : OnStuds ? _plan.Axle.Hub.StudLength : Bolt?.Length;

    /// <summary>What the bolt or stud must pass: a spacer bolted on by itself carries the studs on its own face.</summary>
    private Handle OwnSpacer => OnSpacer ? Handle.None : _spacer;

    private Handle BoltLength(WheelBolt? bolt) => bolt is null ? Handle.None
        : _plan.Inputs.Add($"parts/wheelBolts/{bolt.Id}/length", $"length of {bolt.Name}", bolt.Length);

    private Handle Seat(Wheel? wheel) => wheel is null ? Handle.None
        : _plan.Inputs.Add($"parts/wheels/{wheel.Id}/seatThickness", $"thickness at the bolt seat of {wheel.Name}", wheel.SeatThickness);
}
