using System.Net;
using System.Net.Sockets;

namespace BoothWatch.Service.Page;

/// <summary>The address that the page listens on, and what to say when it cannot.</summary>
public static class PageAddress
{
    /// <summary>Reads <c>http://ADDRESS:PORT</c> or <c>https://ADDRESS:PORT</c>; null when it is anything else.</summary>
    public static IPEndPoint? Parse(string? url)
    {
        if (!Uri.TryCreate(url, UriKind.Absolute, out Uri? uri)
            || (uri.Scheme != Uri.UriSchemeHttp && uri.Scheme != Uri.UriSchemeHttps)
            || uri.PathAndQuery != "/"
            || uri.UserInfo.Length > 0
            || uri.Fragment.Length > 0)
        {
            return null;
        }

        string host = uri.Host.Trim('[', ']');
        IPAddress? address = host == "localhost" ? IPAddress.Loopback
            : IPAddress.TryParse(host, out IPAddress? parsed) ? parsed
            : null;
        return address is null ? null : new IPEndPoint(address, uri.Port);
    }

    /// <summary>
    /// Tries whether the page can listen, and lets go again: so that a start that must fail is known before a journal is
    /// opened or a pin is taken. The server itself binds last.
    /// </summary>
    /// <returns>Why not; null when it can, or when <paramref name="url"/> is no address.</returns>
    public static SocketException? Probe(string? url)
    {
        if (Parse(url) is not { } endPoint)
        {
            return null;
        }

        try
        {
            using var socket = new Socket(endPoint.AddressFamily, SocketType.Stream, ProtocolType.Tcp);
            if (endPoint.Address.Equals(IPAddress.IPv6Any))
            {
                socket.DualMode = true;
            }

            socket.Bind(endPoint);
            socket.Listen();
            return null;
        }
        catch (SocketException refused)
        {
            return refused;
        }
    }

    /// <summary>
    /// One line for the person who started the program when the page could not listen: names the setting and a fix.
    /// Null when <paramref name="exception"/> is about something else.
    /// </summary>
    public static string? ExplainFailure(Exception exception, string url)
    {
        for (Exception? e = exception; e is not null; e = e.InnerException)
        {
            if (e is SocketException socket)
            {
                return socket.SocketErrorCode switch
                {
                    SocketError.AddressAlreadyInUse =>
                        $"page:url is {url}, but another program already listens there; stop it, or give another port, for example http://127.0.0.1:5081",
                    SocketError.AddressNotAvailable =>
                        $"page:url is {url}, but this machine has no such address; give one that it has, for example http://127.0.0.1:5080",
                    SocketError.AccessDenied =>
                        $"page:url is {url}, but this user may not listen there; give a port above 1023, for example http://127.0.0.1:5080",
                    _ => null,
                };
            }
        }

        return null;
    }
}
