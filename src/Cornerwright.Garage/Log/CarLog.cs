using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Log;

/// <summary>What was done with the car, what was read afterwards, and what is to be done when.</summary>
public sealed record CarLog
{
    [Field("Entries")]
    public IReadOnlyList<LogEntry> Entries { get; init; } = [];

    [Field("Jobs", How = "Work orders that were begun, with what was ticked off.")]
    public IReadOnlyList<Job> Jobs { get; init; } = [];

    [Field("Reminders")]
    public IReadOnlyList<Reminder> Reminders { get; init; } = [];

    public Job? Job(string id) => Jobs.FirstOrDefault(j => j.Id == id);

    /// <summary>The same log with this job in place of the one of the same id, or added at the end.</summary>
    public CarLog With(Job job) => this with
    {
        Jobs = Jobs.Any(j => j.Id == job.Id) ? [.. Jobs.Select(j => j.Id == job.Id ? job : j)] : [.. Jobs, job],
    };
}

/// <summary>A work order that was begun.</summary>
public sealed record Job
{
    [Field("Id", Needed = true)]
    public string Id { get; init; } = "";

    [Field("Name")]
    public string Name { get; init; } = "";

    [Field("From build", RefersTo = "builds")]
    public string From { get; init; } = "";

    [Field("To build", RefersTo = "builds")]
    public string To { get; init; } = "";

    [Field("Begun")]
    public DateOnly? Begun { get; init; }

    [Field("Finished")]
    public DateOnly? Finished { get; init; }

    [Field("Ticks", How = "In the order in which they arrived. The latest tick of a step counts.")]
    public IReadOnlyList<Tick> Ticks { get; init; } = [];
}

/// <summary>A step ticked off, or a tick taken back.</summary>
public sealed record Tick
{
    [Field("Id", Needed = true, How = "Made where it was ticked: however often it is sent, it counts once.")]
    public string Id { get; init; } = "";

    [Field("Step")]
    public string Step { get; init; } = "";

    [Field("At", How = "Universal time, 2026-05-31T14:05:09.123Z.")]
    public string At { get; init; } = "";

    [Field("Taken back")]
    public bool TakenBack { get; init; }
}

/// <summary>Something to be done on a day, or at an odometer reading, whichever comes first.</summary>
public sealed record Reminder
{
    [Field("Id", Needed = true)]
    public string Id { get; init; } = "";

    [Field("What")]
    public string What { get; init; } = "";

    [Field("Not before")]
    public DateOnly? From { get; init; }

    [Field("Due on")]
    public DateOnly? Due { get; init; }

    [Field("Due at odometer", Dimension.Distance, "km", 0, 3_000_000)]
    public Reading? DueOdometer { get; init; }

    [Field("Done on")]
    public DateOnly? Done { get; init; }

    [Field("Job")]
    public string Job { get; init; } = "";
}
