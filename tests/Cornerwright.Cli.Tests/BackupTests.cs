using Cornerwright.Cli.Edges;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Storage;

namespace Cornerwright.Cli.Tests;

public sealed class BackupTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("cornerwright-backup-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void The_database_that_serves_is_the_one_copied()
    {
        var terminal = new Terminal();
        Assert.Equal(ExitCode.Holds, terminal.Run("backup", "copy.db").Code);
        Assert.Equal(("garage.db", "copy.db"), terminal.App.BackedUp);
    }

    [Fact]
    public void What_is_not_there_is_not_copied()
    {
        var terminal = new Terminal();
        var answer = terminal.Run("backup", "copy.db", "--database", "elsewhere.db");
        Assert.Equal(ExitCode.BadInput, answer.Code);
        Assert.Contains("elsewhere.db", answer.Err);
        Assert.Null(terminal.App.BackedUp);
    }

    [Fact]
    public void A_copy_that_is_not_whole_is_said()
    {
        var terminal = new Terminal();
        terminal.App.Refusal = new Problem("backup file", "copy.db", "a file that is not there yet", "Choose another name.");
        var answer = terminal.Run("backup", "copy.db", "--json");
        Assert.Equal(ExitCode.BadInput, answer.Code);
        Assert.Contains("a file that is not there yet", answer.Out);
    }

    [Fact]
    public void A_copy_opens_with_every_car()
    {
        string from = Path.Combine(_folder.FullName, "garage.db"), to = Path.Combine(_folder.FullName, "copy.db");
        Store(from).Save(DemoCar.Read(), null, "as delivered");
        var app = new WebApp();
        Assert.Null(app.Backup(from, to));
        var car = Store(to).Load("wagtail");
        Assert.Equal(DemoCar.Text(), CarFile.Write(car.Value.Car));
        Assert.Equal("backup file", app.Backup(from, to)!.Field);
    }

    /// <summary>Seen once: "serve --database my-car.json" ended with a stack trace.</summary>
    [Fact]
    public void A_file_of_another_kind_is_refused_as_a_database_and_left_as_it_is()
    {
        string car = Path.Combine(_folder.FullName, "car.json");
        File.WriteAllText(car, DemoCar.Text());
        var app = new WebApp();
        var served = app.Run(["--database", car, "--urls", "http://127.0.0.1:0"], _ => { });
        foreach (var problem in new[] { app.Backup(car, car + ".copy"), served })
        {
            Assert.Equal(("database", car), (problem!.Field, problem.Given));
        }

        Assert.Equal(DemoCar.Text(), File.ReadAllText(car));
        Assert.Equal([car], Directory.GetFileSystemEntries(_folder.FullName));
    }

    private static GarageStore Store(string path) => new(GarageDatabase.Open(path).Value, TimeProvider.System, AutosaveRule.Default);
}
