namespace Cornerwright.Workshop.Inputs;

/// <summary>
/// One row of inputs as somebody reads it: each number asked for is noted, so that nobody has to say beforehand what he will read.
/// </summary>
/// <param name="values">By place in the row, SI.</param>
/// <param name="noted">Takes what is read; null where nobody wants to know.</param>
internal readonly struct Reader(double[] values, ReadSet? noted)
{
    /// <summary>SI.</summary>
    /// <exception cref="IndexOutOfRangeException">Nobody gave this number: ask <see cref="Handle.IsGiven"/> first.</exception>
    public double this[Handle input]
    {
        get
        {
            noted?.Add(input.Index);
            return values[input.Index];
        }
    }

    public double Or(Handle input, double otherwise) => input.IsGiven ? this[input] : otherwise;

    public double? Optional(Handle input) => input.IsGiven ? this[input] : null;
}
