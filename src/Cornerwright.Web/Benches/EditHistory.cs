using System.Collections.Immutable;

namespace Cornerwright.Web.Benches;

/// <summary>One change: the state before it, and what it was in words.</summary>
/// <param name="Drag">Changes in a row with the same key are one; null for a change that stands alone.</param>
public sealed record Edit<T>(T Before, string Words, string? Drag);

/// <summary>Undo and redo over whole immutable states; immutable itself.</summary>
public sealed class EditHistory<T>
    where T : class
{
    /// <summary>A state shares nearly everything with its neighbours, so this many cost little.</summary>
    private const int MostSteps = 500;

    /// <summary>The latest last.</summary>
    private readonly ImmutableList<Edit<T>> _past;

    private readonly ImmutableStack<Edit<T>> _future;

    private EditHistory(ImmutableList<Edit<T>> past, ImmutableStack<Edit<T>> future) => (_past, _future) = (past, future);

    public static EditHistory<T> None { get; } = new([], []);

    public bool CanUndo => _past.Count > 0;
    public bool CanRedo => !_future.IsEmpty;
    public string UndoWords => CanUndo ? _past[^1].Words : "";
    public string RedoWords => CanRedo ? _future.Peek().Words : "";

    /// <summary>Notes that <paramref name="before"/> was left; a drag in progress keeps its first state.</summary>
    public EditHistory<T> Note(T before, string words, string? drag)
    {
        if (drag is not null && CanUndo && _past[^1].Drag == drag)
        {
            return new(_past.SetItem(_past.Count - 1, _past[^1] with { Words = words }), []);
        }

        var past = _past.Count < MostSteps ? _past : _past.RemoveAt(0);
        return new(past.Add(new Edit<T>(before, words, drag)), []);
    }

    /// <summary>The next change with the same key starts a step of its own: the slider was let go.</summary>
    public EditHistory<T> EndDrag() => CanUndo && _past[^1].Drag is not null
        ? new(_past.SetItem(_past.Count - 1, _past[^1] with { Drag = null }), _future)
        : this;

    /// <returns>The state to go back to, and the history then; null when there is none.</returns>
    public (T State, EditHistory<T> History)? Undo(T now) => CanUndo
        ? (_past[^1].Before, new(_past.RemoveAt(_past.Count - 1), _future.Push(new Edit<T>(now, UndoWords, null))))
        : null;

    /// <returns>The state to go forward to, and the history then; null when there is none.</returns>
    public (T State, EditHistory<T> History)? Redo(T now) => CanRedo
        ? (_future.Peek().Before, new(_past.Add(new Edit<T>(now, RedoWords, null)), _future.Pop()))
        : null;

    /// <summary>Reworks every state that could be gone back to: what another person did meanwhile is not undone with it.</summary>
    public EditHistory<T> Map(Func<T, T> rework)
    {
        ArgumentNullException.ThrowIfNull(rework);
        Edit<T> Reworked(Edit<T> edit) => edit with { Before = rework(edit.Before) };
        return new([.. _past.Select(Reworked)], ImmutableStack.CreateRange(_future.Reverse().Select(Reworked)));
    }
}
