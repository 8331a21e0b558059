using System.Text.Json;
using Cornerwright.Garage.Files;
using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Scans;
using Cornerwright.Storage;
using Microsoft.AspNetCore.Http.Features;

namespace Cornerwright.Web.Scans;

/// <summary>Scan files come in by plain HTTP, past the circuit, and drawings go out the same way.</summary>
public static class ScanEndpoints
{
    /// <summary>A page of another site cannot send this header without being asked first, so it cannot fill this disk.</summary>
    public const string OwnHeader = "X-Cornerwright-Scan";

    private const int LongestName = 200;

    public static void MapScans(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.MapPost("/scans/import", Import);
        app.MapGet("/scans/drawing/{token}", (string token, ScanRoom room) =>
            room.Drawing(token) is { } bytes ? Results.Bytes(bytes, "application/octet-stream") : Results.NotFound());
        app.MapGet("/demo/" + DemoCar.ScanName, () => Results.Stream(DemoCar.Scan(), "application/octet-stream", DemoCar.ScanName));
    }

    /// <summary>
    /// The body is the file. The answer is one JSON object a line: { "read": share } while it is read, at the end { "hash", "name" } or
    /// { "problem" }. Whoever hangs up cancels, and nothing stays.
    /// </summary>
    private static async Task Import(HttpContext http, string? name, ScanRoom room)
    {
        var cancel = http.RequestAborted;
        string called = Called(name);
        if (http.Request.Headers[OwnHeader] != "1" || http.Request.HasFormContentType)
        {
            http.Response.StatusCode = StatusCodes.Status400BadRequest;
            return;
        }

        if (http.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
        {
            limit.MaxRequestBodySize = ScanLimits.MostBytes + 1;
        }

        http.Response.ContentType = "application/x-ndjson";
        http.Response.Headers.CacheControl = "no-store";
        if (ScanFormats.OfName(called) is not { } format)
        {
            await Say(http, new { problem = new Problem("scan file / kind", called, ScanFormats.Names,
                "Export the scan in one of these, with the ending of its kind.") });
            return;
        }

        string fresh = "";
        try
        {
            var kept = await room.Store.Keep(http.Request.Body, format, ScanLimits.MostBytes, null, cancel);
            if (!kept.Ok)
            {
                await Say(http, new { problem = kept.Problems[0] });
                return;
            }

            fresh = kept.Value.Fresh ? kept.Value.Hash : "";
            await http.Response.StartAsync(cancel);
            var progress = new Latest();
            var reading = Task.Run(() => room.Read(kept.Value.Hash, progress, cancel), cancel);
            while (!reading.IsCompleted)
            {
                await Task.WhenAny(reading, Task.Delay(150, cancel));
                await Say(http, new { read = Math.Round(progress.Share, 3) });
            }

            var read = await reading;
            if (!read.Ok)
            {
                // A file that cannot be read names nothing in any car: it need not stay.
                room.Store.Remove(kept.Value.Hash);
                await Say(http, new { problem = read.Problems[0] });
                return;
            }

            await Say(http, new { hash = kept.Value.Hash, name = called });
        }
        catch (OperationCanceledException)
        {
            // The person changed his mind: what came in for nothing goes again.
            room.Store.Remove(fresh);
        }
        catch (IOException) when (cancel.IsCancellationRequested)
        {
            room.Store.Remove(fresh);
        }
        catch (BadHttpRequestException error)
        {
            await Say(http, new { problem = new Problem("scan file / size", error.Message,
                $"at most {ScanLimits.MostBytes / (1024 * 1024)} MB", "Crop the scan to the wheel arch, or export it coarser.") });
        }
    }

    private static async Task Say(HttpContext http, object line)
    {
        await JsonSerializer.SerializeAsync(http.Response.Body, line, JsonSerializerOptions.Web, http.RequestAborted);
        await http.Response.WriteAsync("\n", http.RequestAborted);
        await http.Response.Body.FlushAsync(http.RequestAborted);
    }

    /// <summary>The name for people: never a path, nothing that cannot be seen, not too long.</summary>
    private static string Called(string? name)
    {
        string last = (name ?? "").Split('/', '\\')[^1];
        string seen = string.Concat(last.Where(c => !char.IsControl(c))).Trim();
        return seen.Length <= LongestName ? seen : seen[^LongestName..];
    }

    private sealed class Latest : IProgress<double>
    {
        private double _share;

        public double Share => Volatile.Read(ref _share);

        public void Report(double value) => Volatile.Write(ref _share, value);
    }
}
