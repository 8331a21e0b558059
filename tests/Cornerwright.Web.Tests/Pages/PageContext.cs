using AngleSharp.Dom;
using Bunit;
using Cornerwright.Storage;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Scans;
using Cornerwright.Web.Tests.Benches;
using Microsoft.AspNetCore.Components;
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
        Services.AddSingleton(
            new ScanRoom(ScanStore.At(Path.Combine(Path.GetTempPath(), "cornerwright-page-scans-" + Guid.NewGuid().ToString("N")))));
        JSInterop.Mode = JSRuntimeMode.Loose;
    }

    protected OneGarage Garage { get; } = new();

    protected Workbench Bench { get; }

    protected string CarId => Garage.CarId;

    /// <summary>
    /// Finds and acts in one go on the renderer's own thread. A page draws itself anew whenever a judgement or something
    /// learned arrives: from another thread an element may be found before that and pressed after it, or pressed while the
    /// page is being drawn, and then the press is taken up only later.
    /// </summary>
    protected static void Act<T>(IRenderedComponent<T> page, Action act)
        where T : IComponent => page.InvokeAsync(act).GetAwaiter().GetResult();

    /// <summary>
    /// Presses the button that says just that, or else the first that says it among more; as soon as there is one that can be pressed.
    /// </summary>
    protected static void Press<T>(IRenderedComponent<T> page, string words)
        where T : IComponent
    {
        IElement? Button() =>
            page.FindAll("button").Where(b => b.TextContent.Contains(words, StringComparison.Ordinal) && !b.HasAttribute("disabled"))
            .OrderBy(b => b.TextContent.Trim() == words ? 0 : 1).FirstOrDefault();
        page.WaitForState(() => Button() is not null);
        Act(page, () => Button()!.Click());
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing)
        {
            Garage.Dispose();
        }
    }
}
