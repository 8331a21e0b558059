namespace Cornerwright.Garage.Problems;

/// <summary>One thing wrong with what the user gave, and how to mend it.</summary>
/// <param name="Field">Where: a path in the trade's words, e.g. "front left / spring / free length".</param>
/// <param name="Given">What was typed, unchanged.</param>
/// <param name="Allowed">What would be accepted, with units.</param>
/// <param name="Cure">What to do now, as one sentence.</param>
public sealed record Problem(string Field, string Given, string Allowed, string Cure)
{
    public override string ToString() => $"{Field}: \"{Given}\" is not accepted. Allowed: {Allowed}. {Cure}";
}
