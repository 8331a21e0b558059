namespace Cornerwright.Storage.Tests;

public sealed class PhotoStoreTests : IDisposable
{
    private static readonly byte[] Jpeg = [0xFF, 0xD8, 0xFF, 0xE0, 1, 2, 3];

    private readonly string _folder = Directory.CreateTempSubdirectory("cornerwright-photo-store-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private PhotoStore Store(string name = "photos") => PhotoStore.At(Path.Combine(_folder, name));

    [Fact]
    public async Task The_same_content_is_one_file_and_comes_back()
    {
        var store = Store();
        var first = (await store.Keep(new MemoryStream(Jpeg))).Value;
        var again = (await store.Keep(new MemoryStream(Jpeg))).Value;
        Assert.Equal(first, again);
        Assert.Equal(PhotoKind.Jpeg, first.Kind);
        Assert.Equal(Jpeg, await File.ReadAllBytesAsync(store.PathOf(store.Find(first.Hash)!)));
        Assert.Single(Directory.GetFiles(store.Folder));
    }

    [Theory]
    [InlineData(new byte[0])]
    [InlineData(new byte[] { 0xFF, 0xD8 })]
    [InlineData(new byte[] { (byte)'<', (byte)'s', (byte)'v', (byte)'g', (byte)'>' })]
    [InlineData(new byte[] { (byte)'R', (byte)'I', (byte)'F', (byte)'F', 0, 0, 0, 0, (byte)'W', (byte)'A', (byte)'V', (byte)'E' })]
    public async Task What_is_no_picture_leaves_nothing(byte[] content)
    {
        var store = Store();
        Assert.Contains("JPEG", Assert.Single((await store.Keep(new MemoryStream(content))).Problems).Allowed, StringComparison.Ordinal);
        Assert.False(Directory.Exists(store.Folder));
    }

    [Fact]
    public async Task More_than_the_most_is_refused()
    {
        byte[] large = new byte[PhotoStore.MostBytes + 1];
        Jpeg.CopyTo(large, 0);
        Assert.Contains("25 MB", Assert.Single((await Store().Keep(new MemoryStream(large))).Problems).Allowed, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("../../etc/passwd")]
    [InlineData("")]
    [InlineData("ABCDEF0123456789ABCDEF0123456789ABCDEF0123456789ABCDEF0123456789")]
    public void Only_a_hash_finds_anything(string text) => Assert.Null(Store().Find(text));

    [Fact]
    public async Task A_backup_has_every_photo()
    {
        var kept = (await Store().Keep(new MemoryStream(Jpeg))).Value;
        Assert.Null(await Store().CopyTo(Store("copy")));
        Assert.Equal(kept, Store("copy").Find(kept.Hash));
        Assert.Null(await Store("none").CopyTo(Store("copy")));
    }
}
