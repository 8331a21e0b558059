using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Parts;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;
using Cornerwright.Storage.KillVictim;

namespace Cornerwright.Storage.Tests;

public sealed class GarageStoreTests : IDisposable
{
    private readonly TemporaryStore _temporary = new();

    private GarageStore Store => _temporary.Store;

    public void Dispose() => _temporary.Dispose();

    [Fact]
    public void A_saved_car_comes_back_with_the_same_text()
    {
        var car = VictimCar.Of(1);
        var saved = Assert.IsType<SaveResult.Saved>(Store.Save(car, null));
        Assert.Equal(new RevisionMark(1, 0), saved.Now);
        var loaded = _temporary.Again().Load(car.Id).Value;
        Assert.Equal(saved.Now, loaded.Mark);
        Assert.Equal(CarFile.Write(car), CarFile.Write(loaded.Car));
        Assert.Equal(CarFile.Write(car), Store.Text(car.Id, 1));
    }

    [Fact]
    public void Every_save_that_changes_something_is_a_revision_and_none_is_overwritten()
    {
        var mark = SaveAll([1, 2, 3, 4]);
        Assert.Equal(4, mark.Number);
        for (int i = 1; i <= 4; i++)
        {
            Assert.Equal(CarFile.Write(VictimCar.Of(i)), CarFile.Write(Store.Load(VictimCar.Id, i).Value.Car));
        }

        Assert.Equal([(4, 3), (3, 2), (2, 1), (1, null)], Store.Revisions(VictimCar.Id).Select(x => (x.Number, x.Parent)));
    }

    [Fact]
    public void A_revision_says_in_words_what_changed_and_when()
    {
        SaveAll([1]);
        _temporary.Clock.Pass(60);
        SaveAll([2]);
        var latest = Store.Revisions(VictimCar.Id)[0];
        Assert.Equal("Note: step 1 → step 2; Builds / Street / Front left / Perch height: 101 mm → 102 mm", latest.Changes);
        Assert.Equal(new DateTimeOffset(2026, 5, 1, 9, 1, 0, TimeSpan.Zero), latest.SavedAt);
        Assert.Equal("New car", Store.Revisions(VictimCar.Id)[1].Changes);
        Assert.False(latest.Autosaved || latest.Open);
    }

    [Fact]
    public void Saving_the_same_again_makes_no_revision_even_with_an_old_mark()
    {
        var mark = SaveAll([1, 2]);
        Assert.Equal(new SaveResult.Unchanged(mark), Store.Save(VictimCar.Of(2), mark));
        Assert.Equal(new SaveResult.Unchanged(mark), Store.Save(VictimCar.Of(2), new RevisionMark(1, 0)));
        Assert.Equal(2, Store.Revisions(VictimCar.Id).Count);
    }

    [Fact]
    public void Going_back_to_an_earlier_state_is_a_revision_that_shares_its_document()
    {
        SaveAll([1, 2, 1, 2, 1]);
        Assert.Equal(5, Store.Revisions(VictimCar.Id).Count);
        Assert.Equal(2L, _temporary.Ask<long>("SELECT count(*) FROM Documents"));
    }

    [Fact]
    public void Who_saves_second_gets_a_conflict_with_what_the_first_one_saved()
    {
        var mark = SaveAll([1]);
        var other = _temporary.Again();
        Assert.IsType<SaveResult.Saved>(other.Save(VictimCar.Of(2), mark));
        var conflict = Assert.IsType<SaveResult.Conflict>(Store.Save(VictimCar.Of(3), mark));
        Assert.Equal(CarFile.Write(VictimCar.Of(2)), CarFile.Write(conflict.Latest.Car));
        Assert.Null(conflict.Mark);
        Assert.IsType<SaveResult.Saved>(Store.Save(VictimCar.Of(3), conflict.Latest.Mark));
        Assert.IsType<SaveResult.Conflict>(Store.Save(VictimCar.Of(9), null));
    }

    [Fact]
    public void Of_many_savers_with_the_same_mark_exactly_one_wins()
    {
        var mark = SaveAll([1]);
        var results = new SaveResult[8];
        Parallel.For(0, results.Length, i => results[i] = Store.Save(VictimCar.Of(10 + i), mark));
        Assert.Single(results.OfType<SaveResult.Saved>());
        Assert.Equal(results.Length - 1, results.OfType<SaveResult.Conflict>().Count());
        Assert.Equal(2, Store.Revisions(VictimCar.Id).Count);
    }

    [Fact]
    public void The_history_of_a_build_leaves_out_what_did_not_touch_it()
    {
        var mark = SaveAll([1]);
        var car = VictimCar.Of(1).With(new Build { Id = "track", Name = "Track" });
        mark = Store.Save(car, mark).Mark!.Value;
        mark = Store.Save(car with { Note = "new oil" }, mark).Mark!.Value;
        var lower = car.Build("track")! with { FrontLeft = new CornerBuild { PerchHeight = Reading.Of("300 mm", Dimension.Length) } };
        Store.Save(car with { Note = "new oil" }, mark);
        Store.Save((car with { Note = "new oil" }).With(lower), mark);
        Assert.Equal([4, 2], Store.RevisionsOfBuild(VictimCar.Id, "track").Select(x => x.Number));
        Assert.Equal([1], Store.RevisionsOfBuild(VictimCar.Id, VictimCar.BuildId).Select(x => x.Number));
        Assert.Empty(Store.RevisionsOfBuild(VictimCar.Id, "none"));
    }

