using System.Globalization;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Log;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Storage;
using Cornerwright.Web.Components.Entry;
using Cornerwright.Workshop.Remembering;
using Cornerwright.Workshop.WorkOrders;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;

namespace Cornerwright.Web.Components.WorkOrders;

/// <summary>What was done, what is due, and how well it was predicted.</summary>
public sealed partial class LogPage
{
    private const int MostPhotosAtOnce = 20;
    private static readonly CarLog NoLog = new();

    private Car? _recordsOf;
    private string _open = "", _finishing = "", _odometer = "";
    private DateOnly _start, _finished;
    private int _rounds = 3;
    private double _turns = 2;
    private Problem? _problem;
    private readonly List<string> _photoProblems = [];

    [Inject] private TimeProvider Clock { get; set; } = null!;

    [Inject] private PhotoStore Photos { get; set; } = null!;

    private DateOnly Today => DateOnly.FromDateTime(Clock.GetLocalNow().DateTime);

    private IReadOnlyList<HeightRecord> Records { get; set; } = [];

    private IEnumerable<LogEntry> Entries => Car.Log.Entries.Select((e, i) => (e, i)).OrderByDescending(x => x.e.Date ?? DateOnly.MaxValue)
        .ThenByDescending(x => x.i).Select(x => x.e);

    private IEnumerable<LogEntry> Worn =>
        Entries.Where(e => e.Corners.Any(c => c.TreadOuter is not null || c.TreadMiddle is not null || c.TreadInner is not null));

    private decimal Spent => Car.Log.Entries.Sum(e => e.Cost ?? 0);

    private IReadOnlyList<(Reminder Reminder, Urgency Urgency)> Due
    {
        get
        {
            double? odometer = Reminders.LatestOdometer(Car.Log)?.Si;
            return [.. Car.Log.Reminders.Select(r => (r, Reminders.Of(r, Today, odometer))).OrderBy(x => x.Item2)
                .ThenBy(x => x.r.Due ?? DateOnly.MaxValue)];
        }
    }

    private string DueWords
    {
        get
        {
            int late = Due.Count(d => d.Urgency == Urgency.Overdue), now = Due.Count(d => d.Urgency == Urgency.Now);
            return late > 0 ? $"{late} overdue" : now > 0 ? $"{now} to do now" : "nothing due";
        }
    }

    protected override void OnInitialized()
    {
        base.OnInitialized();
        (_start, _finished) = (Today, Today);
    }

    protected override void OnCarReady()
    {
        Look();

        // A phone may have ticked since this bench last looked.
        _ = Bench.LookAtLog();
    }

    protected override void OnBenchDrawn() => Look();

    private void Look()
    {
        // Writing into the log changes no prediction.
        if (Ready && Car with { Log = NoLog } is var car && car != _recordsOf)
        {
            (_recordsOf, Records) = (car, HeightRecord.Of(car));
        }
    }

    private void Put(string words, Func<CarLog, CarLog> change) => Bench.Apply(words, car => car with { Log = change(car.Log) });

    private void Add(LogKind kind)
    {
        string id = FreshId.Beside("entry", Car.Log.Entries.Select(e => e.Id));
        CornerLog[] tyres = kind == LogKind.TyreWear ? [.. Places.Corners.Select(c => new CornerLog { Corner = c })] : [];
        _open = id;
        Put("Log: " + KindWords(kind), log => log with
        {
            Entries =
                [.. log.Entries, new LogEntry { Id = id, Kind = kind, Date = Today, Build = CarNow.Of(Car)?.Id ?? "", Corners = tyres }],
        });
    }

    private void MendEntry(string id, string words, Func<object?, object?> rework) =>
        Put(words, log => log with { Entries = [.. log.Entries.Select(e => e.Id == id ? (LogEntry)rework(e)! : e)] });

    /// <summary>Pictures are kept beside the database; the entry names them by their content.</summary>
    private async Task Take(LogEntry entry, InputFileChangeEventArgs chosen)
    {
        _photoProblems.Clear();
        foreach (var file in chosen.GetMultipleFiles(MostPhotosAtOnce))
        {
            if (file.Size > PhotoStore.MostBytes)
            {
                _photoProblems.Add($"{file.Name} has more than 25 MB: let the phone send it smaller.");
                continue;
            }

            await using var stream = file.OpenReadStream(PhotoStore.MostBytes);
            var kept = await Photos.Keep(stream);
            if (!kept.Ok)
            {
                _photoProblems.Add($"{file.Name}: {kept.Problems[0]}");
                continue;
            }

            var photo = new Photo { Hash = kept.Value.Hash, Name = Path.GetFileNameWithoutExtension(file.Name) };
            MendEntry(entry.Id, "Log: add a photo", e =>
                e is LogEntry old && old.Photos.All(p => p.Hash != photo.Hash) ? old with { Photos = [.. old.Photos, photo] } : e);
        }
    }

