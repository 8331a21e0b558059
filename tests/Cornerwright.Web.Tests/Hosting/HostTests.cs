using System.Net;
using Cornerwright.Garage.Files;
using Cornerwright.Web.Hosting;

namespace Cornerwright.Web.Tests.Hosting;

/// <summary>The application as a whole, on a free port with a database of its own.</summary>
public sealed class HostTests : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("cornerwright-host-").FullName;
    private readonly CancellationTokenSource _stop = new();
    private readonly TaskCompletionSource<string> _address = new();
    private Task _running = Task.CompletedTask;
    private HttpClient _client = null!;

    public async Task InitializeAsync()
    {
        string[] args = ["--database", Path.Combine(_folder, "garage.db"), "--urls", "http://127.0.0.1:0"];
        _running = CornerwrightHost.Start(args, urls => _address.TrySetResult(urls[0]), _stop.Token);
        var first = await Task.WhenAny(_address.Task, _running);
        Assert.Same(_address.Task, first);
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
    public async Task It_is_well_serves_its_page_and_everything_the_page_needs_and_nothing_from_elsewhere()
    {
        Assert.Equal("ok", await _client.GetStringAsync("/healthz"));
        string page = await _client.GetStringAsync("/");
        Assert.DoesNotContain("https://", page, StringComparison.Ordinal);
        Assert.DoesNotContain("//cdn", page, StringComparison.Ordinal);
        var files = System.Text.RegularExpressions.Regex.Matches(page, "(?:href|src)=\"([^\"#?]+\\.(?:css|js|svg))\"")
            .Select(m => WebUtility.HtmlDecode(m.Groups[1].Value)).ToList();
        Assert.Contains(files, f => f.Contains("app.", StringComparison.Ordinal));
        foreach (string file in files)
        {
            using var answer = await _client.GetAsync(new Uri(file, UriKind.Relative));
            Assert.True(answer.IsSuccessStatusCode, $"{file}: {answer.StatusCode}");
        }
    }

    [Fact]
    public async Task A_garage_never_used_holds_the_demo_car_and_its_file_reads_back()
    {
        var demo = DemoCar.Read();
        string file = await _client.GetStringAsync($"/export/{demo.Id}");
        Assert.Equal(CarFile.Write(demo), file);
        using var none = await _client.GetAsync(new Uri("/export/nobody", UriKind.Relative));
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }
}
