using System.Diagnostics.CodeAnalysis;

namespace Cornerwright.Garage.Problems;

/// <summary>Either a value, or every problem that kept it from being one. Never both, never neither.</summary>
public sealed class Checked<T>
    where T : notnull
{
    private readonly T? _value;

    private Checked(T? value, IReadOnlyList<Problem> problems) => (_value, Problems) = (value, problems);

    /// <summary>Empty if, and only if, there is a value.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    public bool Ok => Problems.Count == 0;

    /// <exception cref="InvalidOperationException">There is no value: ask <see cref="Ok"/> first.</exception>
    public T Value => Ok ? _value! : throw new InvalidOperationException(string.Join("; ", Problems));

    public static Checked<T> From(T value) => new(value, []);

    public static Checked<T> Wrong(params IReadOnlyList<Problem> problems) =>
        problems.Count > 0 ? new(default, problems) : throw new ArgumentException("A failure needs a problem.", nameof(problems));

    public bool Try([NotNullWhen(true)] out T? value)
    {
        value = _value;
        return Ok;
    }
}
