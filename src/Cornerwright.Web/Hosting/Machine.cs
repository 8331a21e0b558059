using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace Cornerwright.Web.Hosting;

/// <summary>What this machine is called on its network.</summary>
/// <param name="Names">Its own name, alone, within its domain, and as machines without a name server call each other (".local").</param>
/// <param name="Addresses">Its addresses now; asked anew each time, since they change when a network comes or goes.</param>
public sealed record Machine(IReadOnlyList<string> Names, Func<IReadOnlyList<IPAddress>> Addresses)
{
    /// <summary>The machine this runs on.</summary>
    public static Machine Here()
    {
        string name = Environment.MachineName, domain = IPGlobalProperties.GetIPGlobalProperties().DomainName;
        string[] names = domain.Length > 0 && domain != "(none)" ? [name, name + ".local", name + "." + domain] : [name, name + ".local"];
        return new Machine([.. names.Where(n => Uri.CheckHostName(n) == UriHostNameType.Dns)], Present);
    }

    /// <summary>Whether an address is one of this machine's.</summary>
    public bool Owns(IPAddress address) => Addresses().Any(a => Plain(a).Equals(address));

    /// <summary>Where others reach an app that listens everywhere: this machine first, then each of its addresses of IPv4.</summary>
    /// <param name="url">As the server says it: "http://0.0.0.0:5210".</param>
    public IReadOnlyList<string> Reach(string url)
    {
        if (!Uri.TryCreate(url, UriKind.Absolute, out var uri) || uri.Host != "0.0.0.0")
        {
            return [url];
        }

        var others = Addresses().Where(a => a.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(a));
        return [.. others.Prepend(IPAddress.Loopback)
            .Select(a => FormattableString.Invariant($"{uri.Scheme}://{a}:{uri.Port}")).Distinct()];
    }

    /// <summary>Without what only this machine knows of it: an IPv4 address written as IPv6 is that address, and no zone.</summary>
    internal static IPAddress Plain(IPAddress address) =>
        address.IsIPv4MappedToIPv6 ? address.MapToIPv4()
        : address.AddressFamily == AddressFamily.InterNetworkV6 ? new IPAddress(address.GetAddressBytes())
        : address;

    private static IReadOnlyList<IPAddress> Present()
    {
        try
        {
            return [.. NetworkInterface.GetAllNetworkInterfaces()
                .Where(n => n.OperationalStatus is OperationalStatus.Up or OperationalStatus.Unknown)
                .SelectMany(n => n.GetIPProperties().UnicastAddresses)
                .Select(a => a.Address)];
        }
        catch (NetworkInformationException)
        {
            // A locked-down system does not say: then its addresses are configured by name.
            return [];
        }
    }
}
