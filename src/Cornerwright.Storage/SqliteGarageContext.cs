using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Cornerwright.Storage;

/// <summary>The tables on SQLite.</summary>
public sealed class SqliteGarageContext(DbContextOptions<SqliteGarageContext> options) : GarageContext(options)
{
    /// <summary>For the tool that writes migrations; it opens no database.</summary>
    public sealed class ForTools : IDesignTimeDbContextFactory<SqliteGarageContext>
    {
        public SqliteGarageContext CreateDbContext(string[] args) =>
            new(new DbContextOptionsBuilder<SqliteGarageContext>().UseSqlite("Data Source=:memory:").Options);
    }
}
