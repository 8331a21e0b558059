using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.RegularExpressions;
using Cornerwright.Web.Hosting;
using Microsoft.AspNetCore.Builder;

namespace Cornerwright.Web.Tests.Hosting;

/// <summary>What the server answered to bytes.</summary>
public sealed record RawAnswer(int Status, string Head, string Body);

/// <summary>The app on the real server, and requests to it written byte by byte: no client that would mend them.</summary>
public sealed partial class RawDoor : IAsyncLifetime, IAsyncDisposable
{
    private const string End = "\r\n\r\n";

    private readonly string _folder = Directory.CreateTempSubdirectory("cornerwright-raw-").FullName;

    public WebApplication App { get; private set; } = null!;

    public string PathOf(string name) => Path.Combine(_folder, name);

    /// <summary>A door of a test's own, with settings of its own.</summary>
    public static async Task<RawDoor> Open(params string[] settings)
    {
        var door = new RawDoor();
        await door.Start(settings);
        return door;
    }

    public Task InitializeAsync() => Start([]);

    async Task IAsyncLifetime.DisposeAsync() => await DisposeAsync();

    public async ValueTask DisposeAsync()
    {
        await App.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }

    private async Task Start(string[] settings)
    {
        string[] usual = ["--database", PathOf("garage.db"), "--urls", "http://127.0.0.1:0"];
        App = CornerwrightHost.Build([.. usual, "--Logging:LogLevel:Default=Warning", .. settings]);
        await CornerwrightHost.Prepare(App);
        await App.StartAsync();
    }

    /// <summary>A request without a body, whole but for what is left out on purpose.</summary>
    /// <param name="headers">Lines, each with its end.</param>
    public Task<RawAnswer> Ask(string method, string path, string headers)
    {
        string end = headers.Contains("Connection:", StringComparison.Ordinal) ? "" : "Connection: close\r\n";
        string length = method == "POST" && !headers.Contains("Content-Length:", StringComparison.Ordinal) ? "Content-Length: 0\r\n" : "";
        return Send($"{method} {path} HTTP/1.1\r\n{headers}{length}{end}\r\n");
    }

    /// <summary>Writes the bytes and reads the answer.</summary>
    public async Task<RawAnswer> Send(string request)
    {
        using var limit = new CancellationTokenSource(TimeSpan.FromMinutes(2));
        using var client = new TcpClient();
        await client.ConnectAsync(IPAddress.Loopback, new Uri(App.Urls.First()).Port, limit.Token);
        var stream = client.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(request), limit.Token);
        var read = new List<byte>();
        byte[] buffer = new byte[4096];
        string text = "";
        while (!IsWhole(text))
        {
            int count = await stream.ReadAsync(buffer, limit.Token);
            if (count == 0)
            {
                break;
            }

            read.AddRange(buffer.AsSpan(0, count));
            text = Encoding.Latin1.GetString([.. read]);
        }

        int head = text.IndexOf(End, StringComparison.Ordinal);
        Assert.True(head > 0, $"No answer to: {request}");
        string body = text[(head + End.Length)..];
        if (IsChunked(text[..head]))
        {
            // One chunk is enough to see what an answer says.
            body = body.Split("\r\n")[1];
        }

        return new RawAnswer(int.Parse(text.Split(' ')[1], CultureInfo.InvariantCulture), text[..head], body);
    }

    /// <summary>Whether all of an answer has come; a live connection has no end, and of it the first lines are enough.</summary>
    private static bool IsWhole(string text)
    {
        int head = text.IndexOf(End, StringComparison.Ordinal);
        if (head < 0)
        {
            return false;
        }

        var length = Length().Match(text[..head]);
        int body = text.Length - head - End.Length;
        return text.StartsWith("HTTP/1.1 101", StringComparison.Ordinal)
            || (length.Success && body >= int.Parse(length.Groups[1].Value, CultureInfo.InvariantCulture))
            || (IsChunked(text[..head]) && text.EndsWith("0" + End, StringComparison.Ordinal));
    }

    private static bool IsChunked(string head) => head.Contains("Transfer-Encoding: chunked", StringComparison.OrdinalIgnoreCase);

    [GeneratedRegex(@"\r\nContent-Length: (\d+)")]
    private static partial Regex Length();
}
