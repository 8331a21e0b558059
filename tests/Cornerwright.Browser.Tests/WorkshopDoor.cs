using System.Collections.Concurrent;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Storage;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace Cornerwright.Browser.Tests;

/// <summary>The whole application on a port of its own over a database of its own, and one browser before it.</summary>
public sealed class WorkshopDoor : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("cornerwright-browser-").FullName;
    private WebApplicationFactory<Program>? _factory;
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public string Root { get; private set; } = "";

    public async Task InitializeAsync()
    {
        _factory = new WebApplicationFactory<Program>().WithWebHostBuilder(host =>
        {
            host.UseSetting("database", Path.Combine(_folder, "garage.db"));
            host.UseSetting("urls", "http://127.0.0.1:0");
            host.UseSetting("Logging:LogLevel:Default", "Warning");
        });
        // A port that nobody has: several test runs may share a machine.
        _factory.UseKestrel(options => options.Listen(System.Net.IPAddress.Loopback, 0));
        _factory.StartServer();
        Root = _factory.ClientOptions.BaseAddress.ToString().TrimEnd('/');
        _playwright = await Playwright.CreateAsync();

        // What a page works out takes as long as a busy machine makes it take.
        Assertions.SetDefaultExpectTimeout(60_000);
        _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Chromium.Find(_playwright.Chromium.ExecutablePath),
            Args = [.. Chromium.Arguments],
        });
    }

    /// <summary>A copy of the demo car for one test that changes it.</summary>
    /// <param name="id">Of the copy.</param>
    /// <param name="change">What is different about it.</param>
    /// <returns>Its address.</returns>
    public string OwnDemoCar(string id, Func<Car, Car>? change = null)
    {
        var store = _factory!.Services.GetRequiredService<IGarageStore>();
        var car = DemoCar.Read() with { Id = id, Name = "Wagtail, " + id };
        store.Save(change is null ? car : change(car), null);
        return "/car/" + id;
    }

    /// <summary>That copy as it is kept now.</summary>
    public Car Kept(string id) => _factory!.Services.GetRequiredService<IGarageStore>().Load(id).Value.Car;

    /// <summary>A job begun on a copy of the demo car.</summary>
    /// <returns>The address of its list.</returns>
    public string OwnJob(string id) => OwnDemoCar(id, car => car with
    {
        Log = car.Log.With(new Garage.Log.Job { Id = "demo", Name = "Gravel, as it will be driven", From = "now", To = "gravel-3" }),
    }) + "/job/demo";

    /// <summary>A fresh visitor: own storage, own circuit.</summary>
    public async Task<Visitor> Visit(int width = 1440)
    {
        var context = await _browser!.NewContextAsync(new BrowserNewContextOptions
        {
            // A colour half way through a transition is no colour of ours: without this the contrast rule now and then meets one.
            ReducedMotion = ReducedMotion.Reduce,
            BaseURL = Root,
            ViewportSize = new ViewportSize { Width = width, Height = width < 600 ? 844 : 900 },
            ColorScheme = ColorScheme.Light,
            HasTouch = width < 600,
            Locale = "en-GB",
        });
        context.SetDefaultTimeout(20_000);
        return await Visitor.Enter(context, width);
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
        if (_factory is not null)
        {
            await _factory.DisposeAsync();
        }

        try
        {
            Directory.Delete(_folder, recursive: true);
        }
        catch (IOException)
        {
            // The database may be held a moment longer; the system's own cleaning takes the folder.
        }
    }
}

/// <summary>One visitor's page, with everything the browser complained about.</summary>
public sealed class Visitor : IAsyncDisposable
{
    private readonly IBrowserContext _context;
    private readonly ConcurrentQueue<string> _complaints = new();

    private Visitor(IBrowserContext context, IPage page, int width) => (_context, Page, Width) = (context, page, width);

    public IPage Page { get; }
    public int Width { get; }

    /// <summary>Errors of the console and exceptions of scripts.</summary>
    public IReadOnlyCollection<string> Complaints => _complaints;

    public static async Task<Visitor> Enter(IBrowserContext context, int width)
    {
        var visitor = new Visitor(context, await context.NewPageAsync(), width);
        visitor.Page.Console += (_, message) =>
        {
            if (message.Type == "error")
            {
                visitor._complaints.Enqueue(message.Text + " (" + message.Location + ")");
            }
        };
        visitor.Page.PageError += (_, error) => visitor._complaints.Enqueue(error);
        return visitor;
    }

    /// <summary>Goes there and waits until the page answers to clicks.</summary>
    public async Task Open(string address)
    {
        await Page.GotoAsync(address);
        await Page.Locator("[data-interactive=true]").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached });
        await Page.Locator("h1").First.WaitForAsync();
    }

    /// <summary>Waits until the verdict drawn is the one of the car as it is now.</summary>
    public Task Judged() => Page.Locator("[data-fresh=true]").First.WaitForAsync();

    /// <summary>Into the folder that CORNERWRIGHT_SHOTS names; nowhere when it names none.</summary>
    public async Task Shoot(string name, string light)
    {
        if (Environment.GetEnvironmentVariable("CORNERWRIGHT_SHOTS") is { Length: > 0 } folder)
        {
            Directory.CreateDirectory(folder);
            string path = Path.Combine(folder, $"{name}-{Width}-{light}.png");
            await Page.EvaluateAsync("() => scrollTo(0, 0)");
            await Page.ScreenshotAsync(
                new PageScreenshotOptions { Path = path, FullPage = true, Animations = ScreenshotAnimations.Disabled });
        }
    }

    public async ValueTask DisposeAsync() => await _context.DisposeAsync();
}

/// <summary>All browser tests share one application and one browser, and run one after another.</summary>
[CollectionDefinition(Name)]
public sealed class BrowserTests : ICollectionFixture<WorkshopDoor>
{
    public const string Name = "browser";
}
