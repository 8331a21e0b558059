using Bunit;
using Cornerwright.Storage;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Scans;
using Cornerwright.Web.Tests.Benches;
using Microsoft.Extensions.DependencyInjection;

namespace Cornerwright.Web.Tests.Pages;

/// <summary>A browserless room for pages: a garage with the demo car and a bench, which judges nothing unless told to.</summary>
public abstract class PageContext : BunitContext
{
    /// <summary>Pages wait for a database and a judge on a busy machine; the test is what they show, not how soon.</summary>
    static PageContext() => DefaultWaitTimeout = TimeSpan.FromSeconds(60);

    protected PageContext(JudgeBuild? judge = null)
    {
        Bench = Garage.Bench(judge);
        Services.AddSingleton(Garage.Store);
        Services.AddSingleton(Bench);
        Services.AddSingleton(new ScanRoom(ScanStore.At(Path.Combine(Path.GetTempPath(), "cornerwright-page-scans-" + Guid.NewGuid().ToString("N")))));
        JSInterop.Mode = JSRuntimeMode.Loose;
    }

    protected OneGarage Garage { get; } = new();

    protected Workbench Bench { get; }

    protected string CarId => Garage.CarId;

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing)
        {
            Garage.Dispose();
        }
    }
}
