using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Workshop.Findings;
using Kinds = Cornerwright.Workshop.Relations.RelationCatalogue;

namespace Cornerwright.Workshop.Relations;

/// <summary>Each link, arm and rod of a corner by itself: as long, as level and as square as a car's. Common practice, no source.</summary>
internal sealed class PointLinks
{
    private readonly RelationBook _book;
    private readonly string _path;
    private readonly double _side;

    private PointLinks(RelationBook book, string path, double side) => (_book, _path, _side) = (book, path, side);

    public static void Look(RelationBook book, HardpointTable t, string path, double side)
    {
        var links = new PointLinks(book, path, side);
        if (HardpointNeeds.IsAxle(t.Kind))
        {
            return;
        }

        bool one = t.Kind is LinkageKind.MacPherson or LinkageKind.DoubleWishbone;
        links.Rod("lowerFrontInner", t.LowerFrontInner, one ? "lowerBall" : "lowerFrontOuter", one ? t.LowerBall : t.LowerFrontOuter, one
            ? 0.75 : 0.9);
        links.Rod("lowerRearInner", t.LowerRearInner, one ? "lowerBall" : "lowerRearOuter", one ? t.LowerBall : t.LowerRearOuter, one
            ? 0.85 : 0.95);
        links.Rod("upperFrontInner", t.UpperFrontInner, one ? "upperBall" : "upperFrontOuter", one ? t.UpperBall : t.UpperFrontOuter, 0.9);
        links.Rod("upperRearInner", t.UpperRearInner, one ? "upperBall" : "upperRearOuter", one ? t.UpperBall : t.UpperRearOuter, 0.95);
        links.Rod("tieInner", t.TieInner, "tieOuter", t.TieOuter, 0.35);
        links.Base("lower", t.LowerFrontInner, t.LowerRearInner);
        links.Base("upper", t.UpperFrontInner, t.UpperRearInner);
        links.NearHub("lowerBall", t.LowerBall, t.HubFace, -0.24, 0.02);
        links.NearHub("upperBall", t.UpperBall, t.HubFace, -0.02, 0.5);
        links.NearHub("tieOuter", t.TieOuter, t.HubFace, -0.2, 0.25);
        if (HardpointNeeds.IsStrut(t.Kind))
        {
            links.Rise(t.StrutTop, t.HubFace);
        }
    }

    // Inner end inboard, not too steep, not too slanted, of a car's length.
    private void Rod(string inner, BodyPoint? from, string outer, BodyPoint? to, double slant)
    {
        if (PointVelocity.Place(from) is not { } a || PointVelocity.Place(to) is not { } b)
        {
            return;
        }

        var d = b - a;
        Num[] ties = [.. Ties(inner, from!), .. Ties(outer, to!)];
        string name = $"The link from {Words(inner)} to {Words(outer)}";
        Add(inner + "-length", d.Length, new(0.04, 0.13, inner == "tieInner" ? 0.5 : 0.66, 1.2), () =>
            $"{name} is {Say.Mm(d.Length, 0)} long.", ties);
        Add(inner + "-rise", Math.Abs(d.Z) / d.Length, new(-1, -1, 0.36, 0.9), () =>
            $"{name} rises {Say.Mm(d.Z, 0)} over its {Say.Mm(d.Length, 0)}.", ties);
        Add(inner + "-slant", Math.Abs(d.X) / d.Length, new(-1, -1, slant, 2),
            () => $"{name} runs {Say.Mm(Math.Abs(d.X), 0)} fore and aft over its {Say.Mm(d.Length, 0)}.", ties);
        Add(inner + "-out", _side * d.Y / d.Length, new(-0.5, slant > 0.9 ? 0.02 : 0.3, 1.01, 2), () => $"{name} does not run outboard.",
            ties);
        Add(inner + "-middle", _side * a.Y, new(-0.2, 0.1, 0.75, 1.2), () =>
            $"{Words(inner)} stands {Say.Mm(_side * a.Y, 0)} out from the car's middle.",
            [.. Ties(inner, from!)]);
    }

