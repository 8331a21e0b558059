namespace Cornerwright.Workshop.Inputs;

/// <summary>
/// What a value was worked out from: inputs by their place in the row, and least gaps by the place of their obstacle. A value is the
/// same as long as nothing in its set moves, since it cannot even have looked elsewhere.
/// </summary>
internal sealed class ReadSet
{
    private const int Word = 64;

    private ulong[] _inputs = [];
    private ulong[] _gaps = [];

    /// <summary>The set of one input.</summary>
    public static ReadSet Of(int input)
    {
        var set = new ReadSet();
        set.Add(input);
        return set;
    }

    /// <summary>Every input of a row, and no gap.</summary>
    public static ReadSet All(int inputs)
    {
        var set = new ReadSet();
        for (int i = 0; i < inputs; i++)
        {
            set.Add(i);
        }

        return set;
    }

    public void Add(int input) => Set(ref _inputs, input);

    public void AddGap(int gap) => Set(ref _gaps, gap);

    /// <summary>Takes in all that another value was worked out from.</summary>
    public void Add(ReadSet other)
    {
        Union(ref _inputs, other._inputs);
        Union(ref _gaps, other._gaps);
    }

    public bool Has(int input) => Get(_inputs, input);

    public bool HasGap(int gap) => Get(_gaps, gap);

    /// <summary>True if any input is in both.</summary>
    public bool Meets(ReadSet other)
    {
        int words = Math.Min(_inputs.Length, other._inputs.Length);
        for (int i = 0; i < words; i++)
        {
            if ((_inputs[i] & other._inputs[i]) != 0)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Becomes the set of one input, without allocating once it has been as large.</summary>
    public void Become(int input)
    {
        Array.Clear(_inputs);
        Add(input);
    }

    private static bool Get(ulong[] bits, int at) => at / Word < bits.Length && (bits[at / Word] & (1UL << (at % Word))) != 0;

    private static void Set(ref ulong[] bits, int at)
    {
        if (at / Word >= bits.Length)
        {
            Array.Resize(ref bits, Math.Max((at / Word) + 1, 4));
        }

        bits[at / Word] |= 1UL << (at % Word);
    }

    private static void Union(ref ulong[] into, ulong[] from)
    {
        if (from.Length > into.Length)
        {
            Array.Resize(ref into, from.Length);
        }

        for (int i = 0; i < from.Length; i++)
        {
            into[i] |= from[i];
        }
    }
}
