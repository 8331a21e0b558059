using Cornerwright.Garage.Problems;

namespace Cornerwright.Storage;

/// <summary>An application was to be built on a database that cannot be opened. A registration of services has no other answer.</summary>
public sealed class DatabaseRefusedException(Problem problem) : InvalidOperationException(problem?.ToString())
{
    /// <summary>Why, and what to do.</summary>
    public Problem Problem { get; } = problem;
}
