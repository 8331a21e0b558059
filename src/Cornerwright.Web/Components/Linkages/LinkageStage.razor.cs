using System.Globalization;
using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;
using Cornerwright.Web.Components.Pictures;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Cornerwright.Web.Components.Linkages;

/// <summary>
/// Moves one linkage. Every step of a slider is solved here, exactly, and sent to the browser's view as a few hundred bytes;
/// plain views and figures follow by themselves.
/// </summary>
public sealed partial class LinkageStage : IAsyncDisposable
{
    private const double SliderStep = 0.0005;
    private const double MostPlate = 0.03;

    private static readonly (string Side, string Words)[] Sides =
        [("corner", "Slanted"), ("front", "Front"), ("street", "Street side"), ("above", "Above")];

    private static readonly (string Name, string Words)[] Options =
        [("wheel", "wheel and tyre"), ("ground", "ground"), ("axis", "steering axis"), ("instant", "axis it turns about in travel"),
            ("roll", "roll centre")];

    private readonly Dictionary<string, bool> _shown =
        new(StringComparer.Ordinal) { ["wheel"] = true, ["ground"] = true, ["axis"] = true, ["instant"] = false, ["roll"] = false };

    private ElementReference _host;
    private IJSObjectReference? _module, _scene;
    private LinkageSetting? _known;
    private LinkageMover _mover = null!;
    private LinkagePose? _pose;
    private WheelGeometry? _measured;
    private LinkagePlace _asked;
    private (double Least, double Most) _travel;
    private bool? _solid;
    private bool _newPlan, _left;
    private string _sought = "";

    [Inject] private IJSRuntime Js { get; set; } = null!;

    [Parameter, EditorRequired] public LinkageSetting Setting { get; set; } = null!;

    /// <summary>"front left".</summary>
    [Parameter, EditorRequired] public string Where { get; set; } = "";

    /// <summary>Where it stands at first.</summary>
    [Parameter] public LinkagePlace First { get; set; }

    /// <summary>Property of the point that stands out; empty for none.</summary>
    [Parameter] public string Sought { get; set; } = "";

    /// <summary>Told when a slider was let go.</summary>
    [Parameter] public EventCallback<LinkagePlace> Moved { get; set; }

    protected override void OnParametersSet()
    {
        if (ReferenceEquals(_known, Setting))
        {
            return;
        }

        bool first = _known is null;
        (_known, _newPlan) = (Setting, !first);
        if (first)
        {
            _asked = First;
        }

        _travel = (
            Math.Min(-LinkageSweep.UsualTravel, Whole((Setting.Droop ?? 0) - 0.01)),
            Math.Max(LinkageSweep.UsualTravel, Whole((Setting.Bump ?? 0) + 0.01)));
        _mover = new LinkageMover(Setting);
        _measured = new LinkageMover(Setting with { Clamp = 0 }).WheelAt(0, 0, 0);
        Solve(_asked);
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
        {
            try
            {
                _module = await Js.InvokeAsync<IJSObjectReference>("import", "./linkage3d.js");
                _scene = _left ? null : await _module.InvokeAsync<IJSObjectReference?>("show", _host, LinkagePlan3d.Of(Setting));
            }
            catch (JSException)
            {
                // No graphics in this browser: the plain views do.
                _scene = null;
            }

            if (_left)
            {
                // The page was left while the browser fetched the module: what came too late is given back.
                await (_scene is null ? ValueTask.CompletedTask : _scene.InvokeVoidAsync("dispose"));
                return;
            }

            _solid = _scene is not null;
            await Send();
            await SendOptions();
            StateHasChanged();
        }
        else if (_newPlan && _scene is not null && _pose is not null)
        {
            _newPlan = false;
            await _scene.InvokeVoidAsync("replan", LinkagePlan3d.Of(Setting), _pose.Bytes());
        }

        if (_scene is not null && _sought != Sought)
        {
            _sought = Sought;
            await _scene.InvokeVoidAsync("highlight", Setting.Points.Joints.ToList().FindIndex(j => j.Field.PropertyName == Sought));
        }
    }

