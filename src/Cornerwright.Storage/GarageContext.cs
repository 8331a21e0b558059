using Cornerwright.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Cornerwright.Storage;

/// <summary>The tables, the same on every kind of database; a subclass for each kind has its own migrations.</summary>
public abstract class GarageContext(DbContextOptions options) : DbContext(options)
{
    public DbSet<CarRow> Cars => Set<CarRow>();

    public DbSet<RevisionRow> Revisions => Set<RevisionRow>();

    public DbSet<DocumentRow> Documents => Set<DocumentRow>();

    public DbSet<ChangedBuildRow> ChangedBuilds => Set<ChangedBuildRow>();

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        ArgumentNullException.ThrowIfNull(modelBuilder);
        modelBuilder.Entity<CarRow>().HasKey(x => x.Id);
        modelBuilder.Entity<DocumentRow>().HasKey(x => x.Hash);
        modelBuilder.Entity<RevisionRow>(revision =>
        {
            revision.HasKey(x => new { x.CarId, x.Number });
            revision.HasOne<CarRow>().WithMany().HasForeignKey(x => x.CarId).OnDelete(DeleteBehavior.Restrict);
            revision.HasOne(x => x.Document).WithMany().HasForeignKey(x => x.DocumentHash).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<ChangedBuildRow>(build =>
        {
            build.HasKey(x => new { x.CarId, x.BuildId, x.Number });
            build.HasOne<RevisionRow>().WithMany().HasForeignKey(x => new { x.CarId, x.Number }).OnDelete(DeleteBehavior.Cascade);
        });
    }
}