    private void Forget(LogEntry entry, Photo photo) =>
        MendEntry(entry.Id, "Log: take out a photo", e =>
            e is LogEntry old ? old with { Photos = [.. old.Photos.Where(p => p.Hash != photo.Hash)] } : e);

    private void Forget(LogEntry entry) =>
        Put("Take out a log entry", log => log with { Entries = [.. log.Entries.Where(e => e.Id != entry.Id)] });

    private void Forget(Reminder reminder) =>
        Put("Take out a reminder", log => log with { Reminders = [.. log.Reminders.Where(r => r.Id != reminder.Id)] });

    private void Toggle(Reminder reminder) => Put(reminder.Done is null ? "Reminder done" : "Reminder not done", log => log with
    {
        Reminders = [.. log.Reminders.Select(r => r.Id == reminder.Id ? r with { Done = r.Done is null ? Today : null } : r)],
    });

    private void Plan()
    {
        var (start, rounds, turns) = (_start, _rounds, _turns);
        Put("Settling plan", log => log with
        {
            Reminders = [.. log.Reminders,
                .. Reminders.Settling(start, rounds, turns, log.Jobs.LastOrDefault()?.Id ?? "", log.Reminders.Select(r => r.Id))],
        });
    }

    /// <summary>The job is done: noted with date and odometer, and what is to be checked again is put among the reminders.</summary>
    private void Finish(Job job)
    {
        Reading? odometer = null;
        _problem = null;
        if (_odometer.Trim().Length > 0)
        {
            var read = Reading.Parse("odometer", Dimension.Distance, _odometer, source: ReadingSource.Setting);
            _problem = read.Problems.Count > 0 ? read.Problems[0] : null;
            if (!read.Ok)
            {
                return;
            }

            odometer = read.Value;
        }

        var day = _finished;
        Put("Finish the job " + job.Name, log => log.With((log.Job(job.Id) ?? job) with { Finished = day }) with
        {
            Entries =
            [
                .. log.Entries,
                new LogEntry { Id = FreshId.Beside("entry", log.Entries.Select(e => e.Id)), Kind = LogKind.Work, Date = day,
                    Odometer = odometer, Title = job.Name, Build = job.To },
            ],
            Reminders = [.. log.Reminders, Reminders.Recheck(day, odometer, job.Id, log.Reminders.Select(r => r.Id))],
        });
        (_finishing, _odometer) = ("", "");
    }

    private string JobWords(Job job)
    {
        string begun = job.Begun is { } b ? "begun " + b.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : "begun";
        string done = job.Finished is { } f ? ", finished " + f.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : "";
        int ticked = TickMerge.Done(job).Count;
        return $"{begun}{done} · {(ticked == 1 ? "1 step" : $"{ticked} steps")} ticked · {NameOf(job.From)} → {NameOf(job.To)}";
    }

    private string NameOf(string build) => Car.Build(build)?.Name ?? (build.Length > 0 ? build : "?");

    private static string Summary(LogEntry entry)
    {
        string[] pieces =
        [
            entry.Title,
            entry.Driven is { } driven ? driven.Typed : "",
            entry.Cost is { } cost ? cost.ToString("0.00", CultureInfo.InvariantCulture) : "",
            entry.Note.Length > 60 ? string.Concat(entry.Note.AsSpan(0, 57), "…") : entry.Note,
        ];
        return string.Join(" · ", pieces.Where(p => p.Length > 0));
    }

    private static string When(Reminder reminder)
    {
        string date = reminder.Due is { } due ? "by " + due.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : "";
        string distance = reminder.DueOdometer is { } by ? "by " + by.Typed : "";
        return string.Join(" or ", new[] { date, distance }.Where(t => t.Length > 0));
    }

    private static string UrgencyWords(Urgency urgency) => urgency switch
    {
        Urgency.Overdue => "! Overdue",
        Urgency.Now => "Now",
        Urgency.Later => "Later",
        _ => "✓ Done",
    };

    private static string KindWords(LogKind kind) => kind switch
    {
        LogKind.TyreWear => "Tyre wear",
        _ => kind.ToString(),
    };

    private static IReadOnlyList<string> HiddenFor(LogEntry entry) => entry.Kind switch
    {
        LogKind.Drive => [nameof(LogEntry.Id), nameof(LogEntry.Corners), nameof(LogEntry.Photos)],
        LogKind.TyreWear => [nameof(LogEntry.Id), nameof(LogEntry.Driven), nameof(LogEntry.Cost), nameof(LogEntry.Photos)],
        _ => [nameof(LogEntry.Id), nameof(LogEntry.Corners), nameof(LogEntry.Driven), nameof(LogEntry.Photos)],
    };
}
