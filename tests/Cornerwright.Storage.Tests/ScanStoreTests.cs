using System.Security.Cryptography;
using System.Text;
using Cornerwright.Garage.Scans;

namespace Cornerwright.Storage.Tests;

public sealed class ScanStoreTests : IDisposable
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), "cornerwright-scans-" + Guid.NewGuid().ToString("N"));
    private readonly ScanStore _store;

    public ScanStoreTests() => _store = ScanStore.At(Path.Combine(_folder, "garage-scans"));

    public void Dispose()
    {
        if (Directory.Exists(_folder))
        {
            Directory.Delete(_folder, recursive: true);
        }
    }

    // Source: FIPS 180-2 (2002), Appendix B.1: SHA-256 of "abc".
    private const string HashOfAbc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    private static readonly byte[] Triangle = Encoding.ASCII.GetBytes("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n");

    [Fact]
    public async Task A_file_is_kept_under_the_hash_of_its_content()
    {
        var kept = (await _store.Keep(new MemoryStream("abc"u8.ToArray()), ScanFormat.Stl)).Value;
        Assert.Equal(new KeptScan(HashOfAbc, ScanFormat.Stl, 3) { Fresh = true }, kept);
        Assert.Equal([HashOfAbc + ".stl"], Names());
        Assert.Equal(kept with { Fresh = false }, Assert.Single(_store.List()));
    }

    [Fact]
    public async Task It_comes_back_as_it_was()
    {
        var kept = (await _store.Keep(new MemoryStream(Triangle), ScanFormat.Obj)).Value;
        using (var stream = _store.Open(kept.Hash).Value)
        {
            byte[] back = new byte[Triangle.Length + 1];
            Assert.Equal(Triangle.Length, stream.ReadAtLeast(back, back.Length, throwOnEndOfStream: false));
            Assert.Equal(Triangle, back[..Triangle.Length]);
        }

        Assert.Equal(1, _store.Read(kept.Hash).Value.TriangleCount);
    }

    [Fact]
    public async Task The_same_content_twice_is_one_file()
    {
        await _store.Keep(new MemoryStream(Triangle), ScanFormat.Obj);
        Assert.False((await _store.Keep(new MemoryStream(Triangle), ScanFormat.Obj)).Value.Fresh);
        Assert.Single(Names());
    }

    [Fact]
    public async Task A_file_that_was_changed_on_the_disk_is_not_read_and_is_mended_by_importing_it_again()
    {
        var kept = (await _store.Keep(new MemoryStream(Triangle), ScanFormat.Obj)).Value;
        string path = Path.Combine(_store.Folder, kept.Hash + ".obj");
        byte[] changed = [.. Triangle];
        changed[2] = (byte)'9';
        await File.WriteAllBytesAsync(path, changed);
        Assert.Contains("hash", Assert.Single(_store.Read(kept.Hash).Problems).Allowed, StringComparison.Ordinal);
        await _store.Keep(new MemoryStream(Triangle), ScanFormat.Obj);
        Assert.True(_store.Read(kept.Hash).Ok);
    }

    [Fact]
    public async Task Cancelled_too_large_or_broken_off_nothing_stays()
    {
        using var stop = new CancellationTokenSource();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            _store.Keep(new Slow(() => stop.Cancel()), ScanFormat.Ply, cancel: stop.Token));
        Assert.Empty(Names());

        var refused = await _store.Keep(new Slow(() => { }), ScanFormat.Ply, mostBytes: 1 << 20);
        Assert.Contains("at most 1 MB", Assert.Single(refused.Problems).Allowed, StringComparison.Ordinal);
        Assert.Empty(Names());

        var broken = await _store.Keep(new Slow(() => throw new IOException("the line went dead")), ScanFormat.Ply);
        Assert.Contains("the line went dead", Assert.Single(broken.Problems).Cure, StringComparison.Ordinal);
        Assert.Empty(Names());
    }

    [Theory]
    [InlineData("../../etc/passwd")]
    [InlineData("")]
    [InlineData("BA7816BF8F01CFEA414140DE5DAE2223B00361A396177A9CB410FF61F20015AD")]
    [InlineData("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015a/")]
    public void Only_a_hash_names_a_file(string name)
    {
        Assert.Null(_store.Find(name));
        Assert.False(_store.Open(name).Ok);
        Assert.False(_store.Remove(name));
    }

    [Fact]
    public async Task What_no_car_names_can_be_listed_and_taken_away()
    {
        var a = (await _store.Keep(new MemoryStream(Triangle), ScanFormat.Obj)).Value;
        var b = (await _store.Keep(new MemoryStream("abc"u8.ToArray()), ScanFormat.Stl)).Value;
        Assert.Equal([b.Hash], _store.Unused([a.Hash]).Select(f => f.Hash));
        Assert.True(_store.Remove(b.Hash));
        Assert.Empty(_store.Unused([a.Hash]));
    }

    [Fact]
    public async Task A_copy_has_every_file_whole()
    {
        var kept = (await _store.Keep(new MemoryStream(Triangle), ScanFormat.Obj)).Value;
        var copy = ScanStore.At(Path.Combine(_folder, "copy"));
        Assert.Null(await _store.CopyTo(copy));
        Assert.True(copy.Read(kept.Hash).Ok);
        await File.WriteAllTextAsync(Path.Combine(_store.Folder, kept.Hash + ".obj"), "changed");
        Assert.True(copy.Remove(kept.Hash));
        Assert.NotNull(await _store.CopyTo(copy));
        Assert.Empty(copy.List());
    }

    [Fact]
    public async Task A_backup_holds_the_database_and_every_scan_file()
    {
        Directory.CreateDirectory(_folder);
        string database = Path.Combine(_folder, "garage.db"), copy = Path.Combine(_folder, "copy", "garage.db");
        var store = new GarageStore(GarageDatabase.Open(database).Value, TimeProvider.System, AutosaveRule.Default);
        var scans = ScanStore.At(ScanStore.FolderOf(database));
        var kept = (await scans.Keep(new MemoryStream(Triangle), ScanFormat.Obj)).Value;
        store.Save(new Garage.Cars.Car { Id = "a", Name = "A",
            Scans = [new Scan { Id = "s", Name = "S", ContentHash = kept.Hash, Format = ScanFormat.Obj }] }, null);
        Assert.Null(await GarageBackup.Make(store, scans, copy));
        var back = new GarageStore(GarageDatabase.Open(copy).Value, TimeProvider.System, AutosaveRule.Default).Load("a").Value.Car;
        Assert.Equal(1, ScanStore.At(ScanStore.FolderOf(copy)).Read(back.Scans[0].ContentHash).Value.TriangleCount);
        Assert.Equal("backup file", (await GarageBackup.Make(store, scans, copy))!.Field);
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
    }

    [Fact]
    public void What_a_crash_left_is_swept_after_half_a_day()
    {
        Directory.CreateDirectory(_store.Folder);
        File.WriteAllText(Path.Combine(_store.Folder, "x.part"), "half");
        Assert.Equal(0, _store.Sweep(DateTimeOffset.UtcNow));
        Assert.Empty(_store.List());
        Assert.Equal(1, _store.Sweep(DateTimeOffset.UtcNow.AddDays(1)));
        Assert.Empty(Names());
    }

    [Fact]
    public void The_folder_stands_beside_the_database() =>
        Assert.Equal(Path.GetFullPath("/a/b/garage-scans"), ScanStore.FolderOf("/a/b/garage.db"));

    private List<string?> Names() => Directory.Exists(_store.Folder)
        ? [.. Directory.EnumerateFiles(_store.Folder).Select(Path.GetFileName)] : [];

    /// <summary>Four megabytes; something happens after the first.</summary>
    private sealed class Slow(Action then) : MemoryStream(new byte[4_000_000])
    {
        public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
        {
            cancellationToken.ThrowIfCancellationRequested();
            if (Position > 1_000_000)
            {
                then();
            }

            return await base.ReadAsync(buffer, CancellationToken.None);
        }
    }
}
