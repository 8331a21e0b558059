using System.Reflection;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Files;
using Cornerwright.Storage;
using Cornerwright.Web.Benches;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Web.Tests.Benches;

/// <summary>A database of its own for a test, with the demo car in it under the id that is asked for.</summary>
public sealed class OneGarage : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("cornerwright-web-").FullName;

    public OneGarage()
    {
        Store = new GarageStore(GarageDatabase.Open(Path.Combine(_folder, "garage.db")).Value, Time, AutosaveRule.Default);
        Store.Save(DemoCar.Read(), null);
    }

    internal ManualTime Time { get; } = new();

    public IGarageStore Store { get; }

    public string CarId { get; } = DemoCar.Read().Id;

    /// <summary>A bench of another person; nothing is on it yet.</summary>
    public Workbench Bench(JudgeBuild? judge = null) => new(Store, Time, judge ?? Unjudged);

    /// <summary>Says nothing of any build, at once.</summary>
    public static Judgement Unjudged(Car car, string buildId) =>
        new() { Car = car, Build = car.Build(buildId)!, Findings = [], Figures = [], Pictures = [] };

    /// <summary>The store, but every save throws while <paramref name="broken"/> says so.</summary>
    public IGarageStore Breaking(Func<bool> broken)
    {
        var store = DispatchProxy.Create<IGarageStore, BreakingStore>();
        ((BreakingStore)(object)store).Set(Store, broken);
        return store;
    }

    public void Dispose()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }
}

/// <summary>Passes every call on, except saves while the disk is "full".</summary>
public class BreakingStore : DispatchProxy
{
    private IGarageStore? _store;
    private Func<bool> _broken = () => false;

    public void Set(IGarageStore store, Func<bool> broken) => (_store, _broken) = (store, broken);

    protected override object? Invoke(MethodInfo? targetMethod, object?[]? args)
    {
        ArgumentNullException.ThrowIfNull(targetMethod);
        return targetMethod.Name.EndsWith("ave", StringComparison.Ordinal) && _broken()
            ? throw new IOException("The disk is full.")
            : targetMethod.Invoke(_store, args);
    }
}