    private void Go(LinkagePlace asked)
    {
        Solve(asked);
        // Not waited for: the next step may come while the browser draws this one, and calls keep their order.
        _ = Send();
    }

    private async Task Jump(LinkagePlace asked)
    {
        Go(asked);
        await Told();
    }

    private Task Told() => Moved.InvokeAsync(_asked);

    private void Solve(LinkagePlace asked)
    {
        _asked = asked;
        _pose = _mover.PoseAt(asked) ?? _pose;
    }

    private async Task Send()
    {
        if (_scene is not null && _pose is not null)
        {
            try
            {
                await _scene.InvokeVoidAsync("pose", _pose.Bytes());
            }
            catch (JSDisconnectedException)
            {
                // The page is gone.
            }
        }
    }

    private async Task Show(string name, bool shown)
    {
        _shown[name] = shown;
        await SendOptions();
    }

    private async Task SendOptions()
    {
        if (_scene is not null)
        {
            await _scene.InvokeVoidAsync("options", _shown);
        }
    }

    private async Task Look(string side)
    {
        if (_scene is not null)
        {
            await _scene.InvokeVoidAsync("look", side);
        }
    }

    private async Task Zoom(double factor)
    {
        if (_scene is not null)
        {
            await _scene.InvokeVoidAsync("zoom", factor);
        }
    }

    public async ValueTask DisposeAsync()
    {
        _left = true;
        try
        {
            if (_scene is not null)
            {
                await _scene.InvokeVoidAsync("dispose");
                await _scene.DisposeAsync();
            }

            if (_module is not null)
            {
                await _module.DisposeAsync();
            }
        }
        catch (JSDisconnectedException)
        {
            // The browser is gone, and its graphics with it.
        }
    }

    private static double Whole(double metres) => Math.Round(metres * 1000) / 1000;

    private static int StepOf(double value, double least) => Math.Max(0, (int)Math.Round((value - least) / SliderStep));

    private static double ValueOf(int step, double least) => Math.Round((least + (step * SliderStep)) / SliderStep) * SliderStep;

    private static string Mm(double metres) => (metres * 1000).ToString("0.###", CultureInfo.InvariantCulture);

    private string RackWords =>
        $"{Px.Mm(Math.Abs(_asked.Rack))} mm {(_asked.Rack > 0 ? "to the left" : _asked.Rack < 0 ? "to the right" : "")}".TrimEnd();

    private string PlateWords =>
        $"{Px.Mm(Math.Abs(_asked.Plate))} mm {(_asked.Plate > 0 ? "inward" : _asked.Plate < 0 ? "outward" : "")}".TrimEnd();

    private static string Number(double value, LinkageQuantity quantity) =>
        QuantityText.Write(quantity.Unit.ToSi(value), quantity.Unit, quantity.Decimals);

    private string Against(LinkageQuantity quantity, double value)
    {
        if (_measured is not { } measured || quantity.Shown(measured, Setting) is not { } before)
        {
            return "–";
        }

        double change = value - before;
        return Math.Abs(change) < quantity.Least ? "same" : (change > 0 ? "+" : "") + Number(change, quantity);
    }

    private string StopWords(CannotReach stop)
    {
        string far = $"The linkage goes no further than travel {Px.Travel(stop.Reached.Travel)} mm"
            + (Setting.Steers ? $", rack {Px.Travel(stop.Reached.Rack)} mm" : "") + ": ";
        return far + (stop.Missing == 0
            ? $"{stop.Tie} is at a dead centre there; beyond it the parts would fit together only in another way."
            : $"for one millimetre more, {stop.Tie} would have to {(stop.Missing > 0 ? "give" : "give the other way")} by "
            + $"{Px.Mm(Math.Abs(stop.Missing), 2)} mm.");
    }
}
