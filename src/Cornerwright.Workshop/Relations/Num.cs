using Cornerwright.Garage.Readings;

namespace Cornerwright.Workshop.Relations;

/// <summary>A number of the car document and where it stands; not given where nothing was typed.</summary>
/// <param name="Path">In the document.</param>
/// <param name="Label">In words, lower case.</param>
/// <param name="Typed">As it was typed; empty where it was not.</param>
/// <param name="Si">SI; NaN where it was not typed.</param>
internal readonly record struct Num(string Path, string Label, string Typed, double Si)
{
    /// <summary>False of the default, too: nothing was found.</summary>
    public bool Given => Typed is { Length: > 0 };

    public double Mm => Si * 1000;

    public static Num Of(string path, string label, Reading? reading) =>
        new(path, label, reading?.Typed.Trim() ?? "", reading?.Si ?? double.NaN);

    /// <summary>"rate 8 kgf/mm".</summary>
    public override string ToString() => $"{Label} {Typed}";
}
