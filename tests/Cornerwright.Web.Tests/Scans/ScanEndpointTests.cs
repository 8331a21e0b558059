using System.Net;
using System.Text;
using System.Text.Json;
using Cornerwright.Garage.Files;
using Cornerwright.Storage;
using Cornerwright.Web.Hosting;
using Cornerwright.Web.Scans;

namespace Cornerwright.Web.Tests.Scans;

/// <summary>Files on their way in by plain HTTP: kept whole or not at all.</summary>
public sealed class ScanEndpointTests : IAsyncLifetime
{
    private static readonly byte[] Triangle = Encoding.ASCII.GetBytes("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n");

    private readonly string _folder = Directory.CreateTempSubdirectory("cornerwright-scans-").FullName;
    private readonly CancellationTokenSource _stop = new();
    private readonly TaskCompletionSource<string> _address = new();
    private Task _running = Task.CompletedTask;
    private HttpClient _client = null!;

    private ScanStore Store => ScanStore.At(ScanStore.FolderOf(Path.Combine(_folder, "garage.db")));

    public async Task InitializeAsync()
    {
        string[] args =
            ["--database", Path.Combine(_folder, "garage.db"), "--urls", "http://127.0.0.1:0", "--Logging:LogLevel:Default=Warning"];
        _running = CornerwrightHost.Start(args, urls => _address.TrySetResult(urls[0]), _stop.Token);
        Assert.Same(_address.Task, await Task.WhenAny(_address.Task, _running));
        _client = new HttpClient { BaseAddress = new Uri(await _address.Task) };
    }

    public async Task DisposeAsync()
    {
        _client.Dispose();
        await _stop.CancelAsync();
        await _running;
        _stop.Dispose();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task A_good_file_is_kept_under_its_hash_and_named_as_it_was_called()
    {
        var last = await Send(new ByteArrayContent(Triangle), "C:\\Users\\me\\arch.obj");
        Assert.Equal("arch.obj", last.GetProperty("name").GetString());
        var kept = Assert.Single(Store.List());
        Assert.Equal(kept.Hash, last.GetProperty("hash").GetString());
        Assert.Equal(1, Store.Read(kept.Hash).Value.TriangleCount);
    }

    [Theory]
    [InlineData("arch.obj", "v 0 0 zero\n", "line 1")]
    [InlineData("arch.ply",
        "ply\nformat ascii 1.0\nelement vertex 9000000000\nproperty float x\nproperty float y\nproperty float z\nend_header\n",
        "element vertex")]
    [InlineData("arch.exe", "MZ", "kind")]
    [InlineData("../../etc/passwd", "root", "kind")]
    public async Task A_bad_one_is_refused_with_its_place_and_nothing_stays(string name, string text, string where)
    {
        var last = await Send(new StringContent(text), name);
        Assert.Contains(where, last.GetProperty("problem").GetProperty("field").GetString(), StringComparison.Ordinal);
        Assert.True(!Directory.Exists(Store.Folder) || !Directory.EnumerateFileSystemEntries(Store.Folder).Any());
    }

    [Fact]
    public async Task A_file_that_breaks_off_on_its_way_leaves_nothing()
    {
        using var cancel = new CancellationTokenSource();
        using var request =
            new HttpRequestMessage(HttpMethod.Post, "/scans/import?name=arch.obj") { Content = new Endless(() => cancel.Cancel()) };
        request.Headers.Add(ScanEndpoints.OwnHeader, "1");
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            _client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, cancel.Token));
        for (int i = 0; i < 200 && Directory.Exists(Store.Folder) && Directory.EnumerateFileSystemEntries(Store.Folder).Any(); i++)
        {
            await Task.Delay(50);
        }

        Assert.True(Directory.Exists(Store.Folder), "It had begun to come.");
        Assert.Empty(Directory.EnumerateFileSystemEntries(Store.Folder));
    }

    /// <summary>A form of another site can post text here, but cannot send our header.</summary>
    [Fact]
    public async Task Without_the_page_s_own_header_nothing_is_taken()
    {
        using var answer =
            await _client.PostAsync(new Uri("/scans/import?name=arch.obj", UriKind.Relative), new ByteArrayContent(Triangle));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Empty(Store.List());
    }

    [Fact]
    public async Task Drawings_are_fetched_by_their_token_only_and_the_demo_scan_by_its_name()
    {
        using var none = await _client.GetAsync(new Uri("/scans/drawing/0123456789abcdef0123456789abcdef", UriKind.Relative));
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
        byte[] demo = await _client.GetByteArrayAsync(new Uri("/demo/" + DemoCar.ScanName, UriKind.Relative));
        using var carried = DemoCar.Scan();
        Assert.Equal(carried.Length, demo.Length);
    }

    private async Task<JsonElement> Send(HttpContent content, string name)
    {
        using var request =
            new HttpRequestMessage(HttpMethod.Post, "/scans/import?name=" + Uri.EscapeDataString(name)) { Content = content };
        request.Headers.Add(ScanEndpoints.OwnHeader, "1");
        using var answer = await _client.SendAsync(request);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        string[] lines = (await answer.Content.ReadAsStringAsync()).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        return JsonDocument.Parse(lines[^1]).RootElement;
    }

    /// <summary>A megabyte, then nothing more, for ever.</summary>
    private sealed class Endless(Action sent) : HttpContent
    {
        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context, CancellationToken cancellationToken)
        {
            await stream.WriteAsync(new byte[1 << 20], cancellationToken);
            await stream.FlushAsync(cancellationToken);
            await Task.Delay(300, CancellationToken.None);
            sent();
            await Task.Delay(Timeout.Infinite, cancellationToken);
        }

        protected override Task SerializeToStreamAsync(Stream stream, TransportContext? context) =>
            SerializeToStreamAsync(stream, context, CancellationToken.None);

        protected override bool TryComputeLength(out long length)
        {
            length = 0;
            return false;
        }
    }
}
