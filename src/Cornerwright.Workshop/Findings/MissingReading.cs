namespace Cornerwright.Workshop.Findings;

/// <summary>A reading or a part without which something cannot be known.</summary>
/// <param name="Path">Where it is to be entered in the car document; empty where it is nothing that one can enter.</param>
/// <param name="Label">In words, as it follows "not known:".</param>
public sealed record MissingReading(string Path, string Label)
{
    /// <summary>One where something is missing, none where it is not.</summary>
    public static IEnumerable<MissingReading> If(bool missing, string path, string label) => missing ? [new(path, label)] : [];

    /// <summary>The labels in a row.</summary>
    public static string Words(IEnumerable<MissingReading> missing) => string.Join(", ", missing.Select(m => m.Label));

    public override string ToString() => Label;
}
