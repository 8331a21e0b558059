namespace Cornerwright.Web.Benches;

/// <summary>Runs one call to the store off the render path: on a pool thread, or when a test says so.</summary>
public delegate Task OffRender(Action call);

/// <summary>Lets one bench's dealings with the store through one after another, in the order in which they came.</summary>
public sealed class StoreLane(OffRender off)
{
    private readonly Lock _gate = new();
    private Task _last = Task.CompletedTask;

    /// <summary>Waits until all that came before has ended, then works.</summary>
    public async Task Run(Func<Task> work)
    {
        ArgumentNullException.ThrowIfNull(work);
        var done = new TaskCompletionSource();
        Task before;
        lock (_gate)
        {
            (before, _last) = (_last, done.Task);
        }

        await before.ConfigureAwait(false);
        try
        {
            await work().ConfigureAwait(false);
        }
        finally
        {
            done.SetResult();
        }
    }

    /// <summary>One call, from within <see cref="Run"/>.</summary>
    public async Task<T> Ask<T>(Func<T> call)
    {
        T answer = default!;
        await off(() => answer = call()).ConfigureAwait(false);
        return answer;
    }
}
