using System.Net;

namespace BoothWatch.Service.Page;

/// <summary>Tells whether a request comes from this very machine, and was meant to.</summary>
internal static class LocalCaller
{
    /// <summary>
    /// True for a loopback connection to a loopback name. A foreign name that was made to point here (DNS rebinding), and
    /// a proxy that speaks for somebody else, do not count.
    /// </summary>
    public static bool Made(HttpContext context) =>
        context.Connection.RemoteIpAddress is { } remote
        && IsLoopback(remote)
        && IsLoopback(context.Request.Host.Host)
        && !context.Request.Headers.ContainsKey("Forwarded")
        && !context.Request.Headers.ContainsKey("X-Forwarded-For");

    private static bool IsLoopback(string host) =>
        host.Equals("localhost", StringComparison.OrdinalIgnoreCase)
        || (IPAddress.TryParse(host.Trim('[', ']'), out IPAddress? address) && IsLoopback(address));

    private static bool IsLoopback(IPAddress address) =>
        IPAddress.IsLoopback(address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address);
}
