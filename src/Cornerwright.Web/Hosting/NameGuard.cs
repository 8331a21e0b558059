using System.Text;
using Microsoft.Extensions.Primitives;

namespace Cornerwright.Web.Hosting;

/// <summary>Stands before pages, files, endpoints and the live connection, and turns away who does not call us by a name of ours.</summary>
public static class NameGuard
{
    /// <summary>How much of a name we say back, characters: no name of a network is longer. Source: RFC 1035, section 2.3.4.</summary>
    private const int LongestName = 253;

    /// <summary>Must come before everything else in the pipeline.</summary>
    public static void UseNameGuard(this IApplicationBuilder app, AcceptedNames names)
    {
        ArgumentNullException.ThrowIfNull(app);
        ArgumentNullException.ThrowIfNull(names);
        app.Use((http, next) => Refusal(names, http.Request) is { } words ? Refuse(http.Response, words) : next(http));
    }

    /// <summary>Why a request is refused, in words for the person who sees it; null if it is welcome.</summary>
    private static string? Refusal(AcceptedNames names, HttpRequest request)
    {
        if (!names.Accepts(request.Host.Host))
        {
            return request.Host.HasValue
                ? $"Cornerwright does not answer to the name {Shown(request.Host.Host)}.\n"
                    + "It answers on this machine as 127.0.0.1 or localhost; for the whole network it is started with --network.\n"
                    + "If it is meant to be called by this name, start it with: cornerwright serve --name NAME\n"
                : "The request does not say whom it calls: its Host line is missing. Send one, as \"Host: 127.0.0.1\".\n";
        }

        StringValues origin = request.Headers.Origin;
        return origin.Count == 0 || (origin.Count == 1 && names.AcceptsOrigin(origin[0]))
            ? null
            : $"A page of {Shown(origin.ToString())} asked Cornerwright for something, and only its own pages may.\n"
                + "Nothing was read or changed.\n"
                + "If the app is meant to be called by that page's name, start it with: cornerwright serve --name NAME\n";
    }

    private static Task Refuse(HttpResponse response, string words)
    {
        response.StatusCode = StatusCodes.Status403Forbidden;
        response.ContentType = "text/plain; charset=utf-8";
        response.Headers.CacheControl = "no-store";
        response.Headers.XContentTypeOptions = "nosniff";
        byte[] body = Encoding.UTF8.GetBytes(words);
        response.ContentLength = body.Length;
        return response.Body.WriteAsync(body.AsMemory()).AsTask();
    }

    private static string Shown(string given)
    {
        string seen = string.Concat(given.Where(c => !char.IsControl(c)));
        return seen.Length <= LongestName ? $"\"{seen}\"" : $"\"{seen[..LongestName]}…\"";
    }
}
