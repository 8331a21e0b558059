using Cornerwright.Garage.Problems;

namespace Cornerwright.Storage;

/// <summary>A copy of everything: the database, and the scan files beside it.</summary>
public static class GarageBackup
{
    /// <summary>Makes the copy while others go on saving.</summary>
    /// <param name="store">The cars.</param>
    /// <param name="scans">Their scan files.</param>
    /// <param name="path">A database file that is not there yet; the scan files go into the folder that belongs to it.</param>
    /// <param name="cancel">Ends it; what was copied whole stays.</param>
    /// <returns>Null, or why it is not whole.</returns>
    public static async Task<Problem?> Make(IGarageStore store, ScanStore scans, string path, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(store);
        ArgumentNullException.ThrowIfNull(scans);
        return store.Backup(path) ?? await scans.CopyTo(ScanStore.At(ScanStore.FolderOf(path)), cancel);
    }

    /// <summary>The same with the photos of the logs.</summary>
    /// <inheritdoc cref="Make(IGarageStore, ScanStore, string, CancellationToken)"/>
    public static async Task<Problem?> Make(IGarageStore store, ScanStore scans, PhotoStore photos, string path,
        CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(photos);
        return await Make(store, scans, path, cancel) ?? await photos.CopyTo(PhotoStore.At(PhotoStore.FolderOf(path)), cancel);
    }
}
