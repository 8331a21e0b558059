using System.Collections;
using Cornerwright.Garage.Access;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Web.Benches;

namespace Cornerwright.Web.Tests.Benches;

/// <summary>
/// A row of a form that was opened and left empty made the whole car unreadable ("Gap: fill it in"), and nothing else could
/// be saved until it was gone.
/// </summary>
public sealed class OpenEntriesTests
{
    private static readonly Car Demo = DemoCar.Read();
    private static readonly string Written = CarFile.Write(Demo);

    /// <summary>The demo car with one untouched entry more, for every list and every record that may be missing, at every depth.</summary>
    private static IEnumerable<(string Path, Car Car)> OneOpened(object record, string path, Func<object, Car> rebuild)
    {
        var shape = RecordShape.Of(record.GetType());
        foreach (var field in shape.Fields)
        {
            string at = path + "/" + field.Name;
            Car With(object? value) => rebuild(shape.With(record, field, value));
            if (field.Kind == FieldKind.Record)
            {
                object? child = field.Get(record);
                foreach (var found in child is null ? [(at, With(NewEntry.Of(field.ElementType)))] : OneOpened(child, at, With))
                {
                    yield return found;
                }
            }
            else if (field.Kind == FieldKind.RecordList)
            {
                List<object> rows = [.. ((IEnumerable)field.Get(record)!).Cast<object>()];
                if (Fresh(field.ElementType) is { } fresh)
                {
                    yield return (at, With(Typed(field.ElementType, [.. rows, fresh])));
                }

                for (int i = 0; i < rows.Count; i++)
                {
                    int index = i;
                    foreach (var found in OneOpened(rows[i], at + "/" + i, row =>
                        With(Typed(field.ElementType, [.. rows.Select((r, j) => j == index ? row : r)]))))
                    {
                        yield return found;
                    }
                }
            }
        }
    }

    /// <summary>Null for things that are made whole and not opened as an empty row: builds, parts, searches, entries of the log.</summary>
    private static object? Fresh(Type type)
    {
        object made = RecordShape.Of(type).ByName.ContainsKey("id") ? NewEntry.Of(type, "opened-1") : NewEntry.Of(type);
        return NewEntry.IsUntouched(made) ? made : null;
    }

    private static Array Typed(Type type, object[] rows)
    {
        var typed = Array.CreateInstance(type, rows.Length);
        rows.CopyTo(typed, 0);
        return typed;
    }

    [Fact]
    public void Whatever_is_opened_and_left_empty_the_rest_is_kept_and_no_empty_entry_with_it()
    {
        var kinds = new HashSet<string>();
        int count = 0;
        foreach (var (path, car) in OneOpened(Demo, "", c => (Car)c))
        {
            var (kept, open) = OpenEntries.Split(car);
            Assert.True(CarFile.Write(kept) == Written, path);
            Assert.True(Assert.Single(open).Why.Length > 0, path);
            kinds.Add(path[(path.LastIndexOf('/') + 1)..]);
            count++;
        }

        Assert.True(count > 250, $"{count} places");
        Assert.Superset(
            new HashSet<string> { "gaps", "obstacles", "steps", "loadCases", "curve", "fasteners", "beforeOff", "supports", "hazards",
                "corners", "photos", "components", "strut", "steering", "lowerInner" },
            kinds);
    }

    [Fact]
    public void Nothing_open_the_car_itself_is_kept()
    {
        var (kept, open) = OpenEntries.Split(Demo);
        Assert.Same(Demo, kept);
        Assert.Empty(open);
    }

    private static Gap Half => (Gap)NewEntry.Of(typeof(Gap)) with { Clock = 10.5 };

    private static Car WithGaps(params Gap[] gaps) => Demo.With(CornerPlace.FrontLeft, Demo.FrontLeft with
    {
        Obstacles = [Demo.FrontLeft.Obstacles[0] with { Gaps = gaps }, .. Demo.FrontLeft.Obstacles.Skip(1)],
    });

    [Fact]
    public void A_row_half_filled_in_waits_for_what_it_needs_and_says_so()
    {
        var whole = Half with { Distance = Reading.Of("12 mm", Dimension.Length) };
        var (kept, open) = OpenEntries.Split(WithGaps(whole, Half, whole));
        Assert.Equal([whole, whole], kept.FrontLeft.Obstacles[0].Gaps);
        var waits = Assert.Single(open);
        Assert.Equal($"frontLeft/obstacles/{Demo.FrontLeft.Obstacles[0].Id}/gaps/1", waits.Path);
        Assert.Equal("Gap is not given yet", waits.Why);
    }

    [Fact]
    public void A_point_with_two_of_its_numbers_missing_names_both()
    {
        var point = new BodyPoint { X = Reading.Of("12 mm", Dimension.Length) };
        Assert.Equal("Y, left and Z, up are not given yet", OpenEntries.Missing(point));
    }

    [Fact]
    public void A_hazard_as_it_was_opened_is_kept_once_somebody_says_so()
    {
        object opened = NewEntry.Of(typeof(Hazard));
        Assert.True(NewEntry.SpeaksByItself(typeof(Hazard)));
        Assert.NotNull(OpenEntries.Missing(opened));
        Assert.Null(OpenEntries.Missing(NewEntry.Touched(opened)));
        Assert.False(NewEntry.SpeaksByItself(typeof(Gap)));
    }

    [Fact]
    public void A_load_case_that_was_chosen_somewhere_is_kept_as_it_was_opened()
    {
        var fresh = (LoadCase)NewEntry.Of(typeof(LoadCase), "case-9");
        var car = Demo with { LoadCases = [.. Demo.LoadCases, fresh] };
        Assert.DoesNotContain(fresh, OpenEntries.Split(car).Kept.LoadCases);
        Assert.NotNull(OpenEntries.Missing(fresh, car));
        var chosen = car with { MeasuredLoadCase = "case-9" };
        Assert.Contains(fresh, OpenEntries.Split(chosen).Kept.LoadCases);
        Assert.Null(OpenEntries.Missing(fresh, chosen));
    }

    [Fact]
    public void A_thing_is_kept_from_the_first_that_is_typed_in_it_with_its_open_gap_left_out()
    {
        var fresh = (Obstacle)NewEntry.Of(typeof(Obstacle), "thing-9");
        var named = fresh with { Name = "Brake hose", Gaps = [Half] };
        var (kept, open) = OpenEntries.Split(Demo.With(CornerPlace.RearLeft, Demo.RearLeft with { Obstacles = [named] }));
        Assert.Equal(named with { Gaps = [] }, kept.RearLeft.Obstacles[0] with { Gaps = [] });
        Assert.Empty(kept.RearLeft.Obstacles[0].Gaps);
        Assert.EndsWith("thing-9/gaps/0", Assert.Single(open).Path, StringComparison.Ordinal);
    }
}
