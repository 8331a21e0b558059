using System.Globalization;
using System.Text.Json;

namespace Cornerwright.Garage.Scans;

/// <summary>A place in a GLB file's description: every question is answered, or says where the description is wrong.</summary>
internal readonly struct GlbElement(JsonElement element, string where)
{
    public string Where => where;

    public bool Has(string name) => Find(name, out _);

    public GlbElement Part(string name) => Find(name, out var part) ? new(part, where + " / " + name)
        : throw Wrong(name, "nothing", "a value");

    /// <summary>A list; empty where there is none.</summary>
    public GlbList List(string name)
    {
        if (!Find(name, out var list))
        {
            return new GlbList(null, where + " / " + name);
        }

        return list.ValueKind == JsonValueKind.Array ? new GlbList(list, where + " / " + name)
            : throw Wrong(name, list.GetRawText(), "a list");
    }

    /// <summary>A whole number of at least 0; the given one where there is none.</summary>
    public int Whole(string name, int otherwise)
    {
        if (!Find(name, out var value))
        {
            return otherwise;
        }

        return value.ValueKind == JsonValueKind.Number && value.TryGetInt32(out int number) && number >= 0
            ? number
            : throw Wrong(name, value.GetRawText(), $"a whole number from 0 to {int.MaxValue}");
    }

    public string TextOf(string name) => Has(name) ? Part(name).Text() : "";

    public string Text()
    {
        try
        {
            return element.ValueKind == JsonValueKind.String ? element.GetString() ?? ""
                : throw ScanFault.At(where, element.GetRawText(), "text", Cure);
        }
        catch (InvalidOperationException)
        {
            throw ScanFault.At(where, element.GetRawText(), "whole characters", Cure);
        }
    }

    public int Index() => element.ValueKind == JsonValueKind.Number && element.TryGetInt32(out int number) && number >= 0
        ? number
        : throw ScanFault.At(where, element.GetRawText(), "a whole number of at least 0", Cure);

    /// <summary>Finite numbers, exactly as many as the span has room for. False where there are none.</summary>
    public bool Numbers(string name, Span<double> into)
    {
        if (!Find(name, out var list))
        {
            return false;
        }

        if (list.ValueKind != JsonValueKind.Array || list.GetArrayLength() != into.Length)
        {
            throw Wrong(name, list.GetRawText(), $"{into.Length} numbers");
        }

        int i = 0;
        foreach (var item in list.EnumerateArray())
        {
            into[i++] = item.ValueKind == JsonValueKind.Number && item.TryGetDouble(out double number) && double.IsFinite(number)
                ? number
                : throw Wrong(name, item.GetRawText(), "numbers");
        }

        return true;
    }

    private const string Cure = "The file is damaged there: export it again.";

    /// <summary>A name of the file that JSON can spell but text cannot hold lets no search of names through.</summary>
    private bool Find(string name, out JsonElement found)
    {
        try
        {
            found = default;
            return element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out found);
        }
        catch (InvalidOperationException)
        {
            throw ScanFault.At(where, "a name with half a character pair", "whole characters", Cure);
        }
    }

    private ScanFault Wrong(string name, string given, string allowed) => ScanFault.At(where + " / " + name, given, allowed, Cure);
}

/// <summary>A list in the description.</summary>
internal readonly struct GlbList(JsonElement? list, string where)
{
    public int Count => list?.GetArrayLength() ?? 0;

    public GlbElement At(int index) => index >= 0 && index < Count
        ? new(list!.Value[index], string.Create(CultureInfo.InvariantCulture, $"{where} {index}"))
        : throw ScanFault.At(where, index.ToString(CultureInfo.InvariantCulture), Count > 0 ? $"0 to {Count - 1}"
            : "a list that has entries", "The description names something that is not there: export the file again.");

    public IEnumerator<GlbElement> GetEnumerator()
    {
        if (list is { } there)
        {
            int i = 0;
            foreach (var item in there.EnumerateArray())
            {
                yield return new GlbElement(item, string.Create(CultureInfo.InvariantCulture, $"{where} {i++}"));
            }
        }
    }
}
