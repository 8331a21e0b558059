using System.Globalization;

namespace Cornerwright.PublishedChecks;

/// <summary>The inputs of one check, by name; numbers come out in SI.</summary>
public sealed class CheckInputs
{
    private readonly Dictionary<string, string> _values = [];

    public CheckInputs(string inputs)
    {
        foreach (string part in inputs.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            int at = part.IndexOf('=', StringComparison.Ordinal);
            if (at < 1 || !_values.TryAdd(part[..at].Trim(), part[(at + 1)..].Trim()))
            {
                throw new InvalidDataException($"Not an input: \"{part}\" in \"{inputs}\".");
            }
        }
    }

    public bool Has(string name) => _values.ContainsKey(name);

    public string Text(string name) =>
        _values.TryGetValue(name, out string? text) ? text : throw new InvalidDataException($"The input \"{name}\" is missing.");

    public T Choice<T>(string name)
        where T : struct, Enum => Enum.Parse<T>(Text(name));

    /// <summary>A number in SI: "12 mm" is 0.012.</summary>
    public double this[string name]
    {
        get
        {
            string text = Text(name);
            int space = text.IndexOf(' ', StringComparison.Ordinal);
            (string number, string unit) = space < 0 ? (text, "") : (text[..space], text[(space + 1)..]);
            return double.Parse(number, NumberStyles.Float, CultureInfo.InvariantCulture) * CheckUnits.Factor(unit);
        }
    }
}
