using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Findings;
using Cornerwright.Workshop.Fitted;
using Kinds = Cornerwright.Workshop.Relations.RelationCatalogue;

namespace Cornerwright.Workshop.Relations;

/// <summary>Spring and damper of one corner of a build, at the height at which the car was measured.</summary>
/// <remarks>Source: docs/theory/relations.md, "What the springs carry".</remarks>
internal sealed class StationRelations
{
    private readonly RelationBook _book;
    private readonly CornerPlace _place;
    private readonly Build _build;
    private readonly CornerParts _parts;
    private readonly bool _present;
    private readonly string _at;

    private StationRelations(RelationBook book, CornerPlace place, Build build, CornerParts parts, bool present) =>
        (_book, _place, _build, _parts, _present, _at) =
            (book, place, build, parts, present, $"builds/{build.Id}/{CornerRelations.Path(place)}");

    private Corner Corner => _book.Car.At(_place);

    private CornerBuild Set => _build.At(_place);

    private string Path => CornerRelations.Path(_place);

    public static void Look(RelationBook book, CornerPlace place, Build build, CornerParts parts, bool present)
    {
        var station = new StationRelations(book, place, build, parts, present);
        station.Spring();
        station.Damper();
        station.Perch();
        SeatRelations.Look(book, station._at, parts);
    }

    private void Spring()
    {
        Num axis = Num.Of(Path + "/springAxisLength", "spring axis length", Corner.SpringAxisLength), drop = MountDrop("seatDrop",
            "seat drop");
        var perch = Num.Of(_at + "/perchHeight", "perch height", Set.PerchHeight);
        if (_parts.Stack.Count == 0 || LoadRelations.Measured(_book.Car) is not { } load || Ratios.Of(Corner, Path) is not { } ratio
            || Stack() is not { } stack)
        {
            return;
        }

        var carried = LoadRelations.Of(load, _place);
        var unsprung = Num.Of(Path + "/unsprungMass", "unsprung mass", Corner.UnsprungMass);
        double space = axis.Si - drop.Si - perch.Si;
        double gas = (_parts.Damper?.RodForce?.Si ?? 0) * (ratio.Damper / ratio.Spring);
        double wanted = ((carried.Si - unsprung.Si) * Units.StandardGravity / ratio.Spring) - gas;
        double force = double.IsFinite(space) ? SpringStack.ForceAt(stack, space).Force : double.NaN;
        double bound = double.IsFinite(space) ? SpringStack.ForceAt(stack, space).Overrun : 0;
        Num[] ties = [axis, drop, perch, carried, unsprung, .. ratio.Ties, .. StackTies()];
        var kind = _present ? Kinds.SpringCarries : Kinds.BuildCarries;
        _book.Add(kind, _at, bound > 0.001 ? double.NaN : force / wanted,
            _present ? new(0.3, 0.78, 1.28, 3) : new(0.12, 0.55, 1.65, 5),
            () => _present
                ? $"As the {_place.Words()} corner stands, its springs push {Say.N(force)}{Bound(bound)}; {carried.Typed} on that "
                    + $"wheel want about {Say.N(wanted)}."
                : $"At the measured height the {_place.Words()} springs of \"{_build.Name}\" push {Say.N(force)}{Bound(bound)}; the "
                    + $"car wants "
                    + $"about {Say.N(wanted)}.",
            ties);
    }

    private static string Bound(double overrun) => overrun > 0.001 ? $" and would be coil-bound by {Say.Mm(overrun, 0)}" : "";

