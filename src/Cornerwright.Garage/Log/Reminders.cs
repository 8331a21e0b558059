using System.Globalization;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Log;

/// <summary>How urgent a reminder is.</summary>
public enum Urgency
{
    Overdue,

    /// <summary>Its time has come.</summary>
    Now,
    Later,
    Done,
}

/// <summary>Reminders made from work: what to check again, and how new springs are let settle.</summary>
public static class Reminders
{
    /// <summary>Wheels are checked again after 50 to 100 km. Common practice, no source.</summary>
    private const double RecheckFrom = 50_000, RecheckBy = 100_000;

    /// <summary>A car that is driven at all has done 100 km within so many days; our choice.</summary>
    private const int RecheckDays = 14;

    /// <param name="done">The day of the work.</param>
    /// <param name="odometer">Then; null where nobody read it.</param>
    /// <param name="job">The job's id.</param>
    /// <param name="others">Ids that are taken.</param>
    public static Reminder Recheck(DateOnly done, Reading? odometer, string job, IEnumerable<string> others)
    {
        string what = "Check the wheel bolts and all torques that the order names again, 50 to 100 km after the work";
        if (odometer is null)
        {
            return new Reminder { Id = Fresh("recheck", others), What = what, From = done, Due = done.AddDays(RecheckDays), Job = job };
        }

        var unit = odometer.Value.Unit;
        string from = Round(unit.FromSi(odometer.Si + RecheckFrom), unit), by = Round(unit.FromSi(odometer.Si + RecheckBy), unit);
        return new Reminder
        {
            Id = Fresh("recheck", others), What = $"{what}: between {from} and {by}", From = done, Due = done.AddDays(RecheckDays),
            DueOdometer = Reading.Of(by, Dimension.Distance), Job = job,
        };
    }

    /// <summary>Drive a week, measure, turn down a little, and again: one reminder for each round.</summary>
    /// <param name="start">The day from which it is driven.</param>
    /// <param name="rounds">1 to 12.</param>
    /// <param name="turns">Of the perches, each round; 0 where nothing is to be turned.</param>
    /// <exception cref="ArgumentOutOfRangeException">Rounds or turns outside their range.</exception>
    public static IReadOnlyList<Reminder> Settling(DateOnly start, int rounds, double turns, string job, IEnumerable<string> others)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rounds, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(rounds, 12);
        if (!(turns is >= 0 and <= 20))
        {
            throw new ArgumentOutOfRangeException(nameof(turns), turns, "0 to 20.");
        }

        var taken = others.ToList();
        var plan = new List<Reminder>();
        for (int i = 1; i <= rounds; i++)
        {
            string turn = turns == 0 ? "" : string.Create(CultureInfo.InvariantCulture,
                $" If it still stands too high, turn every perch down {turns:0.##} turns, then settle and measure once more.");
            string id = Fresh("settle", taken);
            taken.Add(id);
            plan.Add(new Reminder
            {
                Id = id, From = start.AddDays(7 * i), Due = start.AddDays((7 * i) + 3), Job = job,
                What = string.Create(CultureInfo.InvariantCulture,
                    $"Settling, round {i} of {rounds}: after a week of driving measure the four heights and write them down.{turn}"),
            });
        }

        return plan;
    }

    /// <param name="today">Now.</param>
    /// <param name="odometer">The latest known, m; null where none is.</param>
    public static Urgency Of(Reminder reminder, DateOnly today, double? odometer)
    {
        ArgumentNullException.ThrowIfNull(reminder);
        bool late = (reminder.Due is { } due && today > due) || (reminder.DueOdometer is { } by && odometer > by.Si);
        return reminder.Done is not null ? Urgency.Done
            : late ? Urgency.Overdue
            : reminder.From is { } from && today < from ? Urgency.Later
            : Urgency.Now;
    }

    /// <summary>The largest odometer reading of the log, m; null where there is none.</summary>
    public static Reading? LatestOdometer(CarLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        return log.Entries.Select(e => e.Odometer).OfType<Reading>().MaxBy(r => r.Si);
    }

    private static string Round(double number, Unit unit) =>
        string.Create(CultureInfo.InvariantCulture, $"{Math.Round(number):0} {unit.Symbol}");

    private static string Fresh(string stem, IEnumerable<string> others)
    {
        var taken = others.ToHashSet(StringComparer.Ordinal);
        int i = 1;
        while (taken.Contains(FormattableString.Invariant($"{stem}-{i}")))
        {
            i++;
        }

        return FormattableString.Invariant($"{stem}-{i}");
    }
}
