using System.Net;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Access;

/// <summary>
/// The names by which the page may be asked for. A page from elsewhere whose name was made to point at the booth (DNS rebinding) asks
/// by that name and is refused; an address cannot be made to point elsewhere, so every address is known.
/// </summary>
internal sealed class HostNames(IOptions<AccessOptions> options, ServerCertificate certificate)
{
    private readonly string _machine = Environment.MachineName;

    /// <summary>True for <c>localhost</c> and loopback addresses.</summary>
    public static bool IsLoopback(string host) =>
        Same(host, "localhost") || (IPAddress.TryParse(host.Trim('[', ']'), out IPAddress? address) && IPAddress.IsLoopback(address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address));

    /// <summary>Whether a name of a <c>Host</c> header, without its port, is a name of this booth.</summary>
    public bool Knows(string host)
    {
        string name = host.TrimEnd('.');
        return IPAddress.TryParse(name.Trim('[', ']'), out _)
            || Same(name, "localhost")
            || Same(name, _machine)
            || Same(name, _machine + ".local")
            || options.Value.Hosts.Any(known => Same(name, known))
            || certificate.Covers(name);
    }

    private static bool Same(string left, string right) => left.Equals(right, StringComparison.OrdinalIgnoreCase);
}
