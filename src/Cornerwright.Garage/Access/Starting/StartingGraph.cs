using Cornerwright.Garage.Chassis;


namespace Cornerwright.Garage.Access.Starting;

/// <summary>Suspensions of which we know how they usually come apart.</summary>
public enum StartingKind
{
    /// <summary>Strut with the spring round it over a lower arm.</summary>
    Strut,

    /// <summary>Two arms, spring round the damper.</summary>
    DoubleWishbone,

    /// <summary>Several links, the spring standing on one of them, the damper apart.</summary>
    SpringOnLink,

    /// <summary>One beam from wheel to wheel on rods, springs on it.</summary>
    RigidAxle,

    /// <summary>Trailing arms joined by a beam that twists.</summary>
    TwistBeam,
}

/// <summary>
/// General graphs to begin with: no car's own. Torques are the maker's to give; the few that stand here are common practice,
/// no source, and say so.
/// </summary>
public static class StartingGraph
{
    public const string Practice = "common practice, no source";

    private const string Note =
        "A general beginning. Take out what this car does not have, add what it has, and write in the maker's torques.";

    /// <summary>Both axles; the battery stands by the front one.</summary>
    public static AccessGraph For(StartingKind front, StartingKind rear, bool frontDriven, bool rearDriven) => new()
    {
        Note = Note,
        Components = [.. Of(front, AxlePlace.Front, frontDriven), .. Of(rear, AxlePlace.Rear, rearDriven)],
    };

    /// <summary>The graph with one axle's components replaced by those of a kind; the other axle and the whole car's stay.</summary>
    public static AccessGraph WithAxle(AccessGraph graph, StartingKind kind, AxlePlace axle, bool driven)
    {
        ArgumentNullException.ThrowIfNull(graph);
        ComponentPlace[] places = axle == AxlePlace.Front ? [ComponentPlace.FrontSides, ComponentPlace.FrontMiddle]
            : [ComponentPlace.RearSides, ComponentPlace.RearMiddle];
        var fresh = Of(kind, axle, driven);
        var kept = graph.Components.Where(c => !places.Contains(c.Place) && fresh.All(f => f.Id != c.Id)).ToList();
        return new AccessGraph
        {
            Note = graph.Note.Length > 0 ? graph.Note : Note,
            Components = axle == AxlePlace.Front ? [.. fresh, .. kept] : [.. kept, .. fresh],
        };
    }

    public static IReadOnlyList<Component> Of(StartingKind kind, AxlePlace axle, bool driven)
    {
        var axleWords = new AxleWords(axle, driven);
        return kind switch
        {
            StartingKind.Strut => StrutGraph.Make(axleWords),
            StartingKind.DoubleWishbone => WishboneGraph.Make(axleWords),
            StartingKind.SpringOnLink => LinkGraph.Make(axleWords),
            _ => BeamGraph.Make(axleWords, kind),
        };
    }
}
