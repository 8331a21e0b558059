using Cornerwright.Web.Benches;

namespace Cornerwright.Web.Tests.Benches;

/// <summary>
/// Calls of a bench to its store that go on only when a test says so: first the store does its part, later the bench hears of
/// it. All of it runs on the test's own thread, so that an order of events is the same every time.
/// </summary>
internal sealed class HeldCalls
{
    private Action? _asked;
    private TaskCompletionSource? _answer;

    public OffRender Off => call =>
    {
        Overlapped |= !Idle;
        (_asked, _answer) = (call, new TaskCompletionSource());
        return _answer.Task;
    };

    /// <summary>The bench asked its store before the last answer came.</summary>
    public bool Overlapped { get; private set; }

    public bool Idle => _answer is null;

    /// <summary>The store does what it was asked to; the answer is still on its way. Nothing if it was not asked.</summary>
    public void Commit()
    {
        var call = _asked;
        _asked = null;
        call?.Invoke();
    }

    /// <summary>
    /// The answer arrives, and the bench goes on until it asks again or has nothing left. Nothing if there is no answer yet.
    /// </summary>
    public void Return()
    {
        if (_asked is null && _answer is { } answer)
        {
            _answer = null;
            answer.SetResult();
        }
    }
}
