using Cornerwright.Garage.Log;
using Cornerwright.Storage;
using Cornerwright.Web.Components.WorkOrders;
using Cornerwright.Workshop.WorkOrders;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Cornerwright.Web.Jobs;

/// <summary>
/// A job's list to tick off, as a plain page and a plain address to send ticks to: neither needs the live connection of the
/// other pages (docs/decisions/0011-ticks-by-plain-http.md).
/// </summary>
public static class JobAddresses
{
    public static void MapJobs(this IEndpointRouteBuilder app)
    {
        app.MapGet("/car/{id}/job/{job}", Page);
        app.MapGet("/photos/{hash}", Photo);
        app.MapPost("/car/{id}/job/{job}/ticks", Take);
    }

    private static IResult Page(string id, string job, IGarageStore store)
    {
        if (!store.Load(id).Try(out var stored) || stored.Car.Log.Job(job) is not { } begun)
        {
            return Results.NotFound();
        }

        var car = stored.Car;
        var (from, to) = (car.Build(begun.From), car.Build(begun.To));
        var order = from is null || to is null ? null : OrderWriter.Write(car, from, to);
        return new RazorComponentResult<JobSheet>(new Dictionary<string, object?>
        {
            [nameof(JobSheet.Car)] = car,
            [nameof(JobSheet.Job)] = begun,
            [nameof(JobSheet.Order)] = order?.Ok == true ? order.Value : null,
            [nameof(JobSheet.Problems)] = order?.Problems ?? [],
        });
    }

    /// <summary>A photo of a log; under its hash it never changes.</summary>
    private static IResult Photo(string hash, PhotoStore photos, HttpContext context)
    {
        if (photos.Find(hash) is not { } kept)
        {
            return Results.NotFound();
        }

        context.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
        context.Response.Headers.XContentTypeOptions = "nosniff";
        return Results.File(photos.PathOf(kept), PhotoStore.MimeOf(kept.Kind));
    }

    private static IResult Take(string id, string job, TickMessage?[] ticks, IGarageStore store)
    {
        if (ticks.Length > TickMerge.MostTicks || ticks.Any(t => t is null))
        {
            return Results.BadRequest();
        }

        var problems = ticks.Select((t, i) => t!.Problem(i + 1)).Where(p => p is not null).ToList();
        if (problems.Count > 0)
        {
            return Results.BadRequest(problems);
        }

        var kept = TickKeeping.Keep(store, id, job, [.. ticks.Select(t => t!.ToTick())]);
        return kept.Try(out var now)
            ? Results.Ok(new TickAnswer([.. ticks.Select(t => t!.Id!)], [.. TickMerge.Done(now)], now.Ticks.Count))
            : Results.Json(kept.Problems, statusCode: StatusCodes.Status409Conflict);
    }
}
