namespace Cornerwright.Web.Benches;

/// <summary>One change: the state before it, and what it was in words.</summary>
/// <param name="Drag">Changes in a row with the same key are one; null for a change that stands alone.</param>
public sealed record Edit<T>(T Before, string Words, string? Drag);

/// <summary>Undo and redo over whole immutable states.</summary>
public sealed class EditHistory<T>
    where T : class
{
    /// <summary>A state shares nearly everything with its neighbours, so this many cost little.</summary>
    private const int MostSteps = 500;

    private readonly LinkedList<Edit<T>> _past = new();
    private readonly Stack<Edit<T>> _future = new();

    public bool CanUndo => _past.Count > 0;
    public bool CanRedo => _future.Count > 0;
    public string UndoWords => _past.Last?.Value.Words ?? "";
    public string RedoWords => _future.TryPeek(out var edit) ? edit.Words : "";

    /// <summary>Notes that <paramref name="before"/> was left; a drag in progress keeps its first state.</summary>
    public void Note(T before, string words, string? drag)
    {
        _future.Clear();
        if (drag is not null && _past.Last?.Value is { } last && last.Drag == drag)
        {
            _past.Last.Value = last with { Words = words };
            return;
        }

        _past.AddLast(new Edit<T>(before, words, drag));
        if (_past.Count > MostSteps)
        {
            _past.RemoveFirst();
        }
    }

    /// <summary>The next change with the same key starts a step of its own: the slider was let go.</summary>
    public void EndDrag()
    {
        if (_past.Last is { Value.Drag: not null } last)
        {
            last.Value = last.Value with { Drag = null };
        }
    }

    /// <returns>The state to go back to; null when there is none.</returns>
    public T? Undo(T now)
    {
        if (_past.Last?.Value is not { } edit)
        {
            return null;
        }

        _past.RemoveLast();
        _future.Push(new Edit<T>(now, edit.Words, null));
        return edit.Before;
    }

    /// <returns>The state to go forward to; null when there is none.</returns>
    public T? Redo(T now)
    {
        if (!_future.TryPop(out var edit))
        {
            return null;
        }

        _past.AddLast(new Edit<T>(now, edit.Words, null));
        return edit.Before;
    }

    /// <summary>Reworks every state that could be gone back to: what another person did meanwhile is not undone with it.</summary>
    public void Map(Func<T, T> rework)
    {
        ArgumentNullException.ThrowIfNull(rework);
        for (var node = _past.First; node is not null; node = node.Next)
        {
            node.Value = node.Value with { Before = rework(node.Value.Before) };
        }

        var future = _future.Select(e => e with { Before = rework(e.Before) }).Reverse().ToList();
        _future.Clear();
        future.ForEach(_future.Push);
    }

    public void Clear()
    {
        _past.Clear();
        _future.Clear();
    }
}
