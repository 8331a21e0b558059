namespace Cornerwright.Cli.Text;

/// <summary>Breaks text between words.</summary>
public static class Wrapping
{
    /// <summary>
    /// Lines of at most <paramref name="width"/> characters; a longer word stands on a line of its own, and a number keeps the unit
    /// that follows it.
    /// </summary>
    public static IEnumerable<string> Lines(string text, int width)
    {
        ArgumentNullException.ThrowIfNull(text);
        string line = "";
        foreach (string word in Words(text))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                yield return line;
                line = word;
            }
            else
            {
                line = line.Length == 0 ? word : line + " " + word;
            }
        }

        if (line.Length > 0)
        {
            yield return line;
        }
    }

    private static List<string> Words(string text)
    {
        var words = new List<string>();
        foreach (string word in text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            if (words.Count > 0 && char.IsAsciiDigit(words[^1][^1]))
            {
                words[^1] += " " + word;
            }
            else
            {
                words.Add(word);
            }
        }

        return words;
    }
}
