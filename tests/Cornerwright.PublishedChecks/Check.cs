namespace Cornerwright.PublishedChecks;

/// <summary>One number, or one fact, of the outside world that our code must reproduce.</summary>
/// <param name="Id">Unique; a test case's name holds it.</param>
/// <param name="Words">What is checked.</param>
/// <param name="Evaluate">Name of the evaluator that calls our code.</param>
/// <param name="Inputs">"name = value unit; name = text": see <see cref="CheckInputs"/>.</param>
/// <param name="Expected">What the source prints: a number in <paramref name="Unit"/>, or words.</param>
/// <param name="Unit">Of the expected number; empty for pure numbers and words.</param>
/// <param name="Tolerance">"exact", "±0.5" in the unit, or "±0.5 %" of the expected number.</param>
/// <param name="Source">Author or standard.</param>
/// <param name="Locator">Where in the source; "-" where the source is one formula.</param>
/// <param name="Provenance">Seen in the source, from memory, or derived from its formula.</param>
/// <param name="Confidence">high, medium or low; a low one informs and never decides.</param>
public sealed record Check(
    string Id,
    string Words,
    string Evaluate,
    string Inputs,
    string Expected,
    string Unit,
    string Tolerance,
    string Source,
    string Locator,
    string Provenance,
    string Confidence)
{
    public bool ForInformation => Confidence == "low";
}

/// <summary>A number of the outside world that no test reproduces, and why.</summary>
public sealed record CheckNotRun(string Id, string Words, string Expected, string Unit, string Source, string Locator, string Why);
