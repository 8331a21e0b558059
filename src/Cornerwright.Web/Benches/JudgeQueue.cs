using Cornerwright.Garage.Cars;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Web.Benches;

/// <summary>Judges one build of a car: <c>Judge.Build</c>, or a stand-in for tests.</summary>
public delegate Judgement JudgeBuild(Car car, string buildId);

/// <summary>
/// Judges builds off the render path. Only the newest state of the car counts: while one judgement runs, any number of
/// changes collapse into a single next run, so a dragged slider never queues up.
/// </summary>
public sealed class JudgeQueue(JudgeBuild judge)
{
    private readonly Lock _gate = new();
    private readonly Dictionary<string, Judgement> _known = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _failed = new(StringComparer.Ordinal);
    private readonly List<string> _wanted = [];
    private Car? _car;
    private Task _running = Task.CompletedTask;

    /// <summary>Raised on a pool thread when a judgement became known.</summary>
    public event Action<string>? Judged;

    /// <summary>From now on this is the car; builds that somebody looked at last are judged again.</summary>
    public void Show(Car? car, params IEnumerable<string> buildIds)
    {
        lock (_gate)
        {
            if (_car?.Id != car?.Id)
            {
                _known.Clear();
            }

            _failed.Clear();
            _car = car;
            _wanted.Clear();
        }

        foreach (string id in buildIds)
        {
            Want(id);
        }
    }

    /// <summary>
    /// The judgement of a build as far as it is known; asks for a new one when the car has changed since.
    /// Compare its Car with the present one to see whether it is the newest.
    /// </summary>
    public Judgement? Of(string buildId)
    {
        lock (_gate)
        {
            if (_known.TryGetValue(buildId, out var known) && ReferenceEquals(known.Car, _car))
            {
                return known;
            }
        }

        Want(buildId);
        return Known(buildId);
    }

    /// <summary>Why a build could not be judged; empty if it could.</summary>
    public string FailureOf(string buildId)
    {
        lock (_gate)
        {
            return _failed.GetValueOrDefault(buildId, "");
        }
    }

    /// <summary>Done when nothing waits to be judged.</summary>
    public async Task Settled()
    {
        Task running;
        do
        {
            lock (_gate)
            {
                running = _running;
            }

            await running.ConfigureAwait(false);
        }
        while (!ReferenceEquals(running, Current()));
    }

    private Task Current()
    {
        lock (_gate)
        {
            return _running;
        }
    }

    private Judgement? Known(string buildId)
    {
        lock (_gate)
        {
            return _known.GetValueOrDefault(buildId);
        }
    }

    private void Want(string buildId)
    {
        lock (_gate)
        {
            if (_car is null || _wanted.Contains(buildId, StringComparer.Ordinal) || _failed.ContainsKey(buildId)
                || _car.Build(buildId) is null)
            {
                return;
            }

            _wanted.Add(buildId);
            if (_running.IsCompleted)
            {
                _running = Task.Run(Work);
            }
        }
    }

    private void Work()
    {
        while (Next() is var (car, buildId))
        {
            string failure = "";
            Judgement? judgement = null;
            try
            {
                judgement = judge(car, buildId);
            }
            catch (Exception error)
            {
                // Our own bug; the page says so and the rest of the workshop stays open.
                failure = error.Message;
            }

            if (Keep(car, buildId, judgement, failure))
            {
                Judged?.Invoke(buildId);
            }
        }
    }

    private (Car Car, string BuildId)? Next()
    {
        lock (_gate)
        {
            if (_car is null || _wanted.Count == 0)
            {
                _running = Task.CompletedTask;
                return null;
            }

            return (_car, _wanted[0]);
        }
    }

    /// <returns>True if somebody should hear of it.</returns>
    private bool Keep(Car car, string buildId, Judgement? judgement, string failure)
    {
        lock (_gate)
        {
            if (_car?.Id != car.Id)
            {
                return false;
            }

            if (judgement is not null)
            {
                _known[buildId] = judgement;
            }

            bool newest = ReferenceEquals(_car, car);
            if (newest)
            {
                _wanted.Remove(buildId);
                if (judgement is null)
                {
                    _failed[buildId] = failure;
                    _known.Remove(buildId);
                }
            }

            return true;
        }
    }
}
