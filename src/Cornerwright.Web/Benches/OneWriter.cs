namespace Cornerwright.Web.Benches;

/// <summary>
/// Holds an immutable state that only steps change: functions from the state to the next. Steps stand in one queue and run
/// one at a time, in the order in which they came, whichever thread they come from; each starts from what the one before
/// it left. Reading never waits.
/// </summary>
/// <param name="first">The state before the first step.</param>
/// <param name="follow">Told the state before and after each step that changed it, in their order and before the next step.</param>
/// <param name="told">Told after that, when the next step may run already.</param>
public sealed class OneWriter<T>(T first, Action<T, T> follow, Action told)
    where T : class
{
    private readonly Lock _queue = new();
    private T _now = first;
    private bool _writing;

    public T Now => Volatile.Read(ref _now);

    /// <returns>True if the step changed anything.</returns>
    /// <exception cref="InvalidOperationException">A step began another step: what it wrote would be lost under the first.</exception>
    public bool Write(Func<T, T> step)
    {
        ArgumentNullException.ThrowIfNull(step);
        lock (_queue)
        {
            if (_writing)
            {
                throw new InvalidOperationException("A step of the bench cannot begin another one.");
            }

            _writing = true;
            try
            {
                var (before, after) = (_now, step(_now));
                if (ReferenceEquals(before, after))
                {
                    return false;
                }

                Volatile.Write(ref _now, after);
                follow(before, after);
            }
            finally
            {
                _writing = false;
            }
        }

        told();
        return true;
    }
}
