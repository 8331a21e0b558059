using System.Net;
using System.Net.Http.Json;
using System.Text;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Log;
using Cornerwright.Storage;
using Cornerwright.Web.Hosting;
using Cornerwright.Web.Jobs;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Cornerwright.Web.Tests.Jobs;

/// <summary>What a phone meets, over real HTTP.</summary>
public sealed class JobAddressesTests : IAsyncLifetime
{
    private const string At = "2026-05-31T14:05:09.123Z";

    private readonly string _folder = Directory.CreateTempSubdirectory("cornerwright-jobs-").FullName;
    private WebApplication _app = null!;
    private HttpClient _client = null!;

    private IGarageStore Store => _app.Services.GetRequiredService<IGarageStore>();

    private string Address => $"/car/{DemoCar.Read().Id}/job/j";

    public async Task InitializeAsync()
    {
        _app = CornerwrightHost.Build(["--database", Path.Combine(_folder, "garage.db"), "--urls", "http://127.0.0.1:0"]);
        await CornerwrightHost.Prepare(_app);
        var stored = Store.Load(DemoCar.Read().Id).Value;
        Store.Save(stored.Car
            with { Log = stored.Car.Log.With(new Job { Id = "j", Name = "<Job> & more", From = "now", To = "gravel-3" }) }, stored.Mark);
        await _app.StartAsync();
        _client = new HttpClient { BaseAddress = new Uri(_app.Urls.First()) };
    }

    public async Task DisposeAsync()
    {
        _client.Dispose();
        await _app.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }

    private Task<HttpResponseMessage> Send(params TickMessage[] ticks) =>
        _client.PostAsJsonAsync(new Uri(Address + "/ticks", UriKind.Relative), ticks);

    private Job Stored() => Store.Load(DemoCar.Read().Id).Value.Car.Log.Job("j")!;

    [Fact]
    public async Task The_list_is_whole_without_any_script_and_what_people_typed_is_text()
    {
        string page = await _client.GetStringAsync(new Uri(Address, UriKind.Relative));
        Assert.Contains("&lt;Job&gt; &amp; more", page, StringComparison.Ordinal);
        Assert.Contains("never by the top nut alone", page, StringComparison.Ordinal);
        Assert.Contains("28 N&#xB7;m (21 lbf&#xB7;ft)", page, StringComparison.Ordinal);
        Assert.DoesNotContain("_framework/blazor", page, StringComparison.Ordinal);
        using var none = await _client.GetAsync(new Uri(Address + "-none", UriKind.Relative));
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    [Fact]
    public async Task Ticks_are_answered_with_what_is_safe_and_what_is_done()
    {
        using var first = await Send(new("a 1", "a", At, false), new("b 1", "b", At, false));
        var said = (await first.Content.ReadFromJsonAsync<TickAnswer>())!;
        Assert.Equal(["a 1", "b 1"], said.Kept);
        using var again = await Send(new("b 1", "b", At, false), new("a 2", "a", At.Replace("09.", "10.", StringComparison.Ordinal), true));
        said = (await again.Content.ReadFromJsonAsync<TickAnswer>())!;
        Assert.Equal(["b 1", "a 2"], said.Kept);
        Assert.Equal(["b"], said.Done);
        Assert.Equal(3, said.Count);
        Assert.Equal(3, Stored().Ticks.Count);
    }

    [Fact]
    public async Task One_bad_tick_keeps_them_all_out_and_is_named()
    {
        using var answer = await Send(new("a 1", "a", At, false), new("b 1", "b", "soon", false));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("tick 2 / at", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Empty(Stored().Ticks);
    }

    [Fact]
    public async Task What_is_no_list_of_ticks_is_refused()
    {
        using var foreign =
            await _client.PostAsync(new Uri(Address + "/ticks", UriKind.Relative), new StringContent("[]", Encoding.UTF8, "text/plain"));
        Assert.InRange((int)foreign.StatusCode, 400, 499);
        foreach (string body in new[] { "{", "null", "[null]", "{\"id\":\"a\"}", "[1]" })
        {
            using var broken = await _client.PostAsync(new Uri(Address + "/ticks", UriKind.Relative),
                new StringContent(body, Encoding.UTF8, "application/json"));
            Assert.Equal(HttpStatusCode.BadRequest, broken.StatusCode);
        }

        using var gone = await _client.PostAsJsonAsync(new Uri(Address + "-none/ticks", UriKind.Relative),
            new[] { new TickMessage("a 1", "a", At, false) });
        Assert.Equal(HttpStatusCode.Conflict, gone.StatusCode);
        Assert.Empty(Stored().Ticks);
    }
}
