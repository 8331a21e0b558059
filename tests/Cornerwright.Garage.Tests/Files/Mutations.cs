namespace Cornerwright.Garage.Tests.Files;

/// <summary>Damages a text in ways that files get damaged, and in ways that people with bad intent choose.</summary>
public sealed class Mutations(Random random)
{
    private static readonly string[] Poison =
    [
        "\0", "\uFEFF", "\uD800", "\uDC00", "\\uD800", "\\u0000", "\u202E", "1e999", "-1e999", "1e-999", "999999999999999999999999999",
        "-0", "0x10",
        "NaN", "Infinity", "null", "true", "[]", "{}", "\"", "\\", "\"\"", ",", ";", "\t", "\n", "\r", ",,", "//", "/*", "'", "\u00A0", "½",
        "−", "1,234",
        "{\"a\":", "[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[", "{\"\\uD800\":1},", "\"value\":\"1 mm\",", "\"id\":\"x\",",
        "mm", "parsec",
    ];

    public string Of(string text)
    {
        int times = random.Next(1, 4);
        for (int i = 0; i < times; i++)
        {
            text = Once(text);
        }

        return text;
    }

    public byte[] OfBytes(byte[] bytes)
    {
        byte[] copy = [.. bytes];
        int times = random.Next(1, 4);
        for (int i = 0; i < times; i++)
        {
            copy[random.Next(copy.Length)] = (byte)random.Next(256);
        }

        return copy;
    }

    private string Once(string text)
    {
        int at = random.Next(text.Length + 1);
        int length = Math.Min(random.Next(1, 30), text.Length - at);
        return random.Next(6) switch
        {
            0 => text.Insert(at, Poison[random.Next(Poison.Length)]),
            1 => text.Remove(at, length),
            2 => text.Insert(at, text.Substring(at, length)),
            3 => string.Concat(text.AsSpan(0, at), Poison[random.Next(Poison.Length)], text.AsSpan(at + length)),
            4 => at == text.Length ? text[..(text.Length / 2)]
                : string.Concat(text.AsSpan(0, at), ((char)random.Next(32, 127)).ToString(), text.AsSpan(at + 1)),
            _ => text.Insert(random.Next(text.Length + 1), text.Substring(at, length)),
        };
    }
}
