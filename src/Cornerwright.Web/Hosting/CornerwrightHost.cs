using Cornerwright.Garage.Files;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Components;

namespace Cornerwright.Web.Hosting;

/// <summary>Builds and runs the web application; the command line's way in is <see cref="Start"/>.</summary>
public static class CornerwrightHost
{
    /// <summary>Runs until it is told to stop.</summary>
    /// <param name="args">"--database file", "--urls http://127.0.0.1:5080" and whatever else the host reads.</param>
    /// <param name="started">Told the addresses once they answer.</param>
    /// <param name="stop">Ends it.</param>
    public static async Task Start(string[] args, Action<IReadOnlyList<string>>? started = null, CancellationToken stop = default)
    {
        await using var app = Build(args);
        await Prepare(app);
        await app.StartAsync(stop);
        started?.Invoke([.. app.Urls]);
        await app.WaitForShutdownAsync(stop);
    }

    public static WebApplication Build(string[] args)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            Args = args,

            // Static files are found by this name, whichever program hosts the pages.
            ApplicationName = typeof(CornerwrightHost).Assembly.GetName().Name,
        });
        builder.WebHost.UseStaticWebAssets();
        builder.Services.AddRazorComponents().AddInteractiveServerComponents();
        builder.Services.AddSignalR(o => o.MaximumReceiveMessageSize = 256 * 1024);
        builder.Services.AddSingleton(TimeProvider.System);
        builder.Services.AddSingleton<ICarKeeper, MemoryKeeper>();
        builder.Services.AddSingleton<JudgeBuild>(_ => Judging.Build);
        builder.Services.AddScoped<Workbench>();
        var app = builder.Build();
        if (!app.Environment.IsDevelopment())
        {
            app.UseExceptionHandler("/not-found", createScopeForErrors: true);
        }

        app.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true);
        app.UseAntiforgery();
        app.MapStaticAssets();
        app.MapGet("/healthz", () => Results.Text("ok"));
        app.MapGet("/export/{id}", Export);
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode();
        return app;
    }

    /// <summary>What must be done once before the first page: a garage that has never held a car gets the demo car.</summary>
    public static async Task Prepare(WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        await FirstCar.Place(app.Services.GetRequiredService<ICarKeeper>());
    }

    private static async Task<IResult> Export(string id, long? revision, ICarKeeper keeper, CancellationToken stop) =>
        await keeper.Load(id, revision, stop) is { } version
            ? Results.File(System.Text.Encoding.UTF8.GetBytes(CarFile.Write(version.Car)), "application/json", version.Car.Id + ".car.json")
            : Results.NotFound();
}
