using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;

namespace Cornerwright.Web.Benches;

/// <summary>Keeps cars for as long as the process lives: for a look round without a database.</summary>
public sealed class MemoryKeeper(TimeProvider time) : ICarKeeper
{
    private readonly Lock _gate = new();
    private readonly Dictionary<string, List<(KeptRevision Line, Car Car, string Text)>> _cars = new(StringComparer.Ordinal);

    public Task<IReadOnlyList<KeptCar>> List(CancellationToken stop = default)
    {
        lock (_gate)
        {
            return Task.FromResult<IReadOnlyList<KeptCar>>([.. _cars.Values.Select(v => v[^1]).Select(v => new KeptCar(v.Car.Id, v.Car.Name, v.Car.Note, v.Line.Number, v.Line.At))]);
        }
    }

    public Task<KeptVersion?> Load(string carId, long? revision = null, CancellationToken stop = default)
    {
        lock (_gate)
        {
            return Task.FromResult(_cars.TryGetValue(carId, out var all) && all.LastOrDefault(v => revision is null || v.Line.Number == revision) is { Car: { } car } found
                ? new KeptVersion(car, found.Line.Number)
                : null);
        }
    }

    public Task<KeepResult> Save(Car car, long expected, string label = "", CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(car);
        string text = CarFile.Write(car);
        lock (_gate)
        {
            var all = _cars.TryGetValue(car.Id, out var known) ? known : [];
            long latest = all.Count == 0 ? 0 : all[^1].Line.Number;
            if (latest != expected)
            {
                return Task.FromResult<KeepResult>(new KeepResult.Conflict(new KeptVersion(all[^1].Car, latest)));
            }

            if (all.Count > 0 && all[^1].Text == text && label.Length == 0)
            {
                return Task.FromResult<KeepResult>(new KeepResult.Kept(latest));
            }

            all.Add((new KeptRevision(latest + 1, time.GetUtcNow(), latest == 0 ? "First kept" : "Changed", label, []), car, text));
            _cars[car.Id] = all;
            return Task.FromResult<KeepResult>(new KeepResult.Kept(latest + 1));
        }
    }

    public Task<IReadOnlyList<KeptRevision>> Revisions(string carId, CancellationToken stop = default)
    {
        lock (_gate)
        {
            return Task.FromResult<IReadOnlyList<KeptRevision>>(_cars.TryGetValue(carId, out var all) ? [.. all.Select(v => v.Line).Reverse()] : []);
        }
    }

    public Task Bin(string carId, CancellationToken stop = default)
    {
        lock (_gate)
        {
            _cars.Remove(carId);
        }

        return Task.CompletedTask;
    }
}
