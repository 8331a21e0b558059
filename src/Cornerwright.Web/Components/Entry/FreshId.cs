using System.Text;

namespace Cornerwright.Web.Components.Entry;

/// <summary>Ids that the program makes: short, readable in files and addresses, unique beside the others.</summary>
public static class FreshId
{
    /// <summary>"case-2" beside "case-1" and so on.</summary>
    public static string Beside(string stem, IEnumerable<string> others)
    {
        var taken = others.ToHashSet(StringComparer.Ordinal);
        for (int i = 1; i <= taken.Count + 1; i++)
        {
            string id = FormattableString.Invariant($"{stem}-{i}");
            if (!taken.Contains(id))
            {
                return id;
            }
        }

        throw new InvalidOperationException("Among n+1 ids one is free.");
    }

    /// <summary>From a name: "Green springs" becomes "green-springs", or "green-springs-2" where that is taken.</summary>
    public static string FromName(string name, IEnumerable<string> others)
    {
        ArgumentNullException.ThrowIfNull(name);
        var stem = new StringBuilder();
        foreach (char c in name.Trim().ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(c))
            {
                stem.Append(c);
            }
            else if (stem.Length > 0 && stem[^1] != '-')
            {
                stem.Append('-');
            }
        }

        string made = stem.ToString().Trim('-');
        made = made.Length == 0 ? "new" : made[..Math.Min(made.Length, 40)].TrimEnd('-');
        var taken = others.ToHashSet(StringComparer.Ordinal);
        if (!taken.Contains(made))
        {
            return made;
        }

        for (int i = 2; i <= taken.Count + 2; i++)
        {
            string id = FormattableString.Invariant($"{made}-{i}");
            if (!taken.Contains(id))
            {
                return id;
            }
        }

        throw new InvalidOperationException("Among n+1 ids one is free.");
    }
}
