using System.Net;
using System.Net.Sockets;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Web.Hosting;

/// <summary>
/// The names by which this app may be called. A page of another site can give its own name this machine's address and then reads
/// and writes here as if it were at home; but it cannot choose the name that its browser sends along, so every request
/// tells on it (docs/decisions/0014-by-which-names-we-answer.md).
/// </summary>
public sealed class AcceptedNames
{
    private readonly HashSet<string> _names = new(StringComparer.OrdinalIgnoreCase) { "localhost" };
    private readonly HashSet<IPAddress> _addresses = [];
    private readonly Machine? _machine;

    private AcceptedNames(IEnumerable<string> configured, Machine? machine)
    {
        _machine = machine;
        foreach (string name in configured.Concat(machine?.Names ?? []))
        {
            if (AddressIn(name) is { } address)
            {
                _addresses.Add(address);
            }
            else
            {
                _names.Add(name);
            }
        }
    }

    /// <summary>Loopback names, those configured, and with a machine its names and addresses.</summary>
    /// <param name="configured">What somebody chose: names and addresses, separated by commas, semicolons or spaces.</param>
    /// <param name="machine">The machine, if the whole network is answered; null if only this machine is.</param>
    public static Checked<AcceptedNames> Of(string? configured, Machine? machine)
    {
        string[] given = (configured ?? "").Split([',', ';', ' '], StringSplitOptions.RemoveEmptyEntries);
        var problems = given.Where(n => !IsName(n)).Select(n => new Problem(
            "name to answer to", n, "a machine's name or address alone, as garage.example or 192.168.1.20",
            "Write it without http://, port, path or *.")).ToList();
        return problems.Count > 0
            ? Checked<AcceptedNames>.Wrong(problems)
            : Checked<AcceptedNames>.From(new AcceptedNames(given.Select(Canonical), machine));
    }

    /// <summary>Whether a request may call us this.</summary>
    /// <param name="host">Name or address as it was sent, without the port.</param>
    public bool Accepts(string? host)
    {
        if (string.IsNullOrEmpty(host))
        {
            return false;
        }

        string name = WithoutRoot(host);
        return AddressIn(name) is not { } address ? _names.Contains(name)
            : IPAddress.IsLoopback(address) || _addresses.Contains(address) || _machine?.Owns(address) == true;
    }

    /// <summary>Whether a page of this origin may ask for anything here.</summary>
    /// <param name="origin">As the browser sent it: scheme, name and port, or "null" for a page that belongs nowhere.</param>
    public bool AcceptsOrigin(string? origin) =>
        Uri.TryCreate(origin, UriKind.Absolute, out var uri)
        && (uri.Scheme == Uri.UriSchemeHttp || uri.Scheme == Uri.UriSchemeHttps)
        && uri.UserInfo.Length == 0
        && uri is { PathAndQuery: "/", Fragment: "" }
        && Accepts(uri.IdnHost);

    private static bool IsName(string given) => Uri.CheckHostName(given) != UriHostNameType.Unknown;

    /// <summary>As a browser sends it: other alphabets in their ASCII form.</summary>
    private static string Canonical(string given) =>
        Uri.CheckHostName(given) == UriHostNameType.Dns && Uri.TryCreate("http://" + given, UriKind.Absolute, out var uri)
            ? WithoutRoot(uri.IdnHost) : given;

    /// <summary>A name that ends in a dot is the same name, said to be complete.</summary>
    private static string WithoutRoot(string name) => name.EndsWith('.') ? name[..^1] : name;

    /// <summary>The address that stands there as such; null for a name. Short and octal forms of IPv4 are no addresses here.</summary>
    private static IPAddress? AddressIn(string text)
    {
        string bare = text is ['[', .., ']'] ? text[1..^1] : text;
        if (!IPAddress.TryParse(bare, out var address))
        {
            return null;
        }

        return address.AddressFamily == AddressFamily.InterNetworkV6 ? Machine.Plain(address)
            : address.ToString() == bare ? address
            : null;
    }
}
