using System.Net.Sockets;
using Cornerwright.Garage.Files;
using Cornerwright.Storage;
using Cornerwright.Web.Hosting;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Cornerwright.Web.Tests.Hosting;

/// <summary>
/// Requests written byte by byte to the real server. Seen once: a page whose name had been pointed at 127.0.0.1 could read the export,
/// send scans and run the live app, and any page could open the live connection.
/// </summary>
public sealed class NameGuardTests(RawDoor door) : IClassFixture<RawDoor>
{
    private const string Evil = "evil.example";
    private const string Socket =
        "Connection: Upgrade\r\nUpgrade: websocket\r\nSec-WebSocket-Version: 13\r\nSec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==\r\n";

    [Theory]
    [InlineData("127.0.0.1")]
    [InlineData("127.0.0.1:5210")]
    [InlineData("127.9.8.7:80")]
    [InlineData("localhost")]
    [InlineData("LOCALHOST:5210")]
    [InlineData("localhost.")]
    [InlineData("localhost.:5210")]
    [InlineData("[::1]")]
    [InlineData("[::1]:5210")]
    public async Task Loopback_names_are_answered(string host)
    {
        var answer = await door.Ask("GET", "/healthz", $"Host: {host}\r\n");
        Assert.Equal((200, "ok"), (answer.Status, answer.Body));
    }

