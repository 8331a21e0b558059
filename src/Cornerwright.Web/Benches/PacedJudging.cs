using Cornerwright.Garage.Cars;
using Cornerwright.Workshop.Judging;

namespace Cornerwright.Web.Benches;

/// <summary>Judges a build without solving cures: what a dragged slider shows. <c>JudgeOptions(Cures: false, Pictures: true)</c>.</summary>
public delegate Judgement QuickJudge(Car car, string buildId);

/// <summary>
/// Judging at two paces. While something is dragged, every step is judged without cures, which take the most of the time and
/// which nobody can read while the numbers move; once the drag rests, the whole judgement follows.
/// </summary>
public sealed class PacedJudging : IDisposable
{
    /// <summary>A hand that holds still this long wants to read.</summary>
    public static readonly TimeSpan Rest = TimeSpan.FromMilliseconds(150);

    private readonly JudgeQueue _whole;
    private readonly JudgeQueue? _quick;
    private readonly TimeProvider _time;
    private readonly Lock _gate = new();
    private ITimer? _rest;
    private Car? _car;
    private string _buildId = "";
    private bool _dragged;
    private bool _owed;

    /// <param name="whole">With cures.</param>
    /// <param name="quick">Without; null to judge wholly at every step.</param>
    /// <param name="time">Measures the rest.</param>
    public PacedJudging(JudgeBuild whole, QuickJudge? quick, TimeProvider time)
    {
        (_whole, _time) = (new JudgeQueue(whole), time);
        _whole.Judged += id => Judged?.Invoke(id);
        if (quick is not null)
        {
            _quick = new JudgeQueue((car, id) => quick(car, id));
            _quick.Judged += id => Judged?.Invoke(id);
        }
    }

    /// <summary>Raised on a pool thread when a judgement became known.</summary>
    public event Action<string>? Judged;

    /// <summary>From now on this is the car.</summary>
    /// <param name="car">Null for none.</param>
    /// <param name="buildId">The build somebody looks at; empty for none.</param>
    /// <param name="dragged">A step of a drag: judged quickly now, wholly when it rests.</param>
    public void Show(Car? car, string buildId = "", bool dragged = false)
    {
        lock (_gate)
        {
            if (!_owed && dragged)
            {
                // What an earlier drag left behind is older than what is known wholly.
                _quick?.Show(null);
            }

            (_car, _buildId) = (car, buildId);
            _dragged = _owed = dragged && _quick is not null;
            if (_dragged)
            {
                _rest ??= _time.CreateTimer(_ => Settle(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
                _rest.Change(Rest, Timeout.InfiniteTimeSpan);
            }
        }

        string[] looked = buildId.Length > 0 ? [buildId] : [];
        (_dragged ? _quick! : _whole).Show(car, looked);
    }

    /// <summary>The drag is over: the whole judgement is wanted now.</summary>
    public void Settle()
    {
        lock (_gate)
        {
            if (!_owed)
            {
                return;
            }

            _owed = false;
            _rest?.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
            _whole.Show(_car, _buildId.Length > 0 ? [_buildId] : []);
        }
    }

    /// <summary>The newest judgement known: the whole one where it is of the present car, else the quick one of a drag.</summary>
    public Judgement? Of(string buildId)
    {
        if (!_dragged)
        {
            return _whole.Of(buildId);
        }

        // Before the first quick one of a drag is known, the whole one from before it still stands: a page never goes blank.
        var whole = _whole.Of(buildId);
        return whole is not null && ReferenceEquals(whole.Car, _car) ? whole : _quick!.Of(buildId) ?? whole;
    }

    /// <summary>True when nothing better than this judgement is to come: it is of the present car, and has its cures.</summary>
    public bool IsWhole(Judgement? judgement) =>
        judgement is not null && ReferenceEquals(judgement.Car, _car)
        && (!_dragged || (!_owed && ReferenceEquals(_whole.Of(judgement.Build.Id), judgement)));

    /// <summary>Why a build could not be judged; empty if it could.</summary>
    public string FailureOf(string buildId) => (_dragged && _owed ? _quick! : _whole).FailureOf(buildId);

    /// <summary>Done when nothing waits to be judged; a drag that has not rested yet owes its cures still.</summary>
    public async Task Settled()
    {
        if (_quick is not null)
        {
            await _quick.Settled().ConfigureAwait(false);
        }

        await _whole.Settled().ConfigureAwait(false);
    }

    public void Dispose() => _rest?.Dispose();
}
