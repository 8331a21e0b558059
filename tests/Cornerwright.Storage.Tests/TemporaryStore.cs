using Microsoft.Data.Sqlite;

namespace Cornerwright.Storage.Tests;

/// <summary>A database in a folder of its own that goes away with the test, and a clock that the test moves.</summary>
public sealed class TemporaryStore : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("garage-");

    public TemporaryStore() => Store = Again();

    public TestClock Clock { get; } = new();

    public GarageStore Store { get; }

    public string FilePath => Path.Combine(_folder.FullName, "garage.db");

    /// <summary>Another program on the same file.</summary>
    public GarageStore Again() => new(GarageDatabase.Open(FilePath).Value, Clock, AutosaveRule.Default);

    public string PathOf(string name) => Path.Combine(_folder.FullName, name);

    public static T Ask<T>(string path, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={path}");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return (T)command.ExecuteScalar()!;
    }

    public T Ask<T>(string sql) => Ask<T>(FilePath, sql);

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        _folder.Delete(recursive: true);
    }
}

/// <summary>A clock that stands until it is moved.</summary>
public sealed class TestClock : TimeProvider
{
    private DateTimeOffset _now = new(2026, 5, 1, 9, 0, 0, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow() => _now;

    public void Pass(double seconds) => _now = _now.AddSeconds(seconds);
}
