using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Cornerwright.Storage;

/// <summary>
/// Sets up every connection so that a finished save is on the disk (docs/decisions/0006-an-acknowledged-save-is-on-the-disk.md).
/// </summary>
internal sealed class DurableConnection : DbConnectionInterceptor
{
    /// <summary>
    /// FULL: the write-ahead log is flushed before a commit returns. NORMAL would flush at checkpoints only,
    /// and a power cut could take the last acknowledged saves with it.
    /// </summary>
    internal const string Settings = "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;";

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        ArgumentNullException.ThrowIfNull(connection);
        using var command = connection.CreateCommand();
        command.CommandText = Settings;
        command.ExecuteNonQuery();
    }

    public override Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData,
        CancellationToken cancellationToken = default)
    {
        ConnectionOpened(connection, eventData);
        return Task.CompletedTask;
    }
}
