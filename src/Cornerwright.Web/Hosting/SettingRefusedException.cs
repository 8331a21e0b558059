using Cornerwright.Garage.Problems;

namespace Cornerwright.Web.Hosting;

/// <summary>The application was started with a setting that it cannot use.</summary>
public sealed class SettingRefusedException(Problem problem) : InvalidOperationException(problem?.ToString())
{
    /// <summary>Why, and what to do.</summary>
    public Problem Problem { get; } = problem;
}