    private void Base(string arm, BodyPoint? front, BodyPoint? rear)
    {
        if (PointVelocity.Place(front) is { } a && PointVelocity.Place(rear) is { } b)
        {
            Add(arm + "-base", a.X - b.X, new(-0.5, 0.06, 0.5, 0.9), () =>
                $"The {arm} arm's front pivot stands {Say.Mm(a.X - b.X, 0)} ahead of its rear one.",
                [.. Ties(arm + "FrontInner", front!), .. Ties(arm + "RearInner", rear!)]);
            Add(arm + "-level", Math.Abs(a.Z - b.Z), new(-1, -1, 0.08, 0.35), () =>
                $"The {arm} arm's pivots differ by {Say.Mm(Math.Abs(a.Z - b.Z), 0)} in height.",
                [.. Ties(arm + "FrontInner", front!), .. Ties(arm + "RearInner", rear!)]);
        }
    }

    private void NearHub(string name, BodyPoint? point, BodyPoint? hubFace, double low, double high)
    {
        if (PointVelocity.Place(point) is { } p && PointVelocity.Place(hubFace) is { } hub)
        {
            Add(name + "-hub", Math.Abs(p.X - hub.X), new(-1, -1, 0.2, 0.6), () =>
                $"{Words(name)} stands {Say.Mm(Math.Abs(p.X - hub.X), 0)} from the hub, fore and aft.",
                [.. Ties(name, point!), .. Ties("hubFace", hubFace!)]);
            Add(name + "-inside", _side * (hub.Y - p.Y), new(-0.15, 0.005, 0.2, 0.6),
                () => $"{Words(name)} stands {Say.Mm(_side * (hub.Y - p.Y), 0)} inboard of the hub's face.", [.. Ties(name, point!),
                    .. Ties("hubFace", hubFace!)]);
            Add(name + "-height", p.Z - hub.Z, new(low - 0.3, low, high, high + 0.3), () =>
                $"{Words(name)} stands {Say.Mm(p.Z - hub.Z, 0)} above the hub.",
                [.. Ties(name, point!), .. Ties("hubFace", hubFace!)]);
        }
    }

    private void Rise(BodyPoint? top, BodyPoint? hubFace)
    {
        if (PointVelocity.Place(top) is { } p && PointVelocity.Place(hubFace) is { } hub)
        {
            Add("strutTop-height", p.Z - hub.Z, new(0.1, 0.4, 0.75, 1.3), () =>
                $"The strut's top stands {Say.Mm(p.Z - hub.Z, 0)} above the hub.",
                [.. Ties("strutTop", top!), .. Ties("hubFace", hubFace!)]);
            Add("strutTop-inside", _side * (hub.Y - p.Y), new(-0.1, 0.05, 0.42, 0.9), () =>
                $"The strut's top stands {Say.Mm(_side * (hub.Y - p.Y), 0)} inboard of the hub's face.",
                [.. Ties("strutTop", top!), .. Ties("hubFace", hubFace!)]);
        }
    }

    private void Add(string what, double value, Bands bands, Func<string> sentence, Num[] ties) =>
        _book.Add(Kinds.PointLinks, $"{_path}/{what}", value, bands, sentence, ties);

    private IEnumerable<Num> Ties(string name, BodyPoint p) =>
        [Num.Of($"{_path}/{name}/x", $"{Words(name)}, x", p.X), Num.Of($"{_path}/{name}/y", $"{Words(name)}, y", p.Y),
            Num.Of($"{_path}/{name}/z", $"{Words(name)}, z", p.Z)];

    private static string Words(string name)
    {
        string label = Garage.Fields.RecordShape.Of<HardpointTable>().ByName[name].Label;
        return label;
    }
}