    [Theory]
    [InlineData("evil.example")]
    [InlineData("EVIL.example:5210")]
    [InlineData("evil.example.")]
    [InlineData("localhost.evil.example")]
    [InlineData("127.0.0.1.evil.example:5210")]
    [InlineData("192.168.0.1")]
    [InlineData("0.0.0.0:5210")]
    [InlineData("[::2]:5210")]
    [InlineData("[2001:db8::1]")]
    public async Task Other_names_are_refused_in_words(string host)
    {
        var answer = await door.Ask("GET", $"/export/{DemoCar.Read().Id}", $"Host: {host}\r\n");
        Assert.Equal(403, answer.Status);
        Assert.StartsWith("Cornerwright does not answer to the name ", answer.Body, StringComparison.Ordinal);
        Assert.Contains("serve --name", answer.Body, StringComparison.Ordinal);
        Assert.Contains("text/plain", answer.Head, StringComparison.Ordinal);
        Assert.Contains("no-store", answer.Head, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("HTTP/1.0", "", 403)]
    [InlineData("HTTP/1.0", "Host:\r\n", 403)]
    [InlineData("HTTP/1.1", "Host:\r\n", 403)]
    [InlineData("HTTP/1.1", "", 400)]
    [InlineData("HTTP/1.1", "Host: localhost\r\nHost: evil.example\r\n", 400)]
    [InlineData("HTTP/1.1", "Host: localhost@evil.example\r\n", 400)]
    [InlineData("HTTP/1.1", "Host: evil.example\r\nX-Forwarded-Host: localhost\r\nForwarded: host=localhost\r\n", 403)]
    public async Task A_request_that_does_not_say_whom_it_calls_gets_nothing(string version, string hosts, int status)
    {
        var answer = await door.Send($"GET /healthz {version}\r\n{hosts}Connection: close\r\n\r\n");
        Assert.Equal(status, answer.Status);
        Assert.NotEqual("ok", answer.Body);
    }

    [Fact]
    public async Task The_address_in_the_request_line_counts_as_the_name_it_calls()
    {
        var answer = await door.Ask("GET", $"http://{Evil}/healthz", $"Host: {Evil}\r\n");
        Assert.Equal(403, answer.Status);
        answer = await door.Ask("GET", $"http://{Evil}/healthz", "Host: localhost\r\n");
        Assert.Equal(400, answer.Status);
    }

    /// <summary>
    /// Everything that has an address (files, endpoints, pages, live connection), so that nobody has to remember the next one.
    /// </summary>
    [Fact]
    public async Task No_address_of_the_app_answers_to_a_strange_name_or_a_strange_page()
    {
        var addresses = door.App.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Select(e => "/" + e.RoutePattern.RawText!.TrimStart('/')).Distinct().ToList();
        foreach (string known in (string[])["/healthz", "/export/{id}", "/scans/import", "/_blazor/negotiate", "/_blazor"])
        {
            Assert.Contains(known, addresses);
        }

        Assert.Contains(addresses, a => a.EndsWith("app.css", StringComparison.Ordinal));
        foreach (string address in addresses.Append("/").Append("/nowhere"))
        {
            // A request line has no braces or stars: what stands for a value gets one.
            string path = System.Text.RegularExpressions.Regex.Replace(address, @"\{[^}]*\}", "x");
            foreach (string method in (string[])["GET", "POST"])
            {
                foreach (string who in (string[])[$"Host: {Evil}\r\n", $"Host: localhost\r\nOrigin: http://{Evil}\r\n"])
                {
                    var answer = await door.Ask(method, path, who);
                    Assert.True(answer.Status == 403, $"{method} {path} {who}: {answer.Status}");
                }
            }
        }
    }

    [Theory]
    [InlineData("http://evil.example")]
    [InlineData("https://evil.example:5210")]
    [InlineData("http://localhost.evil.example")]
    [InlineData("http://192.168.0.1:5210")]
    [InlineData("null")]
    [InlineData("")]
    [InlineData("http://localhost\r\nOrigin: http://evil.example")]
    [InlineData("chrome-extension://localhost")]
    public async Task The_live_connection_is_refused_to_a_strange_page(string origin)
    {
        foreach (var answer in new[]
        {
            await door.Ask("GET", "/_blazor", $"Host: 127.0.0.1\r\nOrigin: {origin}\r\n{Socket}"),
            await door.Ask("POST", "/_blazor/negotiate?negotiateVersion=1",
                $"Host: 127.0.0.1\r\nOrigin: {origin}\r\nContent-Length: 0\r\n"),
        })
        {
            Assert.Equal(403, answer.Status);
            Assert.StartsWith("A page of ", answer.Body, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("localhost:5210", "http://localhost:5210")]
    [InlineData("127.0.0.1", "http://127.0.0.1")]
    [InlineData("[::1]:5210", "http://[::1]:5210")]
    [InlineData("LOCALHOST.", "HTTP://LOCALHOST.")]
    [InlineData("127.0.0.1", null)]
    public async Task The_live_connection_opens_for_our_own_pages(string host, string? origin)
    {
        string own = $"Host: {host}\r\n" + (origin is null ? "" : $"Origin: {origin}\r\n");
        Assert.Equal(101, (await door.Ask("GET", "/_blazor", own + Socket)).Status);
        var negotiated = await door.Ask("POST", "/_blazor/negotiate?negotiateVersion=1", own + "Content-Length: 0\r\n");
        Assert.Equal(200, negotiated.Status);
        Assert.Contains("connectionToken", negotiated.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_live_connection_under_a_strange_name_is_refused()
    {
        Assert.Equal(403, (await door.Ask("GET", "/_blazor", $"Host: {Evil}\r\nOrigin: http://{Evil}\r\n{Socket}")).Status);
        Assert.Equal(403, (await door.Ask("GET", "/_blazor", $"Host: {Evil}\r\n{Socket}")).Status);
    }

    [Theory]
    [InlineData($"Host: {Evil}\r\nOrigin: http://{Evil}\r\n")]
    [InlineData($"Host: localhost\r\nOrigin: http://{Evil}\r\n")]
    [InlineData("Host: localhost\r\nOrigin: null\r\n")]
    public async Task A_strange_page_cannot_send_a_scan_even_with_our_header(string who)
    {
        // A content of its own for each way in, since the store knows a file by what it holds.
        string scan = $"# {who.Length}\nv 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n";
        const string Post = "POST /scans/import?name=a.obj HTTP/1.1\r\n";
        string body = $"X-Cornerwright-Scan: 1\r\nContent-Length: {scan.Length}\r\nConnection: close\r\n\r\n{scan}";
        var store = door.App.Services.GetRequiredService<ScanStore>();
        int before = store.List().Count;
        Assert.Equal(403, (await door.Send($"{Post}{who}{body}")).Status);
        Assert.Equal(before, store.List().Count);
        Assert.Equal(200, (await door.Send($"{Post}Host: localhost\r\nOrigin: http://localhost\r\n{body}")).Status);
        Assert.Equal(before + 1, store.List().Count);
    }

    [Fact]
    public async Task Names_that_were_chosen_are_answered_and_their_pages_too()
    {
        await using var chosen = await RawDoor.Open("--answer-names", "garage.example,192.168.7.20");
        foreach (string host in (string[])["garage.example", "Garage.Example:443", "192.168.7.20", "localhost"])
        {
            Assert.Equal(200, (await chosen.Ask("GET", "/healthz", $"Host: {host}\r\nOrigin: https://{host}\r\n")).Status);
            Assert.Equal(101, (await chosen.Ask("GET", "/_blazor", $"Host: {host}\r\nOrigin: https://{host}\r\n{Socket}")).Status);
        }

        Assert.Equal(403, (await chosen.Ask("GET", "/healthz", $"Host: {Evil}\r\n")).Status);
        Assert.Equal(403, (await chosen.Ask("GET", "/healthz", $"Host: garage.example\r\nOrigin: https://{Evil}\r\n")).Status);
        Assert.Equal(403, (await chosen.Ask("GET", "/healthz", $"Host: {Environment.MachineName}.local\r\n")).Status);
    }

    [Fact]
    public async Task On_the_network_this_machine_s_own_names_and_addresses_are_answered()
    {
        var here = Machine.Here();
        await using var network = await RawDoor.Open("--answer-network", "true");
        var addresses = here.Addresses()
            .Select(a => a.AddressFamily == AddressFamily.InterNetworkV6 ? $"[{Machine.Plain(a)}]" : a.ToString());
        foreach (string host in here.Names.Concat(addresses).Append("localhost"))
        {
            var answer = await network.Ask("GET", "/healthz", $"Host: {host}:5210\r\nOrigin: http://{host}:5210\r\n");
            Assert.True(answer.Status == 200, $"{host}: {answer.Status}");
        }

        foreach (string host in (string[])[Evil, "203.0.113.7", Environment.MachineName + "." + Evil])
        {
            Assert.Equal(403, (await network.Ask("GET", "/healthz", $"Host: {host}\r\n")).Status);
        }
    }

    [Fact]
    public void A_name_that_cannot_be_one_ends_the_start_with_a_reason()
    {
        var refused = Assert.Throws<SettingRefusedException>(() =>
            CornerwrightHost.Build(["--database", door.PathOf("other.db"), "--answer-names", "http://garage.example/"]));
        Assert.Equal("http://garage.example/", refused.Problem.Given);
        Assert.False(File.Exists(door.PathOf("other.db")));
    }
}
