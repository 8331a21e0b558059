using Cornerwright.Garage.Access;
using Cornerwright.Garage.Access.Starting;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Problems;
using Cornerwright.Web.Benches;
using Cornerwright.Web.Components.Entry;
using Cornerwright.Workshop.WorkOrders;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.WorkOrders;

/// <summary>The car's access graph, as lists to edit.</summary>
public sealed partial class AccessPage
{
    private static readonly string[] Notes = [nameof(AccessGraph.Note)], Hidden = [nameof(Component.Id)];

    private readonly Dictionary<AxlePlace, StartingKind> _kinds =
        new() { [AxlePlace.Front] = StartingKind.Strut, [AxlePlace.Rear] = StartingKind.SpringOnLink };

    private AccessGraph? _lookedAt;
    private string _refusal = "", _refusedFor = "";

    /// <summary>The component that is open.</summary>
    [SupplyParameterFromQuery(Name = "component")] public string? ComponentId { get; set; }

    private Component? Chosen => Car.Access.Find(ComponentId ?? "");

    private IReadOnlyList<Problem> Circles { get; set; } = [];

    private IReadOnlyList<string> Warnings { get; set; } = [];

    private int Unknown { get; set; }

    protected override void OnCarReady() => Look();

    protected override void OnBenchDrawn() => Look();

    private void Look()
    {
        if (_refusedFor != ComponentId)
        {
            (_refusal, _refusedFor) = ("", ComponentId ?? "");
        }

        if (!Ready || ReferenceEquals(_lookedAt, Car.Access))
        {
            return;
        }

        _lookedAt = Car.Access;
        var fasteners = Car.Access.Components.SelectMany(c => c.Fasteners).ToList();
        Circles = AccessPlan.Cycles(Car.Access);
        Warnings = [.. fasteners.Select(TorqueSense.Warning).Where(w => w.Length > 0).Distinct()];
        Unknown = fasteners.Count(f => f.Torque is null);
    }

    private string Address(string component) => Addresses.Access(Id) + "?component=" + Uri.EscapeDataString(component) + "#one";

    /// <summary>"3 fasteners, 1 without torque; needs 2 off".</summary>
    private static string Digest(Component component)
    {
        int count = component.Fasteners.Count, open = component.Fasteners.Count(f => f.Torque is null), needs = component.BeforeOff.Count;
        string held = count == 0 ? "no fasteners" : count == 1 ? "1 fastener" : $"{count} fasteners";
        return held + (open > 0 ? $", {open} without torque" : "") + (needs > 0 ? $"; after {needs} other" + (needs > 1 ? "s" : "") : "");
    }

    private void Start(AxlePlace axle)
    {
        var kind = _kinds[axle];
        Bench.Apply($"General graph, {axle.Words()} axle", car =>
            car with { Access = StartingGraph.WithAxle(car.Access, kind, axle, car.At(axle).Driven) });
    }

    private void Add()
    {
        string id = FreshId.Beside("component", Car.Access.Components.Select(c => c.Id));
        Bench.Apply("New component", car => car
            with { Access = car.Access with { Components = [.. car.Access.Components, (Component)NewEntry.Of(typeof(Component), id)] } });
        Navigation.NavigateTo(Address(id));
    }

    private void Remove(Component component)
    {
        var users = Car.Access.Components.Where(c => c.BeforeOff.Concat(c.BeforeLoose).Any(b => b.Component == component.Id)
            || c.Supports.Any(s => s.Component == component.Id)).Select(c => c.Name).ToList();
        if (users.Count > 0)
        {
            (_refusal, _refusedFor) =
                ($"It still stands in the lists of {string.Join(", ", users)}: take it out there first.", ComponentId ?? "");
            return;
        }

        Bench.Apply("Take out " + component.Name, car =>
            car with { Access = car.Access with { Components = [.. car.Access.Components.Where(c => c.Id != component.Id)] } });
        Navigation.NavigateTo(Addresses.Access(Id));
    }

    private void MendGraph(string words, Func<object?, object?> rework) =>
        Bench.Apply(words, car => car with { Access = (AccessGraph)rework(car.Access)! });

    private void MendComponent(string id, string words, Func<object?, object?> rework) => Bench.Apply(words, car => car with
    {
        Access = car.Access with { Components = [.. car.Access.Components.Select(c => c.Id == id ? (Component)rework(c)! : c)] },
    });
}
