using System.Reflection;
using Cornerwright.Garage.Problems;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace Cornerwright.Storage;

/// <summary>Opens the database file, makes or updates its tables, and hands out contexts.</summary>
public sealed class GarageDatabase : IDbContextFactory<SqliteGarageContext>
{
    /// <summary>How long a save waits for another one, s; a save takes some ten milliseconds.</summary>
    private const int BusySeconds = 30;

    private readonly DbContextOptions<SqliteGarageContext> _options;
    private readonly string _connection;

    private GarageDatabase(string path)
    {
        FilePath = path;
        _connection = new SqliteConnectionStringBuilder { DataSource = path, DefaultTimeout = BusySeconds }.ToString();
        _options = new DbContextOptionsBuilder<SqliteGarageContext>()
            .UseSqlite(_connection, sqlite => sqlite.CommandTimeout(BusySeconds))
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
            return database.BringUpToDate() is { } problem ? Checked<GarageDatabase>.Wrong(problem)
                : Checked<GarageDatabase>.From(database);
        }
        catch (Exception error) when (
            error is SqliteException or IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Checked<GarageDatabase>.Wrong(new Problem(
                "database", path, "a file that can be written, made by this program",
                "Choose another place, or restore a backup. " + error.Message));
        }
    }

    /// <summary>
    /// Runs what is missing as one transaction. The framework's own way keeps a lock in a table: a process killed
    /// while it holds that lock would leave a database that never opens again. Plain commands, because an up-to-date
    /// database, which is the usual case, then opens without waking the whole framework.
    /// </summary>
    private Problem? BringUpToDate()
    {
        using var connection = new SqliteConnection(_connection);
        connection.Open();
        if (IsForeign(connection))
        {
            return new Problem(
                "database", FilePath, "a file of this program's own, or a new one",
                "It is a database of another program, and is left as it is: choose another place.");
        }

        Run(connection, null, DurableConnection.Settings);
        using var transaction = connection.BeginTransaction();
        string[] known = Known();
        List<string> applied = Applied(connection, transaction);
        if (applied.Except(known, StringComparer.Ordinal).FirstOrDefault() is { } newer)
        {
            return new Problem("database", newer, "made by this version or an older one", "Open it with the newer program that wrote it.");
        }

        if (applied.Count < known.Length)
        {
            using var context = CreateDbContext();
            Run(connection, transaction, context.GetService<IMigrator>().GenerateScript(
                applied.LastOrDefault() ?? Migration.InitialDatabase, null, MigrationsSqlGenerationOptions.NoTransactions));
        }

        transaction.Commit();
        return null;
    }

    /// <summary>
    /// Whether somebody else keeps tables in this file. Asked before anything is written, in one statement, since others may be
    /// making ours.
    /// </summary>
    private static bool IsForeign(SqliteConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText =
            "SELECT count(*) > 0 AND count(CASE WHEN name = '__EFMigrationsHistory' THEN 1 END) = 0 FROM sqlite_master";
        return command.ExecuteScalar() is 1L;
    }

    private static string[] Known() =>
        [.. typeof(SqliteGarageContext).Assembly.GetTypes()
            .Where(x => x.GetCustomAttribute<DbContextAttribute>()?.ContextType == typeof(SqliteGarageContext))
            .Select(x => x.GetCustomAttribute<MigrationAttribute>()?.Id)
            .OfType<string>()
            .Order(StringComparer.Ordinal)];

    private static List<string> Applied(SqliteConnection connection, SqliteTransaction transaction)
    {
        using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = "SELECT count(*) FROM sqlite_master WHERE name = '__EFMigrationsHistory'";
        if (command.ExecuteScalar() is not > 0L)
        {
            return [];
        }

        command.CommandText = "SELECT MigrationId FROM __EFMigrationsHistory ORDER BY MigrationId";
        using var rows = command.ExecuteReader();
        var applied = new List<string>();
        while (rows.Read())
        {
            applied.Add(rows.GetString(0));
        }

        return applied;
    }

    private static void Run(SqliteConnection connection, SqliteTransaction? transaction, string sql)
    {
        using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
