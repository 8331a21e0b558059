using Cornerwright.Garage.Problems;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.EntityFrameworkCore.Storage;

namespace Cornerwright.Storage;

/// <summary>Opens the database file, makes or updates its tables, and hands out contexts.</summary>
public sealed class GarageDatabase : IDbContextFactory<SqliteGarageContext>
{
    /// <summary>How long a save waits for another one, s; a save takes some ten milliseconds.</summary>
    private const int BusySeconds = 30;

    private readonly DbContextOptions<SqliteGarageContext> _options;

    private GarageDatabase(string path)
    {
        FilePath = path;
        var connection = new SqliteConnectionStringBuilder { DataSource = path, DefaultTimeout = BusySeconds };
        _options = new DbContextOptionsBuilder<SqliteGarageContext>()
            .UseSqlite(connection.ToString(), sqlite => sqlite.CommandTimeout(BusySeconds))
            .AddInterceptors(new DurableConnection())
            .Options;
    }

    public string FilePath { get; }

    public SqliteGarageContext CreateDbContext() => new(_options);

    /// <summary>Opens a database file, or makes it with its folder. After any crash or power cut, opening is all it takes.</summary>
    public static Checked<GarageDatabase> Open(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        try
        {
            string full = Path.GetFullPath(path);
            Directory.CreateDirectory(Path.GetDirectoryName(full)!);
            var database = new GarageDatabase(full);
            return database.BringUpToDate() is { } problem ? Checked<GarageDatabase>.Wrong(problem) : Checked<GarageDatabase>.From(database);
        }
        catch (Exception error) when (error is SqliteException or IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Checked<GarageDatabase>.Wrong(new Problem(
                "database", path, "a file that can be written, made by this program", "Choose another place, or restore a backup. " + error.Message));
        }
    }

    /// <summary>
    /// Runs what is missing as one transaction. The framework's own way keeps a lock in a table: a process killed
    /// while it holds that lock would leave a database that never opens again.
    /// </summary>
    private Problem? BringUpToDate()
    {
        using var context = CreateDbContext();
        var facade = context.Database;
        facade.OpenConnection();
        using var transaction = facade.BeginTransaction();
        string[] known = [.. facade.GetMigrations()];
        string[] applied = [.. Applied(context)];
        if (applied.Except(known, StringComparer.Ordinal).FirstOrDefault() is { } newer)
        {
            return new Problem("database", newer, "made by this version or an older one", "Open it with the newer program that wrote it.");
        }

        if (applied.Length < known.Length)
        {
            string script = context.GetService<IMigrator>().GenerateScript(
                applied.LastOrDefault() ?? Migration.InitialDatabase, null, MigrationsSqlGenerationOptions.NoTransactions);
            using var command = facade.GetDbConnection().CreateCommand();
            command.Transaction = transaction.GetDbTransaction();
            command.CommandText = script;
            command.ExecuteNonQuery();
        }

        transaction.Commit();
        return null;
    }

    private static List<string> Applied(SqliteGarageContext context)
    {
        var facade = context.Database;
        bool any = facade.SqlQueryRaw<int>("SELECT count(*) AS Value FROM sqlite_master WHERE name = '__EFMigrationsHistory'").Single() > 0;
        return any ? [.. facade.SqlQueryRaw<string>("SELECT MigrationId AS Value FROM __EFMigrationsHistory ORDER BY MigrationId")] : [];
    }
}
