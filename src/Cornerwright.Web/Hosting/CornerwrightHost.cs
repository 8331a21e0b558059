using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Storage;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Jobs;
using Cornerwright.Web.Scans;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Web.Hosting;

/// <summary>Builds and runs the web application; the command line's way in is <see cref="Start"/>.</summary>
public static class CornerwrightHost
{
    /// <summary>Runs until it is told to stop.</summary>
    /// <param name="args">
    /// "--database file", "--urls http://127.0.0.1:5080", "--answer-network true" to be called by this machine's names and addresses,
    /// "--answer-names a,b" to be called by these, and whatever else the host reads.
    /// </param>
    /// <param name="started">Told the addresses once they answer.</param>
    /// <param name="stop">Ends it.</param>
    public static async Task Start(string[] args, Action<IReadOnlyList<string>>? started = null, CancellationToken stop = default)
    {
        await using var app = Build(args);
        await Prepare(app);
        await app.StartAsync(stop);
        var machine = Machine.Here();
        started?.Invoke([.. app.Urls.SelectMany(machine.Reach)]);
        await app.WaitForShutdownAsync(stop);
    }

    public static WebApplication Build(string[] args)
    {
        // A published program has its static files beside it, wherever it is started from; a built one finds them by its list.
        string beside = Path.Combine(AppContext.BaseDirectory, "wwwroot");
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            Args = args,

            // Static files are found by this name, whichever program hosts the pages.
            ApplicationName = typeof(CornerwrightHost).Assembly.GetName().Name,
            WebRootPath = Directory.Exists(beside) ? beside : null,
        });
        var names = NamesOf(builder.Configuration);
        builder.WebHost.UseStaticWebAssets();
        builder.Services.AddRazorComponents().AddInteractiveServerComponents();
        builder.Services.AddSignalR(o => o.MaximumReceiveMessageSize = 256 * 1024);
        builder.Services.AddSingleton(TimeProvider.System);
        builder.Services.AddGarageStore(DatabasePath(builder.Configuration));
        builder.Services.AddSingleton<ScanRoom>();
        builder.Services.AddSingleton<JudgeMemory>();
        builder.Services.AddSingleton<JudgeBuild>(services => (car, id) =>
            Judge.Build(car, id, Remembering(services, car, JudgeOptions.Everything)));
        builder.Services.AddSingleton<QuickJudge>(services => (car, id) =>
            Judge.Build(car, id, Remembering(services, car, new JudgeOptions(Cures: false, Pictures: true))));
        builder.Services.AddScoped<Workbench>();
        builder.Services.AddScoped(services => new Components.Ranking.SearchRun(services.GetRequiredService<ScanRoom>().ShelfOf));
        builder.Services.AddHostedService<FirstJudgements>();
        var app = builder.Build();
        app.UseNameGuard(names);
        if (!app.Environment.IsDevelopment())
        {
            app.UseExceptionHandler("/not-found", createScopeForErrors: true);
        }

        app.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true);
        app.UseAntiforgery();
        app.MapStaticAssets();
        app.MapGet("/healthz", () => Results.Text("ok"));
        app.MapGet("/export/{id}", Export);
        app.MapScans();
        app.MapJobs();
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode();
        return app;
    }

    private static JudgeOptions Remembering(IServiceProvider services, Car car, JudgeOptions options) => options with
    {
        Scans = services.GetRequiredService<ScanRoom>().ShelfOf(car),
        Memory = services.GetRequiredService<JudgeMemory>(),
    };

    /// <summary>What must be done once before the first page: a garage that has never held a car gets the demo car.</summary>
    public static Task Prepare(WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.Services.GetRequiredService<ScanStore>().Sweep(app.Services.GetRequiredService<TimeProvider>().GetUtcNow());
        var store = app.Services.GetRequiredService<IGarageStore>();
        if (store.ListCars().Count == 0 && store.ListBin().Count == 0)
        {
            store.Save(DemoCar.Read(), null, "The demo car as delivered");
        }

        return Task.CompletedTask;
    }

    /// <summary>A file among the user's own data: where cars are kept when no other place is named.</summary>
    public static string UsualDatabase =>
        Environment.GetEnvironmentVariable("CORNERWRIGHT_DATABASE") is { Length: > 0 } named ? named
        : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.Create),
            "Cornerwright", "garage.db");

    /// <summary>"--database", else the environment's CORNERWRIGHT_DATABASE, else a file among the user's own data.</summary>
    private static string DatabasePath(IConfiguration configuration) =>
        configuration["database"] is { Length: > 0 } chosen ? chosen
        : configuration["CORNERWRIGHT_DATABASE"] is { Length: > 0 } environment ? environment
        : UsualDatabase;

    /// <summary>"--answer-names" and the environment's CORNERWRIGHT_NAMES; with "--answer-network true" this machine's too.</summary>
    private static AcceptedNames NamesOf(IConfiguration configuration)
    {
        bool network = bool.TryParse(configuration["answer-network"], out bool said) && said;
        var names = AcceptedNames.Of(
            configuration["answer-names"] + " " + configuration["CORNERWRIGHT_NAMES"], network ? Machine.Here() : null);
        return names.Ok ? names.Value : throw new SettingRefusedException(names.Problems[0]);
    }

    private static IResult Export(string id, int? revision, IGarageStore store)
    {
        var found = revision is { } number ? store.Load(id, number) : store.Load(id);
        return found.Try(out var stored) && store.Text(id, stored.Mark.Number) is { } text
            ? Results.File(System.Text.Encoding.UTF8.GetBytes(text), "application/json", stored.Car.Id + ".car.json")
            : Results.NotFound();
    }
}
