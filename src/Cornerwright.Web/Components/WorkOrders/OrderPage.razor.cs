using System.Globalization;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Log;
using Cornerwright.Garage.Problems;
using Cornerwright.Web.Components.Entry;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.WorkOrders;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.WorkOrders;

/// <summary>The order of the work that leads to a build: to read, to print, to begin.</summary>
public sealed partial class OrderPage
{
    private Car? _writtenFor;
    private string _writtenFrom = "";

    [Inject] private TimeProvider Clock { get; set; } = null!;

    /// <summary>The build on the car now, where it is not the one the car was measured on.</summary>
    [SupplyParameterFromQuery] public string? From { get; set; }

    private Build? Build => Car.Build(BuildId ?? "");

    private string FromId => Car.Build(From ?? "")?.Id ?? CarNow.Of(Car)?.Id ?? Car.Builds[0].Id;

    private WorkOrder? Order { get; set; }

    private IReadOnlyList<Problem> Problems { get; set; } = [];

    private Judgement? Judgement { get; set; }

    /// <summary>This very job, begun and not finished; null for none.</summary>
    private Job? Begun => Car.Log.Jobs.LastOrDefault(j => j.From == FromId && j.To == BuildId && j.Finished is null);

    /// <summary>Axles where something on the spring's axis changes.</summary>
    private IEnumerable<AxlePlace> Axles => Order is not { } order ? [] : BuildChange.Between(Car, order.From, order.To)
        .Where(c => c.MovesHeight || c.Field.PropertyName is nameof(CornerBuild.BumpStop) or nameof(CornerBuild.Packer))
        .Select(c => c.Corner.Axle()).Distinct().Order();

    protected override void OnCarReady() => Look();

    protected override void OnBenchDrawn() => Look();

    private void Look()
    {
        if (!Ready || Build is not { } build)
        {
            return;
        }

        if (!ReferenceEquals(_writtenFor, Car) || _writtenFrom != FromId || Order?.To.Id != build.Id)
        {
            (_writtenFor, _writtenFrom) = (Car, FromId);
            var order = OrderWriter.Write(Car, Car.Build(FromId)!, build);
            (Order, Problems) = (order.Ok ? order.Value : null, order.Problems);
        }

        // Paper cannot be drawn again: only the judgement of the car as it is goes onto it.
        Judgement = Bench.JudgementOf(build.Id) is { } judged && ReferenceEquals(judged.Car, Car) ? judged : null;
    }

    private void Go(string? from) => Navigation.NavigateTo(Addresses.Order(Id, BuildId!) + "?from=" + Uri.EscapeDataString(from ?? ""));

    /// <summary>Notes the job in the log, so that ticks have somewhere to go, and opens its list.</summary>
    private async Task Begin()
    {
        string id = Begun?.Id ?? "";
        if (id.Length == 0)
        {
            id = FreshId.FromName($"{Build!.Name}", Car.Log.Jobs.Select(j => j.Id));
            var job = new Job { Id = id, Name = Build.Name, From = FromId, To = Build.Id,
                Begun = DateOnly.FromDateTime(Clock.GetLocalNow().DateTime) };
            Bench.Apply("Begin the job " + Build.Name, car => car with { Log = car.Log.With(job) });
        }

        // The list is another page, which reads what is stored.
        await Bench.SaveNow();
        if (Bench.Saved == Benches.SavedState.Saved)
        {
            Navigation.NavigateTo(Addresses.Job(Id, id), forceLoad: true);
        }
    }

    private static string Money(decimal amount) => amount.ToString("#,0.00", CultureInfo.InvariantCulture).Replace(',', ' ');

    /// <summary>"FL" and so on; the axle's name in full.</summary>
    private static string Short(string place) => place switch
    {
        "front left" => "FL", "front right" => "FR", "rear left" => "RL", "rear right" => "RR", _ => place,
    };
}
