using System.Net;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Access;

/// <summary>Tells where a request comes from.</summary>
internal sealed class Callers(IOptions<AccessOptions> options)
{
    private static readonly object PeerKey = new();
    private readonly IPNetwork[] _proxies = [.. options.Value.Proxies.Select(Network).OfType<IPNetwork>()];

    /// <summary>The networks of the proxies that are believed.</summary>
    public IReadOnlyList<IPNetwork> Proxies => _proxies;

    /// <summary>Reads an address or a network; null when it is neither.</summary>
    public static IPNetwork? Network(string text) =>
        IPNetwork.TryParse(text, out IPNetwork network) ? network
        : IPAddress.TryParse(text, out IPAddress? address) ? new IPNetwork(address, address.GetAddressBytes().Length * 8)
        : null;

    /// <summary>Remembers who is at the other end of the connection, before a proxy's word for somebody else replaces it.</summary>
    public static Task NotePeer(HttpContext context, RequestDelegate next)
    {
        context.Items[PeerKey] = context.Connection.RemoteIpAddress;
        return next(context);
    }

    /// <summary>
    /// True for a loopback connection to a loopback name. A foreign name that was made to point here (DNS rebinding), and
    /// a proxy that speaks for somebody else, do not count.
    /// </summary>
    public bool IsLocal(HttpContext context) =>
        context.Connection.RemoteIpAddress is { } remote
        && IPAddress.IsLoopback(Plain(remote))
        && HostNames.IsLoopback(context.Request.Host.Host)
        && !context.Request.Headers.ContainsKey("Forwarded")
        && !context.Request.Headers.ContainsKey("X-Forwarded-For")
        && !(context.Items[PeerKey] is IPAddress peer && _proxies.Any(proxy => proxy.Contains(Plain(peer))));

    /// <summary>Names a caller for the limits: its address, or of IPv6 the first 64 bits, which one machine has to itself.</summary>
    public static string Key(HttpContext context)
    {
        IPAddress address = Plain(context.Connection.RemoteIpAddress ?? IPAddress.None);
        return address.GetAddressBytes() is { Length: 16 } bytes ? Convert.ToHexString(bytes, 0, 8) : address.ToString();
    }

    private static IPAddress Plain(IPAddress address) => address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
}
