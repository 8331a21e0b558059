using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Log;

/// <summary>What an entry of the log tells of.</summary>
public enum LogKind
{
    Note,
    Drive,

    /// <summary>Work done on the car.</summary>
    Work,

    TyreWear,
    Cost,
}

/// <summary>One day's note in the life of the car.</summary>
public sealed record LogEntry
{
    [Field("Id", Needed = true)]
    public string Id { get; init; } = "";

    [Field("Date")]
    public DateOnly? Date { get; init; }

    [Field("Odometer", Dimension.Distance, "km", 0, 3_000_000)]
    public Reading? Odometer { get; init; }

    [Field("Kind")]
    public LogKind Kind { get; init; }

    [Field("In a few words")]
    public string Title { get; init; } = "";

    [Field("Build on the car", RefersTo = "builds")]
    public string Build { get; init; } = "";

    [Field("Distance driven", Dimension.Distance, "km", 0, 100_000)]
    public Reading? Driven { get; init; }

    [Field("Cost", How = "In the car's currency.")]
    public decimal? Cost { get; init; }

    [Field("Tyres")]
    public IReadOnlyList<CornerLog> Corners { get; init; } = [];

    [Field("Photos")]
    public IReadOnlyList<Photo> Photos { get; init; } = [];

    [Field("Note")]
    public string Note { get; init; } = "";
}

/// <summary>The tyre of one corner on that day. Heights, loads and angles are readings after the work (Setting/Occasion).</summary>
public sealed record CornerLog
{
    [Field("Corner")]
    public CornerPlace Corner { get; init; }

    [Field("Tread depth, outer", Dimension.Length, "mm", 0, 25)]
    public Reading? TreadOuter { get; init; }

    [Field("Tread depth, middle", Dimension.Length, "mm", 0, 25)]
    public Reading? TreadMiddle { get; init; }

    [Field("Tread depth, inner", Dimension.Length, "mm", 0, 25)]
    public Reading? TreadInner { get; init; }

    [Field("Tyre pressure, cold", Dimension.Pressure, "bar", 0.5, 6)]
    public Reading? Pressure { get; init; }
}

/// <summary>A picture kept beside the database under the hash of its content.</summary>
public sealed record Photo
{
    [Field("Content hash", How = "SHA-256 in small hexadecimal digits: the name under which the file is kept.")]
    public string Hash { get; init; } = "";

    [Field("Name")]
    public string Name { get; init; } = "";
}
