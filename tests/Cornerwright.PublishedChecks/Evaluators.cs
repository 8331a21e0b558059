namespace Cornerwright.PublishedChecks;

/// <summary>Calls the project's code with a check's inputs.</summary>
public delegate CheckValue Evaluator(Check check, CheckInputs inputs);

/// <summary>Every evaluator by the name that the tables use.</summary>
public static class Evaluators
{
    public static IReadOnlyDictionary<string, Evaluator> All { get; } = new[]
    {
        UnitEvaluators.All, TyreEvaluators.All, WheelEvaluators.All, SpringEvaluators.All, SpringDesignEvaluators.All,
        BarEvaluators.All, BoltEvaluators.All, RideEvaluators.All,
    }
        .SelectMany(group => group)
        .ToDictionary(pair => pair.Key, pair => pair.Value);
}
