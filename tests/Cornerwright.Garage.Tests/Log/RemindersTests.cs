using Cornerwright.Garage.Log;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Garage.Tests.Log;

public sealed class RemindersTests
{
    private static readonly DateOnly Day = new(2026, 10, 3);

    private static Reading Odometer(string typed) => Reading.Of(typed, Dimension.Distance);

    // Common practice, no source: wheels are checked again after 50 to 100 km.
    [Fact]
    public void What_is_checked_again_is_due_a_hundred_kilometres_later_in_the_odometers_own_unit()
    {
        var km = Reminders.Recheck(Day, Odometer("84210 km"), "job", []);
        Assert.Contains("between 84260 km and 84310 km", km.What, StringComparison.Ordinal);
        Assert.Equal(84_310_000, km.DueOdometer!.Si, 1e-6);

        // 50 km are 31.07 miles, 100 km 62.14: exact factor 1.609344, NIST SP 811.
        var miles = Reminders.Recheck(Day, Odometer("52300 mi"), "job", ["recheck-1"]);
        Assert.Contains("between 52331 mi and 52362 mi", miles.What, StringComparison.Ordinal);
        Assert.Equal("recheck-2", miles.Id);

        var unknown = Reminders.Recheck(Day, null, "job", []);
        Assert.Null(unknown.DueOdometer);
        Assert.Equal(Day.AddDays(14), unknown.Due);
    }

    [Fact]
    public void Settling_is_a_week_of_driving_a_round()
    {
        var plan = Reminders.Settling(Day, 3, 2, "job", ["settle-2"]);
        Assert.Equal([Day.AddDays(7), Day.AddDays(14), Day.AddDays(21)], plan.Select(r => r.From));
        Assert.Equal(["settle-1", "settle-3", "settle-4"], plan.Select(r => r.Id));
        Assert.All(plan, r => Assert.Contains("turn every perch down 2 turns", r.What, StringComparison.Ordinal));
        Assert.DoesNotContain("turn every perch", Reminders.Settling(Day, 1, 0, "", [])[0].What, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Reminders.Settling(Day, 1, double.NaN, "", []));
        Assert.Throws<ArgumentOutOfRangeException>(() => Reminders.Settling(Day, 13, 1, "", []));
    }

    [Fact]
    public void Whichever_comes_first_makes_it_due()
    {
        var reminder = new Reminder { Id = "r", From = Day, Due = Day.AddDays(10), DueOdometer = Odometer("1000 km") };
        Assert.Equal(Urgency.Later, Reminders.Of(reminder, Day.AddDays(-1), null));
        Assert.Equal(Urgency.Now, Reminders.Of(reminder, Day, null));
        Assert.Equal(Urgency.Now, Reminders.Of(reminder, Day.AddDays(10), 999_000));
        Assert.Equal(Urgency.Overdue, Reminders.Of(reminder, Day.AddDays(11), null));
        Assert.Equal(Urgency.Overdue, Reminders.Of(reminder, Day.AddDays(-1), 1_000_001));
        Assert.Equal(Urgency.Done, Reminders.Of(reminder with { Done = Day }, Day.AddDays(99), 2_000_000));
    }

    [Fact]
    public void The_latest_odometer_is_the_largest_in_whatever_unit()
    {
        var log = new CarLog { Entries = [new LogEntry { Id = "a", Odometer = Odometer("52300 mi") },
            new LogEntry { Id = "b", Odometer = Odometer("84000 km") }, new LogEntry { Id = "c" }] };
        Assert.Equal("52300 mi", Reminders.LatestOdometer(log)!.Typed);
        Assert.Null(Reminders.LatestOdometer(new CarLog()));
    }
}