    [Fact]
    public void A_car_that_would_not_read_back_is_refused_with_every_reason()
    {
        var broken = VictimCar.Of(1) with { MeasuredBuild = "gone", MeasuredLoadCase = "nothing" };
        var refused = Assert.IsType<SaveResult.Refused>(Store.Save(broken, null));
        Assert.Equal(["measured in load case", "measured on build"], refused.Problems.Select(x => x.Field));
        Assert.Empty(Store.ListCars());
        Assert.False(Store.Load(VictimCar.Id).Ok);
    }

    [Fact]
    public void A_deleted_car_lies_in_the_bin_whole_until_it_is_taken_out()
    {
        var mark = SaveAll([1, 2]);
        Assert.True(Store.Delete(VictimCar.Id));
        Assert.False(Store.Delete(VictimCar.Id));
        Assert.Empty(Store.ListCars());
        Assert.Equal("It is in the bin: take it out first.", Store.Load(VictimCar.Id).Problems.Single().Cure);
        Assert.IsType<SaveResult.Refused>(Store.Save(VictimCar.Of(3), mark));
        Assert.Equal(VictimCar.Id, Assert.Single(Store.ListBin()).Id);
        Assert.True(Store.Restore(VictimCar.Id));
        Assert.False(Store.Restore(VictimCar.Id));
        Assert.Equal(mark, Store.Load(VictimCar.Id).Value.Mark);
        Assert.Equal(2, Store.Revisions(VictimCar.Id).Count);
    }

    [Fact]
    public void The_list_shows_name_and_latest_revision()
    {
        SaveAll([1, 2]);
        Store.Save(VictimCar.Of(1) with { Id = "ash", Name = "Ash" }, null);
        Assert.Equal([("ash", "Ash", 1), ("dune", "Dune", 2)], Store.ListCars().Select(x => (x.Id, x.Name, x.Latest)));
    }

    [Fact]
    public void A_label_can_be_given_at_once_or_later_and_taken_away()
    {
        var mark = SaveAll([1]);
        Store.Save(VictimCar.Of(2), mark, "before the track day");
        Assert.True(Store.Label(VictimCar.Id, 1, " as bought "));
        Assert.Equal(["before the track day", "as bought"], Store.Revisions(VictimCar.Id).Select(x => x.Label));
        Assert.True(Store.Label(VictimCar.Id, 1, null));
        Assert.Null(Store.Revisions(VictimCar.Id)[1].Label);
        Assert.False(Store.Label(VictimCar.Id, 7, "no such"));
        Assert.IsType<SaveResult.Refused>(Store.Save(VictimCar.Of(3), null, new string('x', 101)));
    }

    [Fact]
    public void A_backup_opens_with_everything_and_never_overwrites_a_file()
    {
        SaveAll([1, 2, 3]);
        string path = _temporary.PathOf("copies/of it's.db");
        Assert.Null(Store.Backup(path));
        var copy = new GarageStore(GarageDatabase.Open(path).Value, _temporary.Clock, AutosaveRule.Default);
        Assert.Equal(CarFile.Write(VictimCar.Of(2)), CarFile.Write(copy.Load(VictimCar.Id, 2).Value.Car));
        Assert.Equal(3, copy.Revisions(VictimCar.Id).Count);
        Assert.Equal("ok", TemporaryStore.Ask<string>(path, "PRAGMA integrity_check"));
        Assert.Equal("Choose another name, or move the old file away.", Store.Backup(path)!.Cure);
    }

    [Fact]
    public void A_database_of_another_program_is_refused_and_not_a_byte_of_it_changes()
    {
        string path = _temporary.PathOf("theirs.db");
        TemporaryStore.Ask<long>(path, "CREATE TABLE Songs (Title TEXT); INSERT INTO Songs VALUES ('one'); SELECT count(*) FROM Songs");
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        byte[] before = File.ReadAllBytes(path);
        var opened = GarageDatabase.Open(path);
        Assert.Equal(
            "It is a database of another program, and is left as it is: choose another place.", Assert.Single(opened.Problems).Cure);
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Assert.Equal(before, File.ReadAllBytes(path));
    }

    [Fact]
    public void Documents_are_kept_small()
    {
        SaveAll([.. Enumerable.Range(1, 20)]);
        long text = CarFile.Write(VictimCar.Of(1)).Length;
        long stored = _temporary.Ask<long>("SELECT sum(length(Gzip)) FROM Documents");
        Assert.True(stored < 20 * text / 4, $"20 documents of {text} bytes take {stored}");
    }

    [Fact]
    public void Every_connection_waits_for_the_disk()
    {
        using var context = GarageDatabase.Open(_temporary.FilePath).Value.CreateDbContext();
        Microsoft.EntityFrameworkCore.RelationalDatabaseFacadeExtensions.OpenConnection(context.Database);
        var connection = Microsoft.EntityFrameworkCore.RelationalDatabaseFacadeExtensions.GetDbConnection(context.Database);
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA synchronous";
        Assert.Equal(2L, command.ExecuteScalar());   // 2 is FULL: https://sqlite.org/pragma.html#pragma_synchronous
        command.CommandText = "PRAGMA journal_mode";
        Assert.Equal("wal", command.ExecuteScalar());
    }

    [Fact]
    public void Marks_read_back_from_addresses()
    {
        Assert.Equal(new RevisionMark(12, 3), RevisionMark.Parse(new RevisionMark(12, 3).ToString()));
        Assert.Equal(new RevisionMark(12, 0), RevisionMark.Parse("12"));
        Assert.All(["", "0", "-1", "1+", "1+2+3", "x", null], x => Assert.Null(RevisionMark.Parse(x)));
    }

    private RevisionMark SaveAll(int[] steps)
    {
        RevisionMark? mark = Store.Load(VictimCar.Id).Try(out var known) ? known.Mark : null;
        foreach (int step in steps)
        {
            mark = Store.Save(VictimCar.Of(step), mark).Mark;
        }

        return mark!.Value;
    }
}