    private void Damper()
    {
        if (_parts.Damper is not { } damper || Ratios.Of(Corner, Path) is not { } ratio)
        {
            return;
        }

        bool own = Corner.DamperAxisLength is not null;
        var axis = own ? Num.Of(Path + "/damperAxisLength", "damper axis length", Corner.DamperAxisLength)
            : Num.Of(Path + "/springAxisLength", "spring axis length", Corner.SpringAxisLength);
        if (!own && _book.Car.At(_place.Axle()).Layout == SpringLayout.Apart)
        {
            return;
        }

        string path = "parts/dampers/" + damper.Id;
        var body = Set.BodyHeight is { } set ? Num.Of(_at + "/bodyHeight", "body height", set)
            : Num.Of(path + "/bodyHeight", "body height", damper.BodyHeight);
        var drop = MountDrop("rodDrop", "rod drop");
        var (open, closed) = (Num.Of(path + "/rodOpen", "rod pulled out", damper.RodOpen), Num.Of(path + "/rodClosed", "rod pushed in",
            damper.RodClosed));
        double shows = axis.Si - drop.Si - body.Si, slack = _present ? 0 : 0.02;
        var either = new Bands(-0.004 - (10 * slack), 0.018 - slack, 0.165 + slack, 0.4);
        string stands = $"At the measured height {Say.Mm(shows, 0)} of rod would show at the {_place.Words()} damper of \"{_build.Name}\"";
        _book.Add(Kinds.RodShows, _at + "/droop", (open.Si - shows) / ratio.Damper, either,
            () => $"{stands}; pulled out it is {open.Typed}.", axis, drop, body, open);
        _book.Add(Kinds.RodShows, _at + "/bump", (shows - closed.Si) / ratio.Damper, either,
            () => $"{stands}; pushed in it is {closed.Typed}.", axis, drop, body, closed);
        if (_parts.BumpStop is not { } stop)
        {
            return;
        }

        var length = Num.Of($"parts/bumpStops/{stop.Id}/length", "bump stop", stop.Length);
        var packer = Num.Of(_at + "/packer", "packer", Set.Packer);
        double free = (shows - length.Si - (packer.Given ? packer.Si : 0)) / ratio.Damper;
        _book.Add(Kinds.RodShows, _at + "/stop", free, new(-0.2, -0.022 - slack, 0.11, 0.35),
            () => $"{stands}, with {length.Typed} of bump stop{(packer.Given ? $" and {packer.Typed} of packer" : "")} on it.",
            packer.Given ? [axis, drop, body, length, packer] : [axis, drop, body, length]);
        Contact(shows, ratio.Damper, stop, packer, body, axis);
    }

    private void Contact(double shows, double ratio, BumpStop stop, Num packer, Num body, Num axis)
    {
        var metal = Num.Of(Path + "/metalContact", "metal meets metal", Corner.MetalContact);
        var spent = Num.Of($"parts/bumpStops/{stop.Id}/spentLength", "bump stop spent", stop.SpentLength);
        if (!_present)
        {
            return;
        }

        double at = (shows - spent.Si - (packer.Given ? packer.Si : 0)) / ratio;
        _book.Add(Kinds.Contact, Path, metal.Si - at, new(-0.2, -0.025, 0.06, 0.25),
            () => $"At the {_place.Words()} wheel the bump stop is fully compressed at about {Say.Mm(at, 0)} of travel, and metal "
                + $"meets metal at {metal.Typed}.",
            metal, spent, body, axis);
    }

    private void Perch()
    {
        var perch = Num.Of(_at + "/perchHeight", "perch height", Set.PerchHeight);
        if (_parts.Damper is not { } damper || _parts.Perch?.Pitch is null)
        {
            return;
        }

        var (low, high) = (Num.Of($"parts/dampers/{damper.Id}/threadLow", "thread begins", damper.ThreadLow),
            Num.Of($"parts/dampers/{damper.Id}/threadHigh", "thread ends", damper.ThreadHigh));
        double outside = Math.Max(low.Si - perch.Si, perch.Si - high.Si);
        _book.Add(Kinds.PerchOnThread, _at, outside, new(double.NegativeInfinity, double.NegativeInfinity, 0.0005, 0.06),
            () => $"The {_place.Words()} perch of \"{_build.Name}\" is set to {perch.Typed}; its thread runs from {low.Typed} to "
                + $"{high.Typed}.",
            perch, low, high);
    }

    private StackElement[]? Stack()
    {
        var list = new List<StackElement>();
        foreach (var piece in _parts.Stack)
        {
            switch (piece)
            {
                case Sheet { Thickness: { } thick }:
                    list.Add(StackElement.Rigid(Math.Max(0, thick.Si)));
                    break;
                case Spring { Curve.Count: 0, Rate: { } rate, FreeLength: { } free, SolidHeight: { } solid } when solid.Si < free.Si:
                    list.Add(StackElement.Linear(free.Si, solid.Si, rate.Si));
                    break;
                default:
                    return null;
            }
        }

        return [.. list];
    }

    private IEnumerable<Num> StackTies() => _parts.Stack.SelectMany(piece => piece switch
    {
        Sheet sheet => [Num.Of($"parts/sheets/{sheet.Id}/thickness", "thickness", sheet.Thickness)],
        Spring spring => new[] { Num.Of($"parts/springs/{spring.Id}/rate", "rate", spring.Rate),
            Num.Of($"parts/springs/{spring.Id}/freeLength", "free length", spring.FreeLength) },
        _ => [],
    });

    private Num MountDrop(string field, string label) => _parts.TopMount is { } mount
        ? Num.Of($"parts/topMounts/{mount.Id}/{field}", label, field == "seatDrop" ? mount.SeatDrop : mount.RodDrop)
            : default(Num) with { Typed = "" };
}
