namespace Cornerwright.Garage.Differences;

/// <summary>What happened to a field or to an item of a list.</summary>
public enum ChangeKind
{
    /// <summary>A field has another value; an empty text stands for "nothing there".</summary>
    Changed,

    /// <summary>An item of a list is new.</summary>
    Added,

    /// <summary>An item of a list is gone.</summary>
    Removed,

    /// <summary>The items of a list stand in another order.</summary>
    Reordered,
}

/// <summary>One difference between two states of a car.</summary>
/// <param name="Kind">What happened.</param>
/// <param name="Address">The place by file names and ids, e.g. "builds/street/frontLeft/perchHeight":
/// equal for equal places. A / in an id is written ~1, a ~ is written ~0.</param>
/// <param name="Path">The place in words, e.g. "Builds / Street / Front left / Perch height".</param>
/// <param name="Before">As people read it; empty if there was nothing.</param>
/// <param name="After">As people read it; empty if there is nothing now.</param>
public sealed record FieldChange(ChangeKind Kind, string Address, string Path, string Before, string After)
{
    private const string Builds = "builds/";

    /// <summary>Id of the build in which the change lies; null if it lies elsewhere.</summary>
    public string? BuildId => Address.StartsWith(Builds, StringComparison.Ordinal)
        ? Unescape(Address[Builds.Length..].Split('/')[0])
        : null;

    /// <summary>One sentence without a full stop: "Builds / Street / Front left / Perch height: 312 mm → 318 mm".</summary>
    public override string ToString() => Kind switch
    {
        ChangeKind.Added => $"{Path}: added",
        ChangeKind.Removed => $"{Path}: taken out",
        ChangeKind.Reordered => $"{Path}: put in another order",
        _ when Before.Length == 0 => $"{Path}: {After}",
        _ when After.Length == 0 => $"{Path}: emptied (was {Before})",
        _ => $"{Path}: {Before} → {After}",
    };

    internal static string Escape(string id) =>
        id.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal);

    private static string Unescape(string id) =>
        id.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal);
}
