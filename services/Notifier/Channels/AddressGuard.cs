using System.Net;
using System.Net.Sockets;

namespace LabPipeline.Notifier.Channels;

/// <summary>Which network addresses a webhook may reach: public ones, and those the settings name.</summary>
/// <remarks>The ranges are those the IANA special-purpose address registries (RFC 6890) list as not globally reachable.</remarks>
public sealed class AddressGuard(IReadOnlyCollection<IPNetwork> allowed)
{
    private static readonly IPNetwork[] NotPublic4 =
    [
        .. new[]
        {
            "0.0.0.0/8", "10.0.0.0/8", "100.64.0.0/10", "127.0.0.0/8", "169.254.0.0/16", "172.16.0.0/12", "192.0.0.0/24", "192.0.2.0/24",
            "192.88.99.0/24", "192.168.0.0/16", "198.18.0.0/15", "198.51.100.0/24", "203.0.113.0/24", "224.0.0.0/4", "240.0.0.0/4",
        }.Select(IPNetwork.Parse),
    ];

    private static readonly IPNetwork GlobalUnicast6 = IPNetwork.Parse("2000::/3");

    // Protocol assignments with tunnels, documentation, and 6to4, which smuggles an IPv4 address.
    private static readonly IPNetwork[] NotPublic6 =
        [.. new[] { "2001::/23", "2001:db8::/32", "2002::/16", "3fff::/20" }.Select(IPNetwork.Parse)];

    public bool Allows(IPAddress address)
    {
        var plain = address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
        return allowed.Any(network => network.Contains(plain)) || IsPublic(plain);
    }

    private static bool IsPublic(IPAddress address) => address.AddressFamily == AddressFamily.InterNetwork
        ? !NotPublic4.Any(network => network.Contains(address))
        : GlobalUnicast6.Contains(address) && !NotPublic6.Any(network => network.Contains(address));
}
