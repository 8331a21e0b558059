using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace Cornerwright.Storage;

/// <summary>Registers the store for an application with dependency injection.</summary>
public static class ServiceRegistration
{
    /// <summary>Opens the database at once, so that a wrong place is reported at the start and not at the first save.</summary>
    /// <exception cref="DatabaseRefusedException">The database cannot be opened: it says why and what to do.</exception>
    public static IServiceCollection AddGarageStore(this IServiceCollection services, string path)
    {
        var opened = GarageDatabase.Open(path);
        if (!opened.Try(out var database))
        {
            throw new DatabaseRefusedException(opened.Problems[0]);
        }

        var scans = ScanStore.At(ScanStore.FolderOf(database.FilePath));
        return services
            .AddSingleton(scans)
            .AddSingleton(PhotoStore.At(PhotoStore.FolderOf(database.FilePath)))
            .AddSingleton<IDbContextFactory<SqliteGarageContext>>(database)
            .AddSingleton<IGarageStore>(provider =>
                new GarageStore(database, provider.GetService<TimeProvider>() ?? TimeProvider.System, AutosaveRule.Default));
    }
}
