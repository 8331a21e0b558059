using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Storage.KillVictim;

namespace Cornerwright.Storage.Tests;

public sealed class AutosaveTests : IDisposable
{
    private const string Me = "my tab";

    private readonly TemporaryStore _temporary = new();

    private GarageStore Store => _temporary.Store;

    public void Dispose() => _temporary.Dispose();

    [Fact]
    public void A_slider_drag_becomes_one_revision_with_its_last_value()
    {
        RevisionMark mark = Drag(Begin(), 2, 101);
        Assert.Equal(new RevisionMark(2, 99), mark);
        var revisions = Store.Revisions(VictimCar.Id);
        Assert.Equal(2, revisions.Count);
        Assert.Equal("Note: step 1 → step 101; Builds / Street / Front left / Perch height: 101 mm → 201 mm", revisions[0].Changes);
        Assert.Equal(CarFile.Write(VictimCar.Of(101)), Store.Text(VictimCar.Id, 2));
        Assert.Equal(2L, _temporary.Ask<long>("SELECT count(*) FROM Documents"));
        Assert.Equal([2, 1], Store.RevisionsOfBuild(VictimCar.Id, VictimCar.BuildId).Select(x => x.Number));
    }

    [Fact]
    public void What_was_saved_on_purpose_is_never_folded_into()
    {
        var mark = Store.Save(VictimCar.Of(2), Begin()).Mark!.Value;
        mark = Drag(mark, 3, 5);
        mark = Assert.IsType<SaveResult.Saved>(Store.Save(VictimCar.Of(6), mark)).Now;
        Drag(mark, 7, 9);
        Assert.Equal([9, 6, 5, 2, 1], Steps());
    }

    [Fact]
    public void Saving_on_purpose_without_a_further_change_closes_what_was_autosaved()
    {
        var mark = Drag(Begin(), 2, 3);
        Assert.Equal(new SaveResult.Unchanged(mark), Store.Save(VictimCar.Of(3), mark));
        Drag(mark, 4, 4);
        Assert.Equal([4, 3, 1], Steps());
    }

    [Fact]
    public void A_label_a_pause_another_session_or_a_long_time_closes_the_head()
    {
        var mark = Drag(Begin(), 2, 3);
        Assert.True(Store.Label(VictimCar.Id, mark.Number, "good"));
        mark = Drag(mark, 4, 5);
        _temporary.Clock.Pass(11);
        mark = Drag(mark, 6, 7);
        mark = Assert.IsType<SaveResult.Kept>(Store.Autosave(VictimCar.Of(8), mark, "his tab")).Now;
        mark = Drag(mark, 9, 9);
        Assert.Equal([9, 8, 7, 5, 3, 1], Steps());
        for (int step = 10; step < 30; step++)
        {
            _temporary.Clock.Pass(6);
            mark = Drag(mark, step, step);
        }

        Assert.Equal(3, Steps().Count(x => x > 9));
    }

    [Fact]
    public void An_autosave_that_touches_another_field_is_a_revision_of_its_own()
    {
        var mark = Drag(Begin(), 2, 3);
        var car = VictimCar.Of(3) with { Name = "Dune two" };
        Assert.Equal(new RevisionMark(3, 0), Store.Autosave(car, mark, Me).Mark);
        Assert.Equal(CarFile.Write(VictimCar.Of(3)), Store.Text(VictimCar.Id, 2));
        Assert.Equal("Name: Dune → Dune two", Store.Revisions(VictimCar.Id)[0].Changes);
    }

    [Fact]
    public void Folding_does_not_hide_a_conflict()
    {
        var seen = Drag(Begin(), 2, 2);
        Drag(seen, 3, 3);
        var conflict = Assert.IsType<SaveResult.Conflict>(_temporary.Again().Save(VictimCar.Of(50), seen));
        Assert.Equal(new RevisionMark(2, 1), conflict.Latest.Mark);
    }

    [Fact]
    public void A_new_car_is_never_folded_away()
    {
        var kept = Assert.IsType<SaveResult.Kept>(Store.Autosave(VictimCar.Of(1), null, Me));
        Drag(kept.Now, 2, 3);
        Assert.Equal([3, 1], Steps());
    }

    [Fact]
    public void A_clock_set_back_does_not_fold()
    {
        var mark = Drag(Begin(), 2, 2);
        _temporary.Clock.Pass(-3600);
        Drag(mark, 3, 3);
        Assert.Equal([3, 2, 1], Steps());
    }

    private RevisionMark Begin() => Store.Save(VictimCar.Of(1), null).Mark!.Value;

    private RevisionMark Drag(RevisionMark mark, int from, int to)
    {
        for (int step = from; step <= to; step++)
        {
            _temporary.Clock.Pass(0.1);
            mark = Assert.IsType<SaveResult.Kept>(Store.Autosave(VictimCar.Of(step), mark, Me)).Now;
        }

        return mark;
    }

    private List<int> Steps() => [.. Store.Revisions(VictimCar.Id)
        .Select(x => int.Parse(Store.Load(VictimCar.Id, x.Number).Value.Car.Note["step ".Length..],
            System.Globalization.CultureInfo.InvariantCulture))];
}
